/** A casebook on the disk. Links are listed and never followed, and nothing outside the folder can be read. */
import { closeSync, constants, fstatSync, lstatSync, openSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { CasebookFolder, FolderEntry } from '../../casebook/folder.ts'
import { asUserError, systemCode, UserError } from './errors.ts'

const leftOut = (name: string) => name.startsWith('.') || name === 'node_modules'

/**
 * The casebook in a folder, listed once at the first call. Dotfiles and `node_modules` are left out.
 * @throws UserError when the folder cannot be read
 */
export function diskFolder(root: string): CasebookFolder {
  let listed: readonly FolderEntry[] | null = null
  const list = () => {
    listed ??= listFolder(root, '')
    return listed
  }
  return listedFolder(root, list)
}

/** A part of a casebook whose listing is known already. */
export function knownFolder(root: string, entries: readonly FolderEntry[]): CasebookFolder {
  return listedFolder(root, () => entries)
}

function listedFolder(root: string, list: () => readonly FolderEntry[]): CasebookFolder {
  let files: ReadonlySet<string> | null = null
  return {
    list,
    read: (path) => {
      files ??= new Set(list().flatMap((entry) => (entry.kind === 'file' ? [entry.path] : [])))
      if (!files.has(path)) throw new UserError(`${path} could not be read: it is no file of this casebook`)
      return readPlainFile(join(root, ...path.split('/')), path)
    },
  }
}

/** Opens without following a link, in case a file became one since it was listed. */
function readPlainFile(place: string, path: string): Uint8Array {
  let handle: number | null = null
  try {
    handle = openSync(place, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0))
    if (!fstatSync(handle).isFile())
      throw new UserError(`${path} could not be read: it is no plain file any more`)
    return readFileSync(handle)
  } catch (error) {
    throw asUserError(error, path, 'read')
  } finally {
    if (handle !== null) closeSync(handle)
  }
}

/** A name in a folder. */
export interface Named {
  readonly name: string
  readonly isFolder: boolean
}

/** What lies in the casebook's own folder: practice.md, the folders of the horses. */
export const topOf = (root: string): readonly Named[] => namesIn(root, '')

/** Every file at or below one of those names, sorted; none when it went away. */
export function listPart(root: string, { name, isFolder }: Named): readonly FolderEntry[] {
  if (isFolder) return listFolder(root, name)
  const entry = entryOf(join(root, name), name)
  return entry ? [entry] : []
}

export const sortEntries = (entries: FolderEntry[]): readonly FolderEntry[] =>
  entries.sort((a, b) => (a.path < b.path ? -1 : 1))

function listFolder(root: string, start: string): readonly FolderEntry[] {
  const entries: FolderEntry[] = []
  const pending = [start]
  for (let folder = pending.pop(); folder !== undefined; folder = pending.pop()) {
    const place = join(root, folder)
    for (const { name, isFolder } of namesIn(place, folder)) {
      const path = folder === '' ? name : `${folder}/${name}`
      if (isFolder) pending.push(path)
      else {
        const entry = entryOf(join(place, name), path)
        if (entry) entries.push(entry)
      }
    }
  }
  return sortEntries(entries)
}

function namesIn(place: string, path: string): readonly Named[] {
  try {
    return readdirSync(place, { withFileTypes: true })
      .filter(({ name }) => !leftOut(name))
      .map((entry) => ({ name: entry.name, isFolder: entry.isDirectory() }))
  } catch (error) {
    // A folder that went away while its parent was listed holds nothing.
    if (path !== '' && systemCode(error) === 'ENOENT') return []
    throw asUserError(error, path === '' ? place : path, 'read')
  }
}

/** Null when the file went away between the listing and this look, as an editor's swap file does. */
function entryOf(place: string, path: string): FolderEntry | null {
  const stat = lstatSync(place, { throwIfNoEntry: false })
  if (!stat) return null
  const kind = stat.isFile() ? 'file' : stat.isSymbolicLink() ? 'link' : 'other'
  // A copy can carry an old time of change; the time at which it was put here cannot be set.
  return { path, kind, size: stat.size, modified: Math.max(stat.mtimeMs, stat.ctimeMs) }
}
