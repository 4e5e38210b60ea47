/** From finished units to the site: who wants which place, what goes, what comes. */
import { join } from 'node:path'
import { contentHash } from './disk/content-hash.ts'
import { UserError } from './disk/errors.ts'
import type { Files } from './disk/files.ts'
import { type Changes, foldersOf } from './disk/in-place.ts'
import {
  type Claim,
  comingFilesList,
  isOwn,
  isSameRecord,
  isSameSource,
  type OwnFiles,
  ownFilesList,
  printSiteRecord,
  type RestsOn,
  refuseClashes,
  refuseOtherSource,
  type SiteRecord,
  unionOf,
} from './disk/own-files.ts'
import { publishFolders, type SeenFolders } from './disk/publication.ts'
import { giveTime, nextTime, timesOf } from './disk/shared-time.ts'
import { type Output, placeIn } from './disk/staging.ts'
import { inTheWay, topOf } from './disk/top-folder.ts'
import type { WorkFolder } from './disk/work-folder.ts'
import type { BuiltUnit } from './unit.ts'

export interface Published {
  readonly written: number
  readonly removed: number
  /** All files of the tool in the site now. */
  readonly total: number
  /** Places of files that are not as the tool wrote them, so they stay though a page is to stand or to go there. */
  readonly left: readonly string[]
  /** The same by path within the site. */
  readonly paths: {
    readonly written: readonly string[]
    readonly removed: readonly string[]
    readonly all: readonly string[]
  }
}

/**
 * What becomes of a path. `made`: what a unit has for it, and where none has, it goes. `kept`: it stays as it was last
 * published, whatever a unit has for it. `removed`: it goes, whatever a unit has for it.
 */
export type Fate = 'made' | 'kept' | 'removed'

/** What is to be published, and how. */
export interface Publication {
  /** Of what the site is made from, as people call it. */
  readonly name: string
  fateOf(path: string): Fate
  /** Of the folders that are made; null where those of what is kept are not known. */
  readonly restsOn?: RestsOn | null
  /** Folders directly in the site whose files carry one modification time, from this day on, milliseconds. */
  readonly sharedTime?: { readonly folders: readonly string[]; readonly day: number }
}

interface Finished extends Publication {
  /** By name. */
  readonly units: ReadonlyMap<string, BuiltUnit>
  /** Paths of the files in the staging folder. */
  readonly staged: ReadonlySet<string>
}

interface Done {
  readonly published: Published
  /** Paths that stand as the tool did not write them. */
  readonly left: ReadonlySet<string>
  /** By folder directly in the site, of those that share one: the time of their files now. */
  readonly times: ReadonlyMap<string, number>
  /** What the site is from now on. */
  readonly record: SiteRecord
  /**
   * Does the rest, of which no page depends; a build that is killed before that leaves it to the next one.
   * @returns places of others' files that came in the last moment and have another name now
   */
  finish(): readonly string[]
}

/**
 * Checks that every place is free to take, then publishes each folder of the site in one step.
 * @throws UserError that names two units that want one place, a file of someone else's, or the disk's reason
 */
export function publish(
  files: Files,
  { at, record: before }: WorkFolder,
  finished: Finished,
  seen: SeenFolders,
  report: (files: number) => void,
): Done {
  const source = { folder: at.source, name: finished.name }
  refuseOtherSource(files, at.site, before.source, source)
  const { puts, removes, left, after } = plan(files, at.site, before.files, finished)
  const restsOn = restingAfter(before.restsOn, finished)
  const record: SiteRecord = { source, files: after, restsOn }
  const retimed = sharedTimes(files, at.site, before.files, [...puts, ...removes], finished)
  const isAny = puts.length + removes.length > 0
  let putAway = (): readonly string[] => []
  if (isAny) {
    report(puts.length + removes.length)
    const either = eitherOf(before.files, after, puts)
    const rests = unionOf(before.restsOn, restsOn)
    // A list that a killed build left is not replaced before what it says stands in the whole one.
    const isFirst = files.stat(join(at.site, comingFilesList)) === null
    if (isFirst && isSameSource(before.source, source)) {
      const coming = new Map(puts.map((path) => [path, after.get(path) ?? []] as const))
      writeList(files, at, comingFilesList, { source, files: coming, restsOn: rests })
    } else writeRecord(files, at, { source, files: either, restsOn: rests })
    putAway = publishFolders(files, at, changesByFolder(puts, removes), either, seen)
  } else if (!isSameRecord(record, before)) writeRecord(files, at, record)
  const finish = () => {
    const renamed = putAway()
    if (isAny) finishRecord(files, at, record)
    for (const { folder, time } of retimed.filter(({ isNew }) => isNew)) {
      const own = [...after.keys()].filter((path) => topOf(path) === folder && !left.has(path))
      giveTime(files, at.site, own, time)
    }
    return renamed
  }
  const published = {
    written: puts.length,
    removed: removes.length,
    total: after.size,
    left: [...left].map((path) => placeIn(at.site, path)),
    paths: { written: puts, removed: removes, all: [...after.keys()] },
  }
  const times = new Map(retimed.map(({ folder, time }) => [folder, time]))
  return { published, left, times, record, finish }
}

/** Folders whose files share one time; it is a new one where anything in them changes, or the files have several. */
function sharedTimes(
  files: Files,
  site: string,
  before: OwnFiles,
  changed: readonly string[],
  { sharedTime }: Finished,
) {
  return (sharedTime?.folders ?? []).map((folder) => {
    const isIn = (path: string) => topOf(path) === folder
    const times = timesOf(files, site, [...before.keys()].filter(isIn))
    const isNew = changed.some(isIn) || !times.isOne
    const day = sharedTime?.day ?? 0
    return { folder, isNew, time: isNew ? nextTime(times, day) : (times.latest ?? day) }
  })
}

/** What folders rest on once all is published. */
function restingAfter(before: RestsOn | null, { restsOn = new Map(), fateOf }: Finished): RestsOn | null {
  if (restsOn === null) return null
  const isOf = (fate: Fate) => (entry: readonly [string, unknown]) => fateOf(`${entry[0]}/`) === fate
  return new Map([...[...(before ?? [])].filter(isOf('kept')), ...[...restsOn].filter(isOf('made'))])
}

interface Plan {
  /** Paths of staged files that come. */
  readonly puts: readonly string[]
  readonly removes: readonly string[]
  /** Paths of the tool's own files that were changed since, so they neither go nor give way. */
  readonly left: ReadonlySet<string>
  /** What will be the tool's own. */
  readonly after: OwnFiles
}

function plan(files: Files, site: string, before: OwnFiles, { units, staged, fateOf }: Finished): Plan {
  const claims: Claim[] = []
  const fresh = new Map<string, readonly string[]>()
  const other: string[] = []
  const unknown: Output[] = []
  for (const [by, { outputs }] of units) {
    for (const output of outputs) {
      const { path, hash } = output
      if (fateOf(path) !== 'made') continue
      claims.push({ path, by })
      // Of twelve thousand files nearly all are as they were: what was kept of them need not be made anew.
      const known = before.get(path)
      const isSame = known?.length === 1 && known[0] === hash
      fresh.set(path, isSame ? known : [hash])
      if (!isSame) other.push(path)
      if (known === undefined) unknown.push(output)
    }
  }
  refuseClashes(claims)
  const gone = [...before.keys()].filter((path) => !fresh.has(path) && fateOf(path) !== 'kept')
  const coming = [...staged].filter((path) => fresh.has(path))
  refuseForeign(files, site, unknown)
  refuseLinksOnTheWay(files, site, [...coming, ...gone])

  const own = [...coming.filter((path) => before.has(path)), ...gone]
  const left = new Set(own.filter((path) => !isAsWritten(files, site, path, before)))
  const removes = gone.filter((path) => !left.has(path))
  const after = new Map(before)
  for (const path of removes) after.delete(path)
  for (const path of other) if (!left.has(path)) after.set(path, fresh.get(path) ?? [])
  return { puts: coming.filter((path) => !left.has(path)), removes, left, after }
}

/** What may stand in a place until all is published: what the tool wrote there before, or now. */
function eitherOf(before: OwnFiles, after: OwnFiles, puts: readonly string[]): OwnFiles {
  const either = new Map(before)
  for (const path of puts) {
    either.set(path, [...new Set([...(before.get(path) ?? []), ...(after.get(path) ?? [])])])
  }
  return either
}

function writeRecord(files: Files, at: WorkFolder['at'], record: SiteRecord): void {
  writeList(files, at, ownFilesList, record)
  files.remove(join(at.site, comingFilesList))
}

function writeList(
  files: Files,
  { site, workFolder }: WorkFolder['at'],
  name: string,
  record: SiteRecord,
): void {
  const beside = join(workFolder, 'made')
  files.makeFolder(site)
  files.writePrivate(beside, printSiteRecord(record, site))
  files.move(beside, join(site, name))
}

/** All is published by now: where the disk refuses, the record names both what was and what is, and the next build mends it. */
function finishRecord(files: Files, at: WorkFolder['at'], record: SiteRecord): void {
  try {
    writeRecord(files, at, record)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
  }
}

/** Whether nothing is there, or just what the tool wrote. */
function isAsWritten(files: Files, site: string, path: string, own: OwnFiles): boolean {
  const place = placeIn(site, path)
  const stat = files.stat(place)
  if (stat === null) return true
  return stat.kind === 'file' && isOwn(own, path, files.read(place) ?? new Uint8Array())
}

/**
 * Nothing that the tool did not write may stand where a file is to go that was not there before.
 * @throws UserError that names what stands there
 */
function refuseForeign(files: Files, site: string, wanted: readonly Output[]): void {
  for (const { path, hash } of wanted) {
    const place = placeIn(site, path)
    const seen = files.stat(place)
    if (seen === null) continue
    const isSame = seen.kind === 'file' && contentHash(files.read(place) ?? '') === hash
    if (!isSame) throw inTheWay(place, seen.kind)
  }
}

/**
 * Nothing is written or removed over a link. A folder directly in the site may be one: that is looked at where it is
 * published.
 * @throws UserError that names what stands there
 */
function refuseLinksOnTheWay(files: Files, site: string, paths: readonly string[]): void {
  for (const folder of new Set(paths.flatMap(foldersOf))) {
    const seen = folder.includes('/') ? files.stat(placeIn(site, folder)) : null
    if (seen !== null && seen.kind !== 'folder') throw inTheWay(placeIn(site, folder), seen.kind)
  }
}

function changesByFolder(puts: readonly string[], removes: readonly string[]): readonly Changes[] {
  const within = (name: string, paths: readonly string[]) =>
    paths.filter((path) => topOf(path) === name).map((path) => path.slice(name.length + 1))
  const names = new Set([...puts, ...removes].map(topOf))
  return [...names].map((name) => {
    if (name === null) throw new Error('a page cannot stand directly in the site')
    return { name, puts: within(name, puts), removes: within(name, removes) }
  })
}
