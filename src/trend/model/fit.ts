/** The line of a course, with its growth, under variances that the practice has taught. */
import type { Course, Variances } from './course.ts'
import { type Inverse, inverseOf, noProducts, type Products, solve, sumUp, tellsSlope } from './products.ts'

/** How many degrees of freedom the practice's variances are worth beside a course's own scatter. */
export interface Scatter {
  readonly variances: Variances
  readonly worth: number
}

/** Times in months, slope and growth a month. */
export interface CourseFit {
  /** Readings used. */
  readonly n: number
  /** Level at time 0. */
  readonly level: number
  readonly slope: number
  readonly growth: number
  readonly inverse: Inverse
  /** Earliest and latest trim that the readings tell of. */
  readonly from: number
  readonly to: number
  /** How much wider this course scatters than the practice's variances say: (worth + rss) / (worth + n - 2). */
  readonly s2: number
  /** Degrees of freedom of s2: worth + n - 2. */
  readonly nu: number
  readonly variances: Variances
}

/** Null where the readings do not tell of two times. Generalised least squares; Cov = s2 K^-1. */
export function fitCourse(course: Course, { variances, worth }: Scatter): CourseFit | null {
  const products = sumUp(course, variances, noProducts())
  return tellsSlope(products) ? fitOf(products, variances, worth) : null
}

export function fitOf(products: Products, variances: Variances, worth: number): CourseFit {
  const { level, slope, growth, rss } = solve(products)
  const nu = worth + products.n - 2
  return {
    n: products.n,
    level: products.origin + level,
    slope,
    growth,
    inverse: inverseOf(products),
    from: products.from,
    to: products.to,
    s2: (worth + rss) / nu,
    nu,
    variances,
  }
}

export const slopeSd = ({ s2, inverse }: CourseFit): number => Math.sqrt(s2 * inverse.i11)
export const growthSd = ({ s2, inverse }: CourseFit): number => Math.sqrt(s2 * inverse.i22)

/** What trims leave at a time, in the mean. */
export const levelAt = ({ level, slope }: CourseFit, time: number): number => level + slope * time

export const levelSd = ({ s2, inverse }: CourseFit, time: number): number =>
  Math.sqrt(s2 * (inverse.i00 + 2 * time * inverse.i01 + time * time * inverse.i11))

/** Standard deviation of one reading after a trim about the line: the trim's own and the reading's. */
export const readingSd = ({ s2, variances }: CourseFit): number => Math.sqrt(s2 * (variances.e + variances.u))
