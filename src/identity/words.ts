/**
 * Words of a text, so that a name is found as a whole word in whatever form it stands:
 * upper or lower case, with or without accents, with soft hyphens inside, beside an apostrophe or a digit.
 */

/**
 * Signs that stand inside a word and cannot be seen: what Unicode lets a program leave out (soft hyphen, zero-width
 * signs, fillers, variation selectors), format characters (direction marks), and the stroke that only stretches Arabic.
 */
const unseen = '\\p{Default_Ignorable_Code_Point}\\p{Cf}\u0640'
const unseenSigns = new RegExp(`[${unseen}]`, 'gu')
const anyUnseen = new RegExp(`[${unseen}]`, 'u')
const wordPattern = `[\\p{L}\\p{M}${unseen}]+|\\p{N}+`
const plainWord = /^[a-z]+$/
const plainAnyCase = /^[A-Za-z]+$/

const letters: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ł: 'l',
  þ: 'th',
  ı: 'i',
}

/** A word without case, accents and unseen signs: `Zoë` and `ZOE` give `zoe`. */
export function fold(word: string): string {
  if (plainWord.test(word)) return word
  if (plainAnyCase.test(word)) return word.toLowerCase()
  return word
    .replace(unseenSigns, '')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøđðłþı]/g, (letter) => letters[letter] ?? letter)
}

export interface Word {
  readonly raw: string
  readonly folded: string
  readonly start: number
  readonly end: number
}

/** Walks the words of a text from any place on, without keeping them. */
export interface WordWalk {
  /** The first word at or after `from`; null when there is none. */
  next(from: number): Word | null
}

/** Letters and digits part a word: `juno2` is `juno` and `2`. */
export function walkWords(text: string): WordWalk {
  const pattern = new RegExp(wordPattern, 'gu')
  return {
    next(from) {
      pattern.lastIndex = from
      const match = pattern.exec(text)
      if (!match) return null
      const raw = match[0]
      return { raw, folded: fold(raw), start: match.index, end: match.index + raw.length }
    },
  }
}

/** The folded words of a short text: `St. Anne's` gives `st`, `anne`, `s`. */
export function foldedWords(text: string): string[] {
  const walk = walkWords(text)
  const words: string[] = []
  for (let word = walk.next(0); word !== null; word = walk.next(word.end)) {
    if (word.folded !== '') words.push(word.folded)
  }
  return words
}

/** Every word of a text in order. */
export function wordsOf(text: string): Word[] {
  const walk = walkWords(text)
  const words: Word[] = []
  for (let word = walk.next(0); word !== null; word = walk.next(word.end)) words.push(word)
  return words
}

/** A text without the signs that cannot be seen, and where each place of it was. */
export function withoutUnseen(text: string): { text: string; origin(at: number): number } {
  if (!anyUnseen.test(text)) return { text, origin: (at) => at }
  const places: number[] = []
  let out = ''
  for (let at = 0; at < text.length; ) {
    const sign = String.fromCodePoint(text.codePointAt(at) ?? 0)
    if (!anyUnseen.test(sign)) {
      for (let i = 0; i < sign.length; i++) places.push(at + i)
      out += sign
    }
    at += sign.length
  }
  return { text: out, origin: (at) => places[at] ?? text.length }
}
