/** The lines under a foot in `findings` and `grow-out`, each with its parts between commas. */
import type { Foot } from '../hoof/feet.ts'
import { footNamed, tellUnknownFeet } from './by-foot.ts'
import { emptyIn, gapIn, type Sheet, sentence, wrongForm } from './fields.ts'
import { findingMeant } from './finding-words.ts'
import { tellCut } from './readers.ts'
import type { Fix, Spot, SpotEdit } from './report.ts'
import { isOpenPlace, type Written, type WrittenText } from './written.ts'

/** A part of a line between commas, with its place. */
export interface Part extends Spot {
  readonly text: string
}

export interface Line {
  readonly foot: Foot
  readonly parts: readonly Part[]
  readonly spot: Spot
}

export function linesByFoot(value: Written, sheet: Sheet, name: string, example: string): readonly Line[] {
  if (value.kind !== 'map') {
    wrongForm(value, sheet, name, `a foot and its lines: LF: and below it ${example}`, {
      fix: footWithColon(value, sheet),
    })
    return []
  }
  const unknown = value.entries.filter(({ key }) => !footNamed(key.text))
  tellUnknownFeet(unknown, value, sheet, name)
  return value.entries.flatMap((entry) => {
    const foot = footNamed(entry.key.text)
    if (!foot) return []
    if (emptyIn(entry, sheet)) return []
    return rowsOf(entry.value, sheet, `${name} ${foot}`, example)
      .filter((line) => !openPart(line.parts, sheet, `${name} ${foot}`))
      .map((line) => ({ foot, ...line }))
  })
}

/** `LF` without its colon above the lines of the foot. */
function footWithColon(value: Written, sheet: Sheet): Fix | null {
  const line = sheet.report.textOf(value).split('\n')[0] ?? ''
  if (value.kind !== 'text' || value.verbatim || !footNamed(line)) return null
  const end = value.start + line.trimEnd().length
  return { words: `${line.trim()}:`, edits: [{ start: end, end, text: ':' }] }
}

/** True, and told, when a part of the line is still to be filled in. */
function openPart(parts: readonly Part[], sheet: Sheet, name: string): boolean {
  const open = parts.find((part) => isOpenPlace(part.text))
  if (open) sheet.report.gap(open, `${sentence(name)}: ${parts[0]?.text ?? 'a line'} is not yet filled in.`)
  return open !== undefined
}

/** The lines of one foot. `[flare, toe, 2]` in brackets is the one line that it reads as. */
function rowsOf(value: Written, sheet: Sheet, name: string, example: string): readonly Omit<Line, 'foot'>[] {
  if (gapIn(value, name, sheet)) return []
  const items = value.kind === 'list' ? value.items : [value]
  const texts = items.filter((item): item is WrittenText => item.kind === 'text')
  if (value.kind === 'list' && texts.length > 2 && texts.every((item) => !item.text.includes(','))) {
    const parts = texts.map((item) => ({ text: item.text.trim(), start: item.start, end: item.end }))
    return [{ parts, spot: value }]
  }
  return items.flatMap((item) => {
    if (item.kind === 'nothing' || gapIn(item, name, sheet)) return []
    if (item.kind === 'text') {
      const parts = partsOf(item)
      if (tellFolded(item, value, sheet, name)) return []
      if (endsInWords(item, parts, sheet)) tellCut(item, sheet, name, parts.length > 3)
      return [{ parts, spot: item }]
    }
    wrongForm(item, sheet, name, `a line such as ${example}`, { fix: withoutColons(item) })
    return []
  })
}

/** More lines than this folded into one are no slip of a dash. */
const mostFolded = 12

/**
 * Lines that YAML folds into one since the dash of some is missing. True, and told, where each of them is a line of its
 * own by its commas.
 */
function tellFolded(item: WrittenText, whole: Written, sheet: Sheet, name: string): boolean {
  const source = sheet.report.textOf(item)
  if (item.quoted || !source.includes('\n')) return false
  const lines = source.split('\n')
  if (lines.length > mostFolded || lines.some((line) => line.split(',').length < 3)) return false
  // The first line of a list has its dash, two places before the text.
  const isListed = whole.kind === 'list'
  const edits: SpotEdit[] = isListed ? [] : [{ start: item.start, end: item.start, text: '- ' }]
  const at = sheet.report.columnOf(item.start) - 1
  const lead = sheet.report.textOf({ start: item.start - at, end: item.start })
  const column = isListed ? lead.lastIndexOf('-') : at
  let start = item.start
  for (const [index, line] of lines.entries()) {
    const dash = /^\s*(?:- +)?/.exec(line)?.[0].length ?? 0
    if (index > 0) edits.push({ start, end: start + dash, text: `${' '.repeat(Math.max(0, column))}- ` })
    start += line.length + 1
  }
  sheet.report.error(
    'dash-missing',
    item,
    `A dash is missing in the lines of ${name}, so they are read as one.`,
    {
      expected: 'each line begins with a dash and a space',
      fix: { words: '- before each line', edits },
    },
  )
  return true
}

/**
 * Whether what a `#` cuts off a line may belong to it: after the words that end a finding, or where the sign stands
 * right before a word, as in `#2`. A remark after a grade or a distance is a remark.
 */
const endsInWords = ({ cut }: WrittenText, parts: readonly Part[], sheet: Sheet): boolean =>
  cut !== null && (parts.length > 3 || /^#[^\s#]/.test(sheet.report.textOf(cut)))

/** `flare: toe, 2` or `flare, toe: 2`, which YAML takes for a key and its value. */
function withoutColons(item: Written): string | null {
  const only = item.kind === 'map' && item.entries.length === 1 ? item.entries[0] : undefined
  if (only?.value.kind !== 'text') return null
  return findingMeant(`${only.key.text}, ${only.value.text}`, {})
}

function partsOf(line: WrittenText): readonly Part[] {
  let from = 0
  return line.text.split(',').map((raw) => {
    const lead = raw.length - raw.trimStart().length
    const start = from + lead
    from += raw.length + 1
    const text = raw.trim()
    return line.verbatim
      ? { text, start: line.start + start, end: line.start + start + Math.max(1, text.length) }
      : { text, start: line.start, end: line.end }
  })
}
