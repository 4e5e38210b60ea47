/** What rules on readings look at: the columns of a measure at each foot, and what one visit says in them. */
import { type Foot, feet } from '../../hoof/feet.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { Facts } from '../assessed-care.ts'
import { type Column, readingAt } from '../column.ts'
import { type Columns, families } from '../columns.ts'
import { type CareRecord, type Look, nothing } from './rule.ts'

/** The columns of a measure at a foot, from one family. */
interface BothStages {
  readonly before: Column | null
  readonly after: Column | null
}

/** Gauge first; the families that read the measure. */
const readAt = ({ find }: Columns, foot: Foot, measure: MeasureId): readonly BothStages[] =>
  families
    .map((family) => ({
      before: find(family, 'before', foot, measure),
      after: find(family, 'after', foot, measure),
    }))
    .filter(({ before, after }) => before !== null || after !== null)

/** The feet at which any of the measures was ever read, each with its columns in order of the measures. */
export const feetRead = (columns: Columns, measures: readonly MeasureId[]) =>
  feet
    .map((foot) => ({ foot, columns: measures.map((measure) => readAt(columns, foot, measure)) }))
    .filter(({ columns: read }) => read.some(({ length }) => length > 0))

/** Lowest reading of a measure at the visit, over its stages, gauge first; NaN where not read. */
export function lowest(read: readonly BothStages[], place: number): number {
  for (const { before, after } of read) {
    const arrival = readingAt(before, place)
    const leaving = readingAt(after, place)
    if (Number.isNaN(arrival) && Number.isNaN(leaving)) continue
    return Number.isNaN(arrival) ? leaving : Number.isNaN(leaving) ? arrival : Math.min(arrival, leaving)
  }
  return Number.NaN
}

/** after - before at one visit, both read in the same way; NaN where they were not. */
export function trimStep(read: readonly BothStages[], place: number): number {
  for (const { before, after } of read) {
    const step = readingAt(after, place) - readingAt(before, place)
    if (!Number.isNaN(step)) return step
  }
  return Number.NaN
}

/** Speaks of each foot at which one measure gives a value, be it a reading or a step. */
export const valueRule =
  (
    measure: MeasureId,
    amountOf: (read: readonly BothStages[], place: number) => number,
    found: (value: number) => Facts | null,
  ) =>
  ({ columns }: CareRecord): Look | null => {
    const read = feetRead(columns, [measure])
    if (read.length === 0) return null
    return (at, say) => {
      for (const { foot, columns } of read) {
        const value = amountOf(columns[0] ?? [], at.place)
        if (Number.isNaN(value)) continue
        const facts = found(value)
        say(at, foot, facts === null ? nothing : [facts], measure)
      }
    }
  }
