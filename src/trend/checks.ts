/** Remarks on the record itself, and readings that a published criterion speaks of. Never a diagnosis. */
import type { Horse } from '../casebook/model.ts'
import { feet } from '../hoof/feet.ts'
import { publishedGrowth } from '../hoof/growth.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { Check, CheckFacts, CheckKind } from './assessed-care.ts'
import type { Trend } from './assessed-trend.ts'
import type { Growth } from './assessment.ts'
import { notClosing } from './closing.ts'
import { type Columns, valueAt } from './columns.ts'
import { lastSeen } from './latest.ts'
import { z975 } from './student.ts'

export function checksOf(
  horse: Horse,
  columns: Columns,
  trends: readonly Trend[],
  growth: readonly Growth[],
): readonly Check[] {
  return [
    ...enteredAgainstPhoto(columns),
    ...notClosing(columns),
    ...trends.flatMap(doubtsOf),
    ...growth.flatMap(growthOutOfRange),
    ...criteria(columns),
    ...toeLengthsForWeight(horse, columns),
  ]
}

/**
 * Every value that was both entered (or derived from entered ones) and taken from a picture. Not the toe share: from
 * gauge readings the breakover is taken for the part in front of the frog tip, so the two are not the same thing.
 */
const enteredAgainstPhoto = (columns: Columns): readonly Check[] =>
  columns.all.flatMap((photo) => {
    if (photo.family !== 'photo' || photo.measure === 'toe-share') return []
    const { foot, measure, stage } = photo
    const gauge = columns.find('gauge', stage, foot, measure)
    if (gauge === null) return []
    return columns.visits.flatMap(({ id, date }, i): readonly Check[] => {
      const entered = valueAt(gauge, i)
      const shown = valueAt(photo, i)
      if (entered === null || shown === null) return []
      const difference = entered - shown
      const within = z975 * Math.hypot(gauge.sds[i] ?? 0, photo.sds[i] ?? 0)
      const explained = Math.abs(difference) <= within
      const facts = { measure, stage, entered, photo: shown, difference, within, explained }
      return [{ kind: 'entered against photo', foot, date, visit: id, facts }]
    })
  })

function doubtsOf({ foot, measure, leftOut, pace, points }: Trend): readonly Check[] {
  const checks: Check[] = leftOut.map(({ date, visit, stage, value }) => ({
    kind: 'left out',
    foot,
    date,
    visit,
    facts: { measure, stage, value },
  }))
  if (pace !== null)
    checks.push({
      kind: 'pace has changed',
      foot,
      date: points.find(({ visit }) => visit === pace.sinceVisit)?.date ?? null,
      visit: pace.sinceVisit,
      facts: { measure, earlierPerMonth: pace.earlierPerMonth, laterPerMonth: pace.laterPerMonth },
    })
  return checks
}

/** Lungwitz's 1/6 to 1/2 inch a month. */
const [slowest = 0, fastest = Number.POSITIVE_INFINITY] = publishedGrowth[0]?.perMonth ?? []

/** Net growth of a wall whose whole interval lies outside the published range: much wear, or a reading gone wrong. */
function growthOutOfRange(growth: Growth): readonly Check[] {
  const { foot, measure, ratePerMonth, low, high } = growth
  if (ratePerMonth === null || low === null || high === null) return []
  if (high >= slowest && low <= fastest) return []
  const visit = growth.phases.at(-1)?.toVisit ?? null
  const facts = { measure, ratePerMonth, low, high, slowest, fastest }
  return [{ kind: 'growth out of range', foot, date: null, visit, facts }]
}

type CriterionKind = { readonly [K in CheckKind]: CheckFacts[K] extends Beyond ? K : never }[CheckKind]
type Beyond = CheckFacts['heel gap']

interface Criterion {
  readonly kind: CriterionKind
  readonly measure: AnyMeasureId
  readonly limit: number
  readonly met: (value: number, limit: number) => boolean
}

const farApart = (value: number, limit: number): boolean => Math.abs(value) >= limit

/**
 * Axis: 3 degrees, common practice. Heel gap 5 degrees or more, heels 5 mm or more apart, frog ratio below 0.67, load
 * index above 78: Turner. Pair 5 degrees or more: Turner, from memory, uncertain.
 */
const hoofBalanceCriteria: readonly Criterion[] = [
  {
    kind: 'broken axis',
    measure: 'axis-deviation',
    limit: 3,
    met: (value, limit) => Math.abs(value) > limit,
  },
  { kind: 'heel gap', measure: 'heel-gap', limit: 5, met: (value, limit) => value >= limit },
  { kind: 'sheared heels', measure: 'heel-balance', limit: 5, met: farApart },
  { kind: 'frog ratio', measure: 'frog-ratio', limit: 0.67, met: (value, limit) => value < limit },
  { kind: 'pair mismatch', measure: 'pair-mismatch', limit: 5, met: farApart },
  { kind: 'load index', measure: 'load-index', limit: 78, met: (value, limit) => value > limit },
]

const criteria = (columns: Columns): readonly Check[] =>
  hoofBalanceCriteria.flatMap(({ kind, measure, limit, met }) =>
    feet.flatMap((foot): readonly Check[] => {
      const latest = lastSeen(columns, foot, measure)
      if (latest === null || !met(latest.value, limit)) return []
      const visit = columns.visits[latest.place]
      const facts = { value: latest.value, limit }
      return [{ kind, foot, date: visit?.date ?? null, visit: visit?.id ?? null, facts }]
    }),
  )

/** Toe length for a weight in kilograms: Turner 1992, from memory. Between the classes he gives nothing. */
export const toeLengthGuide: readonly { readonly kg: readonly [number, number]; readonly mm: number }[] = [
  { kg: [360, 400], mm: 76 },
  { kg: [430, 475], mm: 82.5 },
  { kg: [520, 570], mm: 89 },
]

/** A guide beside the latest toe length of each foot, where the horse's weight falls in a class of it. */
function toeLengthsForWeight(horse: Horse, columns: Columns): readonly Check[] {
  const weight =
    columns.visits.findLast(({ bodyState }) => bodyState.weightKg !== null)?.bodyState.weightKg ??
    horse.weightKg
  const guide = toeLengthGuide.find(({ kg }) => weight !== null && weight >= kg[0] && weight <= kg[1])
  if (guide === undefined) return []
  return feet.flatMap((foot): readonly Check[] => {
    const latest = lastSeen(columns, foot, 'toe-length')
    if (latest === null) return []
    const visit = columns.visits[latest.place]
    const facts = { value: latest.value, guide: guide.mm, difference: latest.value - guide.mm, weight }
    return [
      { kind: 'toe length for weight', foot, date: visit?.date ?? null, visit: visit?.id ?? null, facts },
    ]
  })
}
