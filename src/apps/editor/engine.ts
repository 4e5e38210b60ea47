/** The few things that an editor asks of the engine about one horse: this file alone knows how the engine gives them. */
import type { Horse, Practice, Visit } from '../../casebook/model.ts'
import type { Band } from '../../hoof/bands.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { assess } from '../../trend/assess.ts'
import type { Assessment, GrowOut } from '../../trend/assessment.ts'
import { targetOf } from '../../trend/targets.ts'

export interface Numbers {
  /** Smallest change between two readings that is no measuring error; null for what was never read. */
  smallestRealChange(foot: Foot, measure: AnyMeasureId): number | null
  /** Null where none is set. A foot that waits for a vet has none, whatever is set. */
  target(foot: Foot, measure: AnyMeasureId): Band | null
  isHeld(foot: Foot): boolean
  readonly followed: readonly GrowOut[]
  /** For a new visit, which is written from all of it. */
  readonly assessment: Assessment
}

/** What the visits so far say on a day. */
export function numbersOf(horse: Horse, past: readonly Visit[], practice: Practice, day: PlainDate): Numbers {
  const assessment = assess({ ...horse, visits: past }, practice, day)
  const isHeld = (foot: Foot) => assessment.heldFeet.includes(foot)
  return {
    smallestRealChange: (foot, measure) =>
      assessment.trends.find((one) => one.foot === foot && one.measure === measure)?.smallestRealChange ??
      null,
    target: (foot, measure) => (isHeld(foot) ? null : targetOf(horse, foot, measure).band),
    isHeld,
    followed: assessment.growOut,
    assessment,
  }
}
