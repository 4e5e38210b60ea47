/** Courses of typed numbers, for tests of the fit itself. */
import type { Course } from '../../../src/trend/model/course.ts'
import type { Scatter } from '../../../src/trend/model/fit.ts'

/** Errors of one variance, told by the residuals alone. */
export const ordinary: Scatter = { variances: { e: 1, u: 0, w: 0 }, worth: 0 }

/** Readings after the trim alone. */
export const afterTrims = (times: readonly number[], values: readonly number[]): Course =>
  bothStages(
    times,
    values,
    values.map(() => null),
  )

/** Readings after the trim and on the next arrival; null where not read. */
export function bothStages(
  times: readonly number[],
  left: readonly (number | null)[],
  back: readonly (number | null)[],
  growth = { mean: 0, variance: 4 },
): Course {
  const orNaN = (values: readonly (number | null)[]) =>
    Float64Array.from(values, (value) => value ?? Number.NaN)
  const ones = new Float64Array(times.length).fill(1)
  return {
    growth,
    sd: 1,
    origin: 0,
    times: Float64Array.from(times),
    gaps: Float64Array.from(times, (time, i) => (times[i + 1] ?? time) - time),
    left: orNaN(left),
    back: orNaN(back),
    leftShare: ones,
    backShare: ones,
  }
}
