/** When the fitted line enters the target band. */
import type { Band } from '../hoof/bands.ts'
import { dateOfDay, dayOf, daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import type { Forecast } from './assessed-trend.ts'
import { type Line, lineLimit, lineOf, lineShrunk, reach } from './line.ts'
import type { CourseFit } from './model/fit.ts'
import { t975 } from './student.ts'
import { closedSomewhere, fewestMonths, wayToTarget } from './verdict.ts'

/** Nothing is said of a day more than 18 months from today. */
export const horizonMonths = 18

/** The calendar day of a moment; one that misses midnight by arithmetic alone counts to the day it meant. */
export const dateAt = (day: number) => dateOfDay(day + 1e-6)

export interface ForecastFrom {
  readonly fit: CourseFit
  /** Standard deviation of the practice's slopes about 0, a month. */
  readonly slopes: number
  /** Day number of time 0. */
  readonly firstDay: number
  /** Days of the first and the last reading. */
  readonly readFrom: PlainDate
  readonly readTo: PlainDate
  readonly asOf: PlainDate
}

/**
 * The forecast for the band's nearest edge. A date comes from the line with its slope shrunk by what slopes of this
 * measure are in the practice, with Fieller's 95 % interval on the whole covariance; only where the shrunk slope's
 * interval leaves 0 out. Else the first month in which the upper limit of the line as it is reaches the edge.
 * @returns null without a band, or where the level lies in it
 */
export function forecastOf(of: ForecastFrom, band: Band | null): Forecast | null {
  if (!closedSomewhere(band)) return null
  const line = lineOf(of.fit)
  const level = line.level + line.slope * of.fit.to
  const toward = wayToTarget(level, band)
  if (toward === 0) return null
  const edge = (toward > 0 ? band.low : band.high) as number
  if (dayOf(of.readTo) - dayOf(of.readFrom) < fewestMonths * daysPerMonth)
    return { kind: 'no date yet', edge }
  const t = t975(of.fit.nu)
  const shrunk = lineShrunk(line, of.slopes)
  const reached = reach(shrunk, edge, t)
  if (reached === null) return notBefore(line, of, edge, toward, t)
  if (shrunk.slope * toward < 0) return { kind: 'moving away', edge }
  const horizon = dayOf(of.asOf) + horizonMonths * daysPerMonth
  const dayAt = (time: number) => Math.max(of.firstDay + time * daysPerMonth, dayOf(of.readTo))
  const day = dayAt(reached.at)
  if (day > horizon) return { kind: 'more than 18 months', edge }
  const last = dayAt(reached.high)
  return {
    kind: 'date',
    edge,
    date: dateAt(day),
    earliest: dateAt(dayAt(reached.low)),
    latest: last > horizon ? null : dateAt(last),
    isDue: dateAt(day) <= of.asOf,
  }
}

/** The first month, from today's on, by whose end the limit of the line reaches the edge; nothing where it does now. */
function notBefore(line: Line, of: ForecastFrom, edge: number, toward: 1 | -1, t: number): Forecast {
  const year = Number(of.asOf.slice(0, 4))
  const month = Number(of.asOf.slice(5, 7))
  for (let ahead = 0; ahead <= horizonMonths; ahead++) {
    const end = Date.UTC(year, month + ahead, 0) / msPerDay
    const limit = lineLimit(line, (end - of.firstDay) / daysPerMonth, toward * t)
    if ((limit - edge) * toward < 0) continue
    if (ahead === 0) return { kind: 'no date yet', edge }
    return {
      kind: 'not before',
      edge,
      month: dateOfDay(Date.UTC(year, month - 1 + ahead, 1) / msPerDay),
    }
  }
  return { kind: 'more than 18 months', edge }
}

const msPerDay = 86_400_000
