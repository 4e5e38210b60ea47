/**
 * Ranks of the distribution-free interval for a median, two-sided 95 %: the classical table of the sign test, as in
 * Conover, Practical Nonparametric Statistics (figures from memory), and the binomial distribution of a general-purpose
 * library as a second witness.
 */
import { jStat } from 'jstat'
import { describe, expect, it } from 'vitest'
import { medianInterval, medianOf, medianRank } from '../../src/pages/portfolio/median.ts'

describe('interval for a median from the order of the values', () => {
  it.each([
    [5, 0],
    [6, 1],
    [8, 1],
    [9, 2],
    [10, 2],
    [12, 3],
    [15, 4],
    [20, 6],
    [25, 8],
    [30, 10],
  ])('with %i values takes the %i-th from either end', (n, k) => {
    expect(medianRank(n)).toBe(k)
  })

  it('agrees with the binomial distribution for every size up to 200', () => {
    for (let n = 1; n <= 200; n++) {
      const k = medianRank(n)
      if (k > 0) expect(2 * jStat.binomial.cdf(k - 1, n, 0.5)).toBeLessThanOrEqual(0.05)
      expect(2 * jStat.binomial.cdf(k, n, 0.5)).toBeGreaterThan(0.05)
    }
  })

  it('reads median and ends off the values', () => {
    expect(medianOf([1, 2, 9])).toBe(2)
    expect(medianOf([1, 2, 4, 9])).toBe(3)
    expect(medianInterval([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])).toEqual({ low: 2, high: 9 })
    expect(medianInterval([1, 2, 3])).toBeNull()
  })
})
