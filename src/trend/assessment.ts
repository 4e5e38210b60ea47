/**
 * What the engine says of one horse: everything a page or the export may show, and nothing rounded.
 * Lengths millimetres, angles degrees, rates per month of 30.4375 days, dates ISO 8601; null where there is no value.
 */
import type { Stage } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot, Pair } from '../hoof/feet.ts'
import type { AnyMeasureId, MeasureId } from '../hoof/measures.ts'

export interface Assessment {
  readonly id: string
  readonly name: string
  readonly asOf: PlainDate
  /** Visit ids, oldest first: the date, or date and letter for a second visit that day. */
  readonly visits: readonly string[]
  readonly readings: readonly AssessedReading[]
  readonly trends: readonly Trend[]
  readonly growth: readonly Growth[]
  readonly pairs: readonly PairComparison[]
  readonly growOut: readonly GrowOut[]
  readonly capsules: readonly Capsule[]
  readonly newGrowth: readonly NewGrowth[]
  readonly plans: readonly Plan[]
  readonly geometry: readonly FootGeometry[]
  readonly backtest: Backtest
  readonly checks: readonly Check[]
  readonly cautions: readonly Caution[]
  readonly nextVisit: NextVisit
}

export type Source = 'entered' | 'photo' | 'derived'

export interface AssessedReading {
  readonly visit: string
  readonly date: PlainDate
  readonly stage: Stage
  readonly foot: Foot
  readonly measure: AnyMeasureId
  readonly value: number
  readonly source: Source
  /** Standard deviation of this one reading: repeatability, propagation or landmark uncertainty. */
  readonly sd: number
}

export type Verdict =
  | 'on target'
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
  /** last - first. */
  readonly change: number
  readonly smallestRealChange: number
  /** Whether |change| reaches the smallest real change. */
  readonly changeIsReal: boolean
  /** Null with fewer than two readings or all on one day. */
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

/** Least squares with the repeatability prior of engine section 3, over the readings that verdict and forecast use. */
export interface TrendFit {
  /** First day of the readings used, as a day of the series; 0 unless the pace changed. */
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

/** Saw-tooth of one length at one foot. */
export interface Growth {
  readonly foot: Foot
  readonly measure: MeasureId
  readonly phases: readonly GrowthPhase[]
  readonly trims: readonly TrimStep[]
  /** Net growth left after wear, mm a month, 95 % interval; null when no phase was seen. */
  readonly ratePerMonth: number | null
  readonly low: number | null
  readonly high: number | null
  /** Days over which growth was seen. */
  readonly days: number
}

export interface GrowthPhase {
  readonly fromVisit: string
  readonly toVisit: string
  readonly days: number
  readonly gain: number
  readonly perMonth: number
}

export interface TrimStep {
  readonly visit: string
  readonly date: PlainDate
  /** after - before; negative when horn was taken. */
  readonly step: number
}

/** Left against right of a pair at one visit and stage: toe angle, toe length, width. */
export interface PairComparison {
  readonly visit: string
  readonly date: PlainDate
  readonly stage: Stage
  readonly pair: Pair
  readonly measure: MeasureId
  readonly left: number
  readonly right: number
  /** left - right. */
  readonly difference: number
  readonly smallestRealDifference: number
  readonly isReal: boolean
}

export interface GrowOut {
  readonly foot: Foot
  readonly feature: string
  readonly place: string
  readonly sightings: readonly {
    readonly visit: string
    readonly date: PlainDate
    readonly distance: number
  }[]
  /** Latest sighting, mm below the hairline. */
  readonly distance: number
  /** Where it should be on `asOf`. */
  readonly expectedNow: number
  /** Null when no wall length was read at that place. */
  readonly wallLength: number | null
  readonly ratePerMonth: number
  readonly rateLow: number
  readonly rateHigh: number
  /** Whether the rate comes from the prior alone or from sightings as well. */
  readonly rateFrom: 'prior' | 'measured'
  readonly date: PlainDate | null
  readonly earliest: PlainDate | null
  /** Null when the slow end of the rate never gets there within ten years. */
  readonly latest: PlainDate | null
  readonly state: 'growing down' | 'grown out' | 'wall length unknown'
}

/** When horn that leaves the hairline at `since` will have reached the ground, all the way round. */
export interface Capsule {
  readonly foot: Foot
  readonly place: 'toe' | 'quarter' | 'heel'
  readonly since: PlainDate
  readonly wallLength: number
  readonly ratePerMonth: number
  readonly rateLow: number
  readonly rateHigh: number
  /** Days for the whole length at the rate. */
  readonly renewalDays: number
  readonly date: PlainDate
  readonly earliest: PlainDate
  readonly latest: PlainDate | null
}

/** The steeper strip below the hairline: the angle that the whole wall can have when it has grown down. */
export interface NewGrowth {
  readonly foot: Foot
  readonly visit: string
  readonly newAngle: number
  readonly newLength: number
  readonly toeAngle: number | null
  readonly toeLength: number | null
  readonly date: PlainDate | null
  readonly earliest: PlainDate | null
  readonly latest: PlainDate | null
}

export interface Plan {
  readonly foot: Foot
  readonly measure: 'heel-balance' | 'toe-length'
  /** The side to lower: the higher heel, or the toe. */
  readonly side: 'medial' | 'lateral' | 'toe'
  readonly now: number
  readonly limit: number
  /** Excess over the limit at the latest reading, mm. */
  readonly excess: number
  /** Null while a caution of level `stop` stands or no sole is known; `held` says why. */
  readonly perTrim: number | null
  readonly trims: number | null
  readonly steps: readonly PlanStep[]
  readonly held: 'stop caution' | 'sole not said' | null
  /** The plan made at the first visit where one was needed, against what happened. */
  readonly kept: readonly PlanCheck[]
  readonly standing: 'on plan' | 'ahead' | 'behind' | 'just begun'
}

export interface PlanStep {
  readonly date: PlainDate
  readonly expected: number
}

export interface PlanCheck {
  readonly visit: string
  readonly date: PlainDate
  readonly expected: number
  readonly actual: number
  readonly standing: 'on plan' | 'ahead' | 'behind'
}

/** Side view of engine section 8, one visit and stage; x from toe ground toward the heel, y up, mm. */
export interface SideView {
  readonly visit: string
  readonly date: PlainDate
  readonly stage: Stage
  readonly toeAngle: number
  readonly toeLength: number
  readonly heelAngle: number
  readonly heelLength: number
  readonly bearingLength: number
  readonly toeHairline: readonly [number, number]
  readonly heelHairline: readonly [number, number]
  readonly heelGround: readonly [number, number]
  /** Hairline to ground, degrees, from the geometry. */
  readonly coronetAngle: number
  /** As measured, when it was. */
  readonly coronetMeasured: number | null
  /** 95 % limit for the gap between the two. */
  readonly closesWithin: number
  readonly closes: boolean | null
  /** True when heel angle, heel length or bearing length was not read and a stand-in was drawn. */
  readonly assumed: readonly MeasureId[]
}

export interface FootGeometry {
  readonly foot: Foot
  readonly first: SideView
  readonly latest: SideView
  /** What lowering the toe or the heel by 1 mm would do to the latest. */
  readonly perMillimetre: {
    readonly toe: { readonly angle: number; readonly length: number }
    readonly heel: { readonly angle: number; readonly length: number }
  }
}

export interface Backtest {
  readonly made: number
  readonly held: number
  readonly forecasts: readonly PastForecast[]
}

/** A forecast remade from the data up to `madeAt` alone, and what then happened. */
export interface PastForecast {
  readonly foot: Foot
  readonly measure: AnyMeasureId
  readonly madeAt: string
  readonly edge: number
  readonly date: PlainDate
  readonly earliest: PlainDate
  readonly latest: PlainDate | null
  /** The crossing that was seen lies between these two visits. */
  readonly seenAfter: PlainDate
  readonly seenBy: PlainDate | null
  readonly held: boolean
}

/** A remark on the record itself: sources that disagree, readings that do not close, a visit that pulls a line. */
export interface Check {
  readonly kind: CheckKind
  readonly foot: Foot | null
  readonly date: PlainDate | null
  readonly visit: string | null
  readonly facts: Facts
}

export type CheckKind =
  | 'entered against photo'
  | 'entered against derived'
  | 'readings do not close'
  | 'pulls the line'
  | 'pace has changed'
  | 'growth out of range'
  | 'toe length for weight'
  | 'heel gap'
  | 'load index'
  | 'frog ratio'
  | 'sheared heels'

/** Numbers and names that the words of a check or caution are made from. */
export type Facts = Readonly<Record<string, string | number | null>>

export type CautionLevel = 'stop' | 'vet' | 'mind'

export interface Caution {
  readonly code: CautionCode
  readonly level: CautionLevel
  readonly foot: Foot | null
  readonly date: PlainDate
  readonly visit: string
  readonly facts: Facts
  /** In force now: it comes from the latest visit that speaks of the matter. */
  readonly standing: boolean
}

export const cautionCodes = [
  'lameness-severe',
  'pulse-bounding',
  'pulse-both-fores',
  'drainage',
  'heat-with-lameness',
  'puncture',
  'sole-depth-critical',
  'unwilling-to-move',
  'lameness-moderate',
  'lameness-rising',
  'nail-in-white-line-tender',
  'crack-full-thickness',
  'thrush-severe',
  'sulcus-split-deep',
  'crest-high',
  'swelling',
  'proud-flesh',
  'finding-worsening',
  'sole-flat',
  'sole-thin',
  'toe-shortened-much',
  'heels-lowered-much',
  'toe-angle-changed-much',
  'pair-uneven-after-trim',
  'condition-high',
  'visit-overdue',
] as const
export type CautionCode = (typeof cautionCodes)[number]

export interface NextVisit {
  readonly last: PlainDate | null
  readonly due: PlainDate | null
  /** Whether the visit file said so, or the trim cycle. */
  readonly from: 'visit' | 'trim cycle' | null
  /** Days past due on `asOf`; negative when still ahead. */
  readonly overdueDays: number | null
}
