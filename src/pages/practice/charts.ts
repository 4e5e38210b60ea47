/** Charts of a measure at four feet, each with a title that says what was found. */
import { daysBetween } from '../../hoof/dates.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { standingOf, type Trend } from '../../trend/assessment.ts'
import type { Table, TrendChart } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { type ChartWords, type TimeView, trendChart } from '../shared/trend-chart.ts'
import { footTitle, type HorseCase, type Link, measureLink } from './horse-case.ts'
import { trendNumbers } from './trend-numbers.ts'
import { type TrendView, trendView } from './trends.ts'

/** Charted on every horse's page where they were read; all others stand in a table. */
export const chartedMeasures = ['toe-angle', 'toe-length', 'heel-balance', 'heel-gap'] as const

export interface MeasureChart {
  readonly id: string
  readonly measure: Link
  readonly chart: TrendChart
  /** One a foot. */
  readonly trends: readonly TrendView[]
  readonly numbers: Table
}

/** @param measure one that has a trend at some foot; null where no foot has two readings */
export function measureChart(of: HorseCase, measure: AnyMeasureId): MeasureChart | null {
  const { assessment, format, words, assessmentWords } = of
  const trends = assessment.trends.filter((trend) => trend.measure === measure)
  if (!trends.some(({ points }) => points.length > 1)) return null
  const time: TimeView = {
    title: words.chart.time,
    at: (date) => ({ date }),
    text: (date) => format.shortDate(date),
  }
  const chart = trendChart(
    assessment,
    trends,
    format,
    time,
    chartWords(of),
    (trend) => assessmentWords.standings[standingOf(trend)],
  )
  if (chart === null) return null
  return {
    id: `changed-${measure}`,
    measure: measureLink(of, measure),
    chart: { ...chart, title: findingTitle(of, measure, trends) },
    trends: trends.map((trend) => trendView(of, trend)),
    numbers: trendNumbers(of, measure, trends),
  }
}

const chartWords = ({ words }: HorseCase): ChartWords => ({
  chartTitle: (measure) => words.chart.caption(capital(measure)),
  chartSays: (measure, feet) => words.chart.says(capital(measure), feet),
  chartFoot: (foot, first, last, note) => words.chart.foot(capital(foot), first, last, note),
  chartHead: words.chart.head,
  chartStages: words.chart.stages,
})

/** `Right hind heel balance: 6 mm to 2 mm in 5 months`: the foot that clearly moved most. */
function findingTitle(of: HorseCase, measure: AnyMeasureId, trends: readonly Trend[]): string {
  const { format, words } = of
  const moved = trends.filter(({ isClear }) => isClear)
  const weight = ({ change, smallestRealChange }: Trend) => Math.abs(change) / smallestRealChange
  const most = moved.toSorted((a, b) => weight(b) - weight(a))[0]
  if (most === undefined) {
    const longest = Math.max(...trends.map(spanOf))
    return words.chart.noneChanged(capital(format.name(measure)), format.span(longest))
  }
  const said = [
    footTitle(of, most.foot),
    format.name(measure),
    format.measure(measure, most.first.value),
    format.measure(measure, most.last.value),
    format.span(spanOf(most)),
  ] as const
  return moved.length === 1 ? words.chart.oneChanged(...said) : words.chart.someChanged(...said, moved.length)
}

const spanOf = ({ first, last }: Trend): number => daysBetween(first.date, last.date)
