/**
 * From staged files to the site: each folder directly in it is the old one or the new one at every moment. The next
 * one is put together beside it and exchanged with it in one step. Where system or disk has no such step, the old one
 * is moved aside first, so that for a moment there is none; where a folder cannot be moved at all, since it is a mount
 * point, its files are exchanged one by one.
 */
import { dirname, join } from 'node:path'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import {
  type Changes,
  finishInPlace,
  type InPlace,
  mustAllBeWritable,
  type Places,
  publishInPlace,
  removeEmptied,
} from './in-place.ts'
import {
  type Kept,
  linkTree,
  makeTwin,
  retireTree,
  type Seen,
  seenWhenLive,
  settledBefore,
} from './next-tree.ts'
import { isOwn, type OwnFiles } from './own-files.ts'
import { placeIn } from './staging.ts'
import { type TopFolder, topFolder } from './top-folder.ts'

/** Where publishing is done. Folders are absolute, links resolved. */
export interface Workplace {
  readonly site: string
  readonly workFolder: string
  readonly source: string
  /** Where changed files are until they are published. */
  readonly staged: string
}

interface Prepared {
  readonly folder: TopFolder
  readonly changes: Changes
  /** Of the live folder, as it was when the next one was made from it; null where there is no next one. */
  readonly seen: Seen | null
  /** What is kept of it once it is not live any more. */
  readonly keeps: Kept | null
}

/** Folders directly in the site, by name, as this process saw them last. */
export type SeenFolders = Map<string, Seen>

/** Puts away what was live before, once all is; gives places of others' files that came in the last moment and have another name now. */
export type PutAway = () => readonly string[]

/**
 * Publishes changes whose places are free to take.
 * @param own what the tool wrote, before and now
 * @param seen is kept up to date
 * @returns what is left to do: a build that is killed before that leaves it to the next one
 * @throws UserError when the disk refuses; a folder is then the old one or the new one, or `publishInPlace` says more
 */
export function publishFolders(
  files: Files,
  at: Workplace,
  all: readonly Changes[],
  own: OwnFiles,
  seen: SeenFolders,
): PutAway {
  const prepared = all.map((changes) => prepare(files, at, changes, own, seen.get(changes.name)))
  const rest = prepared.map((one) => {
    const { changes, seen: before, keeps } = one
    seen.delete(changes.name)
    const putAway = putLive(files, at, one, own)
    if (before !== null && keeps !== null) seen.set(changes.name, seenWhenLive(before, keeps.changed))
    return putAway
  })
  return () => rest.flatMap((putAway) => putAway())
}

function prepare(
  files: Files,
  at: Workplace,
  changes: Changes,
  own: OwnFiles,
  known: Seen | undefined,
): Prepared {
  const folder = topFolder(files, changes.name, at)
  const { puts, removes } = changes
  const leftOut = new Set([...puts, ...removes])
  const canLink = canHold(files, folder)
  if (canLink && folder.kept !== null && files.stat(folder.kept)?.kind === 'folder') {
    files.moveFolder(folder.kept, folder.next)
  }
  const seen = canLink ? linkTree(files, folder.live, folder.next, leftOut, known) : null
  if (seen === null) {
    if (canLink) retireTree(files, folder.next, folder.live, ownIn(folder.name, own))
    mustAllBeWritable(files, folder.live, changes)
    return { folder, changes, seen, keeps: null }
  }
  for (const path of puts) {
    const place = placeIn(folder.next, path)
    files.makeFolder(dirname(place))
    files.move(placeIn(join(at.staged, folder.name), path), place)
  }
  const keeps =
    folder.kept === null ? null : { changed: leftOut, settled: settledBy(files, folder.next, leftOut) }
  removeEmptied(files, folder.next, removes)
  return { folder, changes, seen, keeps }
}

/** When all folders that were not just changed are settled. */
function settledBy(files: Files, next: string, changed: ReadonlySet<string>): number {
  const places = new Set([...changed].map((path) => dirname(placeIn(next, path))))
  return settledBefore([...places].map((place) => files.stat(place)?.modified ?? 0))
}

/** Whether the next folder can be put together where it is to be: a linked folder may lie where this account has no right. */
function canHold(files: Files, { next }: TopFolder): boolean {
  try {
    files.makePrivateFolder(dirname(next))
    return true
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return false
  }
}

function putLive(
  files: Files,
  at: Workplace,
  { folder, changes, seen, keeps }: Prepared,
  own: OwnFiles,
): PutAway {
  const { name, live, next, kept, aside } = folder
  const isTheirs = ownIn(name, own)
  const inPlace = (from: InPlace['from']) =>
    publishInPlace(files, at.workFolder, { ...changes, from }, placesOf(files, at, folder, own))
  if (seen === null) {
    inPlace('staged')
    return () => []
  }
  const keep = (tree: string) => {
    if (kept !== null && files.stat(tree) !== null) {
      files.makePrivateFolder(dirname(kept))
      if (!files.moveFolder(tree, kept)) files.removeTree(tree)
    }
    leave(files, folder)
  }
  const retire = (tree: string) => () => {
    const renamed = retireTree(files, tree, live, { ...isTheirs, seen, keeps })
    keep(tree)
    return renamed
  }
  if (files.stat(live) === null) {
    files.makeFolder(dirname(live))
    if (files.moveFolder(next, live)) {
      return () => {
        if (kept !== null) makeTwin(files, live, next)
        keep(next)
        return []
      }
    }
  } else if (files.exchange(next, live)) {
    return retire(next)
  } else if (files.moveFolder(live, aside)) {
    try {
      if (files.moveFolder(next, live)) return retire(aside)
    } catch (error) {
      files.moveFolder(aside, live)
      throw error
    }
    files.moveFolder(aside, live)
  }
  inPlace('next')
  return retire(next)
}

/** Puts right what a killed build left: what was begun in place is carried to its end, the rest is thrown away. */
export function recover(files: Files, at: Workplace, own: OwnFiles): void {
  const find = (name: string) => topFolder(files, name, at)
  finishInPlace(files, at.workFolder, (name) => placesOf(files, at, find(name), own))
  const begun = files.names(join(at.workFolder, 'publishing')).map((name) => name.replace(/\.aside$/, ''))
  const known = [...own.keys()].map((path) => path.slice(0, path.indexOf('/')))
  for (const name of new Set([...begun, ...known])) {
    const folder = find(name)
    if (files.stat(folder.live) === null && files.stat(folder.aside) !== null)
      files.moveFolder(folder.aside, folder.live)
    for (const tree of [folder.aside, folder.next]) {
      retireTree(files, tree, folder.live, ownIn(name, own))
    }
    leave(files, folder)
  }
  files.removeTree(at.staged)
}

/** Leaves no empty folder of the tool behind. */
function leave(files: Files, { next, live }: TopFolder): void {
  const work = dirname(next)
  files.removeIfEmpty(work)
  if (dirname(dirname(work)) === dirname(live)) files.removeIfEmpty(dirname(work))
}

const ownIn = (name: string, own: OwnFiles) => ({
  isOwn: (path: string, bytes: Uint8Array) => isOwn(own, `${name}/${path}`, bytes),
})

const placesOf = (files: Files, at: Workplace, { name, live, next }: TopFolder, own: OwnFiles): Places => ({
  live,
  next,
  staged: join(at.staged, name),
  isFree: (path) => {
    const place = placeIn(live, path)
    const stat = files.stat(place)
    return (
      stat === null ||
      (stat.kind === 'file' && isOwn(own, `${name}/${path}`, files.read(place) ?? new Uint8Array()))
    )
  },
})
