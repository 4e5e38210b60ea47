/** Sentences about one foot, from the trends the engine found. They claim no more than the engine does. */
import type { Foot } from '../../hoof/feet.ts'
import type { Assessment, Trend, Verdict } from '../../trend/assessment.ts'
import { type Formatter, monthText } from '../shared/format.ts'
import type { Words } from '../words/index.ts'
import { type OwnerMeasureId, ownerMeasureIds } from '../words/keys.ts'
import type { Mood, Statement } from './view.ts'

/** Said of every foot where it was read; the others only where they tell something. */
const always: readonly OwnerMeasureId[] = ['toe-length', 'toe-angle', 'heel-balance']

const moods: Record<Verdict, Mood> = {
  'on target': 'good',
  held: 'waits',
  improving: 'good',
  worsening: 'bad',
  steady: 'steady',
  rising: 'moving',
  falling: 'moving',
  'too early to tell': 'early',
}

export interface Reported {
  readonly measure: OwnerMeasureId
  readonly statement: Statement
}

/** The trends an owner hears of, one a measure: from the gauge where there is one, else from pictures. */
export function reportedTrends(
  trends: readonly Trend[],
  foot: Foot,
): readonly (readonly [OwnerMeasureId, Trend])[] {
  const reported: [OwnerMeasureId, Trend][] = []
  for (const measure of ownerMeasureIds) {
    const some = trends.filter((trend) => trend.foot === foot && trend.measure === measure)
    const trend = some.find(({ source }) => source === 'gauge') ?? some[0]
    if (trend === undefined) continue
    if (always.includes(measure) || (trend.changeIsReal && trend.n > 1)) reported.push([measure, trend])
  }
  return reported
}

/** What can be said of a foot; one that waits for a vet is not called well, and no date is promised for it. */
export function statementsOf(
  { trends, heldFeet }: Pick<Assessment, 'trends' | 'heldFeet'>,
  foot: Foot,
  format: Formatter,
): readonly Reported[] {
  const { owner: words } = format.words
  const waits = heldFeet.includes(foot)
  return reportedTrends(trends, foot).map(([measure, trend]) => {
    const verdict = waits && moods[trend.verdict] === 'good' ? 'held' : trend.verdict
    const sentences = joined(
      [...changeSentences(measure, trend, format), ...outlook({ ...trend, verdict }, format)],
      words,
    )
    return { measure, statement: { mood: moods[verdict], badge: words.badges[verdict], sentences } }
  })
}

/** Two doubts side by side are said in one breath. */
function joined(sentences: readonly string[], words: Words['owner']): string[] {
  const early = sentences.indexOf(words.verdicts['too early to tell'])
  if (early < 1 || sentences[early - 1] !== words.within) return [...sentences]
  return [...sentences.slice(0, early - 1), words.withinEarly, ...sentences.slice(early + 1)]
}

function changeSentences(measure: OwnerMeasureId, trend: Trend, format: Formatter): string[] {
  const { owner: words } = format.words
  if (measure === 'heel-balance') return heelSentences(trend, format)
  const { more, less, thing } = words.measures[measure]
  const name = thing(format.foot(trend.foot))
  if (trend.n < 2) return [words.one(name, format.measure(measure, trend.last))]
  const since = sinceText(trend, format)
  const amount = format.measure(measure, Math.abs(trend.change))
  const way = trend.change > 0 ? more : less
  if (isNothing(amount)) return [words.same(name, since)]
  return trend.changeIsReal
    ? [words.changed(name, amount, way, since), words.real]
    : [words.reads(name, amount, way, since), words.within]
}

/** Which heel is the higher does not matter here: only how far they stand apart. */
function heelSentences(trend: Trend, format: Formatter): string[] {
  const { owner: words } = format.words
  const foot = format.foot(trend.foot)
  const apart = (value: number) => format.length(Math.abs(value))
  if (trend.n < 2) return [words.heelsOne(foot, apart(trend.last))]
  const said = words.heels(foot, apart(trend.first), sinceText(trend, format), apart(trend.last))
  const swapped = trend.changeIsReal && trend.first * trend.last < 0 ? [words.heelsSwapped] : []
  return [said, ...swapped, trend.changeIsReal ? words.real : words.within]
}

/** `0 mm`, `0°`: a change that the page's rounding shows as none. */
const isNothing = (amount: string) => /^0(?:\D|$)/.test(amount) && !/[1-9]/.test(amount)

function sinceText(trend: Trend, format: Formatter): string {
  const { owner: words } = format.words
  const first = trend.points[0]?.date ?? ''
  const last = trend.points[trend.points.length - 1]?.date ?? ''
  return first.slice(0, 7) === last.slice(0, 7)
    ? words.sinceDay(format.date(first))
    : words.sinceMonth(monthText(first, last, format))
}

/** Where it goes, and no further than the engine can see. */
function outlook(trend: Trend, format: Formatter): string[] {
  const { owner: words } = format.words
  const said: string[] = [words.verdicts[trend.verdict]]
  const further = trend.wouldSettle?.furtherVisits ?? null
  if (trend.verdict === 'too early to tell' && further !== null && further > 0)
    said.push(words.moreVisits(further))
  if (trend.verdict === 'improving' && trend.forecast?.kind === 'date') {
    const { date, earliest, latest } = trend.forecast
    const now = trend.points[trend.points.length - 1]?.date ?? date
    const month = (when: string) => monthText(when, now, format)
    said.push(
      latest === null
        ? words.expectedOpen(month(date), month(earliest))
        : words.expected(month(date), month(earliest), month(latest)),
    )
  }
  return said
}
