/** Charts of a measure, a picture a foot, with a title that says what was found. */
import { daysBetween } from '../../hoof/dates.ts'
import { standingOf, type Trend } from '../../trend/assessment.ts'
import type { TrendChart } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { type ChartWords, type TimeView, trendChart } from '../shared/trend-chart.ts'
import type { HorseCase } from './horse-case.ts'
import { isTold } from './real.ts'

/**
 * @param trends of one measure, one a foot
 * @param size of small ones the data stands on *All measures*
 * @returns null where no foot has two readings
 */
export function measureChart(
  of: HorseCase,
  trends: readonly Trend[],
  size: TrendChart['size'],
): TrendChart | null {
  const { assessment, format, words, assessmentWords } = of
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
  const title = findingTitle(of, trends)
  return size === 'full' ? { ...chart, title } : { ...chart, title, size, table: null }
}

const chartWords = ({ words }: HorseCase): ChartWords => ({
  chartTitle: (measure) => words.chart.caption(capital(measure)),
  chartSays: (measure, feet) => words.chart.says(capital(measure), feet),
  chartFoot: (foot, first, last, note) => words.chart.foot(capital(foot), first, last, note),
  chartHead: words.chart.head,
  chartStages: words.chart.stages,
})

/** `Right hind heel balance has clearly moved in 5 months`: the feet that did. */
function findingTitle(of: HorseCase, trends: readonly Trend[]): string {
  const { format, words } = of
  const moved = trends.filter(isTold)
  const [any] = trends
  const measure = any === undefined ? '' : format.name(any.measure)
  const unit = any === undefined ? '' : format.unit(any.measure)
  const name = unit === '' ? capital(measure) : `${capital(measure)}, ${unit}`
  const span = format.span(Math.max(...trends.map(({ first, last }) => daysBetween(first.date, last.date))))
  return moved.length === 0
    ? words.chart.noneChanged(name, span)
    : words.chart.changed(name, format.list(moved.map(({ foot }) => format.foot(foot))), span)
}
