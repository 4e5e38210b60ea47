/**
 * The last reading of a measure, by what is asked of it. A remark is about what was seen last, whatever the stage. A
 * length that horn has to grow down is the one that the trimmer leaves, which a later arrival does not change.
 */
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { Column } from './column.ts'
import { type Columns, families, valueAt } from './columns.ts'

/** A reading, with the place of its visit in the columns. */
export interface LastReading {
  readonly place: number
  readonly value: number
}

/** Of the latest visit that has one, after the trim before on arrival; gauge first. Null where it was never read. */
export function lastSeen(columns: Columns, foot: Foot, measure: AnyMeasureId): LastReading | null {
  for (const family of families) {
    const stages = [
      columns.find(family, 'after', foot, measure),
      columns.find(family, 'before', foot, measure),
    ]
    const last = lastOf(columns, stages)
    if (last !== null) return last
  }
  return null
}

/**
 * The latest after a trim; where none was ever taken after one, the latest on arrival. Gauge first. Null where it was
 * never read.
 */
export function lastLeft(columns: Columns, foot: Foot, measure: AnyMeasureId): number | null {
  for (const family of families)
    for (const stage of ['after', 'before'] as const) {
      const last = lastOf(columns, [columns.find(family, stage, foot, measure)])
      if (last !== null) return last.value
    }
  return null
}

/** Of the latest visit that any of the columns has; of one visit the first column counts. */
function lastOf({ visits }: Columns, columns: readonly (Column | null)[]): LastReading | null {
  if (columns.every((column) => column === null)) return null
  for (let place = visits.length - 1; place >= 0; place--)
    for (const column of columns) {
      const value = valueAt(column, place)
      if (value !== null) return { place, value }
    }
  return null
}
