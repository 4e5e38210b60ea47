/** What would settle a verdict that is too early. */
import { addDays, type PlainDate } from '../hoof/dates.ts'
import type { WouldSettle } from './assessed-trend.ts'
import type { LineFit } from './fit.ts'
import { t975 } from './student.ts'

/** More than this many further visits is no useful promise. */
const mostVisits = 6

/** What the series has so far; a single reading, or several on one day, have no fit. */
export interface SoFar {
  readonly n: number
  readonly days: readonly number[]
  readonly fit: LineFit | null
  /** Repeatability and its degrees of freedom where no line can be fitted. */
  readonly sd: number
  readonly nu: number
}

/**
 * The fewest further visits, one a trim cycle, after which the slope's interval would exclude 0, or every change that
 * matters, if the line goes on as it seems to (flat where none can be fitted) and the scatter stays as it is.
 * @param firstDay day number of day 0 of the series
 */
export function wouldSettle(
  soFar: SoFar,
  matters: number,
  ahead: { readonly next: PlainDate; readonly nextDay: number; readonly cycleDays: number },
  firstDay: number,
): WouldSettle {
  const slope = soFar.fit?.slope ?? 0
  const s = soFar.fit?.s ?? soFar.sd
  const days = [...soFar.days]
  for (let visits = 1; visits <= mostVisits; visits++) {
    const day = ahead.nextDay - firstDay + (visits - 1) * ahead.cycleDays
    days.push(day)
    const mean = days.reduce((sum, one) => sum + one, 0) / days.length
    const sxx = days.reduce((sum, one) => sum + (one - mean) ** 2, 0)
    if (sxx === 0) continue
    const half = (t975(soFar.nu + visits) * s) / Math.sqrt(sxx)
    const span = day - (days[0] ?? day)
    if (Math.abs(slope) > half || (Math.abs(slope) + half) * span < matters)
      return {
        readings: soFar.n,
        furtherVisits: visits,
        date: addDays(ahead.next, (visits - 1) * ahead.cycleDays),
      }
  }
  return { readings: soFar.n, furtherVisits: null, date: null }
}
