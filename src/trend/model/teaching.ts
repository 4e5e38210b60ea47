/**
 * What one horse contributes to what its practice teaches, and the same as a text that can be kept. Of a thousand horses
 * there are a hundred thousand courses, so all numbers of a horse's stand in one list, and a course is a place in it.
 */
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

export interface Teaching {
  /** As `Course` has them. */
  readonly origin: number
  readonly times: readonly number[]
  readonly gaps: readonly number[]
  /** Who took the readings of each visit; null where it does not say. */
  readonly people: readonly (string | null)[]
  /** Of all courses, one after another (`packed`). */
  readonly values: Float64Array
  /** Where in `values` each begins, by `learnedKey`. */
  readonly courses: Readonly<Record<string, readonly number[]>>
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
  const courses: Record<string, number[]> = {}
  const values: number[] = []
  const repeats: Record<string, Repeat[]> = {}
  let shared: ReadCourse | null = null
  const add = (foot: FootOrAll, course: ReadCourse | null) => {
    if (course === null || readingsIn(course) < fewestReadings) return
    shared ??= course
    const key = learnedKey(course.family, course.measure, foot)
    courses[key] = [...(courses[key] ?? []), values.length]
    values.push(...packed(course))
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
  return {
    origin,
    times: [...times],
    gaps: [...gaps],
    people,
    values: Float64Array.from(values),
    courses,
    repeats,
    walls,
  }
}

/** As it is kept. */
export const teachingText = (teaching: Teaching): string =>
  JSON.stringify({
    ...teaching,
    values: Array.from(teaching.values, (value) => (Number.isNaN(value) ? null : value)),
  })

/** From what `teachingText` gave. */
export function teachingFrom(text: string): Teaching {
  const kept: Teaching & { readonly values: ArrayLike<number | null> } = JSON.parse(text)
  return { ...kept, values: Float64Array.from(kept.values, (value) => value ?? Number.NaN) }
}

/** Numbers before those of the readings. */
const headLength = 6

/** Places, whether readings have shares of their own, repeatability, smallest change that matters, growth; then the readings. */
function packed(course: ReadCourse): readonly number[] {
  const { left, back, leftShare, backShare, sd, matters, growth } = course
  const isShared = [...leftShare, ...backShare].some((share) => share !== 1)
  const head = [left.length, isShared ? 1 : 0, sd, matters, growth.mean, growth.variance]
  return [...head, ...left, ...back, ...(isShared ? [...leftShare, ...backShare] : [])]
}

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
  const { origin, values } = teaching
  const { times, gaps, ones } = gridOf(teaching)
  return (teaching.courses[key] ?? []).map((at) => {
    const [length = 0, isShared, sd = 0, matters = 0, mean = 0, variance = 0] = values.subarray(
      at,
      at + headLength,
    )
    const list = (place: number) => {
      const from = at + headLength + place * length
      return values.subarray(from, from + length)
    }
    return {
      sd,
      matters,
      growth: { mean, variance },
      origin,
      times,
      gaps,
      left: list(0),
      back: list(1),
      leftShare: isShared ? list(2) : ones,
      backShare: isShared ? list(3) : ones,
    }
  })
}
