/**
 * What the engine says of one horse: everything a page or the export may show, and nothing rounded.
 * Lengths millimetres, angles degrees, rates per month of 30.4375 days, dates ISO 8601; null where there is no value.
 */
import type { Stage } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot, Pair } from '../hoof/feet.ts'
import type { AnyMeasureId, MeasureId } from '../hoof/measures.ts'
import type { Check, NextVisit, Plan, Problem } from './assessed-care.ts'
import type { Trend } from './assessed-trend.ts'
import type { Caution } from './cautions/caution.ts'

import type { Learned } from './model/learned.ts'

export type * from './assessed-care.ts'
export type * from './assessed-trend.ts'
export { standingOf, verdicts } from './assessed-trend.ts'
export type * from './cautions/caution.ts'
export { withoutCovered } from './cautions/caution.ts'
export { openFindings } from './cautions/record.ts'
export type { CautionLevel } from './cautions/sign.ts'
export type { CautionCode, FactsOf } from './cautions/signs.ts'
export { cautionCodes } from './cautions/signs.ts'

export interface Assessment {
  readonly id: string
  readonly name: string
  readonly asOf: PlainDate
  /** What the practice has taught, under which all was judged. */
  readonly learned: Learned
  /** Visit ids, oldest first: the date, or date and letter for a second visit that day. */
  readonly visits: readonly string[]
  readonly readings: readonly AssessedReading[]
  readonly trends: readonly Trend[]
  /** The same of all feet together. */
  readonly together: readonly Trend<'all'>[]
  readonly growth: readonly Growth[]
  readonly pairs: readonly PairComparison[]
  readonly growOut: readonly GrowOut[]
  readonly capsules: readonly Capsule[]
  readonly newGrowth: readonly NewGrowth[]
  /** What the case is about, most important first. */
  readonly problems: readonly Problem[]
  readonly plans: readonly Plan[]
  readonly geometry: readonly FootGeometry[]
  readonly backtest: Backtest
  readonly checks: readonly Check[]
  readonly cautions: readonly Caution[]
  /** Feet that have no plan, no amount and no target while a caution that holds the plan stands over them. */
  readonly heldFeet: readonly Foot[]
  readonly nextVisit: NextVisit
}

type Source = 'entered' | 'photo' | 'derived'

export interface AssessedReading {
  readonly visit: string
  readonly date: PlainDate
  readonly stage: Stage
  readonly foot: Foot
  readonly measure: AnyMeasureId
  readonly value: number
  readonly source: Source
  /** Standard deviation of this one reading, as well as this practice reads. */
  readonly sd: number
}

/** Growth of one wall at one foot. */
export interface Growth {
  readonly foot: Foot
  readonly measure: MeasureId
  readonly phases: readonly GrowthPhase[]
  readonly trims: readonly TrimStep[]
  /** Growth left after wear, mm a month, 95 % interval; null where it is hidden. */
  readonly ratePerMonth: number | null
  readonly low: number | null
  readonly high: number | null
  /** Days over which growth was seen. */
  readonly days: number
  /** Why no rate can be told: trims hide it where a wall is read at one stage alone. */
  readonly hidden: 'not read on arrival' | 'not read after the trim' | 'too few readings' | null
}

export interface GrowthPhase {
  readonly fromVisit: string
  readonly toVisit: string
  readonly days: number
  readonly gain: number
  readonly perMonth: number
  /** False where the later visit has no arrival reading: a trim may hide in the gain. */
  readonly arrivalRead: boolean
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
  /** Mean of the last three after a trim; null when no wall length was read at that place. */
  readonly wallLength: number | null
  readonly ratePerMonth: number
  readonly rateLow: number
  readonly rateHigh: number
  /** Whether the rate is the practice's (the literature's, where nothing was followed yet) or this wall's own as well. */
  readonly rateFrom: 'practice' | 'measured'
  readonly date: PlainDate | null
  readonly earliest: PlainDate | null
  /** Null when the slow end of the rate never gets there within ten years. */
  readonly latest: PlainDate | null
  /** `due` from the day itself on; `grown out` only when the whole range is past. */
  readonly state: 'growing down' | 'due' | 'grown out' | 'wall length unknown'
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
  /** Forecasts with a range closed at both ends that have come due, and those of them that held. */
  readonly made: number
  readonly held: number
  /** Those whose range is open at the later end. */
  readonly open: number
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
