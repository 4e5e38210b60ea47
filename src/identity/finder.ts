/** Finds every identifier of a casebook in a text, in one walk whatever their number. */
import { isEveryday } from './everyday.ts'
import type { Identifier, Watch } from './identifier.ts'
import { bareOf, possibleBare, possibleStems, stemsOf } from './inflected.ts'
import { type Joined, joinedNames, pieces } from './joined.ts'
import { knownNumbers } from './phone-numbers.ts'
import { beginsSentence, hasTitle, readsAsName } from './sentence.ts'
import { bodyWords, isAbbreviation } from './trade-words.ts'
import { unspacedFinder } from './unspaced.ts'
import { wordSieve } from './word-sieve.ts'
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
  /** Places of telephone numbers of the casebook: for text that people read, not for drawings. */
  findNumbers(text: string): readonly Found[]
}

interface Entry {
  readonly words: readonly string[]
  readonly identifiers: Identifier[]
}

/** More than this between two words and they no longer make one name. */
const widestGap = 6
/** What stands between the words of a name: no control characters, as in the bytes of a picture, and no brackets. */
const gapPattern = /^[\s\p{Z}\p{P}\p{Cf}\p{Default_Ignorable_Code_Point}&+~|]*$/u

const asWords: ReadonlySet<Watch> = new Set(['any case', 'capital', 'title', 'path'])

/**
 * Words are looked up by a small fingerprint first, and read in full only where that fits.
 */
export function finderOf(identifiers: readonly Identifier[]): Finder {
  const entries = entriesOf(identifiers.filter(({ watch }) => asWords.has(watch)))
  const byFirst = grouped(entries, ({ words }) => words[0] ?? '')
  const singles = entries.filter(({ words, identifiers: of }) => words.length === 1 && of.some(isName))
  const byStem = grouped(singles, ({ words }) => stemsOf(words[0] ?? ''))
  const byBare = grouped(singles, ({ words }) => bareOf(words[0] ?? '') ?? [])
  const joined = joinedNames(
    singles.map(({ words, identifiers: of }) => ({ word: words[0] ?? '', of: of.filter(isName) })),
  )
  const sieve = wordSieve([...byFirst.keys()], joined.words)
  const unspaced = unspacedFinder(
    entriesOf(identifiers.filter(({ watch }) => watch === 'within')).map(({ words, identifiers: of }) => ({
      form: words[0] ?? '',
      of,
    })),
  )
  const numbers = knownNumbers(
    new Map(
      entriesOf(identifiers.filter(({ watch }) => watch === 'digits')).map(({ words, identifiers: of }) => [
        words[0] ?? '',
        of,
      ]),
    ),
  )
  const bare = (
    of: readonly { start: number; end: number; of: readonly Identifier[] }[],
    text: string,
  ): Found[] =>
    of.map(({ start, end, of: found }) => ({
      start,
      end,
      text: text.slice(start, end),
      identifiers: found,
      before: null,
      after: null,
    }))
  return {
    find(text) {
      const found: Found[] = []
      const walk = walkWords(text)
      for (let at = sieve.next(text, 0); at < text.length; ) {
        const word = walk.next(at)
        if (word === null) break
        const before = found.length
        for (const entry of byFirst.get(word.folded) ?? []) {
          const match = matchAt(text, word, entry, walk.next)
          if (match) found.push(place(text, match, walk.next(match.end)))
        }
        if (found.length === before) {
          for (const match of hiddenIn(word, { byFirst, byStem, byBare, joined })) {
            found.push(place(text, match, walk.next(match.end)))
          }
        }
        at = sieve.next(text, word.end)
      }
      const inRuns = bare(unspaced.find(text), text)
      return inRuns.length === 0 ? found : [...found, ...inRuns].sort((a, b) => a.start - b.start)
    },
    findNumbers: (text) => bare(numbers(text), text),
  }
}

const isName = ({ kind, watch }: Identifier) =>
  watch !== 'path' && watch !== 'title' && kind !== 'name of a picture'

function entriesOf(identifiers: readonly Identifier[]): Entry[] {
  const entries = new Map<string, Entry>()
  for (const identifier of identifiers) {
    const key = identifier.words.join(' ')
    const entry = entries.get(key)
    if (entry) entry.identifiers.push(identifier)
    else entries.set(key, { words: identifier.words, identifiers: [identifier] })
  }
  return [...entries.values()]
}

/** By one key or several; those of more words first. */
function grouped(
  entries: readonly Entry[],
  keys: (entry: Entry) => string | readonly string[],
): ReadonlyMap<string, readonly Entry[]> {
  const groups = new Map<string, Entry[]>()
  for (const entry of entries) {
    for (const key of [keys(entry)].flat()) {
      const list = groups.get(key)
      if (list) list.push(entry)
      else groups.set(key, [entry])
    }
  }
  for (const list of groups.values()) list.sort((a, b) => b.words.length - a.words.length)
  return groups
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
    if (!gapPattern.test(text.slice(end, word.start))) return null
    words.push(word)
    end = word.end
  }
  const identifiers = entry.identifiers.filter(({ watch }) => {
    if (watch === 'any case') return true
    if (watch === 'path') return isPathPart(text, words)
    if (hasTitle(text, first.start)) return true
    return watch === 'capital' && isNamed(text, words)
  })
  return identifiers.length === 0 ? null : { start: first.start, end, identifiers }
}

const isUpper = (raw: string) => /^\p{Lu}/u.test(raw)

/** An everyday word is a name by its capital, unless the capital is due to where it stands. */
function isNamed(text: string, words: readonly Word[]): boolean {
  const [first] = words
  if (first === undefined) return false
  const end = words.at(-1)?.end ?? first.end
  if (words.length > 1)
    return words.every(({ raw }) => isUpper(raw) || /^\d/.test(raw)) || isSlug(text, words)
  const { raw, start, folded } = first
  if (!isUpper(raw)) return false
  // Two capitals are an abbreviation; three and more may be a name that is shouted, among words that are not.
  if (raw === raw.toUpperCase() && (raw.length === 2 || isAbbreviation(raw))) return false
  if (isOfCalendar(text, first)) return false
  if (!beginsSentence(text, start) || (raw.length === 2 && !isEveryday(folded))) return true
  if (bodyWords.has(folded)) return false
  return (
    readsAsName(text, end) ||
    (raw === raw.toUpperCase() && !/^[\s,]+\p{Lu}{2}/u.test(text.slice(end, end + 8)))
  )
}

/** `in May`, `14 May`, `May 2027`: the month. */
function isOfCalendar(text: string, { folded, start, end }: Word): boolean {
  if (
    !/^(?:january|february|march|april|may|june|july|august|september|october|november|december)$/.test(
      folded,
    )
  )
    return false
  const before = text.slice(Math.max(0, start - 14), start)
  return (
    /(?:\d(?:st|nd|rd|th)?|\b(?:in|since|until|till|by|from|this|last|next|early|mid|late|during|throughout|through))[\s-]{1,2}$/i.test(
      before,
    ) || /^\s{1,2}['’]?\d/.test(text.slice(end, end + 4))
  )
}

/** `morning_star`, `../morning-star/`. */
function isSlug(text: string, words: readonly Word[]): boolean {
  const gaps = words.slice(1).map((word, i) => text.slice(words[i]?.end, word.start))
  return (
    gaps.every((gap) => /^[_.%+]$/.test(gap)) || (gaps.every((gap) => gap === '-') && isPathPart(text, words))
  )
}

/** `/may/`, `may/index.html`, `href="may"`: a part of a path, whole. Its words stand as in the id. */
function isPathPart(text: string, words: readonly Word[]): boolean {
  const start = words[0]?.start ?? 0
  const end = words.at(-1)?.end ?? start
  if (words.slice(1).some((word, i) => !/^[-_. ]?$/.test(text.slice(words[i]?.end, word.start)))) return false
  const before = text[start - 1] ?? ''
  const after = text[end] ?? ''
  // `1/2 plain/flat`, `</star`: a stroke alone is no path.
  if (/[/\\]/.test(before)) return /^[/\\."'?#)]?$/.test(after) && !/[\s<\d]/.test(text[start - 2] ?? '')
  if (/[/\\]/.test(after))
    return (
      /^["'=(\s]?$/.test(before) && /[\p{L}\p{N}._-]/u.test(text[end + 1] ?? '') && isAddress(text, start)
    )
  return (
    /\b(?:href|src|action)\s*=\s*["']?$/i.test(text.slice(Math.max(0, start - 12), start)) &&
    /["'?#\s>]/.test(after)
  )
}

/** `star/index.html` at the beginning of a text or a value, or with more strokes or a full stop to come. */
function isAddress(text: string, start: number): boolean {
  const rest = /^[^\s"'<>)]*/.exec(text.slice(start, start + 120))?.[0] ?? ''
  return /["'=(]/.test(text[start - 1] ?? '"') || /[/\\].*[/\\.]/.test(rest)
}

interface Hidden {
  readonly byFirst: ReadonlyMap<string, readonly Entry[]>
  readonly byStem: ReadonlyMap<string, readonly Entry[]>
  readonly byBare: ReadonlyMap<string, readonly Entry[]>
  readonly joined: Joined<Identifier>
}

/** Names within a word: joined to others, with a case ending, behind what is written on to them. */
function hiddenIn(word: Word, { byFirst, byStem, byBare, joined }: Hidden): readonly Match[] {
  const { raw, folded, start, end } = word
  const whole = (identifiers: readonly Identifier[]): Match[] =>
    identifiers.length === 0 ? [] : [{ start, end, identifiers }]
  const camel = pieces(raw)
  // In programs a word with capitals inside it begins small: `safeLadder` names nobody who is called Ladder.
  const isCode = /^\p{Ll}/u.test(raw)
  const inCamel = camel.flatMap((piece) => byFirst.get(piece) ?? []).filter(({ words }) => words.length === 1)
  const named = inCamel.flatMap(({ identifiers }) =>
    identifiers.filter((one) => isName(one) && (one.watch === 'any case' || !isCode)),
  )
  if (named.length > 0) return whole(named)
  const inJoined = joined.within(folded)
  if (inJoined.length > 0) return whole(inJoined)
  for (const stem of possibleStems(folded, raw)) {
    const entries = byStem.get(stem)
    if (entries) return whole(entries.flatMap(({ identifiers }) => identifiers))
  }
  for (const one of [folded, ...possibleBare(folded)]) {
    const entries = byBare.get(one)
    if (entries) return whole(entries.flatMap(({ identifiers }) => identifiers))
  }
  return []
}

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
