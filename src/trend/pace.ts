/** Whether the last readings move at another pace than the whole series. */
import type { Interval } from './assessed-trend.ts'
import { fitLine, type LineFit, type Observation, type ScatterPrior, slopeInterval } from './fit.ts'

/** A changed pace is looked for from six readings on, in the last four. */
const paceFrom = 6
export const paceOver = 4

const apart = (one: Interval, other: Interval): boolean => one.high < other.low || other.high < one.low

/**
 * The fit of the last four readings where its slope's 95 % interval and the whole series' do not overlap; else null.
 * Feet do not always move in straight lines (Meier 2021, Clayton 2011).
 */
export function recentFit(
  whole: LineFit,
  lastFour: readonly Observation[],
  prior: ScatterPrior,
): LineFit | null {
  if (whole.n < paceFrom) return null
  const recent = fitLine(lastFour, prior)
  return recent !== null && apart(slopeInterval(recent), slopeInterval(whole)) ? recent : null
}
