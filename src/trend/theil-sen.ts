/**
 * Theil-Sen slope: the median of the slopes of all pairs of readings on different days (Sen 1968, JASA 63: 1379-1389).
 * A short series has few pairs, and all are looked at. A long one has many: there the pairs under a slope close to the
 * least-squares one are counted by ordering alone, which says how many slopes away the median lies and on which side.
 * From there the slopes are passed in small steps, and only those of the last step are looked at. The result is the
 * same to the last digit; the work grows about as n to the power 1.5, not as n squared.
 */
import { quickselect } from 'simple-statistics'
import { fitColumns, type LineFit, type Observation, slopeError } from './fit.ts'
import { type Ordering, orderingFor, setHeights, sortByHeight, turnedPairs } from './slope-order.ts'

/** Up to so many readings looking at every pair is the quicker way. */
const fewReadings = 30

/**
 * Where the ordering is done and how wide the steps from there are, in standard errors of the least-squares slope. With
 * normal scatter the two slopes part by about a fifth of one. It is not done at the least-squares slope itself, where
 * the median of a regular series may lie to the digit; and where the first start sets an end of a step between the two
 * middle slopes the second one is tried.
 */
const starts = [0.03, 0.13]
const steps = [0.25, 0.5, 1, 2]

/** A median this near an end of its step, as a share of the step, could be there by rounding; every pair is looked at. */
const edgeShare = 1e-6

/** The arrays that the work needs, made once for many series. */
export interface TheilSenBuffers {
  readonly ordering: Ordering
  readonly slopes: Float64Array
}

/** Room for series of up to so many readings. */
export const theilSenBuffers = (most: number): TheilSenBuffers => ({
  ordering: orderingFor(most),
  // A step that passes more slopes than this is no use.
  slopes: new Float64Array(Math.max(pairsOf(Math.min(most, fewReadings)), Math.ceil(0.3 * most ** 2))),
})

const pairsOf = (n: number): number => (n * (n - 1)) / 2

/** Units a day. Null where all readings are on one day. */
export const theilSen = (points: readonly Observation[]): number | null => {
  const ordered = points.toSorted((a, b) => a.day - b.day)
  const days = Float64Array.from(ordered, ({ day }) => day)
  const values = Float64Array.from(ordered, ({ value }) => value)
  return theilSenOfColumns(
    days,
    values,
    fitColumns(days, values, 0, days.length, { sd: 0, worth: 0 }),
    theilSenBuffers(days.length),
  )
}

/**
 * The same for readings as two columns, in order of day.
 * @param fit any least-squares fit of them: its standard error sets the steps, never the result
 */
export function theilSenOfColumns(
  days: Float64Array,
  values: Float64Array,
  fit: LineFit | null,
  { ordering, slopes }: TheilSenBuffers,
): number | null {
  setReadings(ordering, days, values)
  if (fit !== null && days.length > fewReadings)
    for (const start of starts) {
      const median = medianNear(ordering, slopes, fit, start)
      if (median !== null) return median
    }
  return medianOfAll(ordering, slopes)
}

/** By value within a day: then readings of one day never stand the wrong way round. */
function setReadings(ordering: Ordering, days: Float64Array, values: Float64Array): void {
  ordering.n = days.length
  ordering.days.set(days)
  ordering.values.set(values)
  for (let from = 0; from < days.length; ) {
    let to = from + 1
    while (to < days.length && days[to] === days[from]) to++
    if (to - from > 1) ordering.values.subarray(from, to).sort()
    from = to
  }
}

/** Looking at every pair. */
function medianOfAll({ n, days, values }: Ordering, buffers: Float64Array): number | null {
  const slopes = buffers.length < pairsOf(n) ? new Float64Array(pairsOf(n)) : buffers
  let pairs = 0
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const apart = (days[j] ?? 0) - (days[i] ?? 0)
      if (apart !== 0) slopes[pairs++] = ((values[j] ?? 0) - (values[i] ?? 0)) / apart
    }
  return pairs === 0 ? null : middle(slopes, pairs, pairs, 0)
}

/**
 * The median of `pairs` slopes, of which `below` are smaller than all of the `found` ones that are given, and the rest
 * larger. Reorders those given.
 */
function middle(slopes: Float64Array, found: number, pairs: number, below: number): number {
  const upper = Math.floor(pairs / 2) - below
  // The types of simple-statistics know plain arrays only; it asks for no more than an index.
  quickselect(slopes.subarray(0, found) as unknown as number[], upper)
  const high = slopes[upper] ?? Number.NaN
  if (pairs % 2 === 1) return high
  let low = Number.NEGATIVE_INFINITY
  for (let i = 0; i < upper; i++) low = Math.max(low, slopes[i] ?? low)
  return (low + high) / 2
}

/** The median by steps from a start below the least-squares slope; null where they miss it, or ties make them no use. */
function medianNear(ordering: Ordering, slopes: Float64Array, fit: LineFit, start: number): number | null {
  const pairs = pairsOnDifferentDays(ordering)
  const upper = Math.floor(pairs / 2)
  const error = slopeError(fit)
  const sure = slopeRounding(ordering, fit)
  let edge = fit.slope - start * error
  setHeights(ordering, edge)
  sortByHeight(ordering)
  let below = turnedPairs(ordering)
  const way = below < upper ? 1 : -1
  for (const step of steps) {
    const slack = edgeShare * step * error
    const next = edge + way * step * error
    setHeights(ordering, next)
    const found = slack > sure ? slopesPassed(ordering, slopes, way) : null
    if (found === null) return null
    const first = way === 1 ? below : below - found
    // The two middle slopes are those with `upper - 1` and `upper` slopes below them.
    if (first < upper && upper < first + found) {
      const median = middle(slopes, found, pairs, first)
      return Math.min(Math.abs(median - edge), Math.abs(median - next)) > slack ? median : null
    }
    below += way * found
    edge = next
  }
  return null
}

/** By how much rounding of the heights can move the slope at which two readings change places, at the most. */
function slopeRounding({ n, days, values }: Ordering, fit: LineFit): number {
  let highest = 0
  let nearest = Number.POSITIVE_INFINITY
  for (let i = 0; i < n; i++) {
    highest = Math.max(highest, Math.abs(values[i] ?? 0))
    const apart = i === 0 ? 0 : (days[i] ?? 0) - (days[i - 1] ?? 0)
    if (apart > 0) nearest = Math.min(nearest, apart)
  }
  const farthest = Math.max(Math.abs(days[0] ?? 0), Math.abs(days[n - 1] ?? 0))
  return (8 * Number.EPSILON * (highest + Math.abs(fit.slope) * farthest)) / nearest
}

/**
 * Writes the slopes of all pairs that change places when the order at one slope becomes that at another, higher
 * (`way` 1) or lower (-1): those in between. Insertion sort makes just these changes. Returns how many they are, null
 * where there is no room for them.
 */
function slopesPassed(
  { n, days, values, heights, order }: Ordering,
  slopes: Float64Array,
  way: 1 | -1,
): number | null {
  let found = 0
  for (let k = 1; k < n; k++) {
    const j = order[k] ?? 0
    const height = heights[j] ?? 0
    let at = k
    for (; at > 0; at--) {
      const i = order[at - 1] ?? 0
      if ((heights[i] ?? 0) <= height) break
      if (found === slopes.length) return null
      // On the way up later readings pass earlier ones, on the way down the other way about.
      const from = way === 1 ? i : j
      const to = way === 1 ? j : i
      slopes[found++] = ((values[to] ?? 0) - (values[from] ?? 0)) / ((days[to] ?? 0) - (days[from] ?? 0))
      order[at] = i
    }
    order[at] = j
  }
  return found
}

function pairsOnDifferentDays({ n, days }: Ordering): number {
  let pairs = 0
  let same = 0
  for (let j = 1; j < n; j++) {
    same = days[j] === days[j - 1] ? same + 1 : 0
    pairs += j - same
  }
  return pairs
}
