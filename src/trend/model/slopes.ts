/** How far the slopes of a practice spread about 0: what a single slope is believed to be before a date is given. */

/** A slope and its standard error, both in smallest changes that matter a month. */
export interface SlopeSeen {
  readonly slope: number
  readonly error: number
}

/** Scale of the half-normal prior on the spread. */
export const slopeScale = 0.25

/**
 * Standard deviation of the true slopes about 0: the most likely one by restricted likelihood (the mean is known) with
 * a half-normal prior of scale 1/4. With no slope seen the prior's own scale.
 */
export function slopeSpread(seen: readonly SlopeSeen[]): number {
  if (seen.length === 0) return slopeScale
  const cost = (spread: number): number => {
    let sum = (spread / slopeScale) ** 2
    for (const { slope, error } of seen) {
      const variance = spread ** 2 + error ** 2
      sum += Math.log(variance) + slope ** 2 / variance
    }
    return sum
  }
  return lowestOn(cost, 0, 8 * slopeScale)
}

const goldenShare = (Math.sqrt(5) - 1) / 2
const scanned = 40

/** The lowest point on a stretch: the best of a scan, then the golden section about it. */
export function lowestOn(cost: (x: number) => number, from: number, to: number): number {
  const step = (to - from) / scanned
  let best = from
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i <= scanned; i++) {
    const value = cost(from + i * step)
    if (value < least) {
      least = value
      best = from + i * step
    }
  }
  let low = Math.max(from, best - step)
  let high = Math.min(to, best + step)
  while (high - low > 1e-6 * (to - from)) {
    const left = high - goldenShare * (high - low)
    const right = low + goldenShare * (high - low)
    if (cost(left) <= cost(right)) high = right
    else low = left
  }
  return (low + high) / 2
}
