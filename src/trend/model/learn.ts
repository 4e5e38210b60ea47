/**
 * What the courses of one measure over a whole practice teach of its scatter: restricted maximum likelihood
 * (Patterson & Thompson 1971, Biometrika 58:545; title from memory) with the literature's repeatability as prior, so
 * that a practice of one horse is served as well.
 */
import { type Course, readingsIn, type Variances, without } from './course.ts'
import { freedomAcross, type Residual, worthOf } from './heterogeneity.ts'
import { curvatureOf, minimise } from './minimise.ts'
import { outliersOf } from './outliers.ts'
import { logKAndRss, noProducts, solve, sumUp, tellsSlope } from './products.ts'
import { noSeason, type Season, seasonOf, withoutSeason } from './season.ts'

/** Standard deviations of e, u and w, as multiples of the literature's repeatability. */
export interface Ratios {
  readonly e: number
  readonly u: number
  readonly w: number
}

export interface LearnedScatter extends Ratios {
  /** Degrees of freedom beside one course's own scatter. */
  readonly worth: number
  readonly season: Season
}

/** What is believed before anything was read: medians of e, u and w, and the sd of their logarithms. */
export const singleFoot: Ratios = { e: 1, u: 0.4, w: 0.4 }
/** Of four feet together, whose errors average out in part. */
export const allFeet: Ratios = { e: 0.55, u: 0.25, w: 0.25 }
const spreads = [0.3, 0.5, 0.5] as const

/** Courses with fewer readings teach nothing. */
export const fewestReadings = 3

export const variancesOf = ({ e, u, w }: Ratios, sd: number): Variances => ({
  e: (e * sd) ** 2,
  u: (u * sd) ** 2,
  w: (w * sd) ** 2,
})

/** Differences of two readings of one foot at one time: they tell of e alone. */
export interface Repeat {
  readonly difference: number
  readonly sd: number
}

/** How near the search comes, in logarithms of scale: roughly while outliers are looked for, then well. */
const roughly = 3e-2
const closely = 1e-4

/**
 * Learns from all courses, then twice more without the readings that what was learned shows to be outliers, each
 * time starting again from all readings. Of walls the season is learned then, and the scatter once more without it.
 */
export function learnScatter(
  courses: readonly Course[],
  repeats: readonly Repeat[],
  prior: Ratios,
  isWall = false,
): LearnedScatter {
  let told = courses.filter((course) => readingsIn(course) >= fewestReadings)
  const costOf = (used: readonly Course[]) => (at: readonly number[]) =>
    objective(used, repeats, ratiosAt(at, prior)) + penalty(at)
  const withoutOutliers = (at: readonly number[]) =>
    told.map((course) => without(course, outliersOf(course, variancesOf(ratiosAt(at, prior), course.sd))))
  let used = told
  let best = minimise(costOf(used), [0, 0, 0], roughly)
  used = withoutOutliers(best.at)
  best = minimise(costOf(used), best.at, roughly, best.curvature)
  used = withoutOutliers(best.at)
  let season = noSeason
  if (isWall) {
    best = minimise(costOf(used), best.at, roughly, best.curvature)
    const scatter = ratiosAt(best.at, prior)
    season = seasonOf(used, (course) => variancesOf(scatter, course.sd))
    told = told.map((course) => withoutSeason(course, season))
    used = withoutOutliers(best.at)
  }
  const cost = costOf(used)
  const { at } = minimise(cost, best.at, closely, best.curvature)
  const ratios = ratiosAt(at, prior)
  // Twice the sd's logarithm is the variance's: its variance is 4 / curvature along (1, 1, 1).
  const along = curvatureOf(cost, at)
    .flat()
    .reduce((sum, second) => sum + second, 0)
  const worth = worthOf(freedomAcross(residualsOf(used, ratios)), 4 / along)
  return { ...ratios, worth, season }
}

const ratiosAt = ([e = 0, u = 0, w = 0]: readonly number[], prior: Ratios): Ratios => ({
  e: prior.e * Math.exp(e),
  u: prior.u * Math.exp(u),
  w: prior.w * Math.exp(w),
})

const penalty = (at: readonly number[]): number =>
  0.5 * spreads.reduce((sum, spread, i) => sum + ((at[i] ?? 0) / spread) ** 2, 0)

/** Half of the sum of log|V| + log|K| + RSS: minus the logarithm of the restricted likelihood, but for a constant. */
export function objective(
  courses: readonly Course[],
  repeats: readonly Repeat[],
  { e, u, w }: Ratios,
): number {
  const products = noProducts()
  const variances = { e: 0, u: 0, w: 0 }
  let sum = 0
  for (const course of courses) {
    const square = course.sd * course.sd
    variances.e = e * e * square
    variances.u = u * u * square
    variances.w = w * w * square
    sumUp(course, variances, products)
    if (tellsSlope(products)) sum += products.logV + logKAndRss(products)
  }
  for (const { difference, sd } of repeats) {
    const variance = 2 * (e * sd) ** 2
    sum += Math.log(variance) + difference ** 2 / variance
  }
  return sum / 2
}

function residualsOf(courses: readonly Course[], ratios: Ratios): readonly Residual[] {
  const products = noProducts()
  return courses.flatMap((course) => {
    sumUp(course, variancesOf(ratios, course.sd), products)
    return tellsSlope(products) ? [{ rss: solve(products).rss, df: products.n - 2 }] : []
  })
}
