/** The saw-tooth of a length: what grew between visits, and what was taken at them, kept apart. */
import { daysPerMonth } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'
import type { Growth, GrowthPhase, TrimStep } from './assessment.ts'
import { type Column, type Family, readingAt } from './column.ts'
import type { Columns } from './columns.ts'
import { lazily } from './lazily.ts'
import { z975 } from './student.ts'

/**
 * Growth phases and trim steps of one length at one foot, from one family of readings.
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
  const tooth = sawToothOf(columns, before, after)
  if (tooth.phases === 0 && tooth.trims === 0) return null
  const { gained, days } = tooth
  const variances = 2 * tooth.fresh
  const rate = days === 0 ? null : (gained / days) * daysPerMonth
  const half = days === 0 ? 0 : ((z975 * sd * Math.sqrt(variances)) / days) * daysPerMonth
  const phaseList = lazily(() => phasesOf(columns, before, tooth))
  const trimList = lazily(() => trimsOf(columns, tooth))
  return {
    foot,
    measure,
    get phases() {
      return phaseList()
    },
    get trims() {
      return trimList()
    },
    ratePerMonth: rate,
    low: rate === null ? null : rate - half,
    high: rate === null ? null : rate + half,
    days,
  }
}

interface SawTooth {
  /** Gain of the phase that ends at each visit; NaN where none does. */
  readonly gains: Float64Array
  /** Trim step at each visit; NaN where there is none. */
  readonly steps: Float64Array
  readonly phases: number
  readonly trims: number
  /** Sums over the phases. */
  readonly gained: number
  readonly days: number
  /** How many phases start from a reading that did not end the phase before. */
  readonly fresh: number
}

/**
 * A phase runs from the last reading of a visit (after, or before where nothing was trimmed) to the first of the very
 * next visit (before, or after where the arrival was not read). Where the next visit did not read the measure there
 * is no phase: a trim may lie in between. Two visits on one day make no phase either.
 */
function sawToothOf({ visits, days }: Columns, before: Column | null, after: Column | null): SawTooth {
  const gains = new Float64Array(visits.length).fill(Number.NaN)
  const steps = new Float64Array(visits.length).fill(Number.NaN)
  let phases = 0
  let trims = 0
  let gained = 0
  let grownDays = 0
  let fresh = 0
  /** Last reading of the visit before this one, NaN where it has none, and whether it has already ended a phase. */
  let left = Number.NaN
  let leftEnded = false
  for (let place = 0; place < visits.length; place++) {
    const arrival = readingAt(before, place)
    const leaving = readingAt(after, place)
    const arrived = !Number.isNaN(arrival)
    const trimmed = !Number.isNaN(leaving)
    const gain = (arrived ? arrival : leaving) - left
    const span = (days[place] ?? 0) - (days[place - 1] ?? 0)
    const grown = !Number.isNaN(gain) && span > 0
    if (grown) {
      gains[place] = gain
      phases++
      gained += gain
      grownDays += span
      if (!leftEnded) fresh++
    }
    if (arrived && trimmed) {
      steps[place] = leaving - arrival
      trims++
    }
    left = trimmed ? leaving : arrival
    leftEnded = grown && !(arrived && trimmed)
  }
  return { gains, steps, phases, trims, gained, days: grownDays, fresh }
}

function phasesOf(
  { visits, days }: Columns,
  before: Column | null,
  { gains }: SawTooth,
): readonly GrowthPhase[] {
  const phases: GrowthPhase[] = []
  for (let place = 1; place < visits.length; place++) {
    const gain = gains[place] ?? Number.NaN
    if (Number.isNaN(gain)) continue
    const span = (days[place] ?? 0) - (days[place - 1] ?? 0)
    phases.push({
      fromVisit: visits[place - 1]?.id ?? '',
      toVisit: visits[place]?.id ?? '',
      days: span,
      gain,
      perMonth: (gain / span) * daysPerMonth,
      arrivalRead: !Number.isNaN(readingAt(before, place)),
    })
  }
  return phases
}

function trimsOf({ visits }: Columns, { steps }: SawTooth): readonly TrimStep[] {
  const trims: TrimStep[] = []
  for (let place = 0; place < visits.length; place++) {
    const step = steps[place] ?? Number.NaN
    if (!Number.isNaN(step))
      trims.push({ visit: visits[place]?.id ?? '', date: visits[place]?.date ?? '', step })
  }
  return trims
}
