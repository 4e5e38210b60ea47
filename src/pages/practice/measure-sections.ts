/** Every measure that was read, in full: chart, a row a foot, and the way from the readings to the verdict. */
import type { Foot } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import type { Trend } from '../../trend/assessment.ts'
import type { Table, TrendChart } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { expectedText } from './ahead.ts'
import { measureChart } from './charts.ts'
import { footTitle, type HorseCase, type Link, measureHref } from './horse-case.ts'
import { bareText, type ShownReading, shownEnd } from './shown-reading.ts'
import { trendNumbers } from './trend-numbers.ts'
import { type VerdictView, verdictView } from './verdict-view.ts'

export interface MeasureSection {
  readonly id: string
  readonly name: string
  readonly reference: Link
  readonly target: string | null
  readonly chart: TrendChart | null
  /** One a foot. */
  readonly rows: readonly MeasureRow[]
  /** What is true of all feet together, and where the pace has changed. */
  readonly sentences: readonly string[]
  readonly numbers: Table
}

interface MeasureRow {
  readonly foot: Foot
  readonly footName: string
  readonly first: ShownReading | null
  readonly last: ShownReading
  readonly verdict: VerdictView
  /** Change a month with its interval, days and stage of both readings, expected day. */
  readonly told: string
}

/** Charted where they were read; of all others the table says as much. */
const charted: readonly AnyMeasureId[] = ['toe-angle', 'toe-length', 'heel-balance', 'heel-gap']

export function measureSections(of: HorseCase): readonly MeasureSection[] {
  const { trends } = of.assessment
  return [...measureIds, ...derivedIds].flatMap((id) => {
    const those = trends.filter(({ measure }) => measure === id)
    return those.length === 0 ? [] : [sectionOf(of, id, those)]
  })
}

function sectionOf(of: HorseCase, id: AnyMeasureId, trends: readonly Trend[]): MeasureSection {
  const { format, words, assessment } = of
  const isProblem = assessment.problems.some(({ about }) => about.kind === 'measure' && about.measure === id)
  return {
    id,
    name: capital(format.name(id)),
    reference: { text: words.measures.how, href: measureHref(id) },
    target: targetText(of, trends),
    chart: charted.includes(id) || isProblem ? measureChart(of, trends, 'full') : null,
    rows: trends.map((trend) => rowOf(of, trend)),
    sentences: sentencesOf(of, id, trends),
    numbers: trendNumbers(of, id, trends),
  }
}

/** Of the feet that have one; feet of one band stand together. */
function targetText({ format, words }: HorseCase, trends: readonly Trend[]): string | null {
  const byBand = new Map<string, Foot[]>()
  for (const { foot, measure, target } of trends) {
    if (target === null) continue
    const band = format.band(measure, target)
    byBand.set(band, [...(byBand.get(band) ?? []), foot])
  }
  if (byBand.size === 0) return null
  const said = [...byBand].map(([band, those]) =>
    those.length === trends.length ? band : words.horse.targetAt(format.list(those), band),
  )
  return words.measures.target(said.join('; '))
}

function rowOf(of: HorseCase, trend: Trend): MeasureRow {
  const { format, words } = of
  const { measure, first, last, points, fit, stage } = trend
  const several = points.length > 1
  const w = words.measures
  const told = [
    ...(fit === null
      ? []
      : [
          w.rate(
            format.rate(measure, fit.slopePerMonth),
            format.interval(measure, fit.slopeLow, fit.slopeHigh),
          ),
        ]),
    several
      ? w.between(format.shortDate(first.date), format.shortDate(last.date), words.chart.stages[stage])
      : w.once(format.shortDate(last.date), words.chart.stages[stage]),
    expectedText(of, trend),
  ]
  return {
    foot: trend.foot,
    footName: footTitle(of, trend.foot),
    first: several ? shownEnd(of, trend, 'first', bareText) : null,
    last: shownEnd(of, trend, 'last'),
    verdict: verdictView(of, trend),
    told: told.filter((part) => part !== null).join(' · '),
  }
}

function sentencesOf(of: HorseCase, id: AnyMeasureId, trends: readonly Trend[]): readonly string[] {
  const { format, words, assessmentWords, assessment } = of
  const together = assessment.together.find(({ measure }) => measure === id)
  const fit = together?.isClear ? together.fit : null
  return [
    ...(fit == null
      ? []
      : [
          words.measures.together(
            format.rate(id, fit.slopePerMonth),
            format.interval(id, fit.slopeLow, fit.slopeHigh),
          ),
        ]),
    ...trends.flatMap(({ foot, pace }) =>
      pace === null
        ? []
        : [format.words.base.remark(footTitle(of, foot), assessmentWords.paceSentence(pace, id, format))],
    ),
  ]
}
