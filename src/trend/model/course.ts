/**
 * The readings of one measure at one foot as the model takes them. A trim leaves a level (A, read after it) and the
 * next arrival tells of the same level with what has grown on it (B, read before the next trim):
 *
 *     A_i     = a + b t_i + u_i + e            u: what a trim leaves, round its line; e: reading
 *     B_(i+1) = a + b t_i + u_i + g D + s + w + e'  g: growth left after wear; s: season; w: its own scatter, vw D
 */
import type { Foot } from '../../hoof/feet.ts'

/** A foot, or all feet together. */
export type FootOrAll = Foot | 'all'

/** What is believed of growth before anything was read: mm (or degrees, ...) a month. */
export interface GrowthBelief {
  readonly mean: number
  readonly variance: number
}

/** One place a visit, as far as `left` goes; NaN where not read. Months of 30.4375 days. */
export interface Course {
  readonly growth: GrowthBelief
  /** Repeatability of one reading as the literature has it. */
  readonly sd: number
  /** Time 0 in months since 1970: only the season asks for it. */
  readonly origin: number
  /** Time of each visit. */
  readonly times: Float64Array
  /** Months from each visit to the next. */
  readonly gaps: Float64Array
  /** What was read after the trim of each visit (A). */
  readonly left: Float64Array
  /** What was read on arrival at the visit after it (B). */
  readonly back: Float64Array
  /** 1 / how often each was read: 0.5 for a mean of two. */
  readonly leftShare: Float64Array
  readonly backShare: Float64Array
}

/** Scatter of a course: e of one reading, u of what a trim leaves, w of growth in a month. */
export interface Variances {
  readonly e: number
  readonly u: number
  readonly w: number
}

/** How many readings a course holds. */
export function readingsIn({ left, back }: Course): number {
  let n = 0
  for (let i = 0; i < left.length; i++) {
    if (!Number.isNaN(left[i])) n++
    if (!Number.isNaN(back[i])) n++
  }
  return n
}

/** A reading of a course: the visit whose trim it tells of, and at which end of the growth it was taken. */
export interface Place {
  readonly trim: number
  readonly stage: 'left' | 'back'
}

/** The course without some of its readings. */
export function without(course: Course, places: readonly Place[]): Course {
  if (places.length === 0) return course
  const copy = { ...course, left: course.left.slice(), back: course.back.slice() }
  for (const { trim, stage } of places) copy[stage][trim] = Number.NaN
  return copy
}

/** The readings of the trims from one place up to another, which is left out. */
export const between = (course: Course, from: number, to: number): Course => ({
  ...course,
  left: course.left.slice(0, to).fill(Number.NaN, 0, from),
  back: course.back.slice(0, to).fill(Number.NaN, 0, from),
})

/** Place of the visit of the first reading. */
export function firstVisit({ left, back }: Course): number {
  for (let i = 0; i < left.length; i++) {
    if (!Number.isNaN(left[i])) return i
    if (!Number.isNaN(back[i])) return i + 1
  }
  return 0
}

/** Place of the visit of the last reading. */
export function lastVisit({ left, back }: Course): number {
  for (let i = left.length - 1; i >= 0; i--) {
    if (!Number.isNaN(back[i])) return i + 1
    if (!Number.isNaN(left[i])) return i
  }
  return 0
}
