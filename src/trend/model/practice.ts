/** What the horses of a practice teach together. */
import type { Horse } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { isWallLength } from '../../hoof/walls.ts'
import { type Course, readingsIn, without } from './course.ts'
import { fitCourse, slopeSd } from './fit.ts'
import { learnGrowOut } from './grow-out-rates.ts'
import { allFeet, type LearnedScatter, learnScatter, singleFoot } from './learn.ts'
import {
  type Learned,
  type LearnedMeasure,
  learnedOfKey,
  onGrid,
  roundLearned,
  scatterFor,
} from './learned.ts'
import { outliersOf } from './outliers.ts'
import { type Hand, handsOf } from './people.ts'
import { withoutSeason } from './season.ts'
import { slopeSpread } from './slopes.ts'
import { coursesOf, type Teaching, teachingOf } from './teaching.ts'

/** Of one measure, as the reference page tells it: unrounded, with what it rests on. */
export interface Lesson extends LearnedScatter {
  /** Readings it was learned from. */
  readonly readings: number
  readonly slopes: number
}

export interface PracticeLessons {
  readonly learned: Learned
  /** By `learnedKey`. */
  readonly lessons: Readonly<Record<string, Lesson>>
  /** By person. */
  readonly hands: Readonly<Record<string, Hand>>
}

/** Learns every measure by itself: nothing of it depends on the order of horses but the last digits, which are rounded away. */
export function learnPractice(teachings: readonly Teaching[]): PracticeLessons {
  const keys = [...new Set(teachings.flatMap(({ courses }) => Object.keys(courses)))].toSorted()
  const lessons = Object.fromEntries(keys.map((key) => [key, lessonOf(teachings, key)]))
  const gauge = keys.filter((key) => key.startsWith('gauge ') && !key.endsWith(' all'))
  const hands = handsOf(teachings, gauge, (key) => lessons[key] as Lesson)
  return { learned: learnedFrom(lessons, hands, teachings), lessons, hands }
}

function lessonOf(teachings: readonly Teaching[], key: string): Lesson {
  const courses = teachings.flatMap((teaching) => coursesOf(teaching, key))
  const repeats = teachings.flatMap((teaching) => teaching.repeats[key] ?? [])
  const scatter = learnScatter(
    courses,
    repeats,
    key.endsWith(' all') ? allFeet : singleFoot,
    isWallLength(learnedOfKey(key).measure),
  )
  const readings = courses.reduce((sum, course) => sum + readingsIn(course), 0) + repeats.length
  return { ...scatter, readings, slopes: slopesSeen(courses, scatter) }
}

/** Fewest months over which a slope says anything of the practice's. */
const fewestMonths = 2.5

/** How far the slopes spread about 0, in smallest changes that matter a month. */
function slopesSeen(courses: readonly (Course & { matters: number })[], scatter: LearnedScatter): number {
  return slopeSpread(
    courses.flatMap((raw) => {
      const course = withoutSeason(raw, scatter.season)
      const of = scatterFor({ ...scatter, slopes: 0 }, course.sd)
      const fit = fitCourse(without(course, outliersOf(course, of.variances)), of)
      if (fit === null || fit.to - fit.from < fewestMonths) return []
      return [{ slope: fit.slope / course.matters, error: slopeSd(fit) / course.matters }]
    }),
  )
}

function learnedFrom(
  lessons: PracticeLessons['lessons'],
  hands: PracticeLessons['hands'],
  teachings: readonly Teaching[],
): Learned {
  const growOut = learnGrowOut(teachings.flatMap(({ walls }) => walls))
  const measures = Object.fromEntries(
    Object.entries(lessons).map(([key, lesson]): [string, LearnedMeasure] => [key, roundLearned(lesson)]),
  )
  return {
    measures,
    people: Object.fromEntries(Object.entries(hands).map(([person, { factor }]) => [person, onGrid(factor)])),
    growOut: {
      mean: Math.round(growOut.mean * 10) / 10,
      meanSd: onGrid(growOut.meanSd),
      spread: onGrid(growOut.spread),
      distanceSd: onGrid(growOut.distanceSd),
    },
  }
}

/** What the horses of a practice teach on a day. */
export const lessonsOf = (horses: readonly Horse[], asOf: PlainDate): PracticeLessons =>
  learnPractice(horses.map((horse) => teachingOf(horse, asOf)))

/** What the literature alone says. */
export const untaughtPractice: PracticeLessons = learnPractice([])
