/** What the engine says of the course of one measure at one foot. */
import type { Stage } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'

/** `held`: on target by its readings, and not called so while a caution that holds the plan stands over the foot. */
export type Verdict =
  | 'on target'
  | 'held'
  | 'improving'
  | 'worsening'
  | 'steady'
  | 'rising'
  | 'falling'
  | 'too early to tell'

export interface Interval {
  readonly low: number
  readonly high: number
}

/** A point of a series. `day` counts from the series' first reading. */
export interface SeriesPoint {
  readonly visit: string
  readonly date: PlainDate
  readonly day: number
  readonly value: number
}

export interface Trend {
  readonly foot: Foot
  readonly measure: AnyMeasureId
  readonly stage: Stage
  readonly source: 'gauge' | 'photo'
  readonly n: number
  readonly points: readonly SeriesPoint[]
  readonly first: number
  readonly last: number
  /** last - first; 0 for a single reading, which the export gives as null. */
  readonly change: number
  /** From the repeatability alone where no line can be fitted. */
  readonly smallestRealChange: number
  /** Whether |change| reaches the smallest real change. */
  readonly changeIsReal: boolean
  /** Over all readings of the series; null with fewer than two readings or all on one day. */
  readonly whole: TrendFit | null
  /** What verdict and forecast use: the whole, or the last four readings where the pace has changed. */
  readonly fit: TrendFit | null
  readonly target: Band | null
  /** Who set the band: the practitioner's target or the published or customary default. */
  readonly targetFrom: 'practitioner' | 'default' | null
  readonly verdict: Verdict
  /** What would settle a verdict that is too early; null otherwise. */
  readonly wouldSettle: WouldSettle | null
  readonly forecast: Forecast | null
  readonly pace: PaceChange | null
  readonly secondOpinion: SecondOpinion | null
}

/** Least squares with the repeatability prior. Slopes named `perMonth`, `slopeLow` and `slopeHigh` are per month. */
export interface TrendFit {
  /** First day of the readings used, as a day of the series; 0 for the whole series. */
  readonly fromDay: number
  readonly n: number
  /** Level at day 0 of the series, and change a day. */
  readonly level: number
  readonly slope: number
  readonly meanDay: number
  readonly sxx: number
  readonly s: number
  readonly nu: number
  /** Student's t, 0.975, nu. */
  readonly t: number
  readonly slopePerMonth: number
  readonly slopeLow: number
  readonly slopeHigh: number
  readonly theilSenPerMonth: number
  /** Fitted level at the last reading, and its interval. */
  readonly levelAtLast: number
  readonly levelAtLastInterval: Interval
}

export interface WouldSettle {
  readonly readings: number
  /** How many further visits at the trim cycle would make the interval tight enough; null if more than six. */
  readonly furtherVisits: number | null
  readonly date: PlainDate | null
}

/** When the fitted line enters the band. */
export type Forecast =
  | {
      readonly kind: 'date'
      readonly edge: number
      readonly date: PlainDate
      readonly earliest: PlainDate
      /** Null when the later end lies past 18 months or is unbounded. */
      readonly latest: PlainDate | null
    }
  | { readonly kind: 'no date yet'; readonly edge: number }
  | { readonly kind: 'more than 18 months'; readonly edge: number }
  | { readonly kind: 'moving away'; readonly edge: number }

/** The last four readings move at another pace than the whole series (n >= 6, intervals apart). */
export interface PaceChange {
  readonly sinceVisit: string
  readonly wholePerMonth: number
  readonly wholeInterval: Interval
  readonly recentPerMonth: number
  readonly recentInterval: Interval
}

/** Set only where Theil-Sen and least squares clearly disagree. */
export interface SecondOpinion {
  readonly theilSenPerMonth: number
  readonly leastSquaresPerMonth: number
  /** The visit that pulls the line most. */
  readonly visit: string
}
