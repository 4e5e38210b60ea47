/** Quantiles for 95 % intervals. */
import quantile from '@stdlib/stats-base-dists-t-quantile'

/** Degrees of freedom up to which the quantile is read from a table: a horse rarely has more readings. */
const upTo = 256
const table: readonly number[] = Array.from({ length: upTo + 1 }, (_, nu) =>
  nu === 0 ? Number.POSITIVE_INFINITY : quantile(0.975, nu),
)

/** Student's t, 0.975, for `nu` degrees of freedom, nu > 0: half the width of a 95 % interval in standard errors. */
export const t975 = (nu: number): number => table[nu] ?? quantile(0.975, nu)

/** Student's t for any probability and `nu` degrees of freedom, nu > 0. */
export const tQuantile = (probability: number, nu: number): number => quantile(probability, nu)

/** Half the width of a 95 % interval where the standard deviation is taken as known: the standard normal distribution's 0.975 quantile. */
export const z975 = 1.959963984540054
