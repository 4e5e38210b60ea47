/**
 * When a fitted line reaches a level, with Fieller's interval.
 * E. C. Fieller, Some problems in interval estimation, J. Roy. Statist. Soc. B 16 (1954) 175-185 (title from memory).
 */
import type { LineFit } from './fit.ts'

export interface Crossing {
  /** Days, on the fit's own scale. */
  readonly day: number
  readonly low: number
  readonly high: number
}

/**
 * The day at which `level + slope day` equals `target`, and the 95 % limits: the roots of
 * (level + slope day - target)^2 = t^2 Var(level + slope day).
 * Null where the slope's interval includes 0: the interval is then unbounded.
 */
export function crossingOf(fit: LineFit, target: number): Crossing | null {
  const reach = (fit.t * fit.s) ** 2
  const square = fit.slope ** 2 - reach / fit.sxx
  if (!(square > 0)) return null
  // In days from the mean day: square u^2 + 2 half u + rest = 0.
  const gap = fit.meanValue - target
  const half = fit.slope * gap
  // The discriminant half^2 - square (gap^2 - reach / n), multiplied out: a sum, so that nothing cancels.
  const root = Math.sqrt(reach * (square / fit.n + gap ** 2 / fit.sxx))
  return {
    day: fit.meanDay - gap / fit.slope,
    low: fit.meanDay + (-half - root) / square,
    high: fit.meanDay + (-half + root) / square,
  }
}
