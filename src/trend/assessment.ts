/**
 * What the engine says of one horse: everything a page or the export may show, and nothing rounded.
 * Lengths millimetres, angles degrees, rates per month of 30.4375 days, dates ISO 8601; null where there is no value.
 */
import type { Stage } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot, Pair } from '../hoof/feet.ts'
import type { AnyMeasureId, MeasureId } from '../hoof/measures.ts'
import type { Check, NextVisit, Plan, Problem } from './assessed-care.ts'
import type { Capsule, GrowOut, Growth, NewGrowth } from './assessed-growth.ts'
import type { Trend } from './assessed-trend.ts'
import type { Caution } from './cautions/caution.ts'
import type { Learned } from './model/learned.ts'

export type * from './assessed-care.ts'
export type * from './assessed-growth.ts'
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
  /** Standard deviation of this one reading, as well as this practice reads and whoever took it. */
  readonly sd: number
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
