/** The rows of readings that a new visit asks for: what the case is about, and what the last visits read. */
import type { Horse, Practice, Stage, Visit } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { derivedMeasures, isMeasureId, type MeasureId, measureIds, measures } from '../../hoof/measures.ts'
import type { Formatter } from '../shared/format.ts'
import { isHabit } from './habit.ts'
import { lastReadings } from './last-values.ts'
import { blanks, remarked } from './lines.ts'

/** What a first visit asks for, of all feet, besides what the case is about. */
const firstMeasures: Readonly<Record<Stage, readonly MeasureId[]>> = {
  before: ['toe-length', 'toe-angle', 'heel-medial', 'heel-lateral'],
  after: ['toe-length'],
}

export function readingLines(
  horse: Horse,
  past: readonly Visit[],
  { feetOrder }: Practice,
  format: Formatter,
): readonly string[] {
  const { starter: w } = format.words
  const told = new Set<MeasureId>()
  const rows = (stage: Stage) =>
    askedAt(stage, horse, past).map(({ measure, of }) => {
      const last = told.has(measure) ? null : lastReadings(past, measure, feetOrder, format)
      told.add(measure)
      return remarked(`  ${measures[measure].name}: ${blanks(of, feetOrder)}`, last)
    })
  const [before, after] = [rows('before'), rows('after')]
  return [
    ...(before.length === 0 ? [] : [remarked('before:', w.before(feetOrder.join(' '))), ...before]),
    ...(after.length === 0 ? [] : [remarked('after:', w.after), ...after]),
  ]
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
