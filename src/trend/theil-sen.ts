/**
 * Theil-Sen slope: the median of the slopes of all pairs of readings on different days (Sen 1968, JASA 63: 1379-1389).
 * A short series has few pairs, and all are looked at. A long one has many: there the median is first boxed in between
 * two slopes about the least-squares one, the pairs outside the box are counted by sorting alone, and only those inside
 * are looked at. The result is the same to the last digit; the work grows about as n to the power 1.5, not as n squared.
 */
import { quickselect } from 'simple-statistics'
import { fitLine, type Observation, slopeError } from './fit.ts'

/** Up to so many readings looking at every pair is the quicker way. */
const fewReadings = 30

/**
 * Half widths of the box in standard errors of the least-squares slope. With normal scatter the two slopes part by
 * about a fifth of one; where the narrow box misses, the wide one is tried, and then every pair is looked at.
 */
const boxWidths = [0.7, 3]

/** Units a day. Null where all readings are on one day. */
export function theilSen(points: readonly Observation[]): number | null {
  const ordered = inOrder(points) ? points : points.toSorted(byDayAndValue)
  const days = new Float64Array(ordered.length)
  const values = new Float64Array(ordered.length)
  for (const [i, { day, value }] of ordered.entries()) {
    days[i] = day
    values[i] = value
  }
  const fit = points.length > fewReadings ? fitLine(points, { sd: 0, worth: 0 }) : null
  if (fit !== null)
    for (const errors of boxWidths) {
      const reach = errors * slopeError(fit)
      const median = medianInBox(days, values, fit.slope - reach, fit.slope + reach)
      if (median !== null) return median
    }
  return medianOfAll(days, values)
}

/** In order of day, and of value within a day: then readings of one day never stand the wrong way round below. */
const byDayAndValue = (a: Observation, b: Observation): number => a.day - b.day || a.value - b.value

const inOrder = (points: readonly Observation[]): boolean =>
  points.every((point, i) => i === 0 || byDayAndValue(points[i - 1] ?? point, point) <= 0)

/** Looking at every pair. */
function medianOfAll(days: Float64Array, values: Float64Array): number | null {
  const n = days.length
  const slopes = new Float64Array((n * (n - 1)) / 2)
  let pairs = 0
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const apart = (days[j] ?? 0) - (days[i] ?? 0)
      if (apart !== 0) slopes[pairs++] = ((values[j] ?? 0) - (values[i] ?? 0)) / apart
    }
  return pairs === 0 ? null : middle(slopes.subarray(0, pairs), pairs, 0)
}

/** The median of `pairs` slopes of which `below` are smaller than all of these, and the rest larger. Reorders them. */
function middle(slopes: Float64Array, pairs: number, below: number): number {
  const upper = Math.floor(pairs / 2) - below
  // The types of simple-statistics know plain arrays only; it asks for no more than an index.
  const list = slopes as unknown as number[]
  quickselect(list, upper, 0, slopes.length - 1)
  const high = slopes[upper] ?? Number.NaN
  if (pairs % 2 === 1) return high
  let low = Number.NEGATIVE_INFINITY
  for (let i = 0; i < upper; i++) low = Math.max(low, slopes[i] ?? low)
  return (low + high) / 2
}

/** The box method, on readings in order; null where the box missed, or ties make it no use. */
function medianInBox(days: Float64Array, values: Float64Array, low: number, high: number): number | null {
  // For days i < j the slope is under m just where value - m day is less for j than for i: so pairs that stand the
  // wrong way round in that order have slopes under m.
  const order = orderAt(low, days, values)
  const below = inversions(order)
  const slopes = slopesPassed(order, high, days, values)
  const pairs = pairsOnDifferentDays(days)
  const upper = Math.floor(pairs / 2)
  if (slopes === null || below > upper - 1 || below + slopes.length <= upper) return null
  const median = middle(slopes, pairs, below)
  // At the very edge of the box rounding could have put a pair on the wrong side.
  const slack = 1e-9 * (high - low)
  return median > low + slack && median < high - slack ? median : null
}

/**
 * The slopes of all pairs that change places when the order at one slope becomes that at a higher one: those in
 * between. Insertion sort makes just these changes. Null where they are so many that the box is no use.
 */
function slopesPassed(
  order: readonly number[],
  high: number,
  days: Float64Array,
  values: Float64Array,
): Float64Array | null {
  const heights = heightsAt(high, days, values)
  const sorted = [...order]
  const slopes = new Float64Array(Math.ceil(0.3 * order.length ** 2))
  let found = 0
  for (let k = 1; k < sorted.length; k++) {
    const j = sorted[k] ?? 0
    const height = heights[j] ?? 0
    let at = k
    for (; at > 0; at--) {
      const i = sorted[at - 1] ?? 0
      if ((heights[i] ?? 0) <= height) break
      if (found === slopes.length) return null
      slopes[found++] = ((values[j] ?? 0) - (values[i] ?? 0)) / ((days[j] ?? 0) - (days[i] ?? 0))
      sorted[at] = i
    }
    sorted[at] = j
  }
  return slopes.subarray(0, found)
}

/** value - slope day of each reading. */
function heightsAt(slope: number, days: Float64Array, values: Float64Array): Float64Array {
  const heights = new Float64Array(days.length)
  for (let i = 0; i < days.length; i++) heights[i] = (values[i] ?? 0) - slope * (days[i] ?? 0)
  return heights
}

/** The readings in order of value - slope day; equal ones keep their order. */
function orderAt(slope: number, days: Float64Array, values: Float64Array): readonly number[] {
  const heights = heightsAt(slope, days, values)
  return Array.from(heights, (_, i) => i).sort((a, b) => (heights[a] ?? 0) - (heights[b] ?? 0))
}

/** How many pairs of an order stand the wrong way round, counted with a binary indexed tree. */
function inversions(order: readonly number[]): number {
  const n = order.length
  const tree = new Uint32Array(n + 1)
  let count = 0
  for (const [seen, i] of order.entries()) {
    let notAfter = 0
    for (let k = i + 1; k > 0; k -= k & -k) notAfter += tree[k] ?? 0
    count += seen - notAfter
    for (let k = i + 1; k <= n; k += k & -k) tree[k] = (tree[k] ?? 0) + 1
  }
  return count
}

/** `days` in order. */
function pairsOnDifferentDays(days: Float64Array): number {
  let pairs = 0
  let same = 0
  for (let j = 1; j < days.length; j++) {
    same = days[j] === days[j - 1] ? same + 1 : 0
    pairs += j - same
  }
  return pairs
}
