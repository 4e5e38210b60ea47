/** How fast horn grows down: what the walls of a practice show of it together, and one wall by itself. */
import { adultPrior, distanceSd } from '../../hoof/growth.ts'
import type { LearnedGrowOut } from './learned.ts'

/** Everything followed on one wall, about the mean of each feature: months and millimetres. */
export interface WallSums {
  readonly sxx: number
  readonly sxy: number
  readonly syy: number
  /** Sightings less features. */
  readonly df: number
  /** What a foal's horn grows faster than a grown horse's, by belief. */
  readonly ahead: number
}

/** Degrees of freedom that the customary error of a distance is worth. */
const distanceWorth = 7

/** Standard deviation of one distance: (7 x 1.5^2 + sum RSS) / (7 + sum df), each wall about its own rate. */
function distanceSdOf(walls: readonly WallSums[]): number {
  let rss = distanceWorth * distanceSd ** 2
  let df = distanceWorth
  for (const wall of walls) {
    if (wall.sxx === 0 || wall.df < 2) continue
    rss += Math.max(0, wall.syy - wall.sxy ** 2 / wall.sxx)
    df += wall.df - 1
  }
  return Math.sqrt(rss / df)
}

/** Scale of the half-normal prior on how far the walls of one practice differ, mm a month. Our choice. */
const spreadScale = 1.6
const spreadStep = 0.1
const mostSpread = 5

/**
 * The mean rate has the literature's prior N(8.5, 2.1^2); walls differ about it by a spread that is averaged over
 * (integrated by steps of 0.1 mm), so that few walls do not look alike by chance.
 */
export function learnGrowOut(walls: readonly WallSums[]): LearnedGrowOut {
  const sd = distanceSdOf(walls)
  const seen = walls
    .filter(({ sxx }) => sxx > 0)
    .map(({ sxx, sxy, ahead }) => ({ off: sxy / sxx - ahead - adultPrior.mean, variance: sd ** 2 / sxx }))
  let [total, mean, square, meanVariance, spreadSquare] = [0, 0, 0, 0, 0]
  let top = Number.NEGATIVE_INFINITY
  const steps = Array.from({ length: Math.round(mostSpread / spreadStep) }, (_, i) => {
    const spread = (i + 0.5) * spreadStep
    let precision = 1 / adultPrior.sd ** 2
    let pull = 0
    let log = -((spread / spreadScale) ** 2)
    for (const { off, variance } of seen) {
      const v = variance + spread ** 2
      precision += 1 / v
      pull += off / v
      log -= Math.log(v) + off ** 2 / v
    }
    log += pull ** 2 / precision - Math.log(precision)
    top = Math.max(top, log / 2)
    return { spread, at: pull / precision, variance: 1 / precision, log: log / 2 }
  })
  for (const { spread, at, variance, log } of steps) {
    const weight = Math.exp(log - top)
    total += weight
    mean += weight * at
    square += weight * at ** 2
    meanVariance += weight * variance
    spreadSquare += weight * spread ** 2
  }
  mean /= total
  return {
    mean: adultPrior.mean + mean,
    meanSd: Math.sqrt(meanVariance / total + Math.max(0, square / total - mean ** 2)),
    spread: Math.sqrt(spreadSquare / total),
    distanceSd: sd,
  }
}

/** A rate, mm a month, and its variance. */
export interface Rate {
  readonly mean: number
  readonly variance: number
  readonly from: 'practice' | 'measured'
}

/** The rate of one wall: between what it shows itself and the practice's mean, each by how sure it is. */
export function rateOfWall({ sxx, sxy, ahead }: WallSums, of: LearnedGrowOut): Rate {
  const mean = of.mean + ahead
  const between = of.spread ** 2
  if (sxx === 0) return { mean, variance: between + of.meanSd ** 2, from: 'practice' }
  const own = of.distanceSd ** 2 / sxx
  const toMean = own / (own + between)
  return {
    mean: toMean * mean + (1 - toMean) * (sxy / sxx),
    variance: own * (1 - toMean) + (toMean * of.meanSd) ** 2,
    from: 'measured',
  }
}
