/** What a wall grew between visits, and what was taken at them, kept apart. */
import { daysPerMonth } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import { isMeasureId } from '../hoof/measures.ts'
import { isWallLength } from '../hoof/walls.ts'
import type { Growth, GrowthPhase, TrimStep } from './assessment.ts'
import { type Column, readingAt } from './column.ts'
import type { Columns } from './columns.ts'
import { lazily } from './lazily.ts'
import { growthSd } from './model/fit.ts'
import { t975 } from './student.ts'
import type { Judged } from './trends.ts'

/**
 * Growth of a wall, as the course's fit has it, with its 95 % interval; hidden where the wall was read at one stage
 * alone, since trims then hide it. With it every single phase and trim step, as they were read. Null for what is no
 * wall, and where there is nothing to tell.
 */
export function growthOf(columns: Columns, { foot, course, used, fit }: Judged<Foot>): Growth | null {
  const { measure, family } = course
  if (!isMeasureId(measure) || !isWallLength(measure)) return null
  const before = columns.find(family, 'before', foot, measure)
  const after = columns.find(family, 'after', foot, measure)
  const months = used.back.reduce((sum, y, i) => (Number.isNaN(y) ? sum : sum + (used.gaps[i] ?? 0)), 0)
  const phases = lazily(() => phasesOf(columns, before, after))
  const trims = lazily(() => trimsOf(columns, before, after))
  const hidden = hiddenBy(before, after, months)
  if (hidden === 'too few readings' && trims().length === 0) return null
  const half = fit === null ? 0 : t975(fit.nu) * growthSd(fit)
  const told = hidden === null && fit !== null ? fit.growth : null
  return {
    foot,
    measure,
    get phases() {
      return phases()
    },
    get trims() {
      return trims()
    },
    ratePerMonth: told,
    low: told === null ? null : told - half,
    high: told === null ? null : told + half,
    days: Math.round(months * daysPerMonth),
    hidden: hidden ?? (fit === null ? 'too few readings' : null),
  }
}

function hiddenBy(before: Column | null, after: Column | null, months: number): Growth['hidden'] {
  if (months > 0) return null
  if (before === null && (after?.n ?? 0) > 1) return 'not read on arrival'
  if (after === null && (before?.n ?? 0) > 1) return 'not read after the trim'
  return 'too few readings'
}

/**
 * From what a visit left (after the trim, or on arrival where nothing was trimmed) to what the very next one found.
 * Where that visit did not read the wall there is no phase: a trim may lie in between.
 */
function phasesOf(
  { visits, days }: Columns,
  before: Column | null,
  after: Column | null,
): readonly GrowthPhase[] {
  const phases: GrowthPhase[] = []
  for (let place = 1; place < visits.length; place++) {
    const arrival = readingAt(before, place)
    const arrivalRead = !Number.isNaN(arrival)
    const left = readingAt(after, place - 1)
    const gain =
      (arrivalRead ? arrival : readingAt(after, place)) -
      (Number.isNaN(left) ? readingAt(before, place - 1) : left)
    const span = (days[place] ?? 0) - (days[place - 1] ?? 0)
    if (Number.isNaN(gain) || span <= 0) continue
    phases.push({
      fromVisit: visits[place - 1]?.id ?? '',
      toVisit: visits[place]?.id ?? '',
      days: span,
      gain,
      perMonth: (gain / span) * daysPerMonth,
      arrivalRead,
    })
  }
  return phases
}

const trimsOf = ({ visits }: Columns, before: Column | null, after: Column | null): readonly TrimStep[] =>
  visits.flatMap(({ id, date }, place) => {
    const step = readingAt(after, place) - readingAt(before, place)
    return Number.isNaN(step) ? [] : [{ visit: id, date, step }]
  })
