/**
 * The lines of a visit's case file, from what was said or typed: in the order that a case file has, each under the words
 * it came from. What writes them knows for each stretch what it is of.
 */
import { controlsShown } from '../casebook/control-characters.ts'
import { grouped } from '../casebook/grouped.ts'
import { type Foot, feet } from '../hoof/feet.ts'

/** A stretch of a line and what it is of; null for what belongs to nothing, such as a comma. */
export interface Stretch<Of> {
  readonly text: string
  readonly of: Of | null
}
export type VisitLine<Of> = readonly Stretch<Of>[]

/** Something with the words it came from, as they stand in a remark above it; null where there are none. */
export interface Sourced<Of> {
  readonly text: string
  readonly words: string | null
  readonly of: Of
}
export interface FootItem<Of> extends Sourced<Of> {
  readonly foot: Foot
}

/** A row of a stage or of comfort: a value a foot, and what stands beside the feet. */
export interface FootRow<Of> {
  readonly name: string
  readonly of: Of | null
  readonly cells: readonly FootItem<Of>[]
  readonly beside: readonly (Sourced<Of> & { readonly key: string })[]
}

/** What a file's block holds; each list may be empty. `asked` are lines to be filled in, moved in as far as they stand. */
export interface VisitContent<Of> {
  /** Lines of remarks before all else, without their `#`. */
  readonly remarks: readonly Sourced<Of>[]
  readonly head: readonly (Sourced<Of> & { readonly key: string })[]
  readonly before: Asked & { readonly rows: readonly FootRow<Of>[] }
  readonly after: Asked & { readonly rows: readonly FootRow<Of>[] }
  readonly findings: readonly FootItem<Of>[]
  readonly growOut: readonly FootItem<Of>[]
  readonly comfort: Asked & {
    readonly rows: readonly FootRow<Of>[]
    readonly surfaces: readonly (Sourced<Of> & { readonly key: string })[]
  }
  readonly body: readonly (Sourced<Of> & { readonly key: string })[]
  /** Lines of each entry, the first with the file. */
  readonly photos: readonly { readonly lines: readonly string[]; readonly of: Of }[]
  readonly care: readonly Sourced<Of>[]
  readonly asked: readonly string[]
  readonly nextVisit: Sourced<Of> | null
  /** What stands below the block. */
  readonly notes: readonly Sourced<Of>[]
}
interface Asked {
  readonly asked: readonly string[]
}

const bare = (text: string): VisitLine<never> => [{ text, of: null }]
const remark = (indent: string, text: string): VisitLine<never> => bare(`${indent}# ${text}`)
const remarkOn = (indent: string, { words }: { readonly words: string | null }) =>
  words === null ? [] : [remark(indent, words)]

/** Every line of the file. */
export function visitLines<Of>(content: VisitContent<Of>): readonly VisitLine<Of>[] {
  const { nextVisit } = content
  return [
    bare('---'),
    ...content.remarks.map(({ text, of }) => [{ text: `# ${text}`, of }]),
    ...content.head.map(keyLine),
    ...stageLines('before', content.before),
    ...stageLines('after', content.after),
    ...footedLines('findings', content.findings),
    ...footedLines('grow-out', content.growOut),
    ...comfortLines(content.comfort),
    ...content.body.flatMap((one) => remarkOn('', one)),
    ...(content.body.length === 0 ? [] : [mapLine('body', content.body)]),
    ...photoLines(content.photos),
    ...careLines(content.care),
    ...content.asked.map(bare),
    ...(nextVisit === null ? [] : [...remarkOn('', nextVisit), keyLine({ ...nextVisit, key: 'next visit' })]),
    bare('---'),
    ...content.notes.map(({ text, of }) => [{ text, of }]),
    bare(''),
  ]
}

export const textOfLine = <Of>(line: VisitLine<Of>): string => line.map(({ text }) => text).join('')

const keyLine = <Of>({ key, text, of }: Sourced<Of> & { readonly key: string }): VisitLine<Of> => [
  { text: `${key}: `, of: null },
  { text, of },
]

function stageLines<Of>(
  stage: string,
  { rows, asked }: VisitContent<Of>['before'],
): readonly VisitLine<Of>[] {
  if (rows.length === 0 && asked.length === 0) return []
  return [bare(`${stage}:`), ...rows.flatMap(rowLines), ...asked.map(bare)]
}

/** A list of four where all feet have a value and nothing else stands there, else those that have one. */
function rowLines<Of>({ name, of, cells, beside }: FootRow<Of>): readonly VisitLine<Of>[] {
  const isList = cells.length === feet.length && beside.length === 0
  const within = isList
    ? cells.map((cell) => [cell])
    : [
        ...cells.map((cell) => [{ text: `${cell.foot}: `, of: null }, cell]),
        ...beside.map((one) => [{ text: `${one.key}: `, of: null }, one]),
      ]
  return [
    ...rowRemarks(cells),
    [
      { text: `  ${name}`, of },
      { text: isList ? ': [' : ': {', of: null },
      ...joined(within),
      { text: isList ? ']' : '}', of: null },
    ],
  ]
}

/** The words of a row, those that are of several feet once; by foot, in whatever order the practice goes. */
function rowRemarks<Of>(cells: readonly FootItem<Of>[]): readonly VisitLine<Of>[] {
  const spoken = feet.flatMap((foot) => cells.filter((cell) => cell.foot === foot && cell.words !== null))
  const byWords = grouped(spoken, ({ words }) => words ?? '')
  return [...byWords].map(([words, of]) => remark('  ', `${of.map(({ foot }) => foot).join(' ')} ${words}`))
}

/** With a comma between. */
const joined = <Of>(parts: readonly (readonly Stretch<Of>[])[]): readonly Stretch<Of>[] =>
  parts.flatMap((part, index) => [
    ...(index > 0 ? [{ text: ', ', of: null }] : []),
    ...part.map(({ text, of }) => ({ text, of })),
  ])

const mapLine = <Of>(
  name: string,
  entries: readonly (Sourced<Of> & { readonly key: string })[],
): VisitLine<Of> => [
  { text: `${name}: {`, of: null },
  ...joined(entries.map((one) => [{ text: `${one.key}: `, of: null }, one])),
  { text: '}', of: null },
]

function footedLines<Of>(key: string, items: readonly FootItem<Of>[]): readonly VisitLine<Of>[] {
  if (items.length === 0) return []
  const groups = grouped(items, ({ foot }) => foot)
  const lines = feet.flatMap((foot) => {
    const here = groups.get(foot) ?? []
    if (here.length === 0) return []
    return [bare(`  ${foot}:`), ...here.flatMap((item) => [...remarkOn('    ', item), listed('    ', item)])]
  })
  return [bare(`${key}:`), ...lines]
}

const listed = <Of>(indent: string, { text, of }: Sourced<Of>): VisitLine<Of> => [
  { text: `${indent}- `, of: null },
  { text, of },
]

function comfortLines<Of>({ rows, surfaces, asked }: VisitContent<Of>['comfort']): readonly VisitLine<Of>[] {
  if (rows.length === 0 && surfaces.length === 0 && asked.length === 0) return []
  return [
    bare('comfort:'),
    ...rows.flatMap(rowLines),
    ...surfaces.flatMap((one) => remarkOn('  ', one)),
    ...(surfaces.length === 0 ? [] : [mapLine('  surfaces', surfaces)]),
    ...asked.map(bare),
  ]
}

function photoLines<Of>(photos: VisitContent<Of>['photos']): readonly VisitLine<Of>[] {
  if (photos.length === 0) return []
  const entries = photos.flatMap(({ lines, of }) =>
    lines.map((text, index) => [{ text: `${index === 0 ? '  - ' : '    '}${text}`, of }]),
  )
  return [bare('photos:'), ...entries]
}

function careLines<Of>(care: readonly Sourced<Of>[]): readonly VisitLine<Of>[] {
  if (care.length === 0) return []
  return [bare('care:'), ...care.flatMap((one) => [...remarkOn('  ', one), listed('  ', one)])]
}

/** Signs that a comment and a paragraph can hold, on one line. */
export const oneLine = (text: string): string => controlsShown(text.replaceAll(/\s+/g, ' ').trim())

/** A line of a list whose words, which may be a practice's own, are no signs of YAML. */
export const scalar = (line: string): string =>
  /^[\p{L}\p{N}][\p{L}\p{N} ,./'_-]*$/u.test(line) && line === line.trim() ? line : quoted(line)

/** The same within braces or brackets, where a comma ends a value. */
export const cellScalar = (value: string): string => (value.includes(',') ? quoted(value) : scalar(value))

/** A JSON string is one of YAML (1.2, section 1.3); what would steer a reader's program is written as escapes. */
export const quoted = (text: string): string => controlsShown(JSON.stringify(text.replaceAll(/\s+/g, ' ')))

/** Words after which a paragraph ends at the next sentence. */
const mostTogether = 80

/** Sentences as paragraphs of the notes, an empty line between; none of their signs is Markdown. */
export function paragraphs(
  sentences: readonly { readonly words: readonly string[]; readonly opens: boolean }[],
): readonly string[] {
  const lines: string[] = []
  let line: string[] = []
  for (const { words, opens } of sentences) {
    if ((opens || line.length > mostTogether) && line.length > 0) {
      lines.push(paragraph(line), '')
      line = []
    }
    line.push(...words)
  }
  return line.length > 0 ? [...lines, paragraph(line)] : lines
}

const paragraph = (words: readonly string[]): string => words.map(escaped).map(oneLine).join(' ')

/** What Markdown would take for a mark, or HTML for a tag, stands as itself. */
const escaped = (word: string): string =>
  /^[\p{L}\p{N}]/u.test(word) && !/[\\`*_[\]<>#|~&!=+]/.test(word) && !/^\d+[.)]/.test(word)
    ? word
    : word.replace(/[\\`*_[\]<>#|~&!=+-]/g, '\\$&').replace(/^(\d+)([.)])/, '$1\\$2')
