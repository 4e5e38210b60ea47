/** What one horse contributes to what its practice teaches. Plain data, so that it can be kept. */
import type { Horse } from '../../casebook/model.ts'
import { dateOfDay, type PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type MeasureId, measures } from '../../hoof/measures.ts'
import { wallLengths } from '../../hoof/walls.ts'
import { allMeasures, columnsOf, families } from '../columns.ts'
import { aheadOfGrown, followedOf, wallSums } from '../followed.ts'
import { type Course, readingsIn } from './course.ts'
import { courseOfAllFeet, courseOfFoot, type FootOrAll, type ReadCourse } from './courses.ts'
import type { WallSums } from './grow-out-rates.ts'
import type { Repeat } from './learn.ts'
import { learnedKey } from './learned.ts'

/** A course as plain lists; null where nothing was read. */
export interface TaughtCourse {
  readonly sd: number
  readonly matters: number
  readonly growth: Course['growth']
  readonly left: readonly (number | null)[]
  readonly back: readonly (number | null)[]
  readonly leftShare: readonly number[]
  readonly backShare: readonly number[]
}

export interface Teaching {
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

/** Courses with fewer readings teach nothing. */
const fewestReadings = 3

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
  const { times = [], gaps = [] } = (shared ?? {}) as Partial<ReadCourse>
  const people = visits.map(({ by }) => by)
  return { times: [...times], gaps: [...gaps], people, courses, repeats, walls }
}

const taught = (course: ReadCourse): TaughtCourse => ({
  sd: course.sd,
  matters: course.matters,
  growth: course.growth,
  left: orNull(course.left),
  back: orNull(course.back),
  leftShare: [...course.leftShare],
  backShare: [...course.backShare],
})

const orNull = (values: Float64Array): (number | null)[] =>
  Array.from(values, (value) => (Number.isNaN(value) ? null : value))

/** The courses of one key, as they are fitted. */
export const coursesOf = (teaching: Teaching, key: string): readonly (Course & { matters: number })[] => {
  const times = Float64Array.from(teaching.times)
  const gaps = Float64Array.from(teaching.gaps)
  return (teaching.courses[key] ?? []).map((course) => ({
    sd: course.sd,
    matters: course.matters,
    growth: course.growth,
    times,
    gaps,
    left: orNaN(course.left),
    back: orNaN(course.back),
    leftShare: Float64Array.from(course.leftShare),
    backShare: Float64Array.from(course.backShare),
  }))
}

const orNaN = (values: readonly (number | null)[]): Float64Array =>
  Float64Array.from(values, (value) => value ?? Number.NaN)
