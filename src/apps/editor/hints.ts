/** Behind each row that is being filled in: what it said at the last visit. */
import type { InlayHint, Range } from 'vscode-languageserver/node'
import { footNamed } from '../../casebook/by-foot.ts'
import { findingNamed, placeNamed } from '../../casebook/finding-words.ts'
import { measureNamed } from '../../casebook/measure-names.ts'
import type { Visit } from '../../casebook/model.ts'
import { normal } from '../../casebook/words.ts'
import type { Foot } from '../../hoof/feet.ts'
import { isMeasureId } from '../../hoof/measures.ts'
import { featureRemark } from '../../pages/starter/asked-findings.ts'
import { lastReadings } from '../../pages/starter/last-values.ts'
import { pathOf, type Row } from './outline.ts'
import { partsOf } from './place.ts'
import type { WrittenFile } from './written-file.ts'

export function hintsIn(file: WrittenFile, range: Range): readonly InlayHint[] {
  const { outline, around } = file
  if (around.past.length === 0 || !/\/\d/.test(file.path)) return []
  return outline.rows
    .filter(({ line }) => line >= range.start.line && line <= range.end.line)
    .flatMap((row): InlayHint[] => {
      const text = outline.lines[row.line] ?? ''
      // A remark of a file that `add visit` made says it already.
      const label = /\s#/.test(text) ? null : lastOf(file, row, text.slice(row.valueAt))
      return label === null
        ? []
        : [{ position: { line: row.line, character: text.length }, label, paddingLeft: true }]
    })
}

function lastOf(file: WrittenFile, row: Row, value: string): string | null {
  const path = pathOf(row).map((step) =>
    typeof step === 'string' ? normal(step.replaceAll('-', ' ')) : step,
  )
  const [top, second] = path
  if ((top === 'before' || top === 'after') && path.length === 2) return ofMeasure(file, row.key ?? '')
  const foot = typeof second === 'string' ? footNamed(second) : null
  const parts = partsOf(value)
  const isLine = row.isItem || value.startsWith('[')
  if (top === 'findings' && foot && isLine) return ofFinding(file, foot, parts)
  if (top === 'grow out' && foot && isLine) return ofFeature(file, foot, parts)
  const read = path.length === (top === 'comfort' ? 2 : 1) ? said[String(path.at(-1))] : undefined
  return read ? ofScale(file, read) : null
}

function ofMeasure({ around, format }: WrittenFile, key: string): string | null {
  const id = measureNamed(key)
  return id !== null && isMeasureId(id) ? lastReadings(around.past, id, around.feetOrder, format) : null
}

function ofFinding(
  { around, format }: WrittenFile,
  foot: Foot,
  [what = '', where = '']: readonly string[],
): string | null {
  const name = findingNamed(what, around.practice.terms)
  const place = placeNamed(where)
  const seen = around.past
    .flatMap(({ date, findings }) => findings.map((finding) => ({ date, ...finding })))
    .findLast((one) => one.foot === foot && one.what === name && one.place === place)
  return seen ? format.words.starter.lastOn(String(seen.grade), format.shortDate(seen.date), false) : null
}

function ofFeature(file: WrittenFile, foot: Foot, [what = '', where = '']: readonly string[]): string | null {
  const place = placeNamed(where)
  const feature = file
    .numbers()
    ?.followed.find((one) => one.foot === foot && one.feature === normal(what) && one.place === place)
  return feature ? featureRemark(feature, file.format) : null
}

/** What a visit says on a scale; empty where it says nothing. */
type Said = (visit: Visit) => readonly string[]

const byFoot = (values: Readonly<Partial<Record<Foot, unknown>>>): readonly string[] =>
  Object.entries(values).map(([foot, value]) => `${foot} ${value}`)

const said: Readonly<Record<string, Said>> = {
  lameness: ({ comfort }) => byFoot(comfort.lameness),
  landing: ({ comfort }) => byFoot(comfort.landing),
  'digital pulse': ({ comfort }) => byFoot(comfort.digitalPulse),
  surfaces: ({ comfort }) => Object.entries(comfort.surfaces).map(([name, level]) => `${name} ${level}`),
  stance: ({ stance }) => Object.entries(stance).map(([foot, one]) => `${foot} ${one.position}`),
  body: ({ bodyState: { condition, crest } }) => [
    ...(condition === null ? [] : [`condition ${condition}`]),
    ...(crest === null ? [] : [`crest ${crest}`]),
  ],
}

function ofScale({ around, format }: WrittenFile, read: Said): string | null {
  const visit = around.past.findLast((one) => read(one).length > 0)
  if (!visit) return null
  return `${format.shortDate(visit.date)}: ${read(visit).join(', ')}`
}
