/**
 * What a person should look at in a sentence before it is published: what the nets find, and what looks like a name to
 * anyone who knows the language. Word lists come with it, so it is imported where it is used.
 */
import type { OwnWords } from './common-words.ts'
import { isEnglish } from './everyday.ts'
import { finderOf } from './finder.ts'
import type { Identifier } from './identifier.ts'
import { initialsIn } from './initials.ts'
import { patternsIn } from './patterns.ts'
import { beginsSentence } from './sentence.ts'
import { isAbbreviation } from './trade-words.ts'
import { withoutUnseen, wordsOf } from './words.ts'
import { findDates } from './written-dates.ts'

export interface Mark {
  readonly start: number
  readonly end: number
  /** As it stands in the text. */
  readonly text: string
  readonly why: 'name' | 'pattern' | 'date' | 'likely name' | 'title' | 'place'
}

/** What the nets know. */
export interface MarkContext {
  readonly identifiers: readonly Identifier[]
  readonly own: OwnWords
}

type Place = Omit<Mark, 'text'>

/** A function that gives every place of a text that names somebody or looks as if it did, in order, none across another. */
export function marker(about: MarkContext): (text: string) => readonly Mark[] {
  const finder = finderOf(about.identifiers)
  const known = knownWords(about.identifiers)
  const names = new Set(about.identifiers.filter(isSomebody).map(({ text }) => text))
  return (text) => {
    const seen = withoutUnseen(text)
    const shaped = [
      ...patternsIn(seen.text).map((found): Place => ({ ...found, why: 'pattern' })),
      ...findDates(seen.text).map((found): Place => ({ ...found, why: 'date' })),
    ].map(({ start, end, why }): Place => ({ start: seen.origin(start), end: seen.origin(end - 1) + 1, why }))
    const places: Place[] = [
      ...shaped,
      ...[...finder.find(text), ...finder.findNumbers(text)].map(
        (found): Place => ({ ...found, why: 'name' }),
      ),
      ...[...names]
        .flatMap((name) => initialsIn(text, name))
        .map((found): Place => ({ ...found, why: 'likely name' })),
      ...placesIn(text),
      ...titledIn(text),
      ...likelyIn(text, about.own, known),
      ...yearsIn(text),
    ]
    return inOrder(text, places)
  }
}

/** The same for one text. */
export const marksIn = (text: string, about: MarkContext): readonly Mark[] => marker(about)(text)

/** The first of the list wins where two begin together and are as long; else the longer. */
function inOrder(text: string, places: readonly Place[]): Mark[] {
  const sorted = [...places].sort((a, b) => a.start - b.start || b.end - a.end)
  const marks: Mark[] = []
  for (const { start, end, why } of sorted) {
    const last = marks.at(-1)
    if (last === undefined || start >= last.end) marks.push({ start, end, text: text.slice(start, end), why })
  }
  return marks
}

const isSomebody = ({ kind }: Identifier) =>
  kind === 'name of a horse' ||
  kind === 'name of an owner' ||
  kind === 'name of a vet' ||
  kind === 'name of a person of the practice'

/** Words of names that are searched by their capital only: at the beginning of a sentence a person must judge. */
const knownWords = (identifiers: readonly Identifier[]): ReadonlySet<string> =>
  new Set(identifiers.flatMap(({ watch, words }) => (watch === 'capital' || watch === 'title' ? words : [])))

const titled =
  /(?<![\p{L}\p{N}])(?:Mr|Mrs|Ms|Mx|Miss|Dr|Prof|Professor|Sir|Lady|Lord|Rev|Madam|Auntie|Aunt|Uncle|Granny|Nanny|Captain|Major|Colonel)\.?[\s\u00A0]+\p{Lu}[\p{L}\p{M}'’-]*(?:[\s\u00A0]+\p{Lu}[\p{L}\p{M}'’-]+)?/gu

function* titledIn(text: string): Generator<Place> {
  for (const { 0: found, index } of text.matchAll(titled))
    yield { start: index, end: index + found.length, why: 'title' }
}

const placed =
  /(?<![\p{L}\p{N}])\p{Lu}[\p{L}\p{M}'’-]*(?:[\s\u00A0]+\p{Lu}[\p{L}\p{M}'’-]*)*[\s\u00A0]+(?:[Ss]tables?|[Ff]arm|[Ll]ivery|[Hh]ospital|[Ss]how|[Yy]ard|[Ss]tud|[Ee]questrian|[Cc]entre|[Cc]enter|[Cc]linic|[Mm]anor|[Gg]range|[Ll]odge|[Rr]anch|Barn|House|Lane|Road|Street|Mill|Hall|Park|Green|Hill|Common|Vets|Surgery|Practice|School|Club|Arena|Village)(?![\p{L}\p{N}])/gu

function* placesIn(text: string): Generator<Place> {
  for (const { 0: found, index } of text.matchAll(placed)) {
    const [first = '', ...more] = found.split(/[\s\u00A0]+/)
    // A first word that is only there for the sentence says nothing: `The farm`, `Her yard`.
    if (more.length === 1 && beginsSentence(text, index) && isEnglish(first.toLowerCase())) continue
    yield { start: index, end: index + found.length, why: 'place' }
  }
}

/** Capitals inside a sentence, and tags, that are no word of the language, of the trade or of the program. */
function* likelyIn(text: string, own: OwnWords, known: ReadonlySet<string>): Generator<Place> {
  for (const { raw, folded, start, end } of wordsOf(text)) {
    const place: Place = { start, end, why: 'likely name' }
    if (text[start - 1] === '#' && /\p{L}/u.test(raw) && text[start - 2] !== '#') {
      yield { ...place, start: start - 1 }
      continue
    }
    if (!/^\p{Lu}/u.test(raw)) continue
    const begins = beginsSentence(text, start)
    if (known.has(folded)) yield place
    else if (raw === raw.toUpperCase() && (raw.length < 4 || isAbbreviation(raw))) continue
    else if (!isWord(folded, own) || (!begins && raw.length > 1 && isOddCapital(text, raw, end))) yield place
  }
}

const isWord = (folded: string, own: OwnWords): boolean => {
  if (isEnglish(folded) || own.single.has(folded) || isAbbreviation(folded)) return true
  // Endings that the list leaves out: plurals of rare words, `n't` and the like.
  return /s$/.test(folded) && isEnglish(folded.slice(0, -1))
}

/** An everyday word with a capital, inside a sentence, before another capital: `the Long Meadow`. */
const isOddCapital = (text: string, raw: string, end: number): boolean =>
  raw !== raw.toUpperCase() && /^[\s\u00A0]\p{Lu}\p{Ll}/u.test(text.slice(end, end + 3))

/** A year alone is no date, but with what is known it may tell one. */
function* yearsIn(text: string): Generator<Place> {
  for (const { index } of text.matchAll(
    /(?<![\p{L}\p{N}.,/-])(?:19[5-9]|20[0-4])\d(?![\p{N}%/]|[.,-]\d|\s?(?:mm|cm|m|g|mg|kg|ml|l|iu|IU)(?!\p{L}))/gu,
  )) {
    yield { start: index, end: index + 4, why: 'date' }
  }
}
