/** What one horse contributes to what its practice teaches. Plain data, so that it can be kept. */
import type { Horse } from '../../casebook/model.ts'
import { dateOfDay, type PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type MeasureId, measures } from '../../hoof/measures.ts'
import { wallLengths } from '../../hoof/walls.ts'
import { allMeasures, columnsOf, families } from '../columns.ts'
import { aheadOfGrown, followedOf, wallSums } from '../followed.ts'
import { type Course, type FootOrAll, readingsIn } from './course.ts'
import { courseOfAllFeet, courseOfFoot, type ReadCourse } from './courses.ts'
import type { WallSums } from './grow-out-rates.ts'
import { fewestReadings, type Repeat } from './learn.ts'
import { learnedKey } from './learned.ts'

/** A course as plain lists; null where nothing was read. */
export interface TaughtCourse {
  readonly sd: number
  readonly matters: number
  readonly growth: Course['growth']
  readonly left: readonly (number | null)[]
  readonly back: readonly (number | null)[]
  /** Null where each is one reading like any other. */
  readonly leftShare: readonly number[] | null
  readonly backShare: readonly number[] | null
}

export interface Teaching {
  /** As `Course` has them. */
  readonly origin: number
  readonly times: readonly number[]
  readonly gaps: readonly number[]
  /** Who took the readings of each visit; null where it does not say. */
  readonly people: readonly (string | null)[]
  /** By `learnedKey`. */
  readonly courses: Readonly<Record<string, readonly TaughtCourse[]>>
  readonly repeats: Readonly<Record<string, readonly Repeat[]>>
  readonly walls: readonly WallSums[]
}

/**
 * The last day whose readings teach: that of the last whole month before today. So what a practice has learned changes
 * with the month, and not with every visit.
 */
export const taughtUntil = (asOf: PlainDate): PlainDate =>
  dateOfDay(Date.UTC(Number(asOf.slice(0, 4)), Number(asOf.slice(5, 7)) - 1, 0) / 86_400_000)

/** From the visits up to `taughtUntil` today; a draft has not happened yet. */
export function teachingOf(horse: Horse, asOf: PlainDate): Teaching {
  const until = taughtUntil(asOf)
  const visits = horse.visits.filter(({ date, draft }) => date <= until && !draft)
  const columns = columnsOf(horse, visits)
  const courses: Record<string, TaughtCourse[]> = {}
  const repeats: Record<string, Repeat[]> = {}
  let shared: ReadCourse | null = null
  const add = (foot: FootOrAll, course: ReadCourse | null) => {
    if (course === null || readingsIn(course) < fewestReadings) return
    shared ??= course
    const key = learnedKey(course.family, course.measure, foot)
    courses[key] = [...(courses[key] ?? []), taught(course)]
  }
  for (const family of families)
    for (const measure of allMeasures) {
      for (const foot of feet) add(foot, courseOfFoot(horse, columns, family, foot, measure))
      add('all', courseOfAllFeet(horse, columns, family, measure))
    }
  for (const { readings } of visits)
    for (const { measure, twice } of readings) {
      if (twice === undefined) continue
      const key = learnedKey('gauge', measure, 'LF')
      const repeat = { difference: twice[1] - twice[0], sd: measures[measure].sd }
      repeats[key] = [...(repeats[key] ?? []), repeat]
    }
  const followed = followedOf(columns)
  const ahead = aheadOfGrown(horse, until)
  const walls = feet.flatMap((foot: Foot) =>
    wallLengths.map((wall: MeasureId) => wallSums(followed, foot, wall, ahead)).filter(({ sxx }) => sxx > 0),
  )
  const { origin = 0, times = [], gaps = [] } = (shared ?? {}) as Partial<ReadCourse>
  const people = visits.map(({ by }) => by)
  return { origin, times: [...times], gaps: [...gaps], people, courses, repeats, walls }
}

const taught = (course: ReadCourse): TaughtCourse => ({
  sd: course.sd,
  matters: course.matters,
  growth: course.growth,
  left: orNull(course.left),
  back: orNull(course.back),
  leftShare: unlessOnes(course.leftShare),
  backShare: unlessOnes(course.backShare),
})

const orNull = (values: Float64Array): (number | null)[] =>
  Array.from(values, (value) => (Number.isNaN(value) ? null : value))

const unlessOnes = (shares: Float64Array): number[] | null =>
  shares.every((share) => share === 1) ? null : [...shares]

/** What all courses of a record share, made once for each. */
interface Grid extends Pick<Course, 'times' | 'gaps'> {
  readonly ones: Float64Array
}

const grids = new WeakMap<Teaching, Grid>()

function gridOf(teaching: Teaching): Grid {
  const known = grids.get(teaching)
  if (known !== undefined) return known
  const times = Float64Array.from(teaching.times)
  const made = {
    times,
    gaps: Float64Array.from(teaching.gaps),
    ones: new Float64Array(times.length).fill(1),
  }
  grids.set(teaching, made)
  return made
}

/** The courses of one key, as they are fitted. */
export function coursesOf(teaching: Teaching, key: string): readonly (Course & { matters: number })[] {
  const { times, gaps, ones } = gridOf(teaching)
  const shares = (own: readonly number[] | null) => (own === null ? ones : Float64Array.from(own))
  return (teaching.courses[key] ?? []).map((course) => ({
    sd: course.sd,
    matters: course.matters,
    growth: course.growth,
    origin: teaching.origin,
    times,
    gaps,
    left: orNaN(course.left),
    back: orNaN(course.back),
    leftShare: shares(course.leftShare),
    backShare: shares(course.backShare),
  }))
}

function orNaN(values: readonly (number | null)[]): Float64Array {
  const list = new Float64Array(values.length)
  for (let i = 0; i < values.length; i++) list[i] = values[i] ?? Number.NaN
  return list
}
