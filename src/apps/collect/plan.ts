/** What came from a phone, held against the casebook: what is new, what is there already, and what a person has to settle. */
import { createHash } from 'node:crypto'
import type { AddedFile } from '../../build/disk/add-together.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { CasebookFolder, FolderEntry } from '../../casebook/folder.ts'
import type { Practice, YardOrigin } from '../../casebook/model.ts'
import { readHorse } from '../../casebook/read.ts'
import { nearest } from '../../casebook/words.ts'
import { originIn } from '../../casebook/yard-key.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { freePath } from '../../yard/case-file.ts'
import { writtenBy } from '../../yard/label.ts'
import type { ArrivedVisit, Parcel } from '../../yard/unpack.ts'
import { type ChangedLine, changedLines } from './changed-lines.ts'

export interface CollectPlan {
  readonly taken: readonly TakenVisit[]
  /** Stand in the casebook, in this version or a later one; with pictures that were missing and are now added. */
  readonly already: readonly AlreadyThere[]
  readonly toSettle: readonly ToSettle[]
  /** Pictures that no visit names, by the files they came in. */
  readonly strayPictures: readonly string[]
  readonly files: readonly AddedFile[]
}

interface AlreadyThere {
  readonly from: string
  readonly path: string
  readonly pictures: readonly string[]
}

export interface TakenVisit {
  readonly from: string
  readonly path: string
  readonly pictures: readonly string[]
  /** Whether another visit of the day was there. */
  readonly isSecond: boolean
  /** Whether it was changed on its way. */
  readonly isChanged: boolean
  /** Unit and order of feet that it was written with, where the practice now has others. */
  readonly writtenBy: string | null
  /** Errors for which it is kept a draft. */
  readonly problems: readonly Diagnostic[]
  /** What else the reader says of it. */
  readonly remarks: readonly Diagnostic[]
}

export type ToSettle =
  | { readonly kind: 'no horse'; readonly from: string }
  | {
      readonly kind: 'unknown horse'
      readonly from: string
      readonly horse: string
      readonly meant: string | null
    }
  | {
      readonly kind: 'later version'
      readonly from: string
      readonly path: string
      readonly draft: string
      readonly version: number
      readonly there: number
      readonly lines: readonly ChangedLine[]
    }
  | { readonly kind: 'newer in the parcel'; readonly from: string; readonly version: number }

/** A visit of the casebook that came from a draft. */
interface KnownDraft {
  readonly path: string
  readonly version: number
  readonly text: string
}

export interface CollectInto {
  readonly practice: Practice
  readonly horseIds: readonly string[]
  /** The horse of visits whose own is not there; null where none was named. */
  readonly instead: string | null
  readonly today: PlainDate
}

/** The casebook with what is added to it so far. */
interface Filling extends CollectInto {
  readonly casebook: CasebookFolder
  readonly there: ReadonlyMap<string, FolderEntry>
  readonly added: Map<string, AddedFile>
}

export function planCollect(casebook: CasebookFolder, into: CollectInto, parcel: Parcel): CollectPlan {
  const known = knownDrafts(casebook, into.horseIds)
  const there = new Map(casebook.list().map((entry) => [entry.path, entry]))
  const filling: Filling = { ...into, casebook, there, added: new Map() }
  const plan = {
    taken: [] as TakenVisit[],
    already: [] as AlreadyThere[],
    toSettle: [] as ToSettle[],
  }
  const latest = latestOf(parcel.visits)
  for (const visit of parcel.visits) {
    const { from, origin } = visit
    const counts = origin ? latest.get(origin.draft) : visit
    if (counts !== visit) {
      // The same version in another file of the parcel says nothing new.
      const version = counts?.origin?.version ?? 0
      if (origin && version > origin.version)
        plan.toSettle.push({ kind: 'newer in the parcel', from, version })
      continue
    }
    const horse = horseOf(visit, into)
    const before = origin && known.get(origin.draft)
    const open = unsettled(visit, horse, before, into)
    if (open) plan.toSettle.push(open)
    else if (before) plan.already.push(alreadyThere(visit, before.path, parcel, filling))
    else if (horse !== null && isThere(filling, visit, horse))
      plan.already.push(alreadyThere(visit, `${horse}/${visit.date}.md`, parcel, filling))
    else if (horse !== null) plan.taken.push(takeVisit(visit, horse, parcel, filling))
  }
  const named = new Set(parcel.visits.flatMap(({ pictures }) => pictures.map(({ sha256 }) => sha256)))
  const strays = [...parcel.pictures].filter(([sha256]) => !named.has(sha256)).map(([, { from }]) => from)
  return { ...plan, strayPictures: strays, files: [...filling.added.values()] }
}

/** The horse that it names where that is there, else the one that a person named for it. */
const horseOf = ({ horse }: ArrivedVisit, { horseIds, instead }: CollectInto): string | null =>
  horse !== null && horseIds.includes(horse) ? horse : (instead ?? horse)

/** What a person has to settle before it can be taken over; null where nothing is. */
function unsettled(
  { from, origin, text }: ArrivedVisit,
  horse: string | null,
  before: KnownDraft | null | undefined,
  { horseIds }: CollectInto,
): ToSettle | null {
  if (origin && before) {
    if (before.version >= origin.version) return null
    const lines = changedLines(withoutYard(before.text), withoutYard(text))
    return { kind: 'later version', from, path: before.path, ...origin, there: before.version, lines }
  }
  if (horse === null) return { kind: 'no horse', from }
  if (horseIds.includes(horse)) return null
  return { kind: 'unknown horse', from, horse, meant: nearest(horse, horseIds) }
}

function alreadyThere(visit: ArrivedVisit, path: string, parcel: Parcel, filling: Filling): AlreadyThere {
  const missing = picturesFor(path.split('/')[0] ?? '', visit, parcel, filling).files
  for (const file of missing) filling.added.set(file.path, file)
  return { from: visit.from, path, pictures: missing.map((file) => file.path) }
}

function takeVisit(visit: ArrivedVisit, horse: string, parcel: Parcel, filling: Filling): TakenVisit {
  const { added, there, practice } = filling
  const path = freePath(horse, visit.date, new Set([...there.keys(), ...added.keys()]))
  const { files, text } = picturesFor(horse, visit, parcel, filling)
  for (const file of files) added.set(file.path, file)
  const read = judged(filling, { path, text })
  const isChanged = visit.isWhole === false
  const isOurs = visit.writtenBy === null || visit.writtenBy === writtenBy(practice)
  const isSound = read.problems.length === 0 && !isChanged && isOurs
  const pictures = files.map((file) => file.path)
  const bytes = new TextEncoder().encode(isSound ? text : asDraft(text))
  added.set(path, { path, bytes, needs: pictures })
  return {
    from: visit.from,
    path,
    pictures,
    isSecond: path !== `${horse}/${visit.date}.md`,
    isChanged,
    writtenBy: isOurs ? null : visit.writtenBy,
    ...read,
  }
}

/** Of each draft the visit that counts: the latest version, and of one version what came whole. */
function latestOf(visits: readonly ArrivedVisit[]): ReadonlyMap<string, ArrivedVisit> {
  const latest = new Map<string, ArrivedVisit>()
  for (const visit of visits) {
    if (visit.origin === null) continue
    const other = latest.get(visit.origin.draft)
    const isBetter =
      !other?.origin ||
      other.origin.version < visit.origin.version ||
      (other.origin.version === visit.origin.version && other.isWhole === false)
    if (isBetter) latest.set(visit.origin.draft, visit)
  }
  return latest
}

const yardLine = /^yard:[^\S\n]*([0-9a-f]{12}-\d+)[^\n]*$/m

function knownDrafts(casebook: CasebookFolder, horseIds: readonly string[]): ReadonlyMap<string, KnownDraft> {
  const known = new Map<string, KnownDraft>()
  const horses = new Set(horseIds)
  for (const { path, kind } of casebook.list()) {
    if (kind !== 'file' || !/^[^/]+\/\d[^/]*\.md$/.test(path) || !horses.has(path.split('/')[0] ?? ''))
      continue
    const text = plainText(casebook.read(path))
    const origin: YardOrigin | null = originIn(yardLine.exec(text)?.[1] ?? '')
    const before = origin && known.get(origin.draft)
    if (origin && (!before || before.version < origin.version))
      known.set(origin.draft, { path, version: origin.version, text })
  }
  return known
}

const plainText = (bytes: Uint8Array): string => new TextDecoder().decode(bytes).replaceAll('\r\n', '\n')

/** Which version it is of is no difference that a person has to settle. */
const withoutYard = (text: string): string => text.replace(yardLine, 'yard:')

/** A visit that no draft names is there where its day has the same text. */
function isThere({ casebook, there }: Filling, { date, text, origin }: ArrivedVisit, horse: string): boolean {
  const path = `${horse}/${date}.md`
  return origin === null && there.get(path)?.kind === 'file' && plainText(casebook.read(path)) === text
}

/** The pictures of a visit that the casebook lacks. A name that another picture has gets a letter, in the text as well. */
function picturesFor(
  horse: string,
  visit: ArrivedVisit,
  parcel: Parcel,
  { casebook, there, added }: Filling,
): { readonly files: readonly AddedFile[]; readonly text: string } {
  let { text } = visit
  const bytesAt = (path: string) =>
    added.get(path)?.bytes ?? (there.get(path)?.kind === 'file' ? casebook.read(path) : null)
  const isFree = (path: string) => !there.has(path) && !added.has(path)
  const files = visit.pictures.flatMap(({ name, sha256 }): readonly AddedFile[] => {
    const came = parcel.pictures.get(sha256)
    if (!came || !/^[a-z0-9][a-z0-9._-]*$/i.test(name)) return []
    const isSame = (path: string) => {
      const bytes = bytesAt(path)
      return bytes !== null && createHash('sha256').update(bytes).digest('hex') === sha256
    }
    const dot = name.lastIndexOf('.')
    const names = [
      name,
      ...[...'bcdefgh'].map((letter) => `${name.slice(0, dot)}-${letter}${name.slice(dot)}`),
    ]
    const found = names.find((one) => {
      const path = `${horse}/photos/${one}`
      return isFree(path) || isSame(path)
    })
    if (found === undefined) return []
    text = text.replaceAll(`photos/${name}`, `photos/${found}`)
    const path = `${horse}/photos/${found}`
    return isFree(path) ? [{ path, bytes: came.bytes, needs: [] }] : []
  })
  return { files, text }
}

/** What the reader says of the visit in its place. */
function judged(
  { casebook, added, practice, today }: Filling,
  file: { readonly path: string; readonly text: string },
): Pick<TakenVisit, 'problems' | 'remarks'> {
  const bytes = new Map([...added.values()].map((one) => [one.path, one.bytes]))
  bytes.set(file.path, new TextEncoder().encode(file.text))
  const entries = [...bytes].map(
    ([path, { length }]): FolderEntry => ({ path, kind: 'file', size: length, modified: 0 }),
  )
  const folder: CasebookFolder = {
    list: () => [...casebook.list(), ...entries].toSorted((a, b) => (a.path < b.path ? -1 : 1)),
    read: (path) => bytes.get(path) ?? casebook.read(path),
  }
  const { diagnostics } = readHorse(folder, file.path.split('/')[0] ?? '', practice, today)
  const own = diagnostics.filter((one) => one.file === file.path && one.code !== 'draft')
  return {
    problems: own.filter(({ level }) => level === 'error'),
    remarks: own.filter(({ level }) => level !== 'error'),
  }
}

/** The visit kept from every other reader: a `draft` that a person wrote stands, whatever it says it then is `yes`. */
function asDraft(text: string): string {
  const end = text.indexOf('\n---', 3)
  const block = text.slice(0, end)
  const written = /^draft:.*$/m
  return written.test(block)
    ? block.replace(written, 'draft: yes') + text.slice(end)
    : text.replace(/^---[^\S\n]*\n/, (opening) => `${opening}draft: yes\n`)
}
