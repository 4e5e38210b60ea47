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
  readonly already: readonly {
    readonly from: string
    readonly path: string
    readonly pictures: readonly string[]
  }[]
  readonly toSettle: readonly ToSettle[]
  /** Pictures that no visit names, by the files they came in. */
  readonly strayPictures: readonly string[]
  readonly files: readonly AddedFile[]
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

/** Visits of the casebook by the draft that they came from. */
type Known = ReadonlyMap<string, { readonly path: string; readonly version: number; readonly text: string }>

export interface CollectInto {
  readonly practice: Practice
  readonly horseIds: readonly string[]
  /** The horse of visits whose own is not there; null where none was named. */
  readonly instead: string | null
  readonly today: PlainDate
}

export function planCollect(
  casebook: CasebookFolder,
  { practice, horseIds, instead, today }: CollectInto,
  parcel: Parcel,
): CollectPlan {
  const known = knownDrafts(casebook, horseIds)
  const paths = new Map(casebook.list().map((entry) => [entry.path, entry]))
  const added = new Map<string, AddedFile>()
  const plan = {
    taken: [] as TakenVisit[],
    already: [] as { from: string; path: string; pictures: readonly string[] }[],
    toSettle: [] as ToSettle[],
  }
  const isTaken = new Set(paths.keys())
  const latest = latestOf(parcel.visits)
  for (const visit of parcel.visits) {
    const { from, origin } = visit
    const horse =
      visit.horse !== null && horseIds.includes(visit.horse) ? visit.horse : (instead ?? visit.horse)
    const there = origin && known.get(origin.draft)
    if (origin && latest.get(origin.draft) !== visit) {
      const version = latest.get(origin.draft)?.origin?.version ?? 0
      if (version > origin.version) plan.toSettle.push({ kind: 'newer in the parcel', from, version })
    } else if (origin && there && there.version < origin.version) {
      const { path, version, text } = there
      const lines = changedLines(withoutYard(text), withoutYard(visit.text))
      plan.toSettle.push({
        kind: 'later version',
        from,
        path,
        draft: origin.draft,
        version: origin.version,
        there: version,
        lines,
      })
    } else if (there || isThere(casebook, paths, visit)) {
      const path = there?.path ?? `${horse}/${visit.date}.md`
      const missing = picturesFor(path.split('/')[0] ?? '', visit, parcel, casebook, paths).files
      for (const file of missing) added.set(file.path, file)
      plan.already.push({ from, path, pictures: missing.map((file) => file.path) })
    } else if (horse === null) plan.toSettle.push({ kind: 'no horse', from })
    else if (!horseIds.includes(horse)) {
      plan.toSettle.push({ kind: 'unknown horse', from, horse, meant: nearest(horse, horseIds) })
    } else {
      const path = freePath(horse, visit.date, isTaken)
      isTaken.add(path)
      const pictures = picturesFor(horse, visit, parcel, casebook, paths)
      const beside = [...added.values(), ...pictures.files]
      const read = judged(casebook, beside, { path, text: pictures.text }, practice, today)
      const isChanged = visit.isWhole === false
      const isOurs = visit.writtenBy === null || visit.writtenBy === writtenBy(practice)
      const text = read.problems.length > 0 || isChanged || !isOurs ? asDraft(pictures.text) : pictures.text
      for (const file of pictures.files) added.set(file.path, file)
      const needs = pictures.files.map((file) => file.path)
      added.set(path, { path, bytes: new TextEncoder().encode(text), needs })
      plan.taken.push({
        from,
        path,
        pictures: needs,
        isSecond: path !== `${horse}/${visit.date}.md`,
        isChanged,
        writtenBy: isOurs ? null : visit.writtenBy,
        ...read,
      })
    }
  }
  const named = new Set(parcel.visits.flatMap(({ pictures }) => pictures.map(({ sha256 }) => sha256)))
  const strays = [...parcel.pictures].filter(([sha256]) => !named.has(sha256)).map(([, { from }]) => from)
  return { ...plan, strayPictures: strays, files: [...added.values()] }
}

/** Of each draft the version that counts. */
function latestOf(visits: readonly ArrivedVisit[]): ReadonlyMap<string, ArrivedVisit> {
  const latest = new Map<string, ArrivedVisit>()
  for (const visit of visits) {
    if (visit.origin === null) continue
    const other = latest.get(visit.origin.draft)
    if (!other?.origin || other.origin.version < visit.origin.version) latest.set(visit.origin.draft, visit)
  }
  return latest
}

const yardLine = /^yard:[^\S\n]*([0-9a-f]{12}-\d+)[^\n]*$/m

function knownDrafts(casebook: CasebookFolder, horseIds: readonly string[]): Known {
  const known = new Map<string, { path: string; version: number; text: string }>()
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
function isThere(
  casebook: CasebookFolder,
  paths: ReadonlyMap<string, FolderEntry>,
  { horse, date, text, origin }: ArrivedVisit,
): boolean {
  const path = `${horse}/${date}.md`
  return origin === null && paths.get(path)?.kind === 'file' && plainText(casebook.read(path)) === text
}

/** The pictures of a visit that the casebook lacks. A name that another picture has gets a letter, in the text as well. */
function picturesFor(
  horse: string,
  visit: ArrivedVisit,
  parcel: Parcel,
  casebook: CasebookFolder,
  paths: ReadonlyMap<string, FolderEntry>,
): { readonly files: readonly AddedFile[]; readonly text: string } {
  let { text } = visit
  const files = visit.pictures.flatMap(({ name, sha256 }): readonly AddedFile[] => {
    const came = parcel.pictures.get(sha256)
    if (!came || !/^[a-z0-9][a-z0-9._-]*$/i.test(name)) return []
    const isSame = (path: string) =>
      paths.get(path)?.kind === 'file' &&
      createHash('sha256').update(casebook.read(path)).digest('hex') === sha256
    const dot = name.lastIndexOf('.')
    const names = [
      name,
      ...[...'bcdefgh'].map((letter) => `${name.slice(0, dot)}-${letter}${name.slice(dot)}`),
    ]
    const free = names.find((one) => {
      const path = `${horse}/photos/${one}`
      return !paths.has(path) || isSame(path)
    })
    if (free === undefined) return []
    text = text.replaceAll(`photos/${name}`, `photos/${free}`)
    const path = `${horse}/photos/${free}`
    return paths.has(path) ? [] : [{ path, bytes: came.bytes, needs: [] }]
  })
  return { files, text }
}

/** What the reader says of the visit in its place. */
function judged(
  casebook: CasebookFolder,
  beside: readonly AddedFile[],
  file: { readonly path: string; readonly text: string },
  practice: Practice,
  today: PlainDate,
): Pick<TakenVisit, 'problems' | 'remarks'> {
  const bytes = new Map(beside.map((one) => [one.path, one.bytes]))
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
