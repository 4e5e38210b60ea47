/** Past forecasts made again from what was known then, and set against what was read afterwards. */
import type { Horse } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { Forecast } from './assessed-trend.ts'
import type { Backtest, PastForecast } from './assessment.ts'
import { allMeasures, type Column, type Columns } from './columns.ts'
import { addTo, fitOfSums, noSums, type Observation, repeatabilityWorth, type Sums } from './fit.ts'
import { forecastOf } from './forecast.ts'
import { paceOver, recentFit } from './pace.ts'
import { chooseColumn, type RunningScale, runningScale, trendCandidates } from './series.ts'
import { targetOf } from './targets.ts'

/**
 * Every forecast of a date that could have been made at an earlier visit, from the readings up to that visit alone
 * (the choice of series and the changed pace too), with the bands of today. It is scored by the readings of the same
 * series that came after: the edge was reached between the last reading short of it and the first at or past it, and
 * the forecast held where that stretch of days meets its interval. One whose whole interval passed without the edge
 * being reached did not hold. One that is still open is not counted.
 *
 * The cost grows with the number of readings: sums are carried on from visit to visit.
 */
export function backtestOf(horse: Horse, columns: Columns): Backtest {
  const forecasts = feet.flatMap((foot) =>
    allMeasures.flatMap((measure) => {
      const { band } = targetOf(horse, foot, measure)
      return band === null ? [] : pastForecasts(columns, foot, measure, band)
    }),
  )
  return { made: forecasts.length, held: forecasts.filter(({ held }) => held).length, forecasts }
}

/** A column as far as it has been read. */
interface Course {
  readonly column: Column
  readonly scale: RunningScale
  sums: Sums
  firstDay: number
  lastFour: readonly Observation[]
}

function pastForecasts(
  columns: Columns,
  foot: Foot,
  measure: AnyMeasureId,
  band: Band,
): readonly PastForecast[] {
  const candidates = trendCandidates(columns, foot, measure)
  const courses = new Map<Column, Course>()
  for (const column of candidates)
    if (column !== null)
      courses.set(column, { column, scale: runningScale(column), sums: noSums, firstDay: 0, lastFour: [] })
  const outcomes = new Map<Column, Outcomes>()
  const found: PastForecast[] = []
  for (const [place, visit] of columns.visits.entries()) {
    for (const course of courses.values()) readOn(course, place, columns.days[place] ?? 0)
    const column = chooseColumn(candidates, (one) => courses.get(one)?.sums.n ?? 0)
    const course = column === null ? undefined : courses.get(column)
    if (column === null || course === undefined || Number.isNaN(column.values[place])) continue
    const forecast = forecastNow(course, band)
    if (forecast?.kind !== 'date') continue
    const seen = outcomes.get(column) ?? outcomesOf(column, band)
    outcomes.set(column, seen)
    const scored = score(forecast, place, seen, columns, band)
    if (scored !== null) found.push({ foot, measure, madeAt: visit.id, ...scored })
  }
  return found
}

function readOn(course: Course, place: number, day: number): void {
  const value = course.column.values[place] ?? Number.NaN
  if (Number.isNaN(value)) return
  if (course.sums.n === 0) course.firstDay = day
  const reading = { day: day - course.firstDay, value }
  course.sums = addTo(course.sums, reading)
  course.lastFour = [...course.lastFour.slice(1 - paceOver), reading]
  course.scale.add(place)
}

function forecastNow({ sums, scale, lastFour, firstDay }: Course, band: Band): Forecast | null {
  const prior = { sd: scale.now().sd, worth: repeatabilityWorth }
  const whole = fitOfSums(sums, prior)
  if (whole === null) return null
  const used = recentFit(whole, lastFour, prior) ?? whole
  return forecastOf(used, firstDay, lastFour.at(-1)?.day ?? 0, band)
}

/** For each visit, the next one whose reading is at or past an edge of the band; and the last visit with a reading. */
interface Outcomes {
  readonly nextAtLow: readonly (number | null)[]
  readonly nextAtHigh: readonly (number | null)[]
  /** The visit with the reading before that of each visit. */
  readonly previous: readonly (number | null)[]
  readonly last: number
}

function outcomesOf({ values }: Column, { low, high }: Band): Outcomes {
  const nextAtLow: (number | null)[] = []
  const nextAtHigh: (number | null)[] = []
  const previous: (number | null)[] = []
  let atLow: number | null = null
  let atHigh: number | null = null
  for (let i = values.length - 1; i >= 0; i--) {
    nextAtLow[i] = atLow
    nextAtHigh[i] = atHigh
    const value = values[i] ?? Number.NaN
    if (low !== null && value >= low) atLow = i
    if (high !== null && value <= high) atHigh = i
  }
  let last: number | null = null
  for (const [i, value] of values.entries()) {
    previous[i] = last
    if (!Number.isNaN(value)) last = i
  }
  return { nextAtLow, nextAtHigh, previous, last: last ?? 0 }
}

function score(
  forecast: Extract<Forecast, { kind: 'date' }>,
  madeAt: number,
  seen: Outcomes,
  { visits }: Columns,
  band: Band,
): Omit<PastForecast, 'foot' | 'measure' | 'madeAt'> | null {
  const dateOf = (place: number) => visits[place]?.date ?? forecast.date
  const { edge, date, earliest, latest } = forecast
  const reached = (edge === band.low ? seen.nextAtLow : seen.nextAtHigh)[madeAt] ?? null
  if (reached !== null) {
    const seenAfter = dateOf(seen.previous[reached] ?? madeAt)
    const seenBy = dateOf(reached)
    const held = earliest <= seenBy && (latest === null || latest >= seenAfter)
    return { edge, date, earliest, latest, seenAfter, seenBy, held }
  }
  const seenAfter = dateOf(seen.last)
  if (latest === null || latest >= seenAfter) return null
  return { edge, date, earliest, latest, seenAfter, seenBy: null, held: false }
}
