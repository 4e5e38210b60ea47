/** What was known of a course when a visit ended, and its line then. */
import { between, type Course, readingsIn, without } from './model/course.ts'
import { type CourseFit, fitCourse } from './model/fit.ts'
import { scatterFor } from './model/learned.ts'
import { outliersOf } from './model/outliers.ts'
import type { Judged } from './trends.ts'

/** A line from fewer readings is none. */
const fewestReadings = 3

/** Under what the practice teaches today; null where too little was known. */
export function fitKnownBy({ course, learned }: Judged, place: number): CourseFit | null {
  const known = knownBy(course, place)
  if (readingsIn(known) < fewestReadings) return null
  const scatter = scatterFor(learned, course.sd)
  return fitCourse(without(known, outliersOf(known, scatter.variances)), scatter)
}

function knownBy(course: Course, place: number): Course {
  const known = between(course, 0, place + 1)
  const back = known.back.slice()
  back[place] = Number.NaN
  return { ...known, back }
}
