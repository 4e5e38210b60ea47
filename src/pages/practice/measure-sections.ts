/** Every measure that was read, in full: chart, a row a foot, and the way from the readings to the verdict. */
import { grouped } from '../../casebook/grouped.ts'
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
  /** Change a month with its interval, expected day; days and stage of both readings, where they are not the usual. */
  readonly told: string
}

/** Charted where they were read; of all others the table says as much. */
const charted: readonly AnyMeasureId[] = ['toe-angle', 'toe-length', 'heel-balance', 'heel-gap']

/** @param usual days and stage that need not be said (`usualDays`) */
export function measureSections(of: HorseCase, usual: string | null): readonly MeasureSection[] {
  const { trends } = of.assessment
  return [...measureIds, ...derivedIds].flatMap((id) => {
    const those = trends.filter(({ measure }) => measure === id)
    return those.length === 0 ? [] : [sectionOf(of, id, those, usual)]
  })
}

function sectionOf(
  of: HorseCase,
  id: AnyMeasureId,
  trends: readonly Trend[],
  usual: string | null,
): MeasureSection {
  const { format, words, assessment } = of
  const isProblem = assessment.problems.some(({ about }) => about.kind === 'measure' && about.measure === id)
  const chart = charted.includes(id) || isProblem ? measureChart(of, trends, 'full') : null
  return {
    id,
    name: capital(format.name(id)),
    reference: { text: words.measures.how, href: measureHref(id) },
    target: targetText(of, trends),
    chart,
    rows: trends.map((trend) => rowOf(of, trend, usual)),
    sentences: sentencesOf(of, id, trends),
    numbers: trendNumbers(of, id, trends, chart !== null),
  }
}

/** Of the feet that have one; feet of one band stand together. */
function targetText({ format, words }: HorseCase, trends: readonly Trend[]): string | null {
  const byBand = new Map<string, Foot[]>()
  for (const { foot, measure, target, targetFrom } of trends) {
    if (target === null) continue
    const own = format.band(measure, target)
    const band = targetFrom === 'default' ? words.measures.usual(own) : own
    byBand.set(band, [...(byBand.get(band) ?? []), foot])
  }
  if (byBand.size === 0) return null
  const said = [...byBand].map(([band, those]) =>
    those.length === trends.length ? band : words.horse.targetAt(format.list(those), band),
  )
  return words.measures.target(said.join('; '))
}

/** Days and stage of most of the readings, so that only others need say theirs; null where no two have them alike. */
export function usualDays(of: HorseCase): string | null {
  const counts = [...grouped(of.assessment.trends, (trend) => whenText(of, trend))]
  const [text, those] = counts.toSorted(([, a], [, b]) => b.length - a.length)[0] ?? ['', []]
  return those.length > 1 ? text : null
}

/** Days and stage of the readings. */
function whenText({ format, words }: HorseCase, { first, last, points, stage }: Trend): string {
  const name = words.chart.stages[stage]
  return points.length > 1
    ? words.measures.between(format.shortDate(first.date), format.shortDate(last.date), name)
    : words.measures.once(format.shortDate(last.date), name)
}

function rowOf(of: HorseCase, trend: Trend, usual: string | null): MeasureRow {
  const { format, words } = of
  const { measure, points, fit } = trend
  const several = points.length > 1
  const when = whenText(of, trend)
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
    when === usual ? null : when,
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
