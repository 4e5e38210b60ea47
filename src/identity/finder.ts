import type { Identifier } from './identifiers.ts'
import { type Word, walkWords, wordsOf } from './words.ts'

/** Identifiers found at one place; several may share the same words. */
export interface Found {
  readonly start: number
  readonly end: number
  /** As it stands in the text. */
  readonly text: string
  readonly identifiers: readonly Identifier[]
  /** The words just before and after, as they stand, where they stand close by; else null. */
  readonly before: string | null
  readonly after: string | null
}

export interface Finder {
  /** Every place where an identifier stands, in order; longer ones first where several begin together. */
  find(text: string): readonly Found[]
}

interface Entry {
  readonly words: readonly string[]
  readonly identifiers: Identifier[]
}

/** More than this between two words and they no longer make one name. */
const widestGap = 6

/**
 * One walk over a text whatever the number of identifiers: words are looked up by a small fingerprint first, and
 * read in full only where that fits.
 */
export function finderOf(identifiers: readonly Identifier[]): Finder {
  const byFirst = indexed(identifiers)
  const sieve = sieveOf([...byFirst.keys()])
  return {
    find(text) {
      const found: Found[] = []
      const walk = walkWords(text)
      for (let at = nextLikely(text, 0, sieve); at < text.length; ) {
        const word = walk.next(at)
        if (word === null) break
        for (const entry of byFirst.get(word.folded) ?? []) {
          const match = matchAt(text, word, entry, walk.next)
          if (match) found.push(place(text, match, walk.next(match.end)))
        }
        at = nextLikely(text, word.end, sieve)
      }
      return found
    },
  }
}

const sieveBits = 16

/** FNV-1a over lower-case ASCII, one step. */
const mixed = (hash: number, code: number): number => Math.imul(hash ^ code, 0x01000193)
const seed = 0x811c9dc5
const slot = (hash: number): number => (hash ^ (hash >>> sieveBits)) & ((1 << sieveBits) - 1)

function sieveOf(words: readonly string[]): Uint8Array {
  const sieve = new Uint8Array(1 << sieveBits)
  for (const word of words) {
    let hash = seed
    for (let i = 0; i < word.length; i++) hash = mixed(hash, word.charCodeAt(i))
    sieve[slot(hash)] = 1
  }
  return sieve
}

/**
 * Where the next word begins that may be an identifier's first, from a place that no word lies across. A word with
 * any sign beyond ASCII is always likely: the full reading folds it.
 */
function nextLikely(text: string, from: number, sieve: Uint8Array): number {
  const length = text.length
  let at = from
  while (at < length) {
    const code = text.charCodeAt(at)
    const kind = kindOf(code)
    if (kind === other) {
      at++
      continue
    }
    if (kind === beyond) return at
    const start = at
    let hash = seed
    let next = kind
    while (next === kind) {
      hash = mixed(hash, kind === letter ? text.charCodeAt(at) | 0x20 : text.charCodeAt(at))
      at++
      next = at < length ? kindOf(text.charCodeAt(at)) : other
    }
    if (next === beyond || sieve[slot(hash)] === 1) return start
  }
  return length
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

function indexed(identifiers: readonly Identifier[]): ReadonlyMap<string, readonly Entry[]> {
  const entries = new Map<string, Entry>()
  for (const identifier of identifiers) {
    const key = identifier.words.join(' ')
    const entry = entries.get(key)
    if (entry) entry.identifiers.push(identifier)
    else entries.set(key, { words: identifier.words, identifiers: [identifier] })
  }
  const byFirst = new Map<string, Entry[]>()
  for (const entry of entries.values()) {
    const first = entry.words[0]
    if (first === undefined) continue
    const list = byFirst.get(first)
    if (list) list.push(entry)
    else byFirst.set(first, [entry])
  }
  for (const list of byFirst.values()) list.sort((a, b) => b.words.length - a.words.length)
  return byFirst
}

interface Match {
  readonly start: number
  readonly end: number
  readonly identifiers: readonly Identifier[]
}

function matchAt(text: string, first: Word, entry: Entry, next: (from: number) => Word | null): Match | null {
  const words = [first]
  let end = first.end
  for (const expected of entry.words.slice(1)) {
    const word = next(end)
    if (word === null || word.folded !== expected || word.start - end > widestGap) return null
    words.push(word)
    end = word.end
  }
  const identifiers = entry.identifiers.filter(({ watch }) => {
    if (watch === 'any case') return true
    if (watch === 'capital') return words.every(({ raw }) => raw !== raw.toLowerCase())
    return isPathPart(text, first.start, end)
  })
  return identifiers.length === 0 ? null : { start: first.start, end, identifiers }
}

/** `/may/`, `"may"`, `=may.`: a part of a path, or the whole of a value. */
const isPathPart = (text: string, start: number, end: number): boolean =>
  /[/"'=#\\]/.test(text[start - 1] ?? '/') && /[/."'#?\\]/.test(text[end] ?? '/')

/** As far back as the word before a name is looked for. */
const lookBack = 48

function place(text: string, match: Match, following: Word | null): Found {
  const near = (gap: string) => gap.length <= widestGap && !/[<>]/.test(gap)
  const lead = text.slice(Math.max(0, match.start - lookBack), match.start)
  const previous = wordsOf(lead).at(-1)
  return {
    ...match,
    text: text.slice(match.start, match.end),
    before: previous && near(lead.slice(previous.end)) ? previous.raw : null,
    after: following && near(text.slice(match.end, following.start)) ? following.raw : null,
  }
}
