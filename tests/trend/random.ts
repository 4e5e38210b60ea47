/** Seeded random numbers, so that a study gives the same figures every time. */
export interface Random {
  /** Even between 0 and 1. */
  even(): number
  /** Standard normal (Box and Muller). */
  normal(): number
  /** Chi-squared with a whole number of degrees of freedom. */
  chiSquared(nu: number): number
}

/** A small generator of the mix-and-multiply kind with 32 bits of state. */
export function seeded(seed: number): Random {
  let state = seed >>> 0
  const even = (): number => {
    state = (state + 0x9e3779b9) >>> 0
    let mixed = state
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad)
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97)
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32
  }
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even())
  return {
    even,
    normal,
    chiSquared: (nu) => Array.from({ length: nu }, normal).reduce((sum, z) => sum + z * z, 0),
  }
}
