/** The other ways to write a name's word: with and without its accents, with `ue` for `ü`, in the plural. */
import { fold } from './words.ts'

const written: readonly (readonly [RegExp, string])[] = [
  [/ä/g, 'ae'],
  [/ö/g, 'oe'],
  [/ü/g, 'ue'],
  [/å/g, 'aa'],
  [/ø/g, 'oe'],
  [/ñ/g, 'ny'],
]
const unwritten: readonly (readonly [RegExp, string])[] = [
  [/ae/g, 'a'],
  [/oe/g, 'o'],
  [/ue/g, 'u'],
  [/aa/g, 'a'],
]

const applied = (word: string, changes: readonly (readonly [RegExp, string])[]) =>
  changes.reduce((out, [from, to]) => out.replace(from, to), word)

/** Folded forms of one word, its own first: `Müller` gives `muller` and `mueller`, `Mueller` the same. */
export function spellingsOf(raw: string): readonly string[] {
  const word = raw.normalize('NFC').toLowerCase()
  const own = fold(word)
  const forms = [own, fold(applied(word, written))]
  // The two letters may be no accent at all (`Joel`): a form that is one letter shorter harms nobody when it is long.
  const plain = fold(applied(word, unwritten))
  if (plain.length >= 4) forms.push(plain)
  return [...new Set(forms)]
}

/** The plural, and the possessive that has lost its apostrophe: `Junos`, `Foxes`, `Murphies`. */
export function pluralsOf(word: string): readonly string[] {
  if (!/^[a-z]{3,}$/.test(word)) return /^\p{L}{3,}$/u.test(word) ? [`${word}s`] : []
  if (/(?:s|x|z|ch|sh)$/.test(word)) return [`${word}es`]
  return /[^aeiou]y$/.test(word) ? [`${word}s`, `${word.slice(0, -1)}ies`] : [`${word}s`]
}
