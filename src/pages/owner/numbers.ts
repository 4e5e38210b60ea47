/** Numbers, dates and plans, for whoever wants to see them: folded on the page. */
import type { Visit } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { isFindingName } from '../../hoof/findings.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import {
  type Assessment,
  type GrowOut,
  standingOf,
  type Trend,
  type TrendReading,
} from '../../trend/assessment.ts'
import type { Table } from '../shared/figures.ts'
import { findingStories } from '../shared/findings.ts'
import { capital, monthText, type OwnerFormatter } from '../shared/format.ts'
import { findingCourses, findingName, findingText } from './findings.ts'
import type { Numbers } from './view.ts'

/** Told of every foot where it was read; others where they clearly move or the practitioner set a target. */
const always: readonly AnyMeasureId[] = ['toe-length', 'toe-angle', 'heel-balance']

/** @param record cautions of a while ago */
export const numbersOf = (
  assessment: Assessment,
  visits: readonly Visit[],
  record: readonly string[],
  format: OwnerFormatter,
): Numbers => ({
  record,
  tables: feet.flatMap((foot) => readingsTable(assessment, foot, format)),
  found: findingCourses(findingStories(visits), format),
  ahead: [
    ...assessment.trends.flatMap((trend) => forecastLine(trend, assessment, format)),
    ...assessment.growOut.map((feature) => growLine(feature, assessment, format)),
    ...planLines(assessment, format),
  ],
})

/** What clearly moves is among them. */
export const isInNumbers = ({ measure, isClear, targetFrom }: Trend): boolean =>
  always.includes(measure) || isClear || targetFrom === 'practitioner'

/** First and latest reading of each measure, with its day and stage. */
function readingsTable({ trends }: Assessment, foot: Foot, format: OwnerFormatter): Table[] {
  const { owner: words } = format.words
  const shown = trends.filter((trend) => trend.foot === foot && isInNumbers(trend))
  if (shown.length === 0) return []
  const read = (measure: AnyMeasureId, { value, date }: TrendReading) =>
    words.numbersRead(format.measure(measure, value), format.shortDate(date))
  return [
    {
      caption: words.numbersCaption(format.foot(foot)),
      head: words.numbersHeads,
      rows: shown.map((trend) => [
        words.numbersRow(words.measures[trend.measure].thing, words.stages[trend.stage]),
        trend.points.length > 1
          ? words.numbersFromTo(read(trend.measure, trend.first), read(trend.measure, trend.last))
          : read(trend.measure, trend.last),
        words.standings[standingOf(trend)],
      ]),
    },
  ]
}

/** Where it goes, and no further than the engine can see. What is past is never told as to come. */
function forecastLine(
  { measure, foot, forecast, verdict }: Trend,
  { asOf }: Assessment,
  format: OwnerFormatter,
): string[] {
  const { owner: words } = format.words
  if (forecast === null || verdict !== 'improving') return []
  const { thing } = words.measures[measure]
  const where = format.foot(foot)
  if (forecast.kind === 'not before')
    return forecast.month > asOf
      ? [words.notBefore(thing, where, monthText(forecast.month, asOf, format))]
      : []
  if (forecast.kind !== 'date') return []
  const { date, isDue } = forecast
  if (isDue) return [words.wasExpected(thing, where, format.date(date))]
  const [month, ...ends] = rangeText(forecast, asOf, format)
  return [words.expected(thing, where, month, ...ends)]
}

interface AheadRange {
  readonly date: string
  readonly earliest: string
  readonly latest: string | null
}

/** Months of a day ahead and of the ends of its range; an end that is past is left out. */
function rangeText(
  { date, earliest, latest }: AheadRange,
  asOf: string,
  format: OwnerFormatter,
): readonly [string, string | null, string | null] {
  const month = (day: string) => monthText(day, asOf, format)
  return [month(date), earliest > asOf ? month(earliest) : null, latest === null ? null : month(latest)]
}

function growLine(feature: GrowOut, { asOf }: Assessment, format: OwnerFormatter): string {
  const { owner: words } = format.words
  const what = findingText({ what: feature.feature, place: feature.place }, format)
  const foot = format.foot(feature.foot)
  const { date, earliest, latest, state } = feature
  if (state === 'grown out') return words.grownOut(what, foot)
  if (date === null || earliest === null) return words.growUnknown(what, foot)
  if (state === 'due') return words.growDue(what, foot, format.date(date))
  const [month, ...ends] = rangeText({ date, earliest, latest }, asOf, format)
  return words.growing(what, foot, month, ...ends)
}

/** No amounts. */
function planLines({ plans }: Assessment, format: OwnerFormatter): string[] {
  const { owner: words } = format.words
  const lines = plans.map((plan) => {
    const sentence = plan.measure === 'heel-balance' ? words.planHeels : words.planToe
    const { foot, trims, standing } = plan
    return sentence(format.foot(foot), words.planTrims(trims), words.planStanding[standing])
  })
  return lines.length === 0 ? [] : [...lines, words.planWhy]
}

/** What the words of a horse's part mean: of what was measured, then of what was found. */
export function meaningsOf(
  measures: readonly AnyMeasureId[],
  findings: readonly string[],
  terms: Readonly<Record<string, string>>,
  format: OwnerFormatter,
): readonly string[] {
  const { owner: words } = format.words
  const found = [...new Set(findings)].flatMap((what) => {
    const meaning = isFindingName(what) ? words.findings[what].meaning : terms[what]
    return meaning === undefined ? [] : [words.meaning(capital(findingName(what, format)), meaning)]
  })
  return [...new Set(measures.map((id) => words.measures[id].meaning)), ...found]
}
