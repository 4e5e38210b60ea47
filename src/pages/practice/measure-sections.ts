/** Every measure that was read, in full: chart, a row a foot, and the way from the readings to the verdict. */
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import type { Trend } from '../../trend/assessment.ts'
import type { Table, TrendChart } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { expectedText } from './ahead.ts'
import { measureChart } from './charts.ts'
import { footTitle, type HorseCase, type Link, measureHref } from './horse-case.ts'
import { type ShownReading, shownEnd } from './shown-reading.ts'
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
  readonly foot: string
  readonly first: ShownReading | null
  readonly firstOn: string | null
  readonly last: ShownReading
  readonly lastOn: string
  /** Both readings of one stage. */
  readonly stage: string
  readonly rate: string
  readonly verdict: VerdictView
  readonly expected: string
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

/** Of each foot that has one; the same for all stands once. */
function targetText(of: HorseCase, trends: readonly Trend[]): string | null {
  const { format, words } = of
  const said = trends.flatMap(({ foot, measure, target }) =>
    target === null ? [] : [{ foot, band: format.band(measure, target) }],
  )
  const [first] = said
  if (first === undefined) return null
  const isOne = said.length === trends.length && said.every(({ band }) => band === first.band)
  return words.measures.target(
    isOne
      ? first.band
      : said.map(({ foot, band }) => words.horse.targetAt(format.foot(foot), band)).join(', '),
  )
}

function rowOf(of: HorseCase, trend: Trend): MeasureRow {
  const { format, words } = of
  const { measure, first, last, points, fit, stage } = trend
  const several = points.length > 1
  return {
    foot: footTitle(of, trend.foot),
    first: several ? shownEnd(of, trend, 'first') : null,
    firstOn: several ? format.shortDate(first.date) : null,
    last: shownEnd(of, trend, 'last'),
    lastOn: format.shortDate(last.date),
    stage: words.chart.stages[stage],
    rate:
      fit === null
        ? '–'
        : words.measures.rate(
            format.rate(measure, fit.slopePerMonth),
            format.interval(measure, fit.slopeLow, fit.slopeHigh),
          ),
    verdict: verdictView(of, trend),
    expected: expectedText(of, trend) ?? '–',
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
