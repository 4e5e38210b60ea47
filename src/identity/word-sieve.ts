/** Passes quickly over the words of a text that can be no identifier's, by a fingerprint of each. */

export interface WordSieve {
  /**
   * Where the next word begins that may be an identifier's first, or may hold one; from a place that no word lies
   * across. A word with any sign beyond ASCII is always likely: the full reading folds it.
   */
  next(text: string, from: number): number
}

/** Wide enough that the names of a thousand horses leave it nearly empty. */
const sieveBits = 18

/** FNV-1a over lower-case ASCII, one step. */
const mixed = (hash: number, code: number): number => Math.imul(hash ^ code, 0x01000193)
const seed = 0x811c9dc5
const slot = (hash: number): number => (hash ^ (hash >>> 14)) & ((1 << sieveBits) - 1)

/** As whole words, as beginnings, and as endings read backwards. */
const isWhole = 1
const isHead = 2
const isTail = 4

/** The shortest word that a name is joined to another in. */
const shortestJoined = 7

/** @param joinable names that are also looked for at the beginning and at the end of longer words */
export function wordSieve(words: readonly string[], joinable: readonly string[]): WordSieve {
  const sieve = new Uint8Array(1 << sieveBits)
  const put = (codes: Iterable<number>, as: number) => {
    let hash = seed
    for (const code of codes) hash = mixed(hash, code)
    const at = slot(hash)
    sieve[at] = (sieve[at] ?? 0) | as
  }
  const codesOf = (word: string) => Array.from({ length: word.length }, (_, i) => word.charCodeAt(i))
  for (const word of words) put(codesOf(word), isWhole)
  for (const word of joinable) {
    put(codesOf(word), isHead)
    put(codesOf(word).reverse(), isTail)
  }

  const holdsTail = (text: string, start: number, end: number): boolean => {
    let hash = seed
    for (let at = end - 1; at > start; at--) {
      hash = mixed(hash, text.charCodeAt(at) | 0x20)
      if (((sieve[slot(hash)] ?? 0) & isTail) !== 0) return true
    }
    return false
  }

  return {
    next(text, from) {
      const length = text.length
      let at = from
      while (at < length) {
        const kind = kindOf(text.charCodeAt(at))
        if (kind === other) {
          at++
          continue
        }
        if (kind === beyond) return at
        const start = at
        let hash = seed
        let next = kind
        let seen = 0
        let isLikely = false
        let wasLower = false
        while (next === kind) {
          const code = text.charCodeAt(at)
          hash = mixed(hash, kind === letter ? code | 0x20 : code)
          seen = sieve[slot(hash)] ?? 0
          const isLower = code >= 97
          if ((seen & isHead) !== 0 || (wasLower && !isLower && kind === letter)) isLikely = true
          wasLower = isLower
          at++
          next = at < length ? kindOf(text.charCodeAt(at)) : other
        }
        if (next === beyond || (seen & isWhole) !== 0) return start
        if (kind === letter && (isLikely || (at - start >= shortestJoined && holdsTail(text, start, at))))
          return start
      }
      return length
    },
  }
}

const other = 0
const letter = 1
const digit = 2
const beyond = 3

function kindOf(code: number): number {
  if (code > 127) return beyond
  const lower = code | 0x20
  if (lower >= 97 && lower <= 122) return letter
  return code >= 48 && code <= 57 ? digit : other
}
