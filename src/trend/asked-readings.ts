/** The readings that a new visit asks for: what the case is about, and what the last visits read. */
import type { Horse, Stage, Visit } from '../casebook/model.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { derivedMeasures, isMeasureId, type MeasureId, measureIds } from '../hoof/measures.ts'
import { isHabit } from './habit.ts'

/** What a first visit asks for, of all feet, besides what the case is about. */
const firstMeasures: Readonly<Record<Stage, readonly MeasureId[]>> = {
  before: ['toe-length', 'toe-angle', 'heel-medial', 'heel-lateral'],
  after: ['toe-length'],
}

export interface AskedRow {
  readonly measure: MeasureId
  readonly of: readonly Foot[]
}

/** The measures asked for at a stage, each with its feet. */
export const askedAt = (stage: Stage, horse: Horse, past: readonly Visit[]): readonly AskedRow[] =>
  measureIds.flatMap((measure) => {
    const of = feet.filter(
      (foot) =>
        isUsual(stage, past, measure, foot) || (stage === 'before' && isProblem(horse, measure, foot)),
    )
    return of.length === 0 ? [] : [{ measure, of }]
  })

function isUsual(stage: Stage, past: readonly Visit[], measure: MeasureId, foot: Foot): boolean {
  if (past.length === 0) return firstMeasures[stage].includes(measure)
  return isHabit(past, ({ readings }) =>
    readings.some((one) => one.stage === stage && one.measure === measure && one.foot === foot),
  )
}

/** Whether the case is about this measure of the foot, or about one that is worked out from it. */
const isProblem = ({ problems }: Horse, measure: MeasureId, foot: Foot): boolean =>
  problems.some(({ feet: of, about }) => {
    if (about.kind !== 'measure' || !of.includes(foot)) return false
    return isMeasureId(about.measure)
      ? about.measure === measure
      : derivedMeasures[about.measure].parts.includes(measure)
  })
