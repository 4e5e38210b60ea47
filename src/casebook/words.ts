import { distance } from 'fastest-levenshtein'

/** Text from a file, safe and short enough to stand in a message. */
export function quote(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim()
  return `"${line.length > 60 ? `${line.slice(0, 57)}...` : line}"`
}

/** One spelling for names: lower case, hyphens and underscores as spaces, spaces single. */
export const normal = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s_\u00A0-]+/g, ' ')
    .trim()

/** Letters that may be changed in a word of this length and leave no doubt which word was meant. */
const slipsIn = (length: number): number => (length < 3 ? 0 : length < 5 ? 1 : length < 9 ? 2 : 3)

/**
 * The known name that was surely meant: the one that differs by a slip or two, or by the order of its letters, or the
 * only one that holds the word. Null where none is near or two are equally near: a wrong name is worse than none.
 */
export function nearest(word: string, known: readonly string[]): string | null {
  if (word.length > 60) return null
  const wanted = normal(word)
  let best: string[] = []
  let bestDistance = slipsIn(wanted.length)
  for (const name of new Set(known)) {
    const far = slipsBetween(wanted, normal(name))
    if (far > bestDistance) continue
    if (far < bestDistance) best = []
    best.push(name)
    bestDistance = far
  }
  if (best.length === 0 && wanted.length > 2) best = holding(wanted, known)
  return best.length === 1 ? (best[0] ?? null) : null
}

/** The known names of which `word` is one whole word. */
export const holding = (word: string, known: readonly string[]): string[] =>
  known.filter((name) => normal(name).split(' ').includes(normal(word)))

/** The same letters in another order count as no slip in short names, so that `FL` is LF, and as one in longer ones. */
function slipsBetween(one: string, other: string): number {
  const letters = (text: string) => [...text.replaceAll(' ', '')].sort().join('')
  if (one.length < 30 && letters(one) === letters(other)) return one.length < 3 ? 0 : 1
  return distance(one, other)
}

/** `a, b and c`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** `a, b or c`. */
export const either = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
