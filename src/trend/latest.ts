/** What a wall or a foot measures now. */
import type { Foot } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'
import { type Columns, families, valueAt } from './columns.ts'

/**
 * The latest reading of a measure after a trim; where none was ever taken after one, the latest on arrival.
 * Gauge readings first. Null where it was never read.
 */
export function latestReading(columns: Columns, foot: Foot, measure: MeasureId): number | null {
  for (const family of families)
    for (const stage of ['after', 'before'] as const) {
      const column = columns.find(family, stage, foot, measure)
      if (column === null) continue
      for (let i = columns.visits.length - 1; i >= 0; i--) {
        const value = valueAt(column, i)
        if (value !== null) return value
      }
    }
  return null
}
