/** The median and an interval for it that needs no shape of distribution: from the order of the values (sign test). */

/** @param sorted rising, at least one value */
export function medianOf(sorted: readonly number[]): number {
  const middle = sorted.length / 2
  const at = (i: number) => sorted[i] ?? Number.NaN
  return sorted.length % 2 === 1 ? at(Math.floor(middle)) : (at(middle - 1) + at(middle)) / 2
}

/**
 * The narrowest pair of order statistics, counted equally from both ends, that holds the median with at least 95 %:
 * the k-th smallest and k-th largest with 2 P(B < k) <= 0.05, B binomial(n, 1/2). Null below six values, where even
 * the whole range holds it less often.
 * @param sorted rising
 */
export function medianInterval(
  sorted: readonly number[],
): { readonly low: number; readonly high: number } | null {
  const n = sorted.length
  const k = medianRank(n)
  const low = sorted[k - 1]
  const high = sorted[n - k]
  return k === 0 || low === undefined || high === undefined ? null : { low, high }
}

/** The largest k with 2 P(B < k) <= 0.05; 0 where there is none. */
export function medianRank(n: number): number {
  let below = 0
  let term = 0.5 ** n
  let k = 0
  for (let i = 0; i < n; i++) {
    below += term
    if (2 * below > 0.05) break
    k = i + 1
    term *= (n - i) / (i + 1)
  }
  return k
}
