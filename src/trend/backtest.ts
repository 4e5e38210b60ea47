/** Past forecasts made again from what was known then, and set against what was read afterwards. */
import type { Horse } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { Forecast } from './assessed-trend.ts'
import type { Backtest, PastForecast } from './assessment.ts'
import { allMeasures, type Column, type Columns } from './columns.ts'
import { addTo, fitOfSums, noSums, repeatabilityWorth, type Sums } from './fit.ts'
import { forecastOf } from './forecast.ts'
import { recentFit } from './pace.ts'
import { type RunningScale, runningScale } from './scale.ts'
import { chooseColumn, trendCandidates } from './series.ts'
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

/** A column as far as its readings have been counted, and as far as they have been taken in. */
interface Course {
  readonly column: Column
  readonly scale: RunningScale
  /** Readings counted. */
  n: number
  /** Place of the first visit that is not taken in. */
  next: number
  readonly sums: Sums
  firstDay: number
  /** Day 0 is that of the first reading. */
  readonly days: Float64Array
  readonly values: Float64Array
  outcomes: Outcomes | null
}

const startOf = (column: Column): Course => ({
  column,
  scale: runningScale(column),
  n: 0,
  next: 0,
  sums: noSums(),
  firstDay: 0,
  days: new Float64Array(column.n),
  values: new Float64Array(column.n),
  outcomes: null,
})

const counted = ({ n }: Course): number => n

function pastForecasts(
  columns: Columns,
  foot: Foot,
  measure: AnyMeasureId,
  band: Band,
): readonly PastForecast[] {
  const courses = trendCandidates(columns, foot, measure).map((column) =>
    column === null ? null : startOf(column),
  )
  const found: PastForecast[] = []
  for (let place = 0; place < columns.visits.length; place++) {
    for (const course of courses)
      if (course !== null && !Number.isNaN(course.column.values[place])) course.n++
    const course = chooseColumn(courses, counted)
    if (course === null || Number.isNaN(course.column.values[place])) continue
    readOn(course, place, columns.days)
    const forecast = forecastNow(course, band)
    if (forecast?.kind !== 'date') continue
    course.outcomes ??= outcomesOf(course.column, band)
    const scored = score(forecast, place, course.outcomes, columns, band)
    if (scored !== null) found.push({ foot, measure, madeAt: columns.visits[place]?.id ?? '', ...scored })
  }
  return found
}

/** Takes in the readings up to a visit: only the chosen column's are ever needed. */
function readOn(course: Course, until: number, days: readonly number[]): void {
  for (; course.next <= until; course.next++) {
    const value = course.column.values[course.next] ?? Number.NaN
    if (Number.isNaN(value)) continue
    const day = days[course.next] ?? 0
    if (course.sums.n === 0) course.firstDay = day
    course.days[course.sums.n] = day - course.firstDay
    course.values[course.sums.n] = value
    addTo(course.sums, day - course.firstDay, value)
    course.scale.add(course.next)
  }
}

function forecastNow({ sums, scale, days, values, firstDay }: Course, band: Band): Forecast | null {
  const prior = { sd: scale.sd(), worth: repeatabilityWorth }
  const whole = fitOfSums(sums, prior)
  if (whole === null) return null
  const used = recentFit(whole, days, values, prior) ?? whole
  return forecastOf(used, firstDay, days[sums.n - 1] ?? 0, band)
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
