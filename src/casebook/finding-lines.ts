/** The lines under a foot in `findings` and `grow-out`, each with its parts between commas. */
import type { Foot } from '../hoof/feet.ts'
import { footNamed, reportUnknownFeet } from './by-foot.ts'
import { emptyIn, gapIn, type ParseContext, sentence, wrongForm } from './fields.ts'
import { findingMeant } from './finding-words.ts'
import { reportCut } from './readers.ts'
import type { Fix, SpotEdit, TextRange } from './report.ts'
import { isOpenPlace, type YamlNode, type YamlText } from './yaml-tree.ts'

/** A part of a line between commas, with its place. */
export interface Part extends TextRange {
  readonly text: string
}

export interface Line {
  readonly foot: Foot
  readonly parts: readonly Part[]
  readonly range: TextRange
}

export function linesByFoot(
  value: YamlNode,
  context: ParseContext,
  name: string,
  example: string,
): readonly Line[] {
  if (value.kind !== 'map') {
    wrongForm(value, context, name, `a foot and its lines: LF: and below it ${example}`, {
      fix: footWithColon(value, context),
    })
    return []
  }
  const unknown = value.entries.filter(({ key }) => !footNamed(key.text))
  reportUnknownFeet(unknown, value, context, name)
  return value.entries.flatMap((entry) => {
    const foot = footNamed(entry.key.text)
    if (!foot) return []
    if (emptyIn(entry, context)) return []
    return rowsOf(entry.value, context, `${name} ${foot}`, example)
      .filter((line) => !openPart(line.parts, context, `${name} ${foot}`))
      .map((line) => ({ foot, ...line }))
  })
}

/** `LF` without its colon above the lines of the foot. */
function footWithColon(value: YamlNode, context: ParseContext): Fix | null {
  const line = context.report.textOf(value).split('\n')[0] ?? ''
  if (value.kind !== 'text' || value.verbatim || !footNamed(line)) return null
  const end = value.start + line.trimEnd().length
  return { words: `${line.trim()}:`, edits: [{ start: end, end, text: ':' }] }
}

/** True, and told, when a part of the line is still to be filled in. */
function openPart(parts: readonly Part[], context: ParseContext, name: string): boolean {
  const open = parts.find((part) => isOpenPlace(part.text))
  if (open) context.report.gap(open, `${sentence(name)}: ${parts[0]?.text ?? 'a line'} is not yet filled in.`)
  return open !== undefined
}

/** The lines of one foot. `[flare, toe, 2]` in brackets is the one line that it reads as. */
function rowsOf(
  value: YamlNode,
  context: ParseContext,
  name: string,
  example: string,
): readonly Omit<Line, 'foot'>[] {
  if (gapIn(value, name, context)) return []
  const items = value.kind === 'list' ? value.items : [value]
  const texts = items.filter((item): item is YamlText => item.kind === 'text')
  if (value.kind === 'list' && texts.length > 2 && texts.every((item) => !item.text.includes(','))) {
    const parts = texts.map((item) => ({ text: item.text.trim(), start: item.start, end: item.end }))
    return [{ parts, range: value }]
  }
  return items.flatMap((item) => {
    if (item.kind === 'nothing' || gapIn(item, name, context)) return []
    if (item.kind === 'text') {
      const parts = partsOf(item)
      if (reportFolded(item, value, context, name)) return []
      if (endsInWords(item, parts, context)) reportCut(item, context, name, parts.length > 3)
      return [{ parts, range: item }]
    }
    wrongForm(item, context, name, `a line such as ${example}`, { fix: withoutColons(item) })
    return []
  })
}

/** More lines than this folded into one are no slip of a dash. */
const mostFolded = 12

/**
 * Lines that YAML folds into one since the dash of some is missing. True, and told, where each of them is a line of its
 * own by its commas.
 */
function reportFolded(item: YamlText, whole: YamlNode, context: ParseContext, name: string): boolean {
  const source = context.report.textOf(item)
  if (item.quoted || !source.includes('\n')) return false
  const lines = source.split('\n')
  if (lines.length > mostFolded || lines.some((line) => line.split(',').length < 3)) return false
  // The first line of a list has its dash, two places before the text.
  const isListed = whole.kind === 'list'
  const edits: SpotEdit[] = isListed ? [] : [{ start: item.start, end: item.start, text: '- ' }]
  const at = context.report.columnOf(item.start) - 1
  const lead = context.report.textOf({ start: item.start - at, end: item.start })
  const column = isListed ? lead.lastIndexOf('-') : at
  let start = item.start
  for (const [index, line] of lines.entries()) {
    const dash = /^\s*(?:- +)?/.exec(line)?.[0].length ?? 0
    if (index > 0) edits.push({ start, end: start + dash, text: `${' '.repeat(Math.max(0, column))}- ` })
    start += line.length + 1
  }
  context.report.error(
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
const endsInWords = ({ cut }: YamlText, parts: readonly Part[], context: ParseContext): boolean =>
  cut !== null && (parts.length > 3 || /^#[^\s#]/.test(context.report.textOf(cut)))

/** `flare: toe, 2` or `flare, toe: 2`, which YAML takes for a key and its value. */
function withoutColons(item: YamlNode): string | null {
  const only = item.kind === 'map' && item.entries.length === 1 ? item.entries[0] : undefined
  if (only?.value.kind !== 'text') return null
  return findingMeant(`${only.key.text}, ${only.value.text}`, {})
}

function partsOf(line: YamlText): readonly Part[] {
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
