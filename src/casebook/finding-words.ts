/** The words of a finding: what, where and how bad, as people write them and as the vocabulary has them. */
import { findingAliases, findingMeanings, grades, places } from '../hoof/findings.ts'
import type { Finding } from './model.ts'
import { normal } from './words.ts'

/** The practice's own finding names, with their meaning. */
type Terms = Readonly<Record<string, string>>

/** Words of a line that are tried as finding, place and grade. */
const mostWords = 12

/**
 * The line as it should be, where its words are a known finding, a known place and a grade, with commas or other marks
 * between or none, in whatever order: `flare medial quarter 2` and `medial quarter, flare, 2`. Null for anything else.
 */
export function findingMeant(line: string, terms: Terms): string | null {
  if (line.length > 80) return null
  const words = normal(line.replace(/[,;:|/]|\s-\s/g, ' ')).split(' ')
  const grade = words.filter((word) => gradeNamed(word) !== null)
  if (grade.length !== 1 || words.length > mostWords) return null
  const others = words.filter((word) => word !== grade[0] && word !== 'grade')
  const halves = others.slice(1).map((_, index): readonly [string, string] => {
    return [others.slice(0, index + 1).join(' '), others.slice(index + 1).join(' ')]
  })
  for (const [one, other] of halves) {
    for (const [what, where] of [
      [one, other],
      [other, one],
    ] as const) {
      const name = findingNamed(what, terms)
      const place = placeNamed(where)
      if (name && place) return `${what}, ${place}, ${grade[0]}`
    }
  }
  return null
}

/** The vocabulary's name: aliases, plurals, hyphens and the practice's own terms forgiven. */
export function findingNamed(text: string, terms: Terms): string | null {
  const word = normal(text)
  const known = knownFindings(terms)
  for (const form of [
    word,
    word.replace(/s$/, ''),
    word.replace(/es$/, ''),
    `${word}s`,
    word.replace(/es$/, 'is'),
  ]) {
    const own = known.find((name) => normal(name) === form)
    if (own) return own
    if (Object.hasOwn(findingAliases, form)) return findingAliases[form] ?? null
  }
  return null
}

export const knownFindings = (terms: Terms): readonly string[] => [
  ...Object.keys(findingMeanings),
  ...Object.keys(terms),
]

const placeWords = new Map(places.map((place) => [sorted(place), place]))
const otherPlaceWords: Readonly<Record<string, string>> = {
  inner: 'medial',
  inside: 'medial',
  outer: 'lateral',
  outside: 'lateral',
}

function sorted(place: string): string {
  return place.split(' ').sort().join(' ')
}

/** In the vocabulary's own words: `inner` for medial, the other order and a plural are forgiven. */
export const placeInWords = (text: string): string =>
  normal(text)
    .split(' ')
    .map((word) => otherPlaceWords[word] ?? word)
    .join(' ')

export function placeNamed(text: string): string | null {
  const words = placeInWords(text)
  return placeWords.get(sorted(words)) ?? placeWords.get(sorted(words.replace(/s$/, ''))) ?? null
}

export const gradeWord = (text: string): string => normal(text).replace(/^grade /, '')

export function gradeNamed(text: string): Finding['grade'] | null {
  const word = gradeWord(text)
  const named = (grades as readonly string[]).indexOf(word)
  const value = named >= 0 ? named : /^[0-3]$/.test(word) ? Number(word) : -1
  return value === 0 || value === 1 || value === 2 || value === 3 ? value : null
}

/** Words that say the same as a grade and are not its name. */
export const gradeSynonyms: Readonly<Record<string, string>> = {
  none: 'resolved',
  gone: 'resolved',
  healed: 'resolved',
  slight: 'mild',
  light: 'mild',
  minor: 'mild',
  medium: 'moderate',
  marked: 'severe',
}

/** The line as it should be, where its first parts hold a finding, a place and a grade, and its words after them. */
export function lineMeant(parts: readonly string[], terms: Terms): string | null {
  for (let count = 1; count <= Math.min(4, parts.length); count++) {
    const meant = findingMeant(parts.slice(0, count).join(', '), terms)
    if (meant) return [meant, ...parts.slice(count)].join(', ')
  }
  return null
}
