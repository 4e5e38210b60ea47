/** What the engine says of the course of one measure at one foot, or at all feet together. */
import type { Stage } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { Family } from './column.ts'
import type { FootOrAll } from './model/course.ts'

/** Which way it goes. Toward or away from a target that is not reached; rising or falling where there is none, or inside it. */
export const verdicts = [
  'improving',
  'worsening',
  'rising',
  'falling',
  'steady',
  'not worsening',
  'not improving',
  'too early to tell',
] as const
export type Verdict = (typeof verdicts)[number]

/** Verdict and position in one word, for where one word stands: what is reached or held comes before the way. */
export type Standing = Verdict | 'on target' | 'held'

export const standingOf = ({ position, verdict }: Pick<Trend, 'position' | 'verdict'>): Standing =>
  position === 'on target' || position === 'held' ? position : verdict

/**
 * Where the level lies: in the target with 80 % at the least, with 20 % at the most, or in between. `held`: not called
 * on target while a caution that holds the plan stands over the foot.
 */
export type Position = 'on target' | 'near target' | 'off target' | 'held' | 'no target'

export interface Interval {
  readonly low: number
  readonly high: number
}

/** A reading of the course. */
export interface TrendReading {
  readonly visit: string
  readonly date: PlainDate
  readonly stage: Stage
  readonly value: number
}

export interface Trend<F extends FootOrAll = Foot> {
  readonly foot: F
  readonly measure: AnyMeasureId
  /** Stage of the readings whose level is followed; those of the other stage tell of growth as well. */
  readonly stage: Stage
  readonly family: Family
  /** Readings used, of both stages. */
  readonly n: number
  /** The readings used of `stage`, oldest first. */
  readonly points: readonly TrendReading[]
  /** Readings that no error explains; they are not used. */
  readonly leftOut: readonly TrendReading[]
  /** First and last of `points`. */
  readonly first: TrendReading
  readonly last: TrendReading
  /** last - first. */
  readonly change: number
  /** Between two readings of `stage`: a smaller difference is within error. */
  readonly smallestRealChange: number
  /** Smallest change that matters in practice. */
  readonly matters: number
  /** Null with fewer than two readings, or all of one day. */
  readonly fit: TrendFit | null
  readonly target: Band | null
  /** Who set the band: the practitioner's target or the published or customary default. */
  readonly targetFrom: 'practitioner' | 'default' | null
  readonly verdict: Verdict
  readonly position: Position
  /** How often a level that does not move would seem to move as much, both ways; 1 where there is no verdict yet. */
  readonly chance: number
  /** Whether it is among those of the horse that clearly move, at a false discovery rate of 10 %. */
  readonly isClear: boolean
  readonly forecast: Forecast | null
  readonly pace: PaceChange | null
}

/** A line over time since `from`, with its errors. */
export interface TrendFit {
  /** Day of time 0. */
  readonly from: PlainDate
  /** Level at time 0, and variances and covariance of level and slope; months. */
  readonly level: number
  readonly levelVariance: number
  readonly covariance: number
  readonly slopeVariance: number
  readonly slopePerMonth: number
  /** 95 % interval. */
  readonly slopeLow: number
  readonly slopeHigh: number
  /** Standard deviation of one reading of `stage` about the line, and its degrees of freedom. */
  readonly sd: number
  readonly freedom: number
  /** Student's t, 0.975. */
  readonly t: number
  /** Level at the last reading, and its 95 % interval. */
  readonly levelAtLast: number
  readonly levelAtLastInterval: Interval
}

/** When the line enters the band. */
export type Forecast =
  | {
      readonly kind: 'date'
      readonly edge: number
      readonly date: PlainDate
      readonly earliest: PlainDate
      /** Null when the later end lies past 18 months from today. */
      readonly latest: PlainDate | null
      /** Whether the date has come: it is to be looked at, and no longer ahead. */
      readonly isDue: boolean
    }
  /** First day of the first month in which it may be reached at all. */
  | { readonly kind: 'not before'; readonly edge: number; readonly month: PlainDate }
  | { readonly kind: 'no date yet'; readonly edge: number }
  | { readonly kind: 'more than 18 months'; readonly edge: number }
  | { readonly kind: 'moving away'; readonly edge: number }

/** The two halves of a course move at different paces (eight trims at the least, 99 %). */
export interface PaceChange {
  readonly sinceVisit: string
  readonly earlierPerMonth: number
  readonly laterPerMonth: number
}
