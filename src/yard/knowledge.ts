/** What the form shows of a horse before anything is written. */
import type { Horse, Practice, Stage } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId, MeasureId } from '../hoof/measures.ts'
import type { LengthUnit } from '../hoof/units.ts'
import type { Assessment, GrowOut, Plan } from '../trend/assessment.ts'

export interface HorseKnowledge {
  readonly units: LengthUnit
  /** The order in which the practice goes round the horse. */
  readonly feetOrder: readonly Foot[]
  /** Of each measure, foot and stage the last reading, in millimetres or degrees. */
  readonly last: readonly LastReading[]
  /** What this horse is read for, the usual first; then every other measure. */
  readonly measures: readonly {
    readonly measure: MeasureId
    readonly isUsual: boolean
    readonly stages: readonly Stage[]
  }[]
  /** Not said to be gone, the worst first. */
  readonly openFindings: readonly OpenFinding[]
  /** Followed down the wall, with `expectedNow`: not those that have grown out. */
  readonly features: readonly GrowOut[]
  /** What the next trim may take, by foot; none where a caution holds the foot. */
  readonly plans: readonly Plan[]
  readonly heldFeet: readonly Foot[]
  readonly lastCare: readonly string[]
  readonly lastVisit: PlainDate | null
  /** Days between visits: this horse's own where it has several, else the practice's cycle. */
  readonly usualDays: number
  readonly surfaces: readonly string[]
}

export interface LastReading {
  readonly measure: MeasureId
  readonly foot: Foot
  readonly stage: Stage
  readonly value: number
  readonly date: PlainDate
}

export interface OpenFinding {
  readonly foot: Foot
  readonly what: string
  readonly place: string
  readonly grade: 1 | 2 | 3
  readonly since: PlainDate
  readonly date: PlainDate
}

export function knowledgeOf(_horse: Horse, _practice: Practice, _assessment: Assessment): HorseKnowledge {
  throw new Error('not written yet')
}

/** The cell that is asked next: along the row of the measure, then the horse's next usual one. Null where all are read. */
export function nextCell(
  _knowledge: Pick<HorseKnowledge, 'measures' | 'feetOrder'>,
  _readings: readonly { readonly stage: Stage; readonly foot: Foot; readonly measure: string }[],
  _at: { readonly stage: Stage; readonly foot: Foot; readonly measure: AnyMeasureId } | null,
): { readonly stage: Stage; readonly foot: Foot; readonly measure: MeasureId } | null {
  throw new Error('not written yet')
}
