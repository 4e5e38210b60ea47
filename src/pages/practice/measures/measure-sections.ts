/** Every measure that was read, in full: chart, readings, and the way from them to the verdict. */
import { grouped } from '../../../casebook/grouped.ts'
import type { Foot } from '../../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../../hoof/measures.ts'
import type { Trend } from '../../../trend/assessment.ts'
import type { TrendChart } from '../../shared/figures.ts'
import { capital } from '../../shared/format.ts'
import { footTitle, type HorseCase, type Link, measureHref } from '../case/horse-case.ts'
import { measureChart } from '../parts/charts.ts'
import type { FeetTable } from '../parts/feet-table.ts'
import { measureTable, whenText } from './measure-table.ts'

export interface MeasureSection {
  readonly id: string
  readonly name: string
  readonly reference: Link
  readonly target: string | null
  readonly chart: TrendChart | null
  /** Its readings, and the way from them to the verdict at each foot. */
  readonly table: FeetTable
  /** What is true of all feet together, and where the pace has changed. */
  readonly sentences: readonly string[]
}

/** Charted where they were read, as is what a problem is about; of all others the table says as much. */
const charted: readonly AnyMeasureId[] = ['toe-angle', 'toe-length', 'heel-balance']

/** Worked out from others: the pages of the visits do not show them. */
const workedOut: readonly string[] = derivedIds

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
    // All that it shows stands in the table below it.
    chart: chart && { ...chart, description: '', table: null },
    table: measureTable(
      of,
      id,
      trends,
      chart !== null || workedOut.includes(id) ? 'both' : 'followed',
      usual,
    ),
    sentences: sentencesOf(of, id, trends),
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
