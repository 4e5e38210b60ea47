/** A casebook as it is being written: what an editor holds unsaved lies over what is on the disk. */
import { existsSync } from 'node:fs'
import { diskFolder, knownFolder, listPart, topOf } from '../../build/disk/source-folder.ts'
import type { CasebookFolder, FolderEntry } from '../../casebook/folder.ts'

export interface OpenFiles extends CasebookFolder {
  /** What an editor holds of a file. */
  hold(path: string, text: string): void
  /** The editor let go of it: the disk counts again. */
  letGo(path: string): void
  /** Looks at the disk again, below one name of the casebook's own folder or everywhere. */
  refresh(name?: string): void
}

/**
 * Lists and reads the folder. The same bytes are handed out for as long as a file is as it was, which is how its reader
 * knows that it need not be read again.
 */
export function openFiles(root: string): OpenFiles {
  let listed = new Map<string, FolderEntry>()
  const held = new Map<string, Uint8Array>()
  const read = new Map<string, { readonly entry: FolderEntry; readonly bytes: Uint8Array }>()
  let sorted: readonly FolderEntry[] | null = null
  let onDisk: CasebookFolder | null = null

  const partOf = (path: string) => path.split('/')[0] ?? ''
  const entries = () => {
    if (sorted) return sorted
    const all = new Map(listed)
    for (const [path, bytes] of held) {
      // What is a link on the disk stays one: it is not read, whatever an editor shows of it.
      if ((all.get(path)?.kind ?? 'file') === 'file')
        all.set(path, { path, kind: 'file', size: bytes.length, modified: 0 })
    }
    sorted = [...all.values()].sort((a, b) => (a.path < b.path ? -1 : 1))
    return sorted
  }
  const bytesOnDisk = (path: string) => {
    const entry = listed.get(path)
    const before = read.get(path)
    if (before && entry && isAsBefore(before.entry, entry)) return before.bytes
    onDisk ??= knownFolder(root, [...listed.values()])
    const bytes = onDisk.read(path)
    if (entry) read.set(path, { entry, bytes })
    return bytes
  }
  const refresh = (name?: string) => {
    sorted = null
    onDisk = null
    if (name === undefined) {
      listed = new Map(
        existsSync(root)
          ? diskFolder(root)
              .list()
              .map((entry) => [entry.path, entry])
          : [],
      )
      return
    }
    const part = existsSync(root) ? topOf(root).find((one) => one.name === name) : undefined
    for (const path of [...listed.keys()]) if (partOf(path) === name) listed.delete(path)
    for (const entry of part ? listPart(root, part) : []) listed.set(entry.path, entry)
  }
  return {
    list: entries,
    read: (path) => held.get(path) ?? bytesOnDisk(path),
    hold: (path, text) => {
      if (!held.has(path)) sorted = null
      held.set(path, new TextEncoder().encode(text))
    },
    letGo: (path) => {
      held.delete(path)
      sorted = null
    },
    refresh,
  }
}

const isAsBefore = (one: FolderEntry, other: FolderEntry): boolean =>
  one.size === other.size && one.modified === other.modified && one.kind === other.kind
