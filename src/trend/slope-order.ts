/**
 * Readings in order of how high they stand above a line of a given slope, and how many pairs that order turns round.
 * For readings i < j on different days the slope from one to the other is under m just where value - m day is less for
 * j than for i: so the pairs that stand the wrong way round in the order at m are those whose slopes lie under m.
 */

/** Readings as columns, in order of day, and the arrays that ordering them needs. */
export interface Ordering {
  /** How many readings there are; the arrays may be longer. */
  n: number
  readonly days: Float64Array
  readonly values: Float64Array
  /** value - slope day of each reading. */
  readonly heights: Float64Array
  /** Readings by their place in the columns; in order of height once sorted. */
  readonly order: Uint32Array
  /** Place of each reading in the order. */
  readonly ranks: Uint32Array
  /** Bucket of each reading by its height, and where each bucket begins in the order. */
  readonly buckets: Uint32Array
  readonly starts: Uint32Array
  /** Ranks met so far: a bit each, 32 to a word, and how many there are in each word. */
  readonly met: Uint32Array
  readonly metInWord: Uint32Array
}

const wordsFor = (n: number): number => Math.ceil(n / 32)

/** Room for up to so many readings. */
export const orderingFor = (most: number): Ordering => ({
  n: 0,
  days: new Float64Array(most),
  values: new Float64Array(most),
  heights: new Float64Array(most),
  order: new Uint32Array(most),
  ranks: new Uint32Array(most),
  buckets: new Uint32Array(most),
  starts: new Uint32Array(most + 1),
  met: new Uint32Array(wordsFor(most)),
  metInWord: new Uint32Array(wordsFor(most)),
})

/** Fills `heights` for a slope. */
export function setHeights({ n, days, values, heights }: Ordering, slope: number): void {
  for (let i = 0; i < n; i++) heights[i] = (values[i] ?? 0) - slope * (days[i] ?? 0)
}

/** Sorts `order` by height, equal ones as they stand in the columns: into buckets first, then by insertion. */
export function sortByHeight(ordering: Ordering): void {
  const { n, heights, order, ranks } = ordering
  sortIntoBuckets(ordering)
  for (let k = 1; k < n; k++) {
    const j = order[k] ?? 0
    const height = heights[j] ?? 0
    let at = k
    for (; at > 0; at--) {
      const i = order[at - 1] ?? 0
      if ((heights[i] ?? 0) <= height) break
      order[at] = i
    }
    order[at] = j
  }
  for (let k = 0; k < n; k++) ranks[order[k] ?? 0] = k
}

/** Half the range that the buckets divide, in mean distances from the mean: the first and last take what lies outside. */
const reach = 4

/** As many buckets of one height as there are readings, so that few readings share one. */
function sortIntoBuckets({ n, heights, order, buckets, starts }: Ordering): void {
  let sum = 0
  for (let i = 0; i < n; i++) sum += heights[i] ?? 0
  const mean = sum / n
  let away = 0
  for (let i = 0; i < n; i++) away += Math.abs((heights[i] ?? 0) - mean)
  const perHeight = n ** 2 / (2 * reach * away)
  starts.fill(0, 0, n + 1)
  for (let i = 0; i < n; i++) {
    const bucket = n / 2 + ((heights[i] ?? 0) - mean) * perHeight
    // Where all heights are one this is not a number, which counts as 0.
    const within = Math.max(0, Math.min(n - 1, bucket)) >>> 0
    buckets[i] = within
    starts[within + 1] = (starts[within + 1] ?? 0) + 1
  }
  for (let k = 1; k < n; k++) starts[k] = (starts[k] ?? 0) + (starts[k - 1] ?? 0)
  for (let i = 0; i < n; i++) {
    const bucket = buckets[i] ?? 0
    const at = starts[bucket] ?? 0
    order[at] = i
    starts[bucket] = at + 1
  }
}

/** How many pairs stand the wrong way round in the order: for each reading, the earlier ones that rank above it. */
export function turnedPairs({ n, ranks, met, metInWord }: Ordering): number {
  const words = wordsFor(n)
  met.fill(0, 0, words)
  metInWord.fill(0, 0, words)
  let turned = 0
  for (let i = 0; i < n; i++) {
    const rank = ranks[i] ?? 0
    const word = rank >>> 5
    const bit = rank & 31
    turned += bitsIn((met[word] ?? 0) >>> bit)
    for (let above = word + 1; above < words; above++) turned += metInWord[above] ?? 0
    met[word] = (met[word] ?? 0) | (1 << bit)
    metInWord[word] = (metInWord[word] ?? 0) + 1
  }
  return turned
}

/** How many bits of a word of 32 are set: counted in pairs, then in fours, then in eights, then added up. */
function bitsIn(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555)
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333)
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}
