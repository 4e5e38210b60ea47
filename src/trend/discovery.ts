/** Which of many movements are to be believed together. */

/**
 * Benjamini & Hochberg 1995 (J. Roy. Statist. Soc. B 57:289): of probabilities under no movement, whether each is among
 * the smallest k with p(k) <= k / m x rate, for the largest such k.
 */
export function discovered(chances: readonly number[], rate: number): readonly boolean[] {
  const sorted = chances.toSorted((a, b) => a - b)
  const last = sorted.findLastIndex((chance, i) => chance <= ((i + 1) / sorted.length) * rate)
  const limit = sorted[last] ?? -1
  return chances.map((chance) => chance <= limit)
}
