/** Sentences about one foot, from the trends the engine found. They claim no more than the engine does. */
import type { Foot } from '../../hoof/feet.ts'
import { type Assessment, type Standing, standingOf, type Trend } from '../../trend/assessment.ts'
import { type Formatter, monthText } from '../shared/format.ts'
import { type OwnerMeasureId, ownerMeasureIds } from '../words/keys.ts'
import type { Mood, Statement } from './view.ts'

/** Said of every foot where it was read; the others only where they tell something. */
const always: readonly OwnerMeasureId[] = ['toe-length', 'toe-angle', 'heel-balance']

const moods: Record<Standing, Mood> = {
  'on target': 'good',
  held: 'waits',
  improving: 'good',
  worsening: 'bad',
  steady: 'steady',
  rising: 'moving',
  falling: 'moving',
  'not worsening': 'steady',
  'not improving': 'early',
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
    const trend = some.find(({ family }) => family === 'gauge') ?? some[0]
    if (trend === undefined) continue
    if (always.includes(measure) || trend.isClear) reported.push([measure, trend])
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
    const own = standingOf(trend)
    const standing = waits && moods[own] === 'good' ? 'held' : own
    const sentences = [...changeSentences(measure, trend, format), ...outlook(trend, standing, format)]
    return { measure, statement: { mood: moods[standing], badge: words.badges[standing], sentences } }
  })
}

function changeSentences(measure: OwnerMeasureId, trend: Trend, format: Formatter): string[] {
  const { owner: words } = format.words
  if (measure === 'heel-balance') return heelSentences(trend, format)
  const { more, less, thing } = words.measures[measure]
  const name = thing(format.foot(trend.foot))
  if (trend.points.length < 2) return [words.one(name, format.measure(measure, trend.last.value))]
  const since = sinceText(trend, format)
  const amount = format.measure(measure, Math.abs(trend.change))
  const way = trend.change > 0 ? more : less
  if (isNothing(amount)) return [words.same(name, since)]
  return [(trend.isClear ? words.changed : words.reads)(name, amount, way, since)]
}

/** Which heel is the higher does not matter here: only how far they stand apart. */
function heelSentences(trend: Trend, format: Formatter): string[] {
  const { owner: words } = format.words
  const foot = format.foot(trend.foot)
  const apart = (value: number) => format.length(Math.abs(value))
  const { first, last } = trend
  if (trend.points.length < 2) return [words.heelsOne(foot, apart(last.value))]
  const said = words.heels(foot, apart(first.value), sinceText(trend, format), apart(last.value))
  return trend.isClear && first.value * last.value < 0 ? [said, words.heelsSwapped] : [said]
}

/** `0 mm`, `0°`: a change that the page's rounding shows as none. */
const isNothing = (amount: string) => /^0(?:\D|$)/.test(amount) && !/[1-9]/.test(amount)

function sinceText(trend: Trend, format: Formatter): string {
  const { owner: words } = format.words
  const { date: first } = trend.first
  const { date: last } = trend.last
  return first.slice(0, 7) === last.slice(0, 7)
    ? words.sinceDay(format.date(first))
    : words.sinceMonth(monthText(first, last, format))
}

/** Where it goes, and no further than the engine can see. */
function outlook({ forecast, last }: Trend, standing: Standing, format: Formatter): string[] {
  const { owner: words } = format.words
  const said: string[] = [words.verdicts[standing]]
  if (standing !== 'improving' || forecast === null) return said
  const month = (when: string) => monthText(when, last.date, format)
  if (forecast.kind === 'not before') said.push(words.notBefore(month(forecast.month)))
  if (forecast.kind !== 'date') return said
  const { date, earliest, latest, isDue } = forecast
  if (isDue) said.push(words.wasExpected(format.date(date)))
  else if (latest === null) said.push(words.expectedOpen(month(date), month(earliest)))
  else said.push(words.expected(month(date), month(earliest), month(latest)))
  return said
}
