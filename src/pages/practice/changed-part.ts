/** "What changed, and is it real?": the real changes, charts, growth apart from trims, all other measures. */
import { standingOf, type Trend } from '../../trend/assessment.ts'
import type { Table } from '../shared/figures.ts'
import { chartedMeasures, type MeasureChart, measureChart } from './charts.ts'
import { type GrowthView, growthByWall } from './growth.ts'
import { footTitle, type HorseCase, type Link, measureHref, measureLink } from './horse-case.ts'
import type { Fact } from './profile.ts'
import { trendNumbers } from './trend-numbers.ts'
import { type TrendView, trendView } from './trends.ts'

export interface ChangedPart {
  /** The real changes, greatest first: measure and sentences. */
  readonly real: readonly Change[]
  /** The smaller ones, folded away. */
  readonly moreReal: readonly Change[]
  readonly moreHead: string
  readonly charts: readonly MeasureChart[]
  /** The toe's, and folded away that of the other walls. */
  readonly growth: readonly GrowthView[]
  readonly otherGrowth: readonly GrowthView[]
  readonly others: readonly OtherMeasure[]
  readonly remarks: readonly string[]
}

interface Change extends Fact {
  readonly href: string
}

/** A measure without a chart: its feet's trends in words, folded. */
interface OtherMeasure {
  readonly measure: Link
  /** The verdicts in short, told beside the folded name. */
  readonly short: string
  readonly feet: readonly TrendView[]
  readonly numbers: Table
}

/** Changes that are shown open. */
const openChanges = 8

export function changedPart(of: HorseCase, remarks: readonly string[]): ChangedPart {
  const { trends, growth } = of.assessment
  const charts = chartedMeasures.flatMap((id) => measureChart(of, id) ?? [])
  const charted = new Set(charts.map(({ chart }) => chart.id))
  const rest = trends.filter(({ measure }) => !charted.has(`chart-${measure}`))
  const real = realChanges(of)
  const walls = growthByWall(of, growth)
  return {
    real: real.slice(0, openChanges),
    moreReal: real.slice(openChanges),
    moreHead: of.words.horse.moreChanges(real.length - openChanges),
    charts,
    growth: walls.filter(({ measure }) => measure === 'toe-length'),
    otherGrowth: walls.filter(({ measure }) => measure !== 'toe-length'),
    others: otherMeasures(of, rest),
    remarks,
  }
}

/** What clearly moves: charted measures first, then the greatest change against its error. */
function realChanges(of: HorseCase): readonly Change[] {
  const { format, words } = of
  const weight = ({ change, smallestRealChange }: Trend) => Math.abs(change) / smallestRealChange
  const rank = ({ measure }: Trend) => ((chartedMeasures as readonly string[]).includes(measure) ? 0 : 1)
  return of.assessment.trends
    .filter(({ isClear }) => isClear)
    .toSorted((a, b) => rank(a) - rank(b) || weight(b) - weight(a))
    .map((trend) => ({
      name: words.horse.changedOf(footTitle(of, trend.foot), format.name(trend.measure)),
      href: measureHref(trend.measure),
      text: words.horse.changedTo(
        format.measure(trend.measure, trend.first.value),
        format.measure(trend.measure, trend.last.value),
        format.change(trend.measure, trend.change),
        format.date(trend.first.date),
        of.assessmentWords.standings[standingOf(trend)],
      ),
    }))
}

function otherMeasures(of: HorseCase, trends: readonly Trend[]): readonly OtherMeasure[] {
  const ids = [...new Set(trends.map(({ measure }) => measure))]
  return ids.map((id) => {
    const those = trends.filter(({ measure }) => measure === id)
    return {
      measure: measureLink(of, id),
      short: those
        .map((trend) =>
          of.words.horse.inShort(
            trend.foot,
            of.format.measure(id, trend.last.value),
            of.assessmentWords.standings[standingOf(trend)],
          ),
        )
        .join('; '),
      feet: those.map((trend) => trendView(of, trend)),
      numbers: trendNumbers(of, id, those),
    }
  })
}
