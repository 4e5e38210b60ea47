/** Whether the two halves of a course move at different paces. It is mentioned, and changes nothing else. */
import { between, type Course } from './model/course.ts'
import { type CourseFit, fitCourse } from './model/fit.ts'
import { t995 } from './student.ts'

/** Trims from which on a course is looked at by halves. */
const fewestTrims = 8

export interface Halves {
  /** Place of the first trim of the later half. */
  readonly later: number
  readonly earlierPerMonth: number
  readonly laterPerMonth: number
}

/**
 * Both halves by fits that share no reading, under the scatter of the whole; set apart where their slopes differ by
 * more than chance does in one of 100 steady courses. Feet do not always move in straight lines (Meier 2021, Clayton 2011).
 */
export function changedPace(course: Course, whole: CourseFit): Halves | null {
  const trims = [...course.left.keys()].filter((i) => !Number.isNaN(course.left[i]))
  if (trims.length < fewestTrims) return null
  const later = trims[Math.floor(trims.length / 2)] ?? 0
  const scatter = { variances: whole.variances, worth: whole.nu }
  const first = fitCourse(between(course, 0, later), scatter)
  const second = fitCourse(between(course, later, course.times.length), scatter)
  if (first === null || second === null) return null
  const error = Math.sqrt(whole.s2 * (first.inverse.i11 + second.inverse.i11))
  if (Math.abs(second.slope - first.slope) <= t995(whole.nu) * error) return null
  return { later, earlierPerMonth: first.slope, laterPerMonth: second.slope }
}
