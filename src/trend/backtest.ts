/** Past forecasts made again from what was known then, and set against what was read afterwards. */
import type { Horse } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import { dayOf } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { Forecast } from './assessed-trend.ts'
import type { Backtest, PastForecast } from './assessment.ts'
import type { Columns } from './columns.ts'
import { forecastOf } from './forecast.ts'
import { knownThen } from './known-by.ts'
import { type Course, firstVisit, lastVisit } from './model/course.ts'
import { targetOf } from './targets.ts'
import type { Judged } from './trends.ts'

/**
 * Every forecast of a date that could have been made at an earlier visit, from the readings up to that visit alone,
 * with the bands and with what the practice teaches today. It is scored by the readings that came after: the edge was
 * reached between the last reading short of it and the first at or past it, and the forecast held where that stretch of
 * days meets its range. One whose whole range passed without the edge being reached did not hold; one that is still to
 * come is not counted. A range that is open at one end is counted apart.
 */
export function backtestOf(horse: Horse, columns: Columns, judged: readonly Judged<Foot>[]): Backtest {
  const forecasts = judged.flatMap((one) => {
    const { band } = targetOf(horse, one.foot, one.course.measure)
    return band === null ? [] : pastForecasts(columns, one, band)
  })
  const closed = forecasts.filter(({ latest }) => latest !== null)
  return {
    made: closed.length,
    held: closed.filter(({ held }) => held).length,
    open: forecasts.length - closed.length,
    forecasts,
  }
}

function pastForecasts(columns: Columns, judged: Judged<Foot>, band: Band): readonly PastForecast[] {
  const found: PastForecast[] = []
  const outcomes = outcomesOf(judged.used, band)
  for (let place = 1; place < columns.visits.length; place++) {
    if (Number.isNaN(judged.course.left[place])) continue
    const forecast = forecastThen(columns, judged, band, place)
    if (forecast?.kind !== 'date') continue
    const scored = score(forecast, place, outcomes, columns, band)
    if (scored !== null)
      found.push({
        foot: judged.foot,
        measure: judged.course.measure,
        madeAt: columns.visits[place]?.id ?? '',
        ...scored,
      })
  }
  return found
}

/** The forecast of a visit's day, from what had been read until then. */
function forecastThen({ visits }: Columns, judged: Judged<Foot>, band: Band, place: number): Forecast | null {
  const known = knownThen(judged, place)
  if (known === null) return null
  const { fit, used } = known
  const dateOf = (at: number) => visits[at]?.date ?? ''
  return forecastOf(
    {
      fit,
      slopes: judged.learned.slopes * judged.course.matters,
      firstDay: dayOf(dateOf(0)),
      readFrom: dateOf(firstVisit(used)),
      readTo: dateOf(lastVisit(used)),
      asOf: dateOf(place),
    },
    band,
  )
}

/** For each visit, the next one whose reading is at or past an edge of the band; and the last visit with a reading. */
interface Outcomes {
  readonly nextAtLow: readonly (number | null)[]
  readonly nextAtHigh: readonly (number | null)[]
  /** The visit with the reading before that of each visit. */
  readonly previous: readonly (number | null)[]
  readonly last: number
}

function outcomesOf({ left }: Course, { low, high }: Band): Outcomes {
  const nextAtLow: (number | null)[] = []
  const nextAtHigh: (number | null)[] = []
  const previous: (number | null)[] = []
  let atLow: number | null = null
  let atHigh: number | null = null
  for (let i = left.length - 1; i >= 0; i--) {
    nextAtLow[i] = atLow
    nextAtHigh[i] = atHigh
    const value = left[i] ?? Number.NaN
    if (low !== null && value >= low) atLow = i
    if (high !== null && value <= high) atHigh = i
  }
  let last: number | null = null
  for (const [i, value] of left.entries()) {
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
