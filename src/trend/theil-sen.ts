/**
 * Theil-Sen slope: the median of the slopes of all pairs of readings on different days (Sen 1968, JASA 63: 1379-1389).
 * Every pair is looked at. Ways to look at fewer were tried: they pay from some 80 readings a series on, which saves a
 * horse of 100 visits with every measure 3 ms and one of 200 visits 15, and needs six times the code.
 */
import { quickselect } from 'simple-statistics'
import type { Observation } from './fit.ts'

/** Units a day. Null where all readings are on one day. */
export const theilSen = (points: readonly Observation[]): number | null =>
  theilSenOfColumns(
    Float64Array.from(points, ({ day }) => day),
    Float64Array.from(points, ({ value }) => value),
  )

/** The same for readings as two columns. */
export function theilSenOfColumns(days: Float64Array, values: Float64Array): number | null {
  const n = days.length
  const slopes = new Float64Array((n * (n - 1)) / 2)
  let pairs = 0
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const apart = (days[j] ?? 0) - (days[i] ?? 0)
      if (apart !== 0) slopes[pairs++] = ((values[j] ?? 0) - (values[i] ?? 0)) / apart
    }
  return pairs === 0 ? null : median(slopes.subarray(0, pairs))
}

/** The middle value, or the mean of the two in the middle. Reorders what it is given. */
function median(values: Float64Array): number {
  const upper = Math.floor(values.length / 2)
  // The types of simple-statistics know plain arrays only; it asks for no more than an index.
  quickselect(values as unknown as number[], upper)
  const high = values[upper] ?? Number.NaN
  if (values.length % 2 === 1) return high
  let low = Number.NEGATIVE_INFINITY
  for (let i = 0; i < upper; i++) low = Math.max(low, values[i] ?? low)
  return (low + high) / 2
}
