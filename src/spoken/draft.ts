/** The case file that a person could have written of what was understood: each line under the words it came from. */
import { controlsShown } from '../casebook/control-characters.ts'
import { grouped } from '../casebook/grouped.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { measureIds, measures } from '../hoof/measures.ts'
import type {
  Known,
  PerFootScale,
  SpokenComfort,
  SpokenFeature,
  SpokenFinding,
  SpokenReading,
  Stage,
  Understood,
  WordRange,
} from './understood.ts'
import type { Word } from './words.ts'

/** The place that a person is to fill in; `check` names each that is left. */
const blank = '_'

/** Words of one stretch that are quoted; what is longer stays in the notes as well, whole. */
const mostQuoted = 60
/** Questions that are listed: of more than these nobody settles any. */
const mostQuestions = 60

/** Lines to be filled in, of which nothing was said; each moved in as far as it stands. */
export interface AskedLines {
  readonly before: readonly string[]
  readonly after: readonly string[]
  readonly comfort: readonly string[]
  readonly block: readonly string[]
}
const nothingAsked: AskedLines = { before: [], after: [], comfort: [], block: [] }

/** Text of a draft visit: passes `check` but for what it asks. */
export function draftVisit(understood: Understood, known: Known, asked = nothingAsked): string {
  return [
    '---',
    ...questionLines(understood),
    `date: ${known.date}`,
    'draft: yes',
    ...stageLines('before', understood, known, asked.before),
    ...stageLines('after', understood, known, asked.after),
    ...footedLines('findings', understood.findings, findingLine, understood.words),
    ...footedLines('grow-out', understood.features, featureLine, understood.words),
    ...comfortLines(understood, known, asked.comfort),
    ...bodyLines(understood),
    ...careLines(understood),
    ...asked.block,
    ...(understood.nextVisit
      ? [...remarkOn('', understood.words, understood.nextVisit), `next visit: ${understood.nextVisit.text}`]
      : []),
    '---',
    ...noteLines(understood),
    '',
  ].join('\n')
}

function questionLines({ questions, words }: Understood): readonly string[] {
  if (questions.length === 0) return []
  const more = questions.length - mostQuestions
  return [
    '# Not sure, and so not written below. Settle each, then delete these lines.',
    ...questions
      .slice(0, mostQuestions)
      .map((question, index) => `# ${index + 1}. ${oneLine(question.ask)} ${said(words, question)}`),
    ...(more > 0 ? [`# And ${more} more: the words stand in the notes.`] : []),
  ]
}

/** Signs that a comment and a paragraph can hold, on one line. */
const oneLine = (text: string): string => controlsShown(text.replaceAll(/\s+/g, ' ').trim())

/** The words of one or several stretches, and when they were said. */
function said(
  words: readonly Word[],
  { from, doubt }: { readonly from: readonly WordRange[]; readonly doubt?: string | null },
): string {
  const quotes = from.map(({ first, last }) => {
    const quoted = words.slice(first, Math.min(last + 1, first + mostQuoted)).map((word) => word.text)
    return `"${oneLine(quoted.join(' '))}${last - first >= mostQuoted ? ' ...' : ''}"`
  })
  const time = words[from[0]?.first ?? 0]?.time ?? null
  return [
    quotes.join(' ... '),
    ...(time === null ? [] : [clock(time)]),
    ...(doubt ? [`(${oneLine(doubt)})`] : []),
  ].join(' ')
}

function clock(seconds: number): string {
  const whole = Math.floor(seconds)
  const two = (number: number) => String(number).padStart(2, '0')
  const hours = Math.floor(whole / 3600)
  const rest = `${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`
  return hours > 0 ? `${hours}:${rest}` : rest
}

const remark = (indent: string, text: string): string => `${indent}# ${text}`

/** The words that a line came from; what nobody said has at most what was known of it before. */
function remarkOn(
  indent: string,
  words: readonly Word[],
  item: { readonly from: readonly WordRange[]; readonly doubt: string | null },
): readonly string[] {
  if (item.from.length > 0) return [remark(indent, said(words, item))]
  return item.doubt ? [remark(indent, oneLine(item.doubt))] : []
}

function stageLines(
  stage: Stage,
  { readings, words }: Understood,
  { feetOrder }: Known,
  asked: readonly string[],
): readonly string[] {
  const here = readings.filter((reading) => reading.stage === stage)
  if (here.length === 0 && asked.length === 0) return []
  const rows = measureIds.flatMap((id) => {
    const row = here.filter(({ measure }) => measure === id)
    if (row.length === 0) return []
    return [
      ...rowRemarks(feetOf(row), words),
      `  ${measures[id].name}: ${byFoot(row, (reading) => reading.text, feetOrder)}`,
    ]
  })
  return [`${stage}:`, ...rows, ...asked]
}

/** The words of a row, those that are of several feet once; what nobody said has none. */
function rowRemarks(
  row: readonly (Parameters<typeof said>[1] & { readonly foot: Foot })[],
  words: readonly Word[],
): readonly string[] {
  const spoken = row.filter(({ from }) => from.length > 0)
  const byWords = grouped(spoken, (one) => said(words, one))
  return [...byWords].map(([text, of]) => remark('  ', `${of.map(({ foot }) => foot).join(' ')} ${text}`))
}

const feetOf = (row: readonly SpokenReading[]): readonly SpokenReading[] =>
  feet.flatMap((foot) => row.filter((reading) => reading.foot === foot))

/** A list of four where all feet have a value, else those that have one. */
function byFoot<T extends { readonly foot: Foot }>(
  items: readonly T[],
  textOf: (item: T) => string,
  order: readonly Foot[],
): string {
  const texts = order.flatMap((foot) =>
    items.filter((item) => item.foot === foot).map((item) => [foot, textOf(item)]),
  )
  return texts.length === feet.length
    ? `[${texts.map(([, text]) => text).join(', ')}]`
    : `{${texts.map(([foot, text]) => `${foot}: ${text}`).join(', ')}}`
}

function footedLines<
  T extends { readonly foot: Foot; readonly from: readonly WordRange[]; readonly doubt: string | null },
>(key: string, items: readonly T[], lineOf: (item: T) => string, words: readonly Word[]): readonly string[] {
  if (items.length === 0) return []
  const groups = grouped(items, ({ foot }) => foot)
  const lines = feet.flatMap((foot) => {
    const here = groups.get(foot) ?? []
    if (here.length === 0) return []
    return [
      `  ${foot}:`,
      ...here.flatMap((item) => [...remarkOn('    ', words, item), `    - ${scalar(lineOf(item))}`]),
    ]
  })
  return [`${key}:`, ...lines]
}

const findingLine = ({ what, place, grade }: SpokenFinding): string =>
  [what, place ?? blank, grade ?? blank].join(', ')
const featureLine = ({ what, place, text }: SpokenFeature): string => [what, place ?? blank, text].join(', ')

function comfortLines(
  { comfort, surfaces, words }: Understood,
  { feetOrder }: Known,
  asked: readonly string[],
): readonly string[] {
  if (comfort.length === 0 && surfaces.length === 0 && asked.length === 0) return []
  const scales: readonly PerFootScale[] = ['lameness', 'landing', 'digital pulse']
  const rows = scales.flatMap((scale) => {
    const row = comfort.filter((one) => one.scale === scale)
    if (row.length === 0) return []
    const remarks = rowRemarks(row, words)
    return [
      ...remarks,
      `  ${scale}: ${scale === 'lameness' ? lamenessOf(row, feetOrder) : byFoot(row, ({ level }) => level, feetOrder)}`,
    ]
  })
  const grounds =
    surfaces.length === 0
      ? []
      : [
          ...surfaces.map((one) => remark('  ', said(words, one))),
          `  surfaces: {${surfaces.map(({ surface, level }) => `${surface}: ${level}`).join(', ')}}`,
        ]
  return ['comfort:', ...rows, ...grounds, ...asked]
}

/** Who judged stands beside the feet where the same judged them all. */
function lamenessOf(row: readonly SpokenComfort[], order: readonly Foot[]): string {
  const judges = new Set(row.map(({ by }) => by))
  const [judge] = judges
  const by = judges.size === 1 && judge ? [`by: ${judge}`] : []
  const grades = order.flatMap((foot) =>
    row.filter((one) => one.foot === foot).map(({ level }) => `${foot}: ${level}`),
  )
  return `{${[...grades, ...by].join(', ')}}`
}

function bodyLines({ body, words }: Understood): readonly string[] {
  if (body.length === 0) return []
  return [
    ...body.map((one) => remark('', said(words, one))),
    `body: {${body.map(({ key, text }) => `${key}: ${text}`).join(', ')}}`,
  ]
}

function careLines({ care, words }: Understood): readonly string[] {
  if (care.length === 0) return []
  return ['care:', ...care.flatMap((one) => [remark('  ', said(words, one)), `  - ${quoted(one.text)}`])]
}

/** A line whose words, which may be a practice's own, are no signs of YAML. */
const scalar = (line: string): string =>
  /^[\p{L}\p{N}][\p{L}\p{N} ,./'_-]*$/u.test(line) ? line : quoted(line)

/** A JSON string is one of YAML (1.2, section 1.3); what would steer a reader's program is written as escapes. */
const quoted = (text: string): string => controlsShown(JSON.stringify(text.replaceAll(/\s+/g, ' ')))

/** The sentences that nothing, or not all, was made of, whole and in order; none of their signs is Markdown. */
function noteLines({ sentences, words }: Understood): readonly string[] {
  const lines: string[] = []
  let line: string[] = []
  let before = -1
  for (const { first, last, isUsed } of sentences) {
    if (isUsed || last < first) continue
    const isNew = words[first]?.opens === true || line.length > mostTogether
    if (isNew && line.length > 0) {
      lines.push(paragraph(line), '')
      line = []
    }
    const from = Math.max(first, before + 1)
    line.push(...words.slice(from, last + 1).map((word) => word.text))
    before = Math.max(before, last)
  }
  return line.length > 0 ? [...lines, paragraph(line)] : lines
}

/** Words after which a paragraph ends at the next sentence. */
const mostTogether = 80

const paragraph = (words: readonly string[]): string => words.map(escaped).map(oneLine).join(' ')

/** What Markdown would take for a mark, or HTML for a tag, stands as itself. */
const escaped = (word: string): string =>
  /^[\p{L}\p{N}]/u.test(word) && !/[\\`*_[\]<>#|~&!=+]/.test(word) && !/^\d+[.)]/.test(word)
    ? word
    : word.replace(/[\\`*_[\]<>#|~&!=+-]/g, '\\$&').replace(/^(\d+)([.)])/, '$1\\$2')
