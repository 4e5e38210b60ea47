// In a page stands for the quantile of Student's t, whose general method takes 40 kB of its code: the same value, found
// from the library's own distribution function by the Illinois rule (Dowell and Jarratt 1971, from memory).
import cdf from '@stdlib/stats-base-dists-t-cdf'

/** @param p between 0 and 1 */
export default function quantile(p, df) {
  if (!(p > 0 && p < 1 && df > 0)) return Number.NaN
  if (p === 0.5) return 0
  if (p < 0.5) return -quantile(1 - p, df)
  const off = (x) => cdf(x, df) - p
  let [low, high] = [0, 1]
  while (off(high) < 0) [low, high] = [high, high * 2]
  let [atLow, atHigh] = [off(low), off(high)]
  let side = 0
  let before = Number.NaN
  for (;;) {
    const x = (low * atHigh - high * atLow) / (atHigh - atLow)
    const at = off(x)
    if (at === 0 || Math.abs(x - before) <= 1e-14 * x) return x
    before = x
    if (at > 0) {
      ;[high, atHigh] = [x, at]
      if (side === 1) atLow /= 2
      side = 1
    } else {
      ;[low, atLow] = [x, at]
      if (side === -1) atHigh /= 2
      side = -1
    }
  }
}
