/** Which readings make the one trend of a measure at a foot. */
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import { type Column, type Columns, type Family, families } from './columns.ts'

/**
 * The column that the trend is made of: gauge readings if a stage of them has two, else photo readings if a stage of
 * them has two, else whichever there are, gauge first. Within a family: `after` where it has two readings, else
 * `before`; where there is nothing before, the single reading after.
 */
export function columnForTrend(columns: Columns, foot: Foot, measure: AnyMeasureId): Column | null {
  const candidates = families.flatMap((family: Family) => [
    columns.find(family, 'after', foot, measure),
    columns.find(family, 'before', foot, measure),
  ])
  for (const candidate of candidates) if (candidate !== null && candidate.n >= 2) return candidate
  for (const place of byLikeness) {
    const candidate = candidates[place] ?? null
    if (candidate !== null) return candidate
  }
  return null
}

/** Gauge before, gauge after, photo before, photo after, as places in the candidates above. */
const byLikeness = [1, 0, 3, 2]
