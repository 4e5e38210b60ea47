/** How much courses differ in scatter, as degrees of freedom of a common prior. */
import digamma from '@stdlib/math-base-special-digamma'
import polygamma from '@stdlib/math-base-special-polygamma'
import trigamma from '@stdlib/math-base-special-trigamma'

/** More than this is taken as no difference. */
const most = 60
/** Taken with fewer courses than tell anything. */
const untold = 15
const fewest = 8

/** Residual sum of squares in units of the variances assumed, and its degrees of freedom. */
export interface Residual {
  readonly rss: number
  readonly df: number
}

/**
 * Degrees of freedom of the prior by the moments of log variances (Smyth 2004, Stat. Appl. Genet. Mol. Biol. 3:3,
 * section 6.2; title from memory; limma's fitFDist): at most 60, and 15 where fewer than 8 courses have two degrees of
 * freedom.
 */
export function freedomAcross(residuals: readonly Residual[]): number {
  const told = residuals.filter(({ df, rss }) => df >= 2 && rss > 0)
  if (told.length < fewest) return untold
  return Math.min(most, priorFreedom(told))
}

/** Smyth's estimate itself; infinite where the variances differ no more than chance lets them. */
export function priorFreedom(residuals: readonly Residual[]): number {
  const logs = residuals.map(({ rss, df }) => Math.log(rss / df) - digamma(df / 2) + Math.log(df / 2))
  const mean = logs.reduce((sum, e) => sum + e, 0) / logs.length
  const spread = logs.reduce((sum, e) => sum + (e - mean) ** 2, 0) / (logs.length - 1)
  const chance = residuals.reduce((sum, { df }) => sum + trigamma(df / 2), 0) / residuals.length
  const excess = spread - chance
  return excess > 0 ? 2 * trigammaInverse(excess) : Number.POSITIVE_INFINITY
}

/**
 * Degrees of freedom that the variances of a practice are worth beside one course: those of the difference between
 * courses, less for how surely the common variance itself is known (`logVariance`, the variance of its logarithm).
 */
export const worthOf = (freedom: number, logVariance: number): number =>
  2 * trigammaInverse(trigamma(freedom / 2) + logVariance)

/** The x > 0 whose trigamma is y > 0: Newton's steps on 1 / trigamma, which is nearly a straight line (Smyth's appendix). */
export function trigammaInverse(y: number): number {
  if (y > 1e7) return 1 / Math.sqrt(y)
  if (y < 1e-6) return 1 / y
  let x = 0.5 + 1 / y
  for (let step = 0; step < 50; step++) {
    const value = trigamma(x)
    const move = (value * (1 - value / y)) / polygamma(2, x)
    x += move
    if (-move / x < 1e-8) break
  }
  return x
}
