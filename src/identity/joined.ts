/** Names within joined words: `teamjuno`, `TeamJuno`, `JunoTheCob`. */
import { isEnglish, isEveryday } from './everyday.ts'

export interface Joined<T> {
  /** The names that are looked for. */
  readonly words: readonly string[]
  /** Whose names a folded word is put together from; none where it is a word of the language. */
  within(folded: string): readonly T[]
}

/** Shorter names begin and end too many words. */
const shortestName = 4
const shortestRest = 3

export function joinedNames<T>(
  names: readonly { readonly word: string; readonly of: readonly T[] }[],
): Joined<T> {
  const known = new Map<string, T[]>()
  for (const { word, of } of names) {
    // Names of other scripts have ways of their own, and everyday words make up other words.
    if (!/^[a-z]+$/.test(word) || word.length < shortestName || isEveryday(word)) continue
    known.set(word, [...(known.get(word) ?? []), ...of])
  }
  const isRest = (rest: string) => known.has(rest) || isEveryday(rest)
  const longest = Math.max(0, ...[...known.keys()].map(({ length }) => length))
  return {
    words: [...known.keys()],
    within(folded) {
      if (folded.length < shortestName + shortestRest || isEnglish(folded)) return []
      for (let cut = folded.length - shortestRest; cut >= shortestRest; cut--) {
        // A word may be as long as a page: only what may be a name is cut out of it.
        const first = cut <= longest ? known.get(folded.slice(0, cut)) : undefined
        if (first !== undefined && isRest(folded.slice(cut))) return first
        const last = folded.length - cut <= longest ? known.get(folded.slice(cut)) : undefined
        if (last !== undefined && isRest(folded.slice(0, cut))) return last
      }
      return []
    },
  }
}

/** The pieces of a word that capitals part, folded: `TeamJuno` gives `team` and `juno`; none of a plain word. */
export function pieces(raw: string): readonly string[] {
  if (!/\p{Ll}\p{Lu}/u.test(raw)) return []
  return raw.split(/(?<=\p{Ll})(?=\p{Lu})/u).map((piece) => piece.toLowerCase())
}
