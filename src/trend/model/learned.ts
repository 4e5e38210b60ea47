/** What a practice has taught, as every horse's assessment takes it: few numbers, on a grid. */
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { Family } from '../columns.ts'
import type { FootOrAll } from './course.ts'
import type { Scatter } from './fit.ts'
import { allFeet, type LearnedScatter, learnScatter, singleFoot, variancesOf } from './learn.ts'
import { slopeScale } from './slopes.ts'

/** Of one measure from one family of sources, of single feet or of all together. */
export interface LearnedMeasure extends LearnedScatter {
  /** Standard deviation of the true slopes about 0, in smallest changes that matter a month. */
  readonly slopes: number
}

/** How fast horn grows down in this practice, mm a month. */
export interface LearnedGrowOut {
  /** Mean over its walls, and how surely it is known; of a grown horse. */
  readonly mean: number
  readonly meanSd: number
  /** Standard deviation of single walls about the mean. */
  readonly spread: number
  /** Of one distance from the hairline, mm. */
  readonly distanceSd: number
}

export interface Learned {
  readonly measures: Readonly<Record<string, LearnedMeasure>>
  readonly growOut: LearnedGrowOut
  /** By person, where the practice's people read unlike: a multiple of the standard deviation of one reading. */
  readonly people: Readonly<Record<string, number>>
}

export const learnedKey = (family: Family, measure: AnyMeasureId, foot: FootOrAll): string =>
  `${family} ${measure}${foot === 'all' ? ' all' : ''}`

/** What a key is of. */
export function learnedOfKey(key: string) {
  const [family, measure, all] = key.split(' ') as [Family, AnyMeasureId, string | undefined]
  return { family, measure, isAll: all === 'all' }
}

/**
 * Values that steer pages lie on a grid of a tenth, so that one more visit does not change the pages of every other
 * horse. Rounded to three figures, since the last digits of a logarithm differ between machines.
 */
export const onGrid = (value: number): number =>
  Number(Math.exp(Math.round(Math.log(value) * 10) / 10).toPrecision(3))

const tenths = (value: number): number => Math.round(value * 10) / 10 || 0

export const roundLearned = ({ e, u, w, worth, season, slopes }: LearnedMeasure): LearnedMeasure => ({
  e: onGrid(e),
  u: onGrid(u),
  w: onGrid(w),
  worth: Math.max(2, Math.round(worth)),
  season: { cos: tenths(season.cos), sin: tenths(season.sin) },
  // Below a fiftieth of what matters a month a slope is as good as none.
  slopes: onGrid(Math.max(0.02, slopes)),
})

/** What the literature alone says: of a measure that nobody in the practice has read yet. */
const untaught = (prior: typeof singleFoot): LearnedMeasure =>
  roundLearned({ ...learnScatter([], [], prior), slopes: slopeScale })

const untaughtFoot = untaught(singleFoot)
const untaughtFeet = untaught(allFeet)

export const learnedOf = ({ measures }: Learned, family: Family, measure: AnyMeasureId, foot: FootOrAll) =>
  measures[learnedKey(family, measure, foot)] ?? (foot === 'all' ? untaughtFeet : untaughtFoot)

/** How far readings scatter beside the practice's, by whoever took them: a multiple of its sd. Pictures tell of no hand. */
export const handOf = (people: Learned['people'], family: Family, by: string | null): number =>
  family === 'gauge' && by !== null ? (people[by] ?? 1) : 1

/** The scatter of a course whose readings repeat to `sd` in the literature. */
export const scatterFor = (learned: LearnedMeasure, sd: number): Scatter => ({
  variances: variancesOf(learned, sd),
  worth: learned.worth,
})
