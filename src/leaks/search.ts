/**
 * The proof that nothing slipped: finished files of the editions that leave the practitioner's machine are searched
 * for everything that identifies anyone in the casebook. It knows nothing of how the pages were made.
 */
import type { PlainDate } from '../hoof/dates.ts'
import type { OwnWords } from '../identity/common-words.ts'
import { type Finder, type Found, finderOf } from '../identity/finder.ts'
import { type FormerFound, type FormerNames, formerFinder } from '../identity/former-names.ts'
import type { HorseIdentity, IdentifierList } from '../identity/identifiers.ts'
import { pageMonth } from '../identity/month-names.ts'
import { patternsIn } from '../identity/patterns.ts'
import { withoutUnseen, wordsOf } from '../identity/words.ts'
import { findDates, findExactDates } from '../identity/written-dates.ts'
import { hintFor } from './hint.ts'
import { pictureParts } from './picture-metadata.ts'
import {
  attributeText,
  lineFinder,
  type Plain,
  plainText,
  shownText,
  withoutData,
  withoutTags,
} from './plain-text.ts'
import { printable, printableRuns } from './printable.ts'

export interface ScanFile {
  /** Path within `site/`. A locked page's plain text is given under the path of the page. */
  readonly path: string
  readonly bytes: Uint8Array
  /**
   * Who may read it. `owner`: what is that owner's may stand in it, and dates may.
   * `everyone`: nothing of the casebook may stand in it.
   */
  readonly reader: { readonly kind: 'owner'; readonly owner: string } | { readonly kind: 'everyone' }
  /** Stretches that are not text, as places in the file: the locked part of an owner's page. */
  readonly sealed?: readonly { readonly start: number; readonly end: number }[]
  /** Random or computed texts of the tool's own, in path and page: a token, a checksum. Names may stand there by chance. */
  readonly random?: readonly string[]
}

export interface LeakHit {
  readonly path: string
  /** One-based; null in a file that is not text. */
  readonly line: number | null
  readonly column: number | null
  /** Byte offset within a picture or other binary file; null in text. */
  readonly offset: number | null
  /** What was found: `name of a horse`. */
  readonly kind: string
  /** As it stands in the file. */
  readonly text: string
  /** Whose it is, for the hint. */
  readonly horse: string | null
  readonly hint: string
}

export interface LeakSearch {
  scan(file: ScanFile): readonly LeakHit[]
}

export interface LeakKnowledge {
  readonly list: IdentifierList
  readonly horses: readonly HorseIdentity[]
  readonly own: OwnWords
  /**
   * Texts of the tool's own that stand in pages as they are (style sheets, scripts), and the practice's name,
   * which may show: they are not searched.
   */
  readonly ownTexts: readonly string[]
  /** Names that have left the casebook, known as hashes. */
  readonly former?: FormerNames
}

/** Made once a build; each file is then searched in one walk over its words, however many names there are. */
export function leakSearch(known: LeakKnowledge): LeakSearch {
  const finder = finderOf(known.list.identifiers)
  const dates = knownDates(known.horses)
  const former = formerFinder(known.former ?? [], namesNow(known.list))
  return { scan: (file) => scanBytes(file, file.bytes, { known, finder, former, dates }, null) }
}

const namesNow = ({ identifiers }: IdentifierList): readonly string[] => [
  ...new Set(identifiers.filter(({ kind }) => kind !== 'name of a picture').map(({ text }) => text)),
]

interface Search {
  readonly known: LeakKnowledge
  readonly finder: Finder
  readonly former: (text: string) => readonly FormerFound[]
  readonly dates: KnownDates
}

interface KnownDates {
  readonly days: ReadonlySet<string>
  readonly monthDays: ReadonlySet<string>
  readonly first: PlainDate | null
}

function knownDates(horses: readonly HorseIdentity[]): KnownDates {
  const days = new Set(horses.flatMap((horse) => horse.dates))
  return {
    days,
    monthDays: new Set([...days].map((date) => date.slice(5))),
    first: [...days].sort()[0] ?? null,
  }
}

type Place = Pick<LeakHit, 'line' | 'column' | 'offset'>

function scanBytes(file: ScanFile, bytes: Uint8Array, search: Search, within: Place | null): LeakHit[] {
  const inPath = within === null ? scanPath(file, search) : []
  const picture = pictureParts(bytes)
  if (picture) {
    const blocks = picture.metadata.map((found) =>
      hit(file, within ?? { line: null, column: null, offset: found.offset }, {
        kind: 'metadata of a picture',
        text: `${picture.type} block ${found.name}`,
        horse: null,
      }),
    )
    const strings = picture.metadata.flatMap((found) =>
      scanStrings(file, found.bytes, search, within, found.offset),
    )
    return [...inPath, ...blocks, ...strings, ...longStrings(file, bytes, search, within)]
  }
  if (isBinary(bytes)) return [...inPath, ...scanStrings(file, bytes, search, within, 0)]
  return [...inPath, ...scanText(file, Buffer.from(bytes).toString('utf8'), search, within)]
}

const isBinary = (bytes: Uint8Array): boolean => bytes.subarray(0, 4096).includes(0)

function scanPath(file: ScanFile, search: Search): LeakHit[] {
  const nowhere = { line: null, column: null, offset: null }
  const { text } = plainText(`/${withoutRandom(file.path, file)}/`)
  const names = allowed(search.finder.find(text), file, search, text).map((found) =>
    hit(file, nowhere, { ...about(found, file), kind: `${about(found, file).kind}, in the file's own name` }),
  )
  const dates = file.reader.kind === 'everyone' ? dateFinds(text, search) : []
  const former = file.reader.kind === 'everyone' ? search.former(text) : []
  return [
    ...names,
    ...former.map(({ text: name }) =>
      hit(file, nowhere, { kind: "former name, in the file's own name", text: name, horse: null }),
    ),
    ...dates.map(({ text: date }) =>
      hit(file, nowhere, { kind: "date, in the file's own name", text: date, horse: null }),
    ),
  ]
}

/** Data URIs are pulled out, decoded and searched as files of their own; the rest is searched as text. */
function scanText(file: ScanFile, given: string, search: Search, within: Place | null): LeakHit[] {
  const { text, embedded } = withoutData(blanked(given, file, search))
  const hits: LeakHit[] = []
  const seen = new Set<string>()
  const locate = lineFinder(given)
  const plain = plainText(text)
  const take = (reading: Plain, finds: readonly Find[]) => {
    for (const found of finds) {
      const at = reading.origin(found.start)
      const key = `${at}|${found.what.kind}`
      if (seen.has(key)) continue
      seen.add(key)
      hits.push(hit(file, within ?? { ...locate(at), offset: null }, found.what))
    }
  }
  take(plain, findsOf(plain, file, search))
  const bare = withoutTags(plain)
  if (bare !== plain) take(bare, namesIn(bare, file, search))
  for (const reading of [shownText(plain), attributeText(plain)])
    take(reading, shownFinds(reading, file, search))
  const inside = embedded.flatMap(({ at, bytes }) =>
    scanBytes(file, bytes, search, within ?? { ...locate(at), offset: null }),
  )
  return [...hits, ...inside]
}

type What = Pick<LeakHit, 'kind' | 'text' | 'horse'>

interface Find {
  readonly start: number
  readonly what: What
}

/** What the program prints of its own, word by word: the address of a standard. */
function isOwnText(text: string, { written }: OwnWords): boolean {
  const words = wordsOf(text)
  return (
    words.length > 1 && words.every(({ raw }, i) => i === 0 || written.has(`${words[i - 1]?.raw} ${raw}`))
  )
}

/** What people read is searched for telephone numbers, and for what identifies by its shape alone. */
function shownFinds(plain: Plain, file: ScanFile, search: Search): Find[] {
  const seen = withoutUnseen(plain.text)
  const numbers = allowed(search.finder.findNumbers(seen.text), file, search, seen.text).map(
    (found): Find => ({ start: found.start, what: about(found, file) }),
  )
  if (file.reader.kind !== 'everyone') return numbers
  const isOthers = ({ text }: { readonly text: string }) => !isOwnText(text, search.known.own)
  const former = search
    .former(plain.text)
    .map(({ start, text }): Find => ({ start, what: { kind: 'former name', text, horse: null } }))
  const patterns = patternsIn(seen.text)
    .filter(isOthers)
    .map(({ start, kind, text }): Find => ({ start, what: { kind, text, horse: null } }))
  const dates = findDates(seen.text)
    .filter(isOthers)
    .map(({ start, text }): Find => ({ start, what: { kind: 'date', text, horse: null } }))
  const places = [...numbers, ...patterns, ...dates].map((found) => ({
    ...found,
    start: seen.origin(found.start),
  }))
  return [...places, ...former]
}

function namesIn(plain: Plain, file: ScanFile, search: Search): Find[] {
  const names = allowed(search.finder.find(plain.text), file, search, plain.text)
  return names.map((found) => ({ start: found.start, what: about(found, file) }))
}

function findsOf(plain: Plain, file: ScanFile, search: Search): Find[] {
  const names = namesIn(plain, file, search)
  if (file.reader.kind !== 'everyone') return names
  const dates = dateFinds(plain.text, search).map(
    ({ start, text }): Find => ({ start, what: { kind: 'date', text, horse: null } }),
  )
  return [...names, ...dates]
}

/** Dates of the casebook in any written form, and any full date since its first day: forecasts count too. */
function dateFinds(text: string, { dates }: Search): { start: number; text: string }[] {
  return findExactDates(text).filter((found) => {
    if (found.monthDay !== null) return dates.monthDays.has(found.monthDay)
    return found.dates.some((date) => dates.days.has(date) || (dates.first !== null && date >= dates.first))
  })
}

/** Leaves out what is the reader's own, and everyday words where the tool itself says them. */
function allowed(found: readonly Found[], file: ScanFile, { known }: Search, text: string): Found[] {
  return found.filter((one) => {
    if (file.reader.kind === 'owner') {
      const { owner } = file.reader
      // What is nobody's horse's or owner's is of the practice's own people and contacts, whom owners know.
      if (one.identifiers.some((it) => it.owner === owner || (it.owner === null && it.horse === null)))
        return false
    }
    if (one.identifiers.some(({ watch }) => watch === 'any case')) return true
    if (one.identifiers.every(({ watch }) => watch === 'path')) return true
    const { written } = known.own
    if (one.before !== null && written.has(`${one.before} ${one.text}`)) return false
    if (one.after !== null && written.has(`${one.text} ${one.after}`)) return false
    return !(isMonth(one.text.toLowerCase()) && besideNumber(text, one))
  })
}

const monthOfPages = new RegExp(`^(?:${pageMonth})$`)
const isMonth = (word: string) => monthOfPages.test(word)
const besideNumber = (text: string, { start, end }: Found) =>
  /\d\.?\s{1,2}$/.test(text.slice(Math.max(0, start - 4), start)) ||
  /^\s{1,2}\d/.test(text.slice(end, end + 4))

function about(found: Found, file: ScanFile): What {
  const first = found.identifiers[0]
  const other = file.reader.kind === 'owner' ? ' of another owner' : ''
  return { kind: `${first?.kind ?? 'name'}${other}`, text: found.text, horse: first?.horse ?? null }
}

/** The locked part and the tool's own texts give way to spaces, so that every place stays where it was. */
function blanked(text: string, file: ScanFile, { known }: Search): string {
  let out = text
  for (const { start, end } of file.sealed ?? [])
    out = out.slice(0, start) + ' '.repeat(end - start) + out.slice(end)
  for (const own of known.ownTexts) {
    if (own !== '') out = out.replaceAll(own, ' '.repeat(own.length))
  }
  return withoutRandom(out, file).replace(policyHash, (hash) => ' '.repeat(hash.length))
}

/** A hash in a page's security policy: computed from style sheet or script. */
const policyHash = /sha256-[A-Za-z0-9+/]{43}(?:=|&#x3D;)/g

const withoutRandom = (text: string, { random = [] }: ScanFile): string =>
  random.reduce((out, own) => out.replaceAll(own, ' '.repeat(own.length)), text)

/** Text hidden in bytes, one or two bytes a letter: runs of signs that can be printed. */
function scanStrings(
  file: ScanFile,
  bytes: Uint8Array,
  search: Search,
  within: Place | null,
  from: number,
): LeakHit[] {
  const hits = printable(bytes).flatMap(({ text, at }) =>
    findsOf({ text, origin: (place) => place }, file, search).map(({ start, what }) =>
      hit(file, within ?? { line: null, column: null, offset: from + at(start) }, what),
    ),
  )
  return distinct(hits)
}

/** Within a picture's own bytes only names too long to stand there by chance are searched. */
const longEnough = 6

function longStrings(file: ScanFile, bytes: Uint8Array, search: Search, within: Place | null): LeakHit[] {
  const hits = printableRuns(bytes, longEnough).flatMap(({ text, at: from }) =>
    search.finder
      .find(text)
      .filter((found) => lettersOf(found) >= longEnough && allowed([found], file, search, text).length > 0)
      .map((found) => hit(file, within ?? { line: null, column: null, offset: from }, about(found, file))),
  )
  return distinct(hits)
}

/** How much of a match is the identifier's own: what stands between its words is not counted. */
const lettersOf = ({ identifiers }: Found): number =>
  Math.min(...identifiers.map(({ words }) => words.join('').length))

/** Longer finds come first: a part of one that stands at the same place says no more. */
function distinct(hits: readonly LeakHit[]): LeakHit[] {
  const places = new Set<string>()
  const texts = new Set<string>()
  return hits.filter(({ kind, text, offset, line, column }) => {
    const isNew = !places.has(`${kind}|${offset}|${line}|${column}`) && !texts.has(`${kind}|${text}`)
    places.add(`${kind}|${offset}|${line}|${column}`)
    texts.add(`${kind}|${text}`)
    return isNew
  })
}

function hit(file: ScanFile, place: Place, what: What): LeakHit {
  return { path: file.path, ...place, ...what, hint: hintFor(what) }
}
