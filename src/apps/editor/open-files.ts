/** A casebook as it is being written: what an editor holds unsaved lies over what is on the disk. */
import { existsSync } from 'node:fs'
import { knownFolder, listPart, sortEntries, topOf } from '../../build/disk/source-folder.ts'
import type { CasebookFolder, FolderEntry } from '../../casebook/folder.ts'

export interface OpenFiles extends CasebookFolder {
  /** What an editor holds of a file. */
  hold(path: string, text: string): void
  /** The editor let go of it: the disk counts again. */
  letGo(path: string): void
  /** Looks at the disk again, below one name of the casebook's own folder or everywhere. */
  refresh(name?: string): void
  /** The files below one name of the casebook's own folder. */
  below(name: string): readonly FolderEntry[]
  /** Another number whenever there is a file more or less, or a link where a file was. */
  names(): number
}

/**
 * Lists and reads the folder. The same bytes are handed out for as long as a file is as it was, which is how its reader
 * knows that it need not be read again. A casebook has thousands of pictures, so what lies below each horse is kept apart.
 */
export function openFiles(root: string): OpenFiles {
  const parts = new Map<string, readonly FolderEntry[]>()
  const held = new Map<string, Uint8Array>()
  const read = new Map<string, { readonly entry: FolderEntry; readonly bytes: Uint8Array }>()
  let all: readonly FolderEntry[] | null = null
  let names = 0

  /** Lists one part anew, what an editor holds of it included. */
  const list = (name: string) => {
    const part = existsSync(root) ? topOf(root).find((one) => one.name === name) : undefined
    const onDisk = part ? listPart(root, part) : []
    const there = new Set(onDisk.map(({ path }) => path))
    const more = [...held].flatMap(([path, { length }]): FolderEntry[] =>
      partOf(path) === name && !there.has(path) ? [{ path, kind: 'file', size: length, modified: 0 }] : [],
    )
    const now = more.length === 0 ? onDisk : sortEntries([...onDisk, ...more])
    if (!areNamedAlike(parts.get(name) ?? [], now)) names++
    parts.set(name, now)
    all = null
  }
  const bytesOnDisk = (path: string) => {
    const part = parts.get(partOf(path)) ?? []
    const entry = part.find((one) => one.path === path)
    const before = read.get(path)
    if (before && entry && isAsBefore(before.entry, entry)) return before.bytes
    const bytes = knownFolder(root, part).read(path)
    if (entry) read.set(path, { entry, bytes })
    return bytes
  }
  return {
    list: () => {
      all ??= [...parts.values()].flat().sort((a, b) => (a.path < b.path ? -1 : 1))
      return all
    },
    // What is a link on the disk stays one: it is not read, whatever an editor shows of it.
    read: (path) => held.get(path) ?? bytesOnDisk(path),
    hold: (path, text) => {
      const isNew = !held.has(path)
      held.set(path, new TextEncoder().encode(text))
      if (isNew) list(partOf(path))
    },
    letGo: (path) => {
      held.delete(path)
      list(partOf(path))
    },
    refresh: (name) => {
      if (name !== undefined) return list(name)
      const top = existsSync(root) ? topOf(root).map((one) => one.name) : []
      for (const gone of [...parts.keys()]) if (!top.includes(gone)) list(gone)
      for (const one of top) list(one)
    },
    below: (name) => parts.get(name) ?? [],
    names: () => names,
  }
}

const partOf = (path: string): string => path.split('/')[0] ?? ''

const areNamedAlike = (one: readonly FolderEntry[], other: readonly FolderEntry[]): boolean =>
  one.length === other.length &&
  one.every(({ path, kind }, index) => path === other[index]?.path && kind === other[index]?.kind)

const isAsBefore = (one: FolderEntry, other: FolderEntry): boolean =>
  one.size === other.size && one.modified === other.modified && one.kind === other.kind
