/** Student's t, for intervals and for how likely something is. */
import cdf from '@stdlib/stats-base-dists-t-cdf'
import quantile from '@stdlib/stats-base-dists-t-quantile'

/** Degrees of freedom up to which a quantile is kept: a horse rarely has more readings. */
const upTo = 256

/** Quantiles of one probability for whole degrees of freedom, each worked out when it is first wanted. */
function quantilesOf(probability: number): (nu: number) => number {
  const known: number[] = []
  return (nu) => {
    if (!Number.isInteger(nu) || nu > upTo) return quantile(probability, nu)
    const value = known[nu] ?? quantile(probability, nu)
    known[nu] = value
    return value
  }
}

/** Half the width, in standard errors, of an interval of 95 % for `nu` degrees of freedom, nu > 0. */
export const t975 = quantilesOf(0.975)
/** The same of 90 %. */
export const t95 = quantilesOf(0.95)
/** The same of 97 %. */
export const t985 = quantilesOf(0.985)
/** The same of 99 %. */
export const t995 = quantilesOf(0.995)

/** Student's t for any probability and `nu` degrees of freedom, nu > 0. */
export const tQuantile = (probability: number, nu: number): number => quantile(probability, nu)

/** Probability that Student's t with `nu` degrees of freedom lies below. */
export const tBelow = (t: number, nu: number): number => cdf(t, nu)

/** Half the width of a 95 % interval where the standard deviation is taken as known: the standard normal distribution's 0.975 quantile. */
export const z975 = 1.959963984540054
