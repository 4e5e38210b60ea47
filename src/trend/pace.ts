/** Whether the two halves of a course move at different paces. It is mentioned, and changes nothing else. */
import { between, type Course, without } from './model/course.ts'
import { fitCourse, type Scatter } from './model/fit.ts'
import { outliersOf } from './model/outliers.ts'
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
 * Both halves by fits that share no reading, each without its own outliers: about one line through all, a course that
 * bends has its true ends for outliers. They are set apart where their slopes differ by more than chance does in one of
 * 100 steady courses, by the scatter of both about their own lines. Feet do not always move in straight lines (Meier
 * 2021, Clayton 2011).
 */
export function changedPace(course: Course, scatter: Scatter): Halves | null {
  const trims = [...course.left.keys()].filter((i) => !Number.isNaN(course.left[i]))
  if (trims.length < fewestTrims) return null
  const later = trims[Math.floor(trims.length / 2)] ?? 0
  const fitOfHalf = (from: number, to: number) => {
    const half = between(course, from, to)
    return fitCourse(without(half, outliersOf(half, scatter.variances)), scatter)
  }
  const first = fitOfHalf(0, later)
  const second = fitOfHalf(later, course.left.length)
  if (first === null || second === null) return null
  // Each has the practice's worth in its degrees of freedom; of both together it counts once.
  const nu = first.nu + second.nu - scatter.worth
  const s2 = (first.s2 * first.nu + second.s2 * second.nu - scatter.worth) / nu
  const error = Math.sqrt(s2 * (first.inverse.i11 + second.inverse.i11))
  if (Math.abs(second.slope - first.slope) <= t995(nu) * error) return null
  return { later, earlierPerMonth: first.slope, laterPerMonth: second.slope }
}
