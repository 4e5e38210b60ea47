/** When the fitted line enters the target band. */
import type { Band } from '../hoof/bands.ts'
import { dateOfDay, daysPerMonth } from '../hoof/dates.ts'
import type { Forecast } from './assessed-trend.ts'
import { crossingOf } from './crossing.ts'
import { type LineFit, levelAt } from './fit.ts'
import { closedSomewhere, edgeAhead, surelyMoves } from './verdict.ts'

/** Nothing is said of a day more than 18 months after the last reading. */
const horizonDays = 18 * daysPerMonth

/** The calendar day of a moment; one that misses midnight by arithmetic alone counts to the day it meant. */
export const dateAt = (day: number) => dateOfDay(day + 1e-6)

/**
 * The forecast for the band's nearest edge, with Fieller's 95 % interval.
 * @param firstDay day number (1970-01-01 is 0) of day 0 of the fit
 * @param lastDay day of the last reading, on the fit's scale
 * @returns null without a band, or where the last fitted level lies in it
 */
export function forecastOf(
  fit: LineFit,
  firstDay: number,
  lastDay: number,
  band: Band | null,
): Forecast | null {
  if (!closedSomewhere(band)) return null
  const level = levelAt(fit, lastDay)
  const edge = edgeAhead(level, band)
  if (edge === null) return null
  const way = surelyMoves(fit)
  const crossing = way === 'no' ? null : crossingOf(fit, edge)
  if (crossing === null) return { kind: 'no date yet', edge }
  if (way !== (edge > level ? 'up' : 'down')) return { kind: 'moving away', edge }
  const horizon = lastDay + horizonDays
  if (crossing.day > horizon) return { kind: 'more than 18 months', edge }
  return {
    kind: 'date',
    edge,
    date: dateAt(firstDay + crossing.day),
    earliest: dateAt(firstDay + crossing.low),
    latest: crossing.high > horizon ? null : dateAt(firstDay + crossing.high),
  }
}
