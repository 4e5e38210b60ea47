/** What the engine says of horn: how fast it grows, and when what is on it reaches the ground. */
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'

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
