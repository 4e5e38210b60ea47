/** The next form of a folder, put together beside it out of links to the files that stay: so it can be exchanged whole. */
import { basename, join } from 'node:path'
import { besideEnding, type FileStat, type Files, type NamedEntry } from './files.ts'

interface SeenFolder {
  /** When it last changed. */
  readonly modified: number
  readonly entries: readonly NamedEntry[]
}

/** Each folder as it was looked at, by path; '' is the folder itself. */
export type Seen = ReadonlyMap<string, SeenFolder>

const below = (folder: string, name: string) => (folder === '' ? name : `${folder}/${name}`)

/**
 * Makes `next` hold what `live` holds, others' files as well, but for what is left out. Of what it holds before only
 * folders are kept: making and removing folders takes by far longer than linking what is in them.
 * @returns null where this disk has no links of that kind
 */
export function linkTree(
  files: Files,
  live: string,
  next: string,
  isLeftOut: (path: string) => boolean,
): Seen | null {
  const seen = new Map<string, SeenFolder>()
  const fill = (folder: string): boolean => {
    const [from, to] = [join(live, folder), join(next, folder)]
    const stat = files.stat(from)
    const entries = files.entries(from)
    if (!isNew(to)) keepFolders(files, to, entries)
    if (stat === null) return true
    seen.set(folder, { modified: stat.modified, entries })
    const isLinked = entries.every(({ name, kind }) => {
      const path = below(folder, name)
      if (kind === 'folder') return fill(path)
      if (isLeftOut(path)) return true
      if (kind !== 'link') return files.link(`${from}/${name}`, `${to}/${name}`)
      files.copyLink(`${from}/${name}`, `${to}/${name}`)
      return true
    })
    if (isLinked) files.setMode(to, stat.mode)
    return isLinked
  }
  const isNew = (folder: string) => {
    if (files.stat(folder) !== null) return false
    files.makeFolder(folder)
    return true
  }
  return fill('') ? seen : null
}

/** Takes out of a folder of ours all but the folders that the other one has as well. */
function keepFolders(files: Files, place: string, wanted: readonly NamedEntry[]): void {
  const folders = new Set(wanted.flatMap(({ name, kind }) => (kind === 'folder' ? [name] : [])))
  for (const { name, kind } of files.entries(place)) {
    if (kind !== 'folder' || !folders.has(name)) files.removeTree(join(place, name))
  }
}

interface Old {
  /** Whether the folders stay, empty, for the eyes of this account alone. */
  readonly keepsFolders?: boolean
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
  { seen, isOwn, keepsFolders = false }: Old,
): readonly string[] {
  const renamed: string[] = []
  const isDispensable = (path: string, old: FileStat, now: FileStat | null): boolean => {
    if (path.endsWith(besideEnding) || (now?.inode === old.inode && now.device === old.device)) return true
    if (old.kind !== 'file') return now !== null
    return isOwn(path, files.read(join(tree, path)) ?? new Uint8Array())
  }
  const retire = (folder: string) => {
    const place = join(tree, folder)
    const before = seen?.get(folder)
    const isAsSeen = before !== undefined && before.modified === files.stat(place)?.modified
    for (const { name, kind } of isAsSeen ? before.entries : files.entries(place)) {
      const path = below(folder, name)
      const old = `${place}/${name}`
      if (kind === 'folder') retire(path)
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
    if (keepsFolders) files.setMode(place, 0o700)
    else files.removeIfEmpty(place)
  }
  if (files.stat(tree)?.kind === 'folder') retire('')
  return renamed
}

/** That place if it is free, else one beside it. */
function freePlace(files: Files, place: string, count = 1): string {
  const name = count === 1 ? place : `${place}.kept-${count}`
  return files.stat(name) === null ? name : freePlace(files, place, count + 1)
}
