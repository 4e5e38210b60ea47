/** Which files of the site are the tool's own, and what they were made from. Only those are ever replaced or removed. */
import { join, relative, resolve, sep } from 'node:path'
import { contentHash } from './content-hash.ts'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import { isInside } from './staging.ts'

/** Name of the list of the tool's own files, in the site's own folder. */
export const ownFilesList = '.made.json'

/**
 * Name of the list beside it of what a publication brings, for as long as that may be under way: to write the whole
 * list of twelve thousand files takes 8 ms, which somebody waits for.
 */
export const comingFilesList = '.made-next.json'

/** What a site is made from. */
export interface Source {
  /** Absolute, links resolved. */
  readonly folder: string
  /** As people call it. */
  readonly name: string
}

/**
 * Path within the site to hashes of the bytes that the tool wrote there: one, or two after a publication that was
 * killed, since either may stand there.
 */
export type OwnFiles = ReadonlyMap<string, readonly string[]>

/** Folder within the site to the consents that it rests on, in words of whoever makes the pages. */
export type RestsOn = ReadonlyMap<string, readonly string[]>

export interface SiteRecord {
  /** Null for a site that does not exist yet. */
  readonly source: Source | null
  readonly files: OwnFiles
  /** Null where it is not known: in a record from before this was kept. */
  readonly restsOn: RestsOn | null
}

/**
 * What is known of a site.
 * @throws UserError when the list cannot be understood: without it no file may be replaced
 */
export function readSiteRecord(files: Files, site: string): SiteRecord {
  const record = readList(files, site, ownFilesList)
  const coming = readList(files, site, comingFilesList)
  if (record === null) return coming ?? { source: null, files: new Map(), restsOn: new Map() }
  if (coming === null) return record
  const own = new Map(record.files)
  for (const [path, hashes] of coming.files)
    own.set(path, [...new Set([...(own.get(path) ?? []), ...hashes])])
  return { ...record, files: own, restsOn: unionOf(record.restsOn, coming.restsOn) }
}

/** What folders rest on while either of two may stand there. */
export function unionOf(a: RestsOn | null, b: RestsOn | null): RestsOn | null {
  if (a === null || b === null) return null
  const folders = new Set([...a.keys(), ...b.keys()])
  return new Map(
    [...folders].map((folder) => [
      folder,
      [...new Set([...(a.get(folder) ?? []), ...(b.get(folder) ?? [])])],
    ]),
  )
}

function readList(files: Files, site: string, name: string): SiteRecord | null {
  const path = join(site, name)
  const bytes = files.read(path)
  if (bytes === null) return null
  const record = parsed(new TextDecoder().decode(bytes), site)
  if (record !== null) return record
  throw new UserError(
    `${path} cannot be understood, so it is not known which files here are growdown's. ` +
      'Move the built folders away, delete that file and build again.',
  )
}

/** As it stands in the file. */
interface WrittenRecord {
  readonly files: unknown
  readonly source: Partial<Source>
  readonly restsOn: Readonly<Record<string, readonly string[]>>
}

function parsed(text: string, site: string): SiteRecord | null {
  try {
    const { files, source, restsOn }: Partial<WrittenRecord> = JSON.parse(text)
    if (typeof files !== 'object' || files === null) return null
    const own = new Map<string, readonly string[]>()
    for (const [path, hashes] of Object.entries(files)) {
      const list: readonly unknown[] = Array.isArray(hashes) ? hashes : [hashes]
      if (!isInside(path) || !list.every((hash) => typeof hash === 'string')) return null
      own.set(path, list as readonly string[])
    }
    const isNamed = typeof source?.folder === 'string' && typeof source.name === 'string'
    return {
      source: isNamed ? { folder: resolve(site, source.folder ?? ''), name: source.name ?? '' } : null,
      files: own,
      restsOn: restsOn === undefined ? null : new Map(Object.entries(restsOn)),
    }
  } catch {
    return null
  }
}

/** The record as it is written: sorted, the same for the same files; the source as seen from the site. */
export function printSiteRecord({ source, files, restsOn }: SiteRecord, site: string): string {
  const sorted = [...files].sort(([a], [b]) => (a < b ? -1 : 1))
  const written = sorted.map(([path, hashes]) => [path, hashes.length === 1 ? hashes[0] : hashes])
  const seen = source && { ...source, folder: relative(site, source.folder).split(sep).join('/') }
  const rests = restsOn && Object.fromEntries([...restsOn].sort(([a], [b]) => (a < b ? -1 : 1)))
  const record = {
    version: 3,
    source: seen,
    files: Object.fromEntries(written),
    ...(rests && { restsOn: rests }),
  }
  return `${JSON.stringify(record, null, 1)}\n`
}

/**
 * One site is made from one source: another would remove the first one's pages. A source that was moved is still the
 * same, where nothing is left in its old place and it has the same name.
 * @param name null where it is not known yet: then only what is sure is refused
 * @throws UserError with the way out
 */
export function refuseOtherSource(
  files: Files,
  site: string,
  before: Source | null,
  { folder, name }: { readonly folder: string; readonly name: string | null },
): void {
  if (before === null || before.folder === folder) return
  const isGone = files.stat(before.folder) === null
  if (isGone && (name === null || name === before.name)) return
  throw new UserError(
    `${site} is made from ${before.folder} (${before.name}), not from ${folder}, and its pages would go. ` +
      'Build into another folder with --out; or, if this casebook is to take its place, move the built folders ' +
      `and ${ownFilesList} away first. Nothing was published.`,
  )
}

export const isSameSource = (a: Source | null, b: Source | null): boolean =>
  a?.folder === b?.folder && a?.name === b?.name

/** Whether two say the same, so that nothing needs to be written. */
export const isSameRecord = (a: SiteRecord, b: SiteRecord): boolean =>
  isSameSource(a.source, b.source) &&
  isSameLists(a.files, b.files) &&
  (a.restsOn === null || b.restsOn === null ? a.restsOn === b.restsOn : isSameLists(a.restsOn, b.restsOn))

const isSameLists = (a: OwnFiles | RestsOn, b: OwnFiles | RestsOn): boolean =>
  a.size === b.size && [...a].every(([key, list]) => b.get(key)?.join() === list.join())

/** Whether the bytes are what the tool wrote there. An empty file is what a crash leaves, and nothing is lost with it. */
export const isOwn = (own: OwnFiles, path: string, bytes: Uint8Array): boolean => {
  const hashes = own.get(path)
  return hashes !== undefined && (bytes.length === 0 || hashes.includes(contentHash(bytes)))
}

/** A wanted file and who wants it there, in words. */
export interface Claim {
  readonly path: string
  readonly by: string
}

/**
 * No two may want one place, also where a disk takes upper and lower case for the same.
 * @throws UserError that names both
 */
export function refuseClashes(claims: readonly Claim[]): void {
  const taken = new Map<string, Claim>()
  for (const claim of claims) {
    const name = claim.path.normalize('NFC').toLowerCase()
    const other = taken.get(name)
    if (other) throw clash(other, claim)
    taken.set(name, claim)
  }
}

const clash = (a: Claim, b: Claim) =>
  new UserError(
    `Two pages want the same place: ${a.path} (${a.by}) and ${b.path} (${b.by}). Rename one of the two; nothing was published.`,
  )
