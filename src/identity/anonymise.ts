/**
 * Teaching text with every name, private word and date put into words that tell nobody who it was.
 * The horse's alias stands for its name, days since the first visit for dates.
 */
import { withoutControls } from '../casebook/control-characters.ts'
import { dateOfDay, dayOf, daysBetween, type PlainDate } from '../hoof/dates.ts'
import { claims } from './claims.ts'
import { type Finder, type Found, finderOf } from './finder.ts'
import type { Identifier, IdentifierKind } from './identifiers.ts'
import { initialsIn } from './initials.ts'
import { patternsIn } from './patterns.ts'
import { beginsSentence } from './sentence.ts'
import { withoutUnseen } from './words.ts'
import { findDates, type WrittenDate } from './written-dates.ts'

/** The words that stand for what is taken out. */
export interface Stand {
  readonly alias: string
  readonly owner: string
  readonly vet: string
  readonly person: string
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
    const seen = withoutUnseen(text)
    const inSeen = ({ start, end, by }: Change): Change => ({
      start: seen.origin(start),
      end: seen.origin(end - 1) + 1,
      by,
    })
    const patterns = patternsIn(seen.text).map(({ start, end }) => ({ start, end, by: about.stand.withheld }))
    const dates = findDates(seen.text).flatMap((date) => dateChange(date, about))
    const names = nameChanges(text, finder, about)
    const initials = initialChanges(text, about)
    return applied(text, [...patterns.map(inSeen), ...dates.map(inSeen), ...names, ...initials])
  }
}

/** Earlier in the list wins where two changes touch; then the longer one. */
function applied(text: string, changes: readonly Change[]): string {
  const claim = claims(text.length)
  const kept = changes.filter(claim).sort((a, b) => a.start - b.start)
  let out = ''
  let at = 0
  for (const { start, end, by } of kept) {
    out += text.slice(at, start) + (takesCapital(text, start) ? capital(by) : by)
    at = end
  }
  return out + text.slice(at)
}

/** After a semicolon or a dash a capital says nothing, and none is due. */
const takesCapital = (text: string, at: number): boolean =>
  beginsSentence(text, at) && !/[;…–—”»]\s*$/.test(text.slice(Math.max(0, at - 8), at))

const capital = (text: string) => text.slice(0, 1).toUpperCase() + text.slice(1)

function nameChanges(text: string, finder: Finder, about: Anonymous): Change[] {
  const changes = [...finder.find(text), ...finder.findNumbers(text)]
    .map((found) => {
      const lostApostrophe =
        /s$/i.test(found.text) && found.identifiers.every(({ words, text: of }) => isPossessive(words, of))
      return { start: found.start, end: found.end, by: standFor(found, about) + (lostApostrophe ? "'s" : '') }
    })
    .sort((a, b) => b.end - b.start - (a.end - a.start))
  return merged(text, changes)
}

/** Two parts of a name that stand side by side are one: `田中 花子`, each found alone. */
function merged(text: string, changes: readonly Change[]): Change[] {
  const claim = claims(text.length)
  const kept: Change[] = []
  for (const change of changes.filter(claim).sort((a, b) => a.start - b.start)) {
    const last = kept.at(-1)
    if (
      last !== undefined &&
      last.by === change.by &&
      /^[\s\u3000・·]*$/.test(text.slice(last.end, change.start))
    ) {
      kept[kept.length - 1] = { ...last, end: change.end }
    } else kept.push(change)
  }
  return kept
}

/** `junos` of `Juno`. */
const isPossessive = (words: readonly string[], name: string): boolean => {
  const last = words[words.length - 1] ?? ''
  return last.endsWith('s') && !name.toLowerCase().endsWith(last)
}

const withheld: ReadonlySet<IdentifierKind> = new Set([
  'name of the practice',
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
  if (first.kind === 'name of a person of the practice') return stand.person
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
  const ofMonth = (month: string): Change[] => {
    const months = monthCount(month) - monthCount(firstDate)
    return change(months < 0 ? stand.beforeCase : stand.month(months + 1))
  }
  if (date.month !== null) return ofMonth(date.month)
  const year = Number(firstDate.slice(0, 4))
  if (date.inMonth !== null) {
    const inYear = date.inMonth >= Number(firstDate.slice(5, 7)) ? year : year + 1
    return ofMonth(`${inYear}-${String(date.inMonth).padStart(2, '0')}`)
  }
  if (date.monthDay === null) return change(stand.withheld)
  // Without a year: the first such day from the first visit on.
  const near = [year, year + 1]
    .map((y) => `${y}-${date.monthDay}`)
    .find((text) => dateOfDay(dayOf(text)) === text && text >= firstDate)
  return change(near === undefined ? stand.withheld : of(daysBetween(firstDate, near)))
}

const monthCount = (date: string) => Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7))

/** Where initials can mean nobody but the horse or its owner; a person is asked about the others. */
function initialChanges(text: string, about: Anonymous): Change[] {
  const of = (name: string | null, by: string): Change[] =>
    name === null
      ? []
      : initialsIn(text, name).flatMap(({ start, end, isSure }) => (isSure ? [{ start, end, by }] : []))
  return [...of(about.horseName, about.stand.alias), ...of(about.ownerName, about.stand.owner)]
}
