/** From finished units to the site: who wants which place, what goes, what comes. */
import { join } from 'node:path'
import { contentHash } from './disk/content-hash.ts'
import { UserError } from './disk/errors.ts'
import type { Files } from './disk/files.ts'
import { type Changes, foldersOf } from './disk/in-place.ts'
import {
  isOwn,
  isSameRecord,
  type OwnFiles,
  ownFilesList,
  printSiteRecord,
  refuseClashes,
  refuseOtherSource,
  type SiteRecord,
} from './disk/own-files.ts'
import { publishFolders } from './disk/publication.ts'
import { type Output, placeIn } from './disk/staging.ts'
import { inTheWay, topOf } from './disk/top-folder.ts'
import type { WorkFolder } from './disk/work-folder.ts'
import type { SiteCheck } from './site-check.ts'
import type { BuiltUnit } from './unit.ts'

export interface Published {
  readonly written: number
  readonly removed: number
  /** All files of the tool in the site now. */
  readonly total: number
  /** Places of files that are not as the tool wrote them, so they stay though a page is to stand or to go there. */
  readonly left: readonly string[]
}

interface Finished {
  /** By name. */
  readonly units: ReadonlyMap<string, BuiltUnit>
  /** Paths of the files in the staging folder. */
  readonly staged: ReadonlySet<string>
  /** Of what the site is made from. */
  readonly name: string
  /** Whether a file of an earlier build stays, though no unit has it now. */
  readonly isLeftAlone: (path: string) => boolean
}

/**
 * Checks that every place is free to take, then publishes each folder of the site in one step.
 * @throws UserError that names two units that want one place, a file of someone else's, or the disk's reason
 */
export function publish(
  files: Files,
  { at, record: before }: WorkFolder,
  siteCheck: SiteCheck,
  finished: Finished,
  report: (files: number) => void,
): Published {
  const source = { folder: at.source, name: finished.name }
  refuseOtherSource(files, at.site, before.source, source)
  const { puts, removes, left, after } = plan(files, at.site, before.files, finished)
  const record: SiteRecord = { source, files: after }
  const renamed: string[] = []
  if (puts.length + removes.length > 0) {
    report(puts.length + removes.length)
    const either = eitherOf(before.files, after, puts)
    writeRecord(files, at, { source, files: either })
    renamed.push(...publishFolders(files, at, changesByFolder(puts, removes), either))
    finishRecord(files, at, record)
  } else if (!isSameRecord(record, before)) writeRecord(files, at, record)
  siteCheck.published(intactUnits(finished, left))
  return {
    written: puts.length,
    removed: removes.length,
    total: after.size,
    left: [...[...left].map((path) => placeIn(at.site, path)), ...renamed],
  }
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

function plan(files: Files, site: string, before: OwnFiles, { units, staged, isLeftAlone }: Finished): Plan {
  const outputs = [...units].flatMap(([by, unit]) => unit.outputs.map((output) => ({ ...output, by })))
  refuseClashes(outputs)
  const fresh = new Map(outputs.map(({ path, hash }) => [path, [hash]] as const))
  const gone = [...before.keys()].filter((path) => !fresh.has(path) && !isLeftAlone(path))
  const isNew = ({ path }: Output) => !before.has(path)
  refuseForeign(files, site, outputs.filter(isNew))
  refuseLinksOnTheWay(files, site, [...staged, ...gone])

  const own = [...[...staged].filter((path) => before.has(path)), ...gone]
  const left = new Set(own.filter((path) => !isAsWritten(files, site, path, before)))
  const removes = gone.filter((path) => !left.has(path))
  const after = new Map(before)
  for (const path of removes) after.delete(path)
  for (const [path, hash] of fresh) if (!left.has(path)) after.set(path, hash)
  return { puts: [...staged].filter((path) => !left.has(path)), removes, left, after }
}

const intactUnits = ({ units }: Finished, left: ReadonlySet<string>) =>
  [...units.values()].filter((unit) => !unit.outputs.some(({ path }) => left.has(path)))

/** What may stand in a place until all is published: what the tool wrote there before, or now. */
function eitherOf(before: OwnFiles, after: OwnFiles, puts: readonly string[]): OwnFiles {
  const either = new Map([...after, ...before])
  for (const path of puts) {
    either.set(path, [...new Set([...(before.get(path) ?? []), ...(after.get(path) ?? [])])])
  }
  return either
}

function writeRecord(files: Files, { site, workFolder }: WorkFolder['at'], record: SiteRecord): void {
  const beside = join(workFolder, 'made')
  files.makeFolder(site)
  files.write(beside, printSiteRecord(record, site))
  files.move(beside, join(site, ownFilesList))
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
