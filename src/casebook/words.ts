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

/** The known name that was probably meant: the nearest by letters changed, if near enough, else one that holds the word. */
export function nearest(word: string, known: readonly string[]): string | null {
  if (word.length > 60) return null
  const wanted = normal(word)
  const letters = (text: string) => [...text.replaceAll(' ', '')].sort().join('')
  let best: string | null = null
  let bestDistance = Math.max(1, Math.round(wanted.length * 0.4)) + 1
  for (const name of known) {
    const candidate = normal(name)
    const far = letters(candidate) === letters(wanted) ? 1 : distance(wanted, candidate)
    if (far < bestDistance) {
      best = name
      bestDistance = far
    }
  }
  return best ?? known.find((name) => wanted.length > 2 && normal(name).split(' ').includes(wanted)) ?? null
}

/** `a, b and c`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** `a, b or c`. */
export const either = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
