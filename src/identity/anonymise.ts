/**
 * Teaching text with every name, private word and date put into words that tell nobody who it was.
 * The horse's alias stands for its name, days since the first visit for dates.
 */
import { withoutControls } from '../casebook/control-characters.ts'
import { dateOfDay, dayOf, daysBetween, type PlainDate } from '../hoof/dates.ts'
import { claims } from './claims.ts'
import { type Finder, type Found, finderOf } from './finder.ts'
import type { Identifier, IdentifierKind } from './identifiers.ts'
import { findDates, type WrittenDate } from './written-dates.ts'

/** The words that stand for what is taken out. */
export interface Stand {
  readonly alias: string
  readonly owner: string
  readonly vet: string
  readonly otherOwner: string
  readonly otherHorse: string
  readonly withheld: string
  readonly day: (day: number) => string
  readonly month: (month: number) => string
  readonly beforeCase: string
}

export interface Anonymous {
  /** Id of the horse that the text is about, and of its owner. */
  readonly horse: string
  readonly owner: string | null
  /** Names for initials. */
  readonly horseName: string
  readonly ownerName: string | null
  readonly identifiers: readonly Identifier[]
  /** Day 0. */
  readonly firstDate: PlainDate
  readonly stand: Stand
}

export type Anonymiser = (text: string) => string

interface Change {
  readonly start: number
  readonly end: number
  readonly by: string
}

/**
 * A function that rewrites any text about this horse, as a page would hold it: without control characters, behind which
 * a name could hide. The same text gives the same words.
 */
export function anonymiser(given: Anonymous): Anonymiser {
  const finder = finderOf(given.identifiers)
  const about = {
    ...given,
    horseName: withoutControls(given.horseName),
    ownerName: given.ownerName === null ? null : withoutControls(given.ownerName),
  }
  return (written) => {
    const text = withoutControls(written)
    const dates = findDates(text).flatMap((date) => dateChange(date, about))
    const names = nameChanges(text, finder, about)
    const initials = initialChanges(text, about)
    return applied(text, [...dates, ...names, ...initials])
  }
}

/** Earlier in the list wins where two changes touch; then the longer one. */
function applied(text: string, changes: readonly Change[]): string {
  const claim = claims(text.length)
  const kept = changes.filter(claim).sort((a, b) => a.start - b.start)
  let out = ''
  let at = 0
  for (const { start, end, by } of kept) {
    out += text.slice(at, start) + (beginsSentence(text, start) ? capital(by) : by)
    at = end
  }
  return out + text.slice(at)
}

/** At the beginning of the text, after the end of a sentence, or first in a line but for the signs of Markdown. */
function beginsSentence(text: string, at: number): boolean {
  if (at === 0 || /^[.!?:]\s$/.test(text.slice(Math.max(0, at - 2), at))) return true
  const back = (from: number, sign: RegExp): number => {
    let start = from
    while (sign.test(text[start - 1] ?? '')) start--
    return start
  }
  const spaces = back(at, /\s/)
  const signs = back(spaces, /[-*#>]/)
  const isFirst = (from: number) => text.slice(back(from, /\s/), from).includes('\n')
  return text.slice(spaces, at).includes('\n') || (signs < spaces && isFirst(signs))
}
const capital = (text: string) => text.slice(0, 1).toUpperCase() + text.slice(1)

function nameChanges(text: string, finder: Finder, about: Anonymous): Change[] {
  return finder
    .find(text)
    .map((found) => {
      const lostApostrophe =
        /s$/i.test(found.text) && found.identifiers.every(({ words, text: of }) => isPossessive(words, of))
      return { start: found.start, end: found.end, by: standFor(found, about) + (lostApostrophe ? "'s" : '') }
    })
    .sort((a, b) => b.end - b.start - (a.end - a.start))
}

/** `junos` of `Juno`. */
const isPossessive = (words: readonly string[], name: string): boolean => {
  const last = words[words.length - 1] ?? ''
  return last.endsWith('s') && !name.toLowerCase().endsWith(last)
}

const withheld: ReadonlySet<IdentifierKind> = new Set([
  'private word',
  'name of a picture',
  'telephone number',
])

function standFor(found: Found, about: Anonymous): string {
  const { stand } = about
  const own = found.identifiers.find(({ horse }) => horse === about.horse)
  const ofOwner = found.identifiers.find(({ horse, owner }) => horse === null && owner === about.owner)
  const first = own ?? ofOwner ?? found.identifiers[0]
  if (first === undefined) return stand.withheld
  if (first.kind === 'name of a vet') return stand.vet
  if (withheld.has(first.kind)) return stand.withheld
  if (own) return stand.alias
  if (ofOwner) return stand.owner
  return first.horse === null ? stand.otherOwner : stand.otherHorse
}

function dateChange(date: WrittenDate, about: Anonymous): Change[] {
  const { stand, firstDate } = about
  const change = (by: string): Change[] => [{ start: date.start, end: date.end, by }]
  const of = (day: number) => (day < 0 ? stand.beforeCase : stand.day(day))
  const [when] = date.dates
  if (when !== undefined) return change(of(daysBetween(firstDate, when)))
  if (date.month !== null) {
    const months = monthCount(date.month) - monthCount(firstDate)
    return change(months < 0 ? stand.beforeCase : stand.month(months + 1))
  }
  // Without a year: the first such day from the first visit on.
  const year = Number(firstDate.slice(0, 4))
  const near = [year, year + 1]
    .map((y) => `${y}-${date.monthDay}`)
    .find((text) => dateOfDay(dayOf(text)) === text && text >= firstDate)
  return change(near === undefined ? stand.withheld : of(daysBetween(firstDate, near)))
}

const monthCount = (date: string) => Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7))

const initialsOf = (name: string) =>
  name
    .split(/[\s-]+/)
    .map((part) => part.slice(0, 1).toUpperCase())
    .filter((letter) => /\p{Lu}/u.test(letter))

/** `J.`, `J's` for a horse called Juno; `A.K.`, `A. K.`, `AK's` for an owner called Ada Kestrel. */
function initialChanges(text: string, about: Anonymous): Change[] {
  const changes: Change[] = []
  const take = (pattern: RegExp, by: string, keep = '') => {
    for (const match of text.matchAll(pattern)) {
      changes.push({ start: match.index, end: match.index + match[0].length, by: by + keep })
    }
  }
  const of = (name: string, by: string) => {
    const letters = initialsOf(name)
    if (letters.length > 1) {
      take(new RegExp(`(?<![\\p{L}.])${letters.map((letter) => `${letter}\\.`).join('\\s?')}`, 'gu'), by)
      take(new RegExp(`(?<![\\p{L}\\p{N}])${letters.join('')}(?=['’]s|[\\s,;:)]|$)`, 'gu'), by)
    }
    for (const letter of letters) {
      take(new RegExp(`(?<![\\p{L}\\p{N}.'’])${letter}(?=['’]s(?!\\p{L}))`, 'gu'), by)
      take(new RegExp(`(?<![\\p{L}\\p{N}.'’])${letter}\\.(?=\\s|$|,)`, 'gu'), by)
    }
  }
  of(about.horseName, about.stand.alias)
  if (about.ownerName !== null) of(about.ownerName, about.stand.owner)
  return changes
}
