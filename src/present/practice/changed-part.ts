/** "What changed, and is it real?": the real changes, charts, growth apart from trims, all other measures. */
import type { Growth, Trend } from '../../trend/assessment.ts'
import type { Table } from '../figures.ts'
import { chartedMeasures, type MeasureChart, measureChart } from './charts.ts'
import { dateOfVisit, footTitle, type HorseCase, type Link, measureHref, measureLink } from './horse-case.ts'
import type { Fact } from './profile.ts'
import { type TrendView, trendView } from './trends.ts'

export interface ChangedPart {
  /** The real changes, greatest first: measure and sentences. */
  readonly real: readonly Change[]
  /** The smaller ones, folded away. */
  readonly moreReal: readonly Change[]
  readonly moreHead: string
  readonly charts: readonly MeasureChart[]
  readonly growth: readonly GrowthView[]
  readonly otherGrowth: readonly GrowthView[]
  readonly others: readonly OtherMeasure[]
  readonly remarks: readonly string[]
}

interface Change extends Fact {
  readonly href: string
}

interface GrowthView {
  readonly text: string
  readonly phases: Table
  readonly trims: Table
}

/** A measure without a chart: its feet's trends in words, folded. */
interface OtherMeasure {
  readonly measure: Link
  /** The verdicts in short, told beside the folded name. */
  readonly short: string
  readonly feet: readonly TrendView[]
}

/** Changes that are shown open. */
const openChanges = 8

export function changedPart(of: HorseCase, remarks: readonly string[]): ChangedPart {
  const { trends, growth } = of.assessment
  const charts = chartedMeasures.flatMap((id) => measureChart(of, id) ?? [])
  const charted = new Set(charts.map(({ chart }) => chart.id))
  const rest = trends.filter(({ measure }) => !charted.has(`chart-${measure}`))
  const real = realChanges(of)
  const toes = growth.filter(({ measure }) => measure === 'toe-length')
  return {
    real: real.slice(0, openChanges),
    moreReal: real.slice(openChanges),
    moreHead: of.words.horse.moreChanges(real.length - openChanges),
    charts,
    growth: toes.map((one) => growthView(of, one)),
    otherGrowth: growth.filter((one) => !toes.includes(one)).map((one) => growthView(of, one)),
    others: otherMeasures(of, rest),
    remarks,
  }
}

/** Changes beyond measuring error since the first reading: charted measures first, then the greatest against its error. */
function realChanges(of: HorseCase): readonly Change[] {
  const { format, words } = of
  const weight = ({ change, smallestRealChange }: Trend) => Math.abs(change) / smallestRealChange
  const rank = ({ measure }: Trend) => ((chartedMeasures as readonly string[]).includes(measure) ? 0 : 1)
  return of.assessment.trends
    .filter(({ n, changeIsReal }) => n > 1 && changeIsReal)
    .toSorted((a, b) => rank(a) - rank(b) || weight(b) - weight(a))
    .map((trend) => ({
      name: words.horse.changedOf(footTitle(of, trend.foot), format.name(trend.measure)),
      href: measureHref(trend.measure),
      text: words.horse.changedTo(
        format.measure(trend.measure, trend.first),
        format.measure(trend.measure, trend.last),
        format.change(trend.measure, trend.change),
        format.date(trend.points[0]?.date ?? ''),
        of.says.verdicts[trend.verdict],
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
        .map(({ foot, last, verdict }) =>
          of.words.horse.inShort(foot, of.format.measure(id, last), of.says.verdicts[verdict]),
        )
        .join('; '),
      feet: those.map((trend) => trendView(of, trend)),
    }
  })
}

/** Growth and trims of one wall, apart, with every step as a table. */
function growthView(of: HorseCase, growth: Growth): GrowthView {
  const { format, words } = of
  const w = words.horse
  const { measure, foot } = growth
  const name = format.name(measure)
  const title = footTitle(of, foot)
  const date = (visit: string) => format.shortDate(dateOfVisit(of, visit))
  const unseen = growth.phases.filter(({ arrivalRead }) => !arrivalRead).length
  const hidden = unseen === 0 ? '' : ` ${w.trimHides(unseen)}`
  return {
    text: w.growthOf(title, name, of.says.growthSentence(growth, format)) + hidden,
    phases: {
      caption: w.growthPhases(title, name),
      head: w.growthHead,
      rows: growth.phases.map((phase) => [
        date(phase.fromVisit),
        date(phase.toVisit),
        String(Math.round(phase.days)),
        format.change(measure, phase.gain),
        format.words.base.perMonth(format.fine(measure, phase.perMonth)),
      ]),
    },
    trims: {
      caption: w.trimSteps(title, name),
      head: w.trimHead,
      rows: growth.trims.map(({ visit, step }) => [date(visit), format.change(measure, step)]),
    },
  }
}
