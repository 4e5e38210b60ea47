/**
 * The next form of a folder, put together beside it out of links to the files that stay: so it can be exchanged whole.
 *
 * The tree that was live before is kept for the next time, its links and all, since thousands of names take long to make
 * and to remove. A folder of it that holds the very same names and files as the live one carries that one's time of its last
 * change: as long as both have the same time, neither was touched, and nothing of it needs to be looked at.
 */
import { basename, join } from 'node:path'
import { UserError } from './errors.ts'
import { besideEnding, type FileStat, type Files, type NamedEntry } from './files.ts'

interface SeenFolder {
  /** When the live one last changed. */
  readonly modified: number
  readonly entries: readonly NamedEntry[]
  /** When the next one last changed, once it was filled. */
  readonly filled: number
}

/** Each folder as it was looked at, by path; '' is the folder itself. */
export type Seen = ReadonlyMap<string, SeenFolder>

const below = (folder: string, name: string) => (folder === '' ? name : `${folder}/${name}`)

/** Times as disks give them back, milliseconds: a nanosecond may be lost on the way. */
const isSameTime = (a: number, b: number) => Math.abs(a - b) < 0.002

/**
 * Makes `next` hold what `live` holds, others' files as well, but for what is left out.
 * @param known folders of `live` as they were seen before: one that nobody touched since is not listed again
 * @returns null where this disk has no links of that kind
 */
export function linkTree(
  files: Files,
  live: string,
  next: string,
  leftOut: ReadonlySet<string>,
  known: Seen = new Map(),
): Seen | null {
  const seen = new Map<string, SeenFolder>()
  const fill = (folder: string): boolean => {
    const [from, to] = [join(live, folder), join(next, folder)]
    const [stat, twin] = [files.stat(from), files.stat(to)]
    const isTwin = stat !== null && twin !== null && isSameTime(stat.modified, twin.modified)
    const before = isTwin ? known.get(folder) : undefined
    const entries =
      before !== undefined && before.modified === stat?.modified ? before.entries : files.entries(from)
    if (twin === null) files.makeFolder(to)
    else if (!isTwin) keepFolders(files, to, entries)
    if (stat === null) return true
    const isLinked = entries.every(({ name, kind }) => {
      const path = below(folder, name)
      if (kind === 'folder') return fill(path)
      if (leftOut.has(path)) {
        if (isTwin) files.remove(`${to}/${name}`)
        return true
      }
      if (isTwin) return true
      if (kind !== 'link') return files.link(`${from}/${name}`, `${to}/${name}`)
      files.copyLink(`${from}/${name}`, `${to}/${name}`)
      return true
    })
    if (isLinked) files.setMode(to, stat.mode)
    const filled = isTwin ? twin.modified : (files.stat(to)?.modified ?? 0)
    seen.set(folder, { modified: stat.modified, entries, filled })
    return isLinked
  }
  return fill('') ? seen : null
}

/**
 * What is known of the folders of `next` once it is live: those of which nothing was left out, and nothing came.
 * @param changed paths that were left out or came
 */
export function seenWhenLive(seen: Seen, changed: ReadonlySet<string>): Seen {
  const touched = new Set([...changed].flatMap(foldersAbove))
  const untouched = [...seen].filter(([folder]) => !touched.has(folder))
  return new Map(untouched.map(([folder, now]) => [folder, { ...now, modified: now.filled }]))
}

/** How finely disks tell the time, milliseconds: most by the ticks of the system, some in steps of two seconds. */
const [fine, coarse] = [20, 2_100]

/**
 * A folder that was last changed before this time, milliseconds by the clock of the disk, cannot change from now on without
 * a sign of it.
 * @param times of the last change of what was just changed
 */
export const settledBefore = (times: readonly number[]): number =>
  Math.max(0, ...times) - (times.every((time) => time % 1000 === 0) ? coarse : fine)

/** Links of all that is live, for the next time. What the disk refuses is done without. */
export function makeTwin(files: Files, live: string, next: string): void {
  try {
    const seen = linkTree(files, live, next, new Set()) ?? new Map<string, SeenFolder>()
    const settled = settledBefore([...seen.values()].map(({ filled }) => filled))
    for (const [folder, { modified }] of seen)
      keepPrivately(files, join(next, folder), modified < settled ? modified : 0)
    if (seen.size === 0) files.removeTree(next)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    files.removeTree(next)
  }
}

/** Takes out of a folder of ours all but the folders that the other one has as well. */
function keepFolders(files: Files, place: string, wanted: readonly NamedEntry[]): void {
  const folders = new Set(wanted.flatMap(({ name, kind }) => (kind === 'folder' ? [name] : [])))
  for (const { name, kind } of files.entries(place)) {
    if (kind !== 'folder' || !folders.has(name)) files.removeTree(join(place, name))
  }
}

/** What stays of the tree that was live, for the next time and the eyes of this account alone. */
export interface Kept {
  /** Paths that the new one has anew or not at all: of these nothing stays. */
  readonly changed: ReadonlySet<string>
  /** A folder that was last filled after this time, milliseconds, may have changed since without a sign of it. */
  readonly settled: number
}

interface Old {
  /** Null where nothing stays. */
  readonly keeps?: Kept | null
  /** Of the live folder when the next was made from it; undefined where a killed build left this. */
  readonly seen?: Seen | undefined
  /** Whether the tool wrote these bytes at that path. */
  isOwn(path: string, bytes: Uint8Array): boolean
}

/**
 * Removes a tree that is not live, or not any more: links to what is live, and files of the tool. What someone put
 * there in the last moment comes into the live folder, beside what has its name.
 * @returns places of what came so and has another name now
 */
export function retireTree(
  files: Files,
  tree: string,
  live: string,
  { seen, isOwn, keeps = null }: Old,
): readonly string[] {
  const renamed: string[] = []
  const changedFolders = new Set([...(keeps?.changed ?? [])].flatMap(foldersAbove))
  const isDispensable = (path: string, old: FileStat, now: FileStat | null): boolean => {
    if (path.endsWith(besideEnding) || (now?.inode === old.inode && now.device === old.device)) return true
    if (old.kind !== 'file') return now !== null
    return isOwn(path, files.read(join(tree, path)) ?? new Uint8Array())
  }
  const retire = (folder: string) => {
    const place = join(tree, folder)
    const before = seen?.get(folder)
    const isAsSeen = before !== undefined && before.modified === files.stat(place)?.modified
    const stays = isAsSeen ? keeps : null
    for (const { name, kind } of isAsSeen ? before.entries : files.entries(place)) {
      const path = below(folder, name)
      const old = `${place}/${name}`
      if (kind === 'folder') retire(path)
      else if (stays !== null && !stays.changed.has(path)) continue
      else if (isAsSeen) files.remove(old)
      else {
        const stat = files.stat(old)
        const now = files.stat(join(live, path))
        if (stat === null || isDispensable(path, stat, now)) files.remove(old)
        else {
          const to = freePlace(files, join(live, path))
          files.makeFolder(join(live, folder))
          files.move(old, to)
          if (basename(to) !== name) renamed.push(to)
        }
      }
    }
    if (keeps === null) files.removeIfEmpty(place)
    else {
      const isTwin = stays !== null && !changedFolders.has(folder) && (before?.filled ?? 0) < stays.settled
      keepPrivately(files, place, isTwin ? (before?.filled ?? 0) : 0)
    }
  }
  if (files.stat(tree)?.kind === 'folder') retire('')
  return renamed
}

/** The folders that a path lies in, '' the outermost. */
function foldersAbove(path: string): readonly string[] {
  const end = path.lastIndexOf('/')
  return end < 0 ? [''] : [path.slice(0, end), ...foldersAbove(path.slice(0, end))]
}

/** With this time of its last change; 0 is no folder's that is live. */
function keepPrivately(files: Files, folder: string, time: number): void {
  try {
    files.setMode(folder, 0o700)
    if (!isSameTime(files.stat(folder)?.modified ?? 0, time)) files.setModified(folder, time)
  } catch (error) {
    // A disk that gives a folder no other time: the next build links all of it anew.
    if (!(error instanceof UserError)) throw error
    files.removeTree(folder)
  }
}

/** That place if it is free, else one beside it. */
function freePlace(files: Files, place: string, count = 1): string {
  const name = count === 1 ? place : `${place}.kept-${count}`
  return files.stat(name) === null ? name : freePlace(files, place, count + 1)
}
