/** One measure in full: its readings by visit, the verdict at each foot, and what the verdict rests on. */
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import { standingOf, type Trend } from '../../../trend/assessment.ts'
import { capital } from '../../shared/format.ts'
import { expectedText } from '../case/ahead.ts'
import type { HorseCase } from '../case/horse-case.ts'
import type { Fact } from '../case/profile.ts'
import { shownReading } from '../case/shown-reading.ts'
import { verdictView } from '../case/verdict-view.ts'
import { type FeetRow, type FeetTable, feetTable, textRow } from '../parts/feet-table.ts'
import { bothOf, cellOf } from '../parts/visit-table.ts'

/**
 * @param trends those of one measure, one a foot
 * @param stages whether the readings of both stages stand in it, or those of the one that is followed
 * @param usual days and stage that need not be said (`usualDays`)
 */
export function measureTable(
  of: HorseCase,
  id: AnyMeasureId,
  trends: readonly Trend[],
  stages: 'both' | 'followed',
  usual: string | null,
): FeetTable {
  const feet = trends.map(({ foot }) => foot)
  return feetTable(of, of.format.unit(id), feet, [
    ...readingRows(of, id, trends, stages),
    ...verdictRows(of, id, trends, usual),
    ...numberRows(of, id, trends),
  ])
}

/** A row a visit at which any foot was read, in order; there may be two on a day. */
function readingRows(
  of: HorseCase,
  id: AnyMeasureId,
  trends: readonly Trend[],
  stages: 'both' | 'followed',
): readonly FeetRow[] {
  const { format } = of
  return of.visits.flatMap(({ id: visit, date }) => {
    const readings = of.readings.at(visit, id)
    if (readings.length === 0) return []
    const cells = trends.map(({ foot, family, stage }) => {
      const own = readings.filter(
        (one) => one.foot === foot && (one.source === 'photo') === (family === 'photo'),
      )
      if (stages === 'both') return cellOf(of, id, bothOf(own, foot), false)
      const followed = own.find((one) => one.stage === stage)
      return followed === undefined ? null : shownReading(followed, format.figure(id, followed.value))
    })
    return [{ name: format.shortDate(date), cells }]
  })
}

function verdictRows(
  of: HorseCase,
  id: AnyMeasureId,
  trends: readonly Trend[],
  usual: string | null,
): readonly FeetRow[] {
  const { format, words } = of
  const w = words.trend
  const when = trends.map((trend) => whenText(of, trend))
  return [
    { name: w.verdict, cells: trends.map((trend) => verdictView(of, trend)) },
    textRow(
      of,
      w.month,
      trends.map(
        ({ fit }) =>
          fit &&
          words.measures.rate(
            format.rateFigure(id, fit.slopePerMonth),
            format.intervalFigure(id, fit.slopeLow, fit.slopeHigh),
          ),
      ),
    ),
    textRow(
      of,
      w.expected,
      trends.map((trend) => expectedText(of, trend)),
    ),
    textRow(
      of,
      w.when,
      when.map((text) => (text === usual ? null : text)),
    ),
  ]
}

/** Days and stage of the readings. */
export function whenText({ format, words }: HorseCase, { first, last, points, stage }: Trend): string {
  const name = words.chart.stages[stage]
  return points.length > 1
    ? words.measures.between(format.shortDate(first.date), format.shortDate(last.date), name)
    : words.measures.once(format.shortDate(last.date), name)
}

function numberRows(of: HorseCase, id: AnyMeasureId, trends: readonly Trend[]): readonly FeetRow[] {
  const { format, words } = of
  const w = words.trend
  const fine = (value: number) => format.fineFigure(id, value)
  const row = (name: string, text: (trend: Trend) => string | null) => textRow(of, name, trends.map(text))
  return [
    row(w.readings, ({ n, family }) => (family === 'photo' ? w.fromPhotos(n) : String(n))),
    row(w.smallest, ({ smallestRealChange }) => fine(smallestRealChange)),
    row(w.scatter, ({ fit }) => fit && fine(fit.sd)),
    row(w.freedom, ({ fit }) => fit && String(fit.freedom)),
    row(w.leftOut, ({ leftOut }) =>
      leftOut.length === 0
        ? null
        : format.list(leftOut.map(({ date, value }) => `${fine(value)} (${format.shortDate(date)})`)),
    ),
    row(w.level, ({ fit }) => {
      if (fit === null) return null
      const { low, high } = fit.levelAtLastInterval
      return words.measures.rate(fine(fit.levelAtLast), format.intervalFigure(id, low, high))
    }),
  ]
}

/** What these numbers are, and the rule of each verdict that this horse has. */
export function methodOf({ assessment, assessmentWords, words }: HorseCase): readonly Fact[] {
  const { steps, verdictText } = words.trend
  const standings = new Set(assessment.trends.map(standingOf))
  return [
    ...steps.map(([name, text]) => ({ name, text })),
    ...[...standings].map((one) => ({
      name: capital(assessmentWords.standings[one]),
      text: `${verdictText[one]}.`,
    })),
  ]
}
