/** What the engine says about the work: plans, remarks on the record, cautions. */
import type { Stage } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { GrowOut } from './assessed-growth.ts'
import type { Trend } from './assessed-trend.ts'

export interface Plan {
  readonly foot: Foot
  readonly measure: 'heel-balance' | 'toe-length'
  /** The side to lower: the higher heel, or the toe. */
  readonly side: 'medial' | 'lateral' | 'toe'
  readonly now: number
  readonly limit: number
  /** Excess over the limit at the latest reading, mm. */
  readonly excess: number
  /** Most by which it may change at one trim, mm. */
  readonly perTrim: number
  /** Where the amount per trim comes from. */
  readonly perTrimFrom: 'trim limits' | 'flat sole' | 'cupped sole' | 'sole not said, taken as flat'
  readonly trims: number
  readonly steps: readonly PlanStep[]
  /** Day of the reading that it starts from. */
  readonly readOn: PlainDate
  /** The visit after the last trim: what was brought level is seen to be level when it arrives so. */
  readonly shownOn: PlainDate | null
  /** What the next trim takes off the wall in all: the toe, or the higher heel. */
  readonly next: OffTheWall
  /** The plan made at the first visit where one was needed, against what happened. */
  readonly kept: readonly PlanCheck[]
  readonly standing: 'on plan' | 'ahead' | 'behind' | 'just begun'
}

/** One thing that the case is about, at one foot. */
export interface Problem {
  /** Null where free words name no foot. */
  readonly foot: Foot | null
  /** As the practitioner wrote it; null where the engine chose it. Private: no page for others may hold it. */
  readonly text: string | null
  readonly from: 'written' | 'chosen'
  readonly about: ProblemAbout
  /** The day from which it is no problem any more. */
  readonly closedOn: PlainDate | null
}

export type ProblemAbout =
  | { readonly kind: 'measure'; readonly measure: AnyMeasureId; readonly trend: Trend | null }
  | {
      readonly kind: 'finding'
      readonly what: string
      readonly place: string | null
      /** Oldest first. */
      readonly course: readonly GradeSeen[]
    }
  | {
      readonly kind: 'grow-out'
      readonly what: string
      readonly place: string | null
      readonly growOut: readonly GrowOut[]
    }
  | { readonly kind: 'words' }

export interface GradeSeen {
  readonly visit: string
  readonly date: PlainDate
  readonly grade: 0 | 1 | 2 | 3
}

/** Amounts in mm. */
export interface OffTheWall {
  /** What should have grown since the reading by the day of the trim. */
  readonly grown: number
  /** Whether this wall has shown its own growth, or the rate is the published one. */
  readonly grownFrom: 'measured' | 'published'
  /** What is taken beyond that. */
  readonly step: number
  readonly total: number
  /** The amount at one trim from which care is asked for, where the total passes it; else null. */
  readonly careFrom: number | null
  /** What should be left: the toe's length, or the difference between the heels. */
  readonly leaves: number
}

export interface PlanStep {
  readonly date: PlainDate
  readonly expected: number
}

export interface PlanCheck {
  readonly visit: string
  readonly date: PlainDate
  readonly expected: number
  /** Level of the line at the visit, and its 95 % interval. */
  readonly actual: number
  readonly low: number
  readonly high: number
  readonly standing: 'on plan' | 'ahead' | 'behind'
}

/** A remark on the record itself: sources that disagree, readings that do not close, a reading left out. */
export type Check = { readonly [Kind in CheckKind]: CheckOf<Kind> }[CheckKind]

export interface CheckOf<Kind extends CheckKind> {
  readonly kind: Kind
  readonly foot: Foot | null
  readonly date: PlainDate | null
  readonly visit: string | null
  readonly facts: CheckFacts[Kind]
}

export type CheckKind = keyof CheckFacts

/** A value that a published or customary limit speaks of. */
type Beyond = { readonly value: number; readonly limit: number }

/** What each kind of remark says; limits come with the facts. Lengths mm, angles degrees, rates a month. */
export interface CheckFacts {
  readonly 'entered against photo': {
    readonly measure: AnyMeasureId
    readonly stage: Stage
    readonly entered: number
    readonly photo: number
    readonly difference: number
    /** 95 % limit for the difference. */
    readonly within: number
    readonly explained: boolean
  }
  readonly 'readings do not close': {
    readonly stage: Stage
    readonly computed: number
    readonly measured: number
    readonly within: number
  }
  /** A reading that no error explains, and so is not used. */
  readonly 'left out': {
    readonly measure: AnyMeasureId
    readonly stage: Stage
    readonly value: number
  }
  readonly 'pace has changed': {
    readonly measure: AnyMeasureId
    readonly earlierPerMonth: number
    readonly laterPerMonth: number
  }
  readonly 'growth out of range': {
    readonly measure: AnyMeasureId
    readonly ratePerMonth: number
    readonly low: number
    readonly high: number
    readonly slowest: number
    readonly fastest: number
  }
  readonly 'toe length for weight': {
    readonly value: number
    readonly guide: number
    readonly difference: number
    readonly weight: number | null
  }
  readonly 'heel gap': Beyond
  readonly 'load index': Beyond
  readonly 'frog ratio': Beyond
  readonly 'sheared heels': Beyond
  readonly 'broken axis': Beyond
  readonly 'pair mismatch': Beyond
}

/** Numbers and names that the words of a caution are made from. */
export type Facts = Readonly<Record<string, string | number | null>>

export interface NextVisit {
  readonly last: PlainDate | null
  readonly due: PlainDate | null
  /** Whether the visit file said so, or the trim cycle. */
  readonly from: 'visit' | 'trim cycle' | null
  /** Days past due on `asOf`; negative when still ahead. */
  readonly overdueDays: number | null
}
