/** The case file that a person could have written of what was understood: each line under the words it came from. */
import type { Foot } from '../hoof/feet.ts'
import { measureIds, measures } from '../hoof/measures.ts'
import type {
  Known,
  PerFootScale,
  SpokenComfort,
  SpokenFeature,
  SpokenFinding,
  Stage,
  Understood,
  WordRange,
} from './understood.ts'
import {
  type FootItem,
  type FootRow,
  oneLine,
  paragraphs,
  quoted,
  type Sourced,
  scalar,
  textOfLine,
  visitLines,
} from './visit-lines.ts'
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
  const { words, nextVisit } = understood
  const lines = visitLines<null>({
    remarks: questionLines(
      understood.questions.map((question) => ({ ask: question.ask, said: said(words, question) })),
    ).map(plain),
    head: [
      { key: 'date', ...plain(known.date) },
      { key: 'draft', ...plain('yes') },
    ],
    before: { rows: stageRows('before', understood, known), asked: asked.before },
    after: { rows: stageRows('after', understood, known), asked: asked.after },
    findings: understood.findings.map((one) => footItem(words, one, scalar(findingLine(one)))),
    growOut: understood.features.map((one) => footItem(words, one, scalar(featureLine(one)))),
    comfort: {
      rows: comfortRows(understood, known),
      surfaces: understood.surfaces.map((one) => ({ key: one.surface, ...sourced(words, one, one.level) })),
      asked: asked.comfort,
    },
    body: understood.body.map((one) => ({ key: one.key, ...sourced(words, one, one.text) })),
    photos: [],
    care: understood.care.map((one) => sourced(words, one, quoted(one.text))),
    asked: asked.block,
    nextVisit: nextVisit && sourced(words, nextVisit, nextVisit.text),
    notes: noteLines(understood).map(plain),
  })
  return lines.map(textOfLine).join('\n')
}

const plain = (text: string): Sourced<null> => ({ text, words: null, of: null })

interface Heard {
  readonly from: readonly WordRange[]
  readonly doubt: string | null
}

/** The words that a line came from; what nobody said has at most what was known of it before. */
const sourced = (words: readonly Word[], item: Heard, text: string): Sourced<null> => ({
  text,
  words: item.from.length > 0 ? said(words, item) : item.doubt ? oneLine(item.doubt) : null,
  of: null,
})

const footItem = (
  words: readonly Word[],
  item: Heard & { readonly foot: Foot },
  text: string,
): FootItem<null> => ({ ...sourced(words, item, text), foot: item.foot })

/** A cell of a row; what nobody said has no words. */
const cell = (
  words: readonly Word[],
  item: Heard & { readonly foot: Foot },
  text: string,
): FootItem<null> => ({
  text,
  words: item.from.length > 0 ? said(words, item) : null,
  of: null,
  foot: item.foot,
})

/** What is not sure, above all else, as remarks. */
export function questionLines(
  questions: readonly { readonly ask: string; readonly said: string }[],
): readonly string[] {
  if (questions.length === 0) return []
  const more = questions.length - mostQuestions
  return [
    'Not sure, and so not written below. Settle each, then delete these lines.',
    ...questions
      .slice(0, mostQuestions)
      .map((question, index) => `${index + 1}. ${oneLine(question.ask)} ${oneLine(question.said)}`.trimEnd()),
    ...(more > 0 ? [`And ${more} more: the words stand in the notes.`] : []),
  ]
}

/** The words of one or several stretches, and when they were said. */
export function said(
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

function stageRows(
  stage: Stage,
  { readings, words }: Understood,
  { feetOrder }: Known,
): readonly FootRow<null>[] {
  const here = readings.filter((reading) => reading.stage === stage)
  return measureIds.flatMap((id) => {
    const cells = feetOrder.flatMap((foot) =>
      here
        .filter((reading) => reading.measure === id && reading.foot === foot)
        .map((reading) => cell(words, reading, reading.text)),
    )
    return cells.length === 0 ? [] : [{ name: measures[id].name, of: null, cells, beside: [] }]
  })
}

const findingLine = ({ what, place, grade }: SpokenFinding): string =>
  [what, place ?? blank, grade ?? blank].join(', ')
const featureLine = ({ what, place, text }: SpokenFeature): string => [what, place ?? blank, text].join(', ')

function comfortRows({ comfort, words }: Understood, { feetOrder }: Known): readonly FootRow<null>[] {
  const scales: readonly PerFootScale[] = ['lameness', 'landing', 'digital pulse']
  return scales.flatMap((scale) => {
    const row = comfort.filter((one) => one.scale === scale)
    if (row.length === 0) return []
    const cells = feetOrder.flatMap((foot) =>
      row.filter((one) => one.foot === foot).map((one) => cell(words, one, one.level)),
    )
    return [{ name: scale, of: null, cells, beside: scale === 'lameness' ? judgeOf(row) : [] }]
  })
}

/** Who judged stands beside the feet where the same judged them all. */
function judgeOf(row: readonly SpokenComfort[]): FootRow<null>['beside'] {
  const judges = new Set(row.map(({ by }) => by))
  const [judge] = judges
  return judges.size === 1 && judge ? [{ key: 'by', ...plain(judge) }] : []
}

/** The sentences that nothing, or not all, was made of, whole and in order, each word once. */
function noteLines({ sentences, words }: Understood): readonly string[] {
  let before = -1
  const left = sentences.flatMap(({ first, last, isUsed }) => {
    if (isUsed || last < first) return []
    const from = Math.max(first, before + 1)
    before = Math.max(before, last)
    return [
      {
        words: words.slice(from, last + 1).map((word) => word.text),
        opens: words[first]?.opens === true,
      },
    ]
  })
  return paragraphs(left)
}
