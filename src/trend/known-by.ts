/** What was known of a course when a visit ended, and its line then. */
import { between, type Course, without } from './model/course.ts'
import { type CourseFit, fitCourse } from './model/fit.ts'
import { scatterFor } from './model/learned.ts'
import { outliersOf } from './model/outliers.ts'
import type { Judged } from './trends.ts'

/** The readings used then, and their line. */
export interface KnownThen {
  readonly used: Course
  readonly fit: CourseFit
}

/** Under what the practice teaches today; null where too little was known for a line. */
export function knownThen({ course, even, learned }: Judged, place: number): KnownThen | null {
  const known = upTo(even, place)
  const scatter = scatterFor(learned, course.sd)
  const used = without(known, outliersOf(known, scatter.variances))
  const fit = fitCourse(used, scatter)
  return fit === null ? null : { used, fit }
}

export const fitKnownBy = (judged: Judged, place: number): CourseFit | null =>
  knownThen(judged, place)?.fit ?? null

function upTo(course: Course, place: number): Course {
  const known = between(course, 0, place + 1)
  known.back[place] = Number.NaN
  return known
}
