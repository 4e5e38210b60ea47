/** Charts of a measure, a picture a foot, with a title that says what was found. */
import type { Trend } from '../../../trend/assessment.ts'
import type { TrendChart, TrendPanel } from '../../shared/figures.ts'
import { capital } from '../../shared/format.ts'
import { type ChartWords, type TimeView, trendChart } from '../../shared/trend-chart.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { standingText } from '../case/verdict-view.ts'
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
  const { assessment, format, words } = of
  const time: TimeView = {
    title: words.chart.time,
    at: (date) => ({ date }),
    text: (date) => format.shortDate(date),
  }
  const chart = trendChart(assessment, trends, format, time, chartWords(of), (trend) => {
    const verdict = standingText(of, trend)
    // In a small picture the band has no room for its name.
    return size === 'full' || trend.target === null
      ? verdict
      : words.chart.targetBeside(verdict, format.band(trend.measure, trend.target))
  })
  if (chart === null) return null
  const title = findingTitle(of, trends)
  return size === 'full'
    ? { ...chart, title }
    : {
        ...chart,
        title,
        size,
        table: null,
        panels: chart.panels.map((panel) =>
          thinned(panel, trends.find(({ foot }) => foot === panel.foot)?.stage),
        ),
      }
}

/** More readings than these leave no room for both stages in a small picture. */
const mostInSmall = 24

/** Of a long history the stage alone whose level is followed. */
function thinned(panel: TrendPanel, stage: Trend['stage'] | undefined): TrendPanel {
  if (panel.points.length <= mostInSmall) return panel
  return { ...panel, sawTooth: false, points: panel.points.filter((point) => point.stage === stage) }
}

const chartWords = ({ words }: HorseCase): ChartWords => ({
  chartTitle: (measure) => words.chart.caption(capital(measure)),
  chartSays: (measure, feet) => words.chart.says(capital(measure), feet),
  chartFoot: (foot, first, last, note) => words.chart.foot(capital(foot), first, last, note),
  chartHead: words.chart.head,
  chartStages: words.chart.stages,
})

/** `Heel balance, mm: LH and RH clearly moved`. */
function findingTitle({ format, words }: HorseCase, trends: readonly Trend[]): string {
  const moved = trends.filter(isTold)
  const [any] = trends
  if (any === undefined) return ''
  const unit = format.unit(any.measure)
  const measure = capital(format.name(any.measure))
  const united = unit === '' ? measure : `${measure}, ${unit}`
  const name = any.measure === 'heel-balance' ? `${united} (${words.chart.heels})` : united
  return moved.length === 0
    ? words.chart.noneChanged(name)
    : words.chart.changed(name, format.list(moved.map(({ foot }) => foot)))
}
