/** The saw-tooth of a length: what grew between visits, and what was taken at them, kept apart. */
import { daysPerMonth } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'
import type { Growth, GrowthPhase, TrimStep } from './assessment.ts'
import { type Columns, type Family, valueAt } from './columns.ts'
import { z975 } from './student.ts'

/**
 * Growth phases and trim steps of one length at one foot, from one family of readings.
 * A phase runs from the last reading of a visit (after, or before where nothing was trimmed) to the first of the very
 * next visit (before, or after where the arrival was not read). Where the next visit did not read the measure there
 * is no phase: a trim may lie in between. Two visits on one day make no phase either.
 *
 * Net growth: sum of gains / sum of days. Its 95 % interval takes the repeatability sd of a reading as known (normal
 * distribution); a reading that ends one phase and begins the next cancels and adds no error.
 * @param sd repeatability of one reading, mm
 * @returns null where there is neither a phase nor a trim step
 */
export function growthOf(
  columns: Columns,
  family: Family,
  foot: Foot,
  measure: MeasureId,
  sd: number,
): Growth | null {
  const before = columns.find(family, 'before', foot, measure)
  const after = columns.find(family, 'after', foot, measure)
  const phases: GrowthPhase[] = []
  const trims: TrimStep[] = []
  let gains = 0
  let days = 0
  let variances = 0
  /** The visit before this one, and whether its last reading has already ended a phase. */
  let left: { readonly value: number; readonly place: number; readonly ended: boolean } | null = null
  for (const [place, { id, date }] of columns.visits.entries()) {
    const arrival = valueAt(before, place)
    const leaving = valueAt(after, place)
    const first = arrival ?? leaving
    const last = leaving ?? arrival
    if (first === null || last === null) {
      left = null
      continue
    }
    const span: number = left === null ? 0 : (columns.days[place] ?? 0) - (columns.days[left.place] ?? 0)
    let ended = false
    if (left !== null && span > 0) {
      const gain = first - left.value
      phases.push({
        fromVisit: columns.visits[left.place]?.id ?? '',
        toVisit: id,
        days: span,
        gain,
        perMonth: (gain / span) * daysPerMonth,
        arrivalRead: arrival !== null,
      })
      gains += gain
      days += span
      variances += left.ended ? 0 : 2
      ended = first === last && (arrival === null || leaving === null)
    }
    if (arrival !== null && leaving !== null) trims.push({ visit: id, date, step: leaving - arrival })
    left = { value: last, place, ended }
  }
  if (phases.length === 0 && trims.length === 0) return null
  const rate = days === 0 ? null : (gains / days) * daysPerMonth
  const half = days === 0 ? 0 : ((z975 * sd * Math.sqrt(variances)) / days) * daysPerMonth
  return {
    foot,
    measure,
    phases,
    trims,
    ratePerMonth: rate,
    low: rate === null ? null : rate - half,
    high: rate === null ? null : rate + half,
    days,
  }
}
