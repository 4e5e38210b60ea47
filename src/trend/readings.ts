/** Every reading of the record as a flat list, for tables and the export. */
import type { AssessedReading } from './assessment.ts'
import { readingAt } from './column.ts'
import { type Columns, sourceOf, stages } from './columns.ts'
import { handOf, type Learned, learnedOf } from './model/learned.ts'

/** By visit, then stage, gauge before photo, foot and measure in the usual order. */
export function readingsOf({ all, visits }: Columns, learned: Learned): readonly AssessedReading[] {
  const ordered = stages.flatMap((stage) => all.filter((column) => column.stage === stage))
  const sources = ordered.map(sourceOf)
  const noise = ordered.map(({ family, measure, foot }) => learnedOf(learned, family, measure, foot).e)
  const readings: AssessedReading[] = []
  for (let i = 0; i < visits.length; i++) {
    const visit = visits[i]
    if (visit === undefined) continue
    for (let k = 0; k < ordered.length; k++) {
      const column = ordered[k]
      const source = sources[k]
      if (column === undefined || source === undefined) continue
      const value = readingAt(column, i)
      if (Number.isNaN(value)) continue
      readings.push({
        visit: visit.id,
        date: visit.date,
        stage: column.stage,
        foot: column.foot,
        measure: column.measure,
        value,
        source,
        sd: (column.sds[i] ?? Number.NaN) * (noise[k] ?? 1) * handOf(learned.people, column.family, visit.by),
      })
    }
  }
  return readings
}
