/**
 * Staged work: heels that differ by more than the limit, and a toe longer than its band, brought down a little at each
 * trim, never more than the sole allows, and nothing while a `stop` stands.
 */
import type { Horse, Practice } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import { addDays, daysBetween, daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { wallBelief } from '../hoof/growth.ts'
import { ageOn } from './age.ts'
import type { OffTheWall, Plan, PlanCheck, PlanStep } from './assessed-care.ts'
import type { Growth } from './assessment.ts'
import type { Cautions } from './cautions/index.ts'
import { heelsLoweredMuch, toeShortenedMuch } from './cautions/measured.ts'
import { type Columns, families, valueAt } from './columns.ts'
import { fitKnownBy } from './known-by.ts'
import { type CourseFit, levelAt, levelSd } from './model/fit.ts'
import type { VisitsAhead } from './next-visit.ts'
import { t975, tQuantile } from './student.ts'
import { targetOf } from './targets.ts'
import type { Judged } from './trends.ts'

/** Most that may be taken at one trim, mm, where the horse's file gives no amount. Common practice, no source. */
export const mostBySole = { flat: 1.5, cupped: 3 } as const

type Planned = Plan['measure']
const planned: readonly Planned[] = ['heel-balance', 'toe-length']

/** What plans are made from. */
interface PlanningInput {
  readonly horse: Horse
  readonly practice: Practice
  readonly asOf: PlainDate
  readonly columns: Columns
  readonly cautions: Cautions
  readonly ahead: VisitsAhead
  readonly judged: readonly Judged<Foot>[]
  readonly growth: readonly Growth[]
}

/**
 * Plans for what is over its limit at the latest reading (after the trim, or on arrival where nothing was trimmed).
 * Heels: the limit is the edge of the heel balance's target on the higher side, 2 mm by default; `now` and `expected`
 * are the difference without its sign. Toe length: only with a target, against its upper edge; the amounts are what
 * the toe should be shorter after each trim than after the last, beyond what has grown in between.
 * None from one reading, none for what may be the reading's own error, and none for a foot that a caution holds.
 */
export const plansOf = (of: PlanningInput): readonly Plan[] =>
  feet
    .filter((foot) => !of.cautions.heldFeet.includes(foot))
    .flatMap((foot) => planned.flatMap((measure) => planOf(of, foot, measure) ?? []))

function planOf(of: PlanningInput, foot: Foot, measure: Planned): Plan | null {
  const { band, from } = targetOf(of.horse, foot, measure)
  if (band === null || (measure === 'toe-length' && from !== 'practitioner')) return null
  const course = courseOf(of.columns, foot, measure)
  const latest = course.at(-1)
  const over = latest === undefined ? null : overBand(measure, latest.value, band)
  const judged = of.judged.find((one) => one.foot === foot && one.course.measure === measure)
  if (latest === undefined || over === null || judged === undefined) return null
  const allowed = allowedPerTrim(of.horse, foot, of.cautions)
  const { perTrim } = allowed
  if (!isSurelyOver(judged.fit, measure, band, perTrim)) return null
  const amounts = amountsLeft(over, perTrim)
  const steps = stepsFrom(amounts, of.ahead.next, of.ahead.cycleDays)
  const kept = keptSoFar(of, course, judged, measure, band, perTrim)
  return {
    foot,
    measure,
    ...over,
    perTrim,
    perTrimFrom: allowed.from,
    trims: amounts.length,
    steps,
    next: offTheWall(of, foot, over, amounts[0] ?? over.now, latest.date),
    readOn: latest.date,
    shownOn: addDays(steps.at(-1)?.date ?? of.ahead.next, of.ahead.cycleDays),
    kept,
    standing: kept.at(-1)?.standing ?? 'just begun',
  }
}

const wallOf = { toe: 'toe-length', medial: 'heel-medial', lateral: 'heel-lateral' } as const

/** By what the wall has shown of its own growth, else as published. */
function offTheWall(
  { horse, asOf, growth, ahead }: PlanningInput,
  foot: Foot,
  { side, now }: Over,
  leaves: number,
  readOn: PlainDate,
): OffTheWall {
  const shown = growth.find((one) => one.foot === foot && one.measure === wallOf[side])?.ratePerMonth ?? null
  const rate = Math.max(0, shown ?? wallBelief(ageOn(horse, asOf)).mean)
  const grown = (rate * Math.max(0, daysBetween(readOn, ahead.next))) / daysPerMonth
  const step = now - leaves
  const total = grown + step
  const much = side === 'toe' ? toeShortenedMuch : heelsLoweredMuch
  return {
    grown,
    grownFrom: shown === null ? 'published' : 'measured',
    step,
    total,
    careFrom: total > much ? much : null,
    leaves,
  }
}

/**
 * Whether a line puts the level beyond its limit: with 90 %, or with 70 % where more is over than one trim may take.
 * Chosen by us; Student's t of the fitted level.
 */
function isSurelyOver(fit: CourseFit | null, measure: Planned, band: Band, perTrim: number): boolean {
  if (fit === null) return false
  const over = overBand(measure, levelAt(fit, fit.to), band)
  if (over === null) return false
  const asked = over.excess > perTrim ? 0.7 : 0.9
  return over.excess > tQuantile(asked, fit.nu) * levelSd(fit, fit.to)
}

interface Over {
  readonly side: Plan['side']
  readonly now: number
  readonly limit: number
  readonly excess: number
}

/** How far a value lies over its limit; null where it does not. */
function overBand(measure: Planned, value: number, band: Band): Over | null {
  const over = (side: Plan['side'], now: number, limit: number | null): Over | null =>
    limit !== null && now - limit > 1e-9 ? { side, now, limit, excess: now - limit } : null
  if (measure === 'toe-length') return over('toe', value, band.high)
  return over('medial', value, band.high) ?? over('lateral', -value, band.low === null ? null : -band.low)
}

/** What should be left after each trim: the full amount each time, and at the last only what is still over. */
function amountsLeft({ now, limit, excess }: Over, perTrim: number): readonly number[] {
  const trims = Math.ceil(excess / perTrim - 1e-9)
  return Array.from({ length: trims }, (_, i) => (i === trims - 1 ? limit : now - (i + 1) * perTrim))
}

const stepsFrom = (amounts: readonly number[], first: PlainDate, cycleDays: number): readonly PlanStep[] =>
  amounts.map((expected, i) => ({ date: addDays(first, i * cycleDays), expected }))

/**
 * The horse's own limit wins. Else by the sole: as horse.md says, but a sole found flat or thin counts as flat, and so
 * does one of which nothing is said, since that is the safer way.
 */
function allowedPerTrim(
  horse: Horse,
  foot: Foot,
  cautions: Cautions,
): { readonly perTrim: number; readonly from: Plan['perTrimFrom'] } {
  const own = horse.trimLimits.mostPerTrim
  if (own !== null) return { perTrim: own, from: 'trim limits' }
  const sole = horse.trimLimits.sole[foot]
  const foundFlat = cautions.stands('sole-flat', foot) || cautions.stands('sole-thin', foot)
  if (sole === 'flat' || foundFlat) return { perTrim: mostBySole.flat, from: 'flat sole' }
  if (sole === 'cupped') return { perTrim: mostBySole.cupped, from: 'cupped sole' }
  return { perTrim: mostBySole.flat, from: 'sole not said, taken as flat' }
}

interface Standing {
  readonly place: number
  readonly date: PlainDate
  readonly value: number
}

/** The last reading of each visit: after the trim, or on arrival where nothing was trimmed; gauge before photo. */
function courseOf(columns: Columns, foot: Foot, measure: Planned): readonly Standing[] {
  for (const family of families) {
    const after = columns.find(family, 'after', foot, measure)
    const before = columns.find(family, 'before', foot, measure)
    const course = columns.visits.flatMap(({ date }, place) => {
      const value = valueAt(after, place) ?? valueAt(before, place)
      return value === null ? [] : [{ place, date, value }]
    })
    if (course.length > 0) return course
  }
  return []
}

/**
 * The plan made at the first visit that needed one and could have one, against each later visit: behind where the whole
 * interval of the level then is above what was due by then, ahead where it is below. Three visits without progress are
 * behind as well. A visit counts for the trim whose date is nearest.
 */
function keptSoFar(
  { practice, columns, cautions }: PlanningInput,
  course: readonly Standing[],
  judged: Judged<Foot>,
  measure: Planned,
  band: Band,
  perTrim: number,
): readonly PlanCheck[] {
  const start = course.findIndex(
    ({ place, value }) =>
      overBand(measure, value, band) !== null &&
      !cautions.wasHeld(judged.foot, place) &&
      isSurelyOver(fitKnownBy(judged, place), measure, band, perTrim),
  )
  const begun = course[start]
  const over = begun === undefined ? null : overBand(measure, begun.value, band)
  const visit = begun === undefined ? undefined : columns.visits[begun.place]
  if (over === null || visit === undefined) return []
  const cycle = practice.trimCycleDays
  const steps = stepsFrom(amountsLeft(over, perTrim), visit.nextVisit ?? addDays(visit.date, cycle), cycle)
  const sign = over.side === 'lateral' ? -1 : 1
  const since = course.slice(start).map(({ value }) => sign * value)
  return course.slice(start + 1).flatMap(({ place }, i): readonly PlanCheck[] => {
    const then = columns.visits[place]
    const fit = fitKnownBy(judged, place)
    if (then === undefined || fit === null) return []
    const expected =
      steps.findLast(({ date }) => daysBetween(date, then.date) >= -cycle / 2)?.expected ?? over.now
    const actual = sign * levelAt(fit, fit.to)
    const half = t975(fit.nu) * levelSd(fit, fit.to)
    const [low, high] = [actual - half, actual + half]
    const isStuck = noProgress(since.slice(0, i + 2))
    const standing =
      low > expected || (isStuck && high > expected) ? 'behind' : high < expected ? 'ahead' : 'on plan'
    return [{ visit: then.id, date: then.date, expected, actual, low, high, standing }]
  })
}

const visitsWithout = 3

/** Whether none of the last three readings is lower than the one before them. */
function noProgress(readings: readonly number[]): boolean {
  if (readings.length <= visitsWithout) return false
  const before = readings.at(-visitsWithout - 1) ?? 0
  return readings.slice(-visitsWithout).every((value) => value >= before)
}
