/** What the horses of a practice teach together. */
import type { Horse } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Course, readingsIn, without } from './course.ts'
import { fitCourse, slopeSd } from './fit.ts'
import { learnGrowOut } from './grow-out-rates.ts'
import { allFeet, type LearnedScatter, learnScatter, singleFoot } from './learn.ts'
import { type Learned, type LearnedMeasure, onGrid, roundLearned, scatterFor } from './learned.ts'
import { outliersOf } from './outliers.ts'
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
}

/** Learns every measure by itself: nothing of it depends on the order of horses but the last digits, which are rounded away. */
export function learnPractice(teachings: readonly Teaching[]): PracticeLessons {
  const keys = [...new Set(teachings.flatMap(({ courses }) => Object.keys(courses)))].toSorted()
  const lessons = Object.fromEntries(keys.map((key) => [key, lessonOf(teachings, key)]))
  return { learned: learnedFrom(lessons, teachings), lessons }
}

export function lessonOf(teachings: readonly Teaching[], key: string): Lesson {
  const courses = teachings.flatMap((teaching) => coursesOf(teaching, key))
  const repeats = teachings.flatMap((teaching) => teaching.repeats[key] ?? [])
  const scatter = learnScatter(courses, repeats, key.endsWith(' all') ? allFeet : singleFoot)
  const readings = courses.reduce((sum, course) => sum + readingsIn(course), 0) + repeats.length
  return { ...scatter, readings, slopes: slopesSeen(courses, scatter) }
}

/** Fewest months over which a slope says anything of the practice's. */
const fewestMonths = 2.5

/** How far the slopes spread about 0, in smallest changes that matter a month. */
function slopesSeen(courses: readonly (Course & { matters: number })[], scatter: LearnedScatter): number {
  return slopeSpread(
    courses.flatMap((course) => {
      const of = scatterFor({ ...scatter, slopes: 0 }, course.sd)
      const fit = fitCourse(without(course, outliersOf(course, of.variances)), of)
      if (fit === null || fit.to - fit.from < fewestMonths) return []
      return [{ slope: fit.slope / course.matters, error: slopeSd(fit) / course.matters }]
    }),
  )
}

export function learnedFrom(lessons: PracticeLessons['lessons'], teachings: readonly Teaching[]): Learned {
  const growOut = learnGrowOut(teachings.flatMap(({ walls }) => walls))
  const measures = Object.fromEntries(
    Object.entries(lessons).map(([key, lesson]): [string, LearnedMeasure] => [key, roundLearned(lesson)]),
  )
  return {
    measures,
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
