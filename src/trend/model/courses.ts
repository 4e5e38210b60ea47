/** From the record of a horse to the courses that are fitted: which readings make them, of one foot or of all. */
import type { Horse, Stage } from '../../casebook/model.ts'
import { daysPerMonth, type PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { wallBelief } from '../../hoof/growth.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { isWallLength } from '../../hoof/walls.ts'
import { ageOn } from '../age.ts'
import type { Column, Columns, Family } from '../columns.ts'
import { scaleOf } from '../scale.ts'
import { commonReadings } from './additive.ts'
import type { Course, FootOrAll, GrowthBelief } from './course.ts'
import { handOf, type Learned } from './learned.ts'

/** A course and what it is of. */
export interface ReadCourse extends Course {
  readonly foot: FootOrAll
  readonly measure: AnyMeasureId
  readonly family: Family
  /** What A is: readings after the trim, or on arrival where hardly any were taken after one. */
  readonly stage: Stage
  /** Smallest change that matters. */
  readonly matters: number
}

/** Of one foot; null where nothing was read. */
export function courseOfFoot(
  horse: Horse,
  columns: Columns,
  family: Family,
  foot: Foot,
  measure: AnyMeasureId,
  people: Learned['people'] = {},
): ReadCourse | null {
  const after = columns.find(family, 'after', foot, measure)
  const before = columns.find(family, 'before', foot, measure)
  const stage = stageOf(after?.n ?? 0, before?.n ?? 0)
  if (stage === null) return null
  const main = stage === 'after' ? after : before
  if (main === null) return null
  const { sd, matters } = scaleOf(main)
  const arrivals = stage === 'after' ? before : null
  const { length } = columns.visits
  const { origin, times, gaps, ones } = gridOf(columns)
  return {
    origin,
    times,
    gaps,
    foot,
    measure,
    family,
    stage,
    growth: growthBelief(horse, measure, columns.visits.at(-1)?.date),
    sd,
    matters,
    left: main.values,
    back: nextOf(arrivals?.values ?? null, length),
    leftShare: sharesOf(main, sd, columns, people),
    backShare: arrivals === null ? ones : nextSharesOf(arrivals, sd, columns, people),
  }
}

/** Of all feet together; null where no two feet were read together. */
export function courseOfAllFeet(
  horse: Horse,
  columns: Columns,
  family: Family,
  measure: AnyMeasureId,
): ReadCourse | null {
  // The difference of a pair is no measure of all feet.
  if (measure === 'pair-mismatch') return null
  const of = (stage: Stage) => feet.map((foot) => columns.find(family, stage, foot, measure))
  const [afters, befores] = [of('after'), of('before')]
  const read = [...afters, ...befores].filter((column) => column !== null)
  if (read.length < 2) return null
  const { length } = columns.visits
  const values = (found: readonly (Column | null)[]) => found.map((column) => column?.values ?? null)
  const common = commonReadings([values(afters), values(befores)], length)
  if (common === null) return null
  const [after = new Float64Array(), before = new Float64Array()] = common
  const stage = stageOf(counted(after), counted(before))
  if (stage === null) return null
  const scales = (stage === 'after' ? afters : befores)
    .filter((column) => column !== null)
    .map((column) => scaleOf(column))
  const mean = (take: (scale: { sd: number; matters: number }) => number) =>
    scales.reduce((sum, scale) => sum + take(scale), 0) / scales.length
  const { origin, times, gaps, ones } = gridOf(columns)
  return {
    origin,
    times,
    gaps,
    foot: 'all',
    measure,
    family,
    stage,
    growth: growthBelief(horse, measure, columns.visits.at(-1)?.date),
    sd: mean(({ sd }) => sd),
    matters: mean(({ matters }) => matters),
    left: stage === 'after' ? after : before,
    back: nextOf(stage === 'after' ? before : null, length),
    leftShare: ones,
    backShare: ones,
  }
}

const counted = (values: Float64Array): number =>
  values.reduce((n, value) => (Number.isNaN(value) ? n : n + 1), 0)

/** After the trim where that was read twice; else the stage with most readings. */
function stageOf(after: number, before: number): Stage | null {
  if (after + before === 0) return null
  return after >= 2 || after > before ? 'after' : 'before'
}

/** The same for every course of a record. */
interface Grid extends Pick<Course, 'origin' | 'times' | 'gaps'> {
  readonly ones: Float64Array
}

const grids = new WeakMap<Columns, Grid>()

function gridOf(columns: Columns): Grid {
  const known = grids.get(columns)
  if (known !== undefined) return known
  const { days } = columns
  const first = days[0] ?? 0
  const times = Float64Array.from(days, (day) => (day - first) / daysPerMonth)
  const gaps = Float64Array.from(times, (time, i) => (times[i + 1] ?? time) - time)
  const made = { origin: first / daysPerMonth, times, gaps, ones: new Float64Array(days.length).fill(1) }
  grids.set(columns, made)
  return made
}

/** What each visit finds at the next: the first arrival is left out, since another hand left that level. */
function nextOf(values: Float64Array | null, length: number): Float64Array {
  const next = new Float64Array(length).fill(Number.NaN)
  if (values !== null) for (let i = 1; i < length; i++) next[i - 1] = values[i] ?? Number.NaN
  return next
}

/**
 * How much of one reading's variance each has: half where a foot was read twice, more where a picture shows less, and
 * by hand as the person reads who took it.
 */
function sharesOf(
  { sds, family }: Column,
  sd: number,
  columns: Columns,
  people: Learned['people'],
): Float64Array {
  const { ones } = gridOf(columns)
  if (!(sd > 0)) return ones
  // Most columns have all of it throughout, and share one list.
  let shares = ones
  for (let i = 0; i < ones.length; i++) {
    const own = (sds[i] ?? Number.NaN) * handOf(people, family, columns.visits[i]?.by ?? null)
    if (!(own > 0) || own === sd) continue
    if (shares === ones) shares = ones.slice()
    shares[i] = (own / sd) ** 2
  }
  return shares
}

/** Shares of the arrivals, each at the visit before it. */
function nextSharesOf(column: Column, sd: number, columns: Columns, people: Learned['people']): Float64Array {
  const { ones } = gridOf(columns)
  const shares = sharesOf(column, sd, columns, people)
  if (shares === ones) return ones
  const next = ones.slice()
  next.set(shares.subarray(1))
  return next
}

/** Walls grow as published, a foal's faster; the balance of the heels hardly, all else in no known way. */
function growthBelief(horse: Horse, measure: AnyMeasureId, on: PlainDate | undefined): GrowthBelief {
  if (isWallLength(measure)) {
    const { mean, sd } = wallBelief(on === undefined ? null : ageOn(horse, on))
    return { mean, variance: sd ** 2 }
  }
  return { mean: 0, variance: measure === 'heel-balance' ? 1 : 4 }
}
