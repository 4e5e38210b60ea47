/** What the engine says about the work: plans, remarks on the record, cautions. */
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'

export interface Plan {
  readonly foot: Foot
  readonly measure: 'heel-balance' | 'toe-length'
  /** The side to lower: the higher heel, or the toe. */
  readonly side: 'medial' | 'lateral' | 'toe'
  readonly now: number
  readonly limit: number
  /** Excess over the limit at the latest reading, mm. */
  readonly excess: number
  /** Most that may be taken at one trim, mm; null while a caution of level `stop` stands. */
  readonly perTrim: number | null
  /** Where the amount per trim comes from. */
  readonly perTrimFrom: 'trim limits' | 'flat sole' | 'cupped sole' | 'sole not said, taken as flat'
  readonly trims: number | null
  readonly steps: readonly PlanStep[]
  /** Day of the reading that it starts from. */
  readonly readOn: PlainDate
  /** The visit after the last trim: what was brought level is seen to be level when it arrives so. */
  readonly shownOn: PlainDate | null
  readonly held: 'stop caution' | null
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
  | 'readings do not close'
  | 'pulls the line'
  | 'pace has changed'
  | 'growth out of range'
  | 'toe length for weight'
  | 'heel gap'
  | 'load index'
  | 'frog ratio'
  | 'sheared heels'
  | 'broken axis'
  | 'pair mismatch'

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
