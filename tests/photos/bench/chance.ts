/** Seeded chance, so that every run of the bench draws the same. */
export interface Chance {
  /** 0 to 1. */
  uniform(): number
  between(low: number, high: number): number
  /** Around 0. */
  normal(sd: number): number
}

export function chance(seed: number): Chance {
  let state = seed >>> 0
  // mulberry32, in the public domain.
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return {
    uniform,
    between: (low, high) => low + (high - low) * uniform(),
    normal: (sd) => sd * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  }
}
