import quantile from '@stdlib/stats-base-dists-t-quantile'
import { expect, it } from 'vitest'
import inPage from '../../scripts/t-quantile-in-page.mjs'

it('the quantile of t in a page is that of the library', () => {
  for (const df of [1, 1.5, 2, 3, 4.4, 7, 12, 33.3, 60, 120, 500, 5000]) {
    for (const p of [0.025, 0.1, 0.5001, 0.6, 0.75, 0.9, 0.95, 0.975, 0.985, 0.995, 0.9995]) {
      const [wanted, found] = [quantile(p, df), inPage(p, df)]
      expect(Math.abs(found - wanted) / Math.abs(wanted), `${p}, ${df}`).toBeLessThan(1e-9)
    }
    expect(inPage(0.5, df)).toBe(0)
  }
  for (const [p, df] of [
    [0, 3],
    [1, 3],
    [Number.NaN, 3],
    [0.9, 0],
  ] as const)
    expect(inPage(p, df)).toBeNaN()
})
