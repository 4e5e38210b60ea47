/** The few things that an editor asks of the engine about one horse: this file alone knows how the engine gives them. */
import type { Horse, Practice, Stage, Visit } from '../../casebook/model.ts'
import type { Band } from '../../hoof/bands.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import { type AnyMeasureId, isMeasureId, measures } from '../../hoof/measures.ts'
import { assess } from '../../trend/assess.ts'
import type { Assessment, GrowOut } from '../../trend/assessment.ts'
import { smallestRealChangeOf } from '../../trend/fit.ts'
import { targetOf } from '../../trend/targets.ts'

export interface Numbers {
  /** Smallest change between two readings that is no measuring error; null for what is worked out and never was. */
  smallestRealChange(foot: Foot, measure: AnyMeasureId, stage: Stage | null): number | null
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
    smallestRealChange: (foot, measure, stage) => {
      const trends = assessment.trends.filter(
        (one) => one.foot === foot && one.measure === measure && one.source === 'gauge',
      )
      const trend = trends.find((one) => one.stage === stage) ?? trends[0]
      if (trend) return trend.smallestRealChange
      return isMeasureId(measure) ? smallestRealChangeOf(measures[measure].sd) : null
    },
    target: (foot, measure) => (isHeld(foot) ? null : targetOf(horse, foot, measure).band),
    isHeld,
    followed: assessment.growOut,
    assessment,
  }
}
