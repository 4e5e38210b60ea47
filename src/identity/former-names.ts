/**
 * Names of horses and owners that have left the casebook, kept as salted hashes only: they are still searched for, and
 * the file that keeps them tells nobody who they were.
 */
import { createHash } from 'node:crypto'
import { isEveryday } from './everyday.ts'
import { beginsSentence } from './sentence.ts'
import { foldedWords, type Word, walkWords } from './words.ts'

export interface FormerForm {
  readonly salt: string
  /** How many words the hashed names have. */
  readonly words: number
  /** Sorted, each once. */
  readonly hashes: readonly string[]
}

/** Sorted by salt and number of words. Files of two computers may each have a salt of its own. */
export type FormerNames = readonly FormerForm[]

/** Long enough that no two names of a lifetime share one. */
const hashLength = 24

const hashOf = (folded: string, salt: string): string =>
  createHash('sha256').update(`${salt}\n${folded}`).digest('hex').slice(0, hashLength)

/** A name's words as a whole, and each of its parts that is no everyday word. */
function formsOf(name: string): readonly string[] {
  const words = foldedWords(name)
  const parts =
    words.length > 1
      ? words.filter((word) => word.length >= 3 && !/^\d+$/.test(word) && !isEveryday(word))
      : []
  const whole = words.length === 1 && [...(words[0] ?? '')].length < 3 ? [] : [words.join(' ')]
  return [...new Set([...whole, ...parts])].filter((form) => form !== '')
}

const countOf = (folded: string) => folded.split(' ').length

/**
 * What is known, and the names of today with it, so that they are still searched for once they are gone.
 * @param salt makes a salt, asked for where there is none yet
 */
export function withFormer(known: FormerNames, current: readonly string[], salt: () => string): FormerNames {
  const forms = [...new Set(current.flatMap(formsOf))]
  if (forms.length === 0) return known
  const own = known[0]?.salt ?? salt()
  const rows = forms.map((form) => ({ salt: own, words: countOf(form), hash: hashOf(form, own) }))
  return gathered([...rowsOf(known), ...rows])
}

interface Row {
  readonly salt: string
  readonly words: number
  readonly hash: string
}

const rowsOf = (known: FormerNames): Row[] =>
  known.flatMap(({ salt, words, hashes }) => hashes.map((hash) => ({ salt, words, hash })))

function gathered(rows: readonly Row[]): FormerNames {
  const forms = new Map<string, { salt: string; words: number; hashes: Set<string> }>()
  for (const { salt, words, hash } of rows) {
    const key = `${salt} ${words}`
    const form = forms.get(key) ?? { salt, words, hashes: new Set<string>() }
    form.hashes.add(hash)
    forms.set(key, form)
  }
  return [...forms.values()]
    .sort((a, b) => (a.salt < b.salt ? -1 : a.salt > b.salt ? 1 : a.words - b.words))
    .map(({ hashes, ...form }) => ({ ...form, hashes: [...hashes].sort() }))
}

const head = `# Names that were in this casebook once, as hashes: the portfolio is still searched for them.
# Never publish this file. Two copies are merged by keeping the lines of both.
`
const line = /^- ([0-9a-f]{8,64}) ([1-9]) ([0-9a-f]{24})$/

/** The file `former-names.yaml`: a line a name, sorted, so that two copies merge by their lines. */
export const printFormer = (known: FormerNames): string =>
  head +
  rowsOf(known)
    .map(({ salt, words, hash }) => `- ${salt} ${words} ${hash}\n`)
    .join('')

/** The file read back. Lines that are neither a name nor a remark are given as they stand, for a warning. */
export function parseFormer(text: string): { former: FormerNames; strange: readonly string[] } {
  const rows: Row[] = []
  const strange: string[] = []
  for (const one of text.split(/\r?\n/)) {
    const [, salt = '', words = '', hash = ''] = line.exec(one.trimEnd()) ?? []
    if (hash !== '') rows.push({ salt, words: Number(words), hash })
    else if (one.trim() !== '' && !one.startsWith('#')) strange.push(one)
  }
  return { former: gathered(rows), strange }
}

export interface FormerFound {
  readonly start: number
  readonly end: number
  readonly text: string
}

/** More than this between two words and they no longer make one name. */
const widestGap = 3

/**
 * Finds names that are known as hashes only. Those that are in the casebook now are left out: they are searched for in
 * clear, with all that is known of whose they are. An everyday word counts by its capital inside a sentence.
 */
export function formerFinder(
  known: FormerNames,
  current: readonly string[],
): (text: string) => readonly FormerFound[] {
  const today = [...new Set(current.flatMap(formsOf))]
  const forms = known.map(({ salt, words, hashes }) => {
    const now = new Set(today.filter((form) => countOf(form) === words).map((form) => hashOf(form, salt)))
    return { salt, words, hashes: new Set(hashes.filter((hash) => !now.has(hash))) }
  })
  const most = Math.max(0, ...forms.filter(({ hashes }) => hashes.size > 0).map(({ words }) => words))
  // The same words stand in every page.
  const seen = new Map<string, boolean>()
  const isFormer = (folded: string, words: number): boolean => {
    const before = seen.get(folded)
    if (before !== undefined) return before
    const is = forms.some((form) => form.words === words && form.hashes.has(hashOf(folded, form.salt)))
    seen.set(folded, is)
    return is
  }
  return (text) => {
    if (most === 0) return []
    const found: FormerFound[] = []
    const walk = walkWords(text)
    for (let first = walk.next(0); first !== null; ) {
      const end = longest(text, first, most, walk.next, isFormer)
      if (end !== null) found.push({ start: first.start, end, text: text.slice(first.start, end) })
      first = walk.next(end ?? first.end)
    }
    return found
  }
}

/** Where the longest name ends that begins with this word; null for none. */
function longest(
  text: string,
  first: Word,
  most: number,
  next: (from: number) => Word | null,
  isFormer: (folded: string, words: number) => boolean,
): number | null {
  const isUpper = /^\p{Lu}/u.test(first.raw)
  let end: number | null = null
  if (first.folded.length >= 3 && isFormer(first.folded, 1)) {
    if (!isEveryday(first.folded) || (isUpper && !beginsSentence(text, first.start))) end = first.end
  }
  // A name of several words is written with capitals, or it is none.
  if (!isUpper) return end
  let folded = first.folded
  let last = first
  for (let words = 2; words <= most; words++) {
    const word = next(last.end)
    if (word === null || word.start - last.end > widestGap) break
    folded += ` ${word.folded}`
    last = word
    if (isFormer(folded, words)) end = word.end
  }
  return end
}
