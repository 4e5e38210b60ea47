/** Every reading of the record as a flat list, for tables and the export. */
import type { AssessedReading } from './assessment.ts'
import { type Columns, sourceOf } from './columns.ts'

/** By visit, then stage, gauge before photo, foot and measure in the usual order. */
export function readingsOf(columns: Columns): readonly AssessedReading[] {
  const ordered = ['before', 'after'].flatMap((stage) =>
    columns.all.filter((column) => column.stage === stage),
  )
  const readings: AssessedReading[] = []
  for (const [i, { id, date }] of columns.visits.entries())
    for (const column of ordered) {
      const value = column.values[i] ?? Number.NaN
      if (Number.isNaN(value)) continue
      readings.push({
        visit: id,
        date,
        stage: column.stage,
        foot: column.foot,
        measure: column.measure,
        value,
        source: sourceOf(column),
        sd: column.sds[i] ?? Number.NaN,
      })
    }
  return readings
}
