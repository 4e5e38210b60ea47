/** Whether the last readings move at another pace than the whole series. */
import { fitColumns, type LineFit, type ScatterPrior, slopeMargin } from './fit.ts'

/** A changed pace is looked for from six readings on, in the last four. */
const paceFrom = 6
export const paceOver = 4

/** Whether the two slopes' 95 % intervals do not overlap. */
function apart(one: LineFit, other: LineFit): boolean {
  const margin = slopeMargin(one)
  const otherMargin = slopeMargin(other)
  return one.slope + margin < other.slope - otherMargin || other.slope + otherMargin < one.slope - margin
}

/**
 * The fit of the last four readings where its slope's 95 % interval and the whole series' do not overlap; else null.
 * The columns begin with the readings of the whole series and may hold further ones.
 * Feet do not always move in straight lines (Meier 2021, Clayton 2011).
 */
export function recentFit(
  whole: LineFit,
  days: Float64Array,
  values: Float64Array,
  prior: ScatterPrior,
): LineFit | null {
  if (whole.n < paceFrom) return null
  const recent = fitColumns(days, values, whole.n - paceOver, whole.n, prior)
  return recent !== null && apart(recent, whole) ? recent : null
}
