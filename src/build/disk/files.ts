/** All that building does to the disk. Handed in, so that a test can let the disk fail. */
import {
  accessSync,
  constants,
  copyFileSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs'
import { dirname } from 'node:path'
import { asUserError, systemCode } from './errors.ts'

export interface FileStat {
  readonly kind: 'file' | 'folder' | 'link' | 'other'
  readonly size: number
  /** Milliseconds. */
  readonly modified: number
  /** Which disk it lies on. */
  readonly device: number
}

/** Every call throws `UserError` with a plain sentence when the disk refuses. */
export interface Files {
  /** What is there, links not followed; null when nothing is. */
  stat(path: string): FileStat | null
  /** The bytes of a file; null when it is not there. */
  read(path: string): Uint8Array | null
  /** Names in a folder; empty when it is not there. */
  names(path: string): readonly string[]
  /** Whether files may be made in this folder. Throws the reason when not. */
  mustBeWritable(folder: string): void
  /** Makes a folder and those above it; returns the topmost that it made, null when all were there. */
  makeFolder(path: string): string | null
  /** Writes a file whole and makes its folder. */
  write(path: string, data: string | Uint8Array): void
  /** Writes a file only if none is there; false when one is. */
  writeNew(path: string, data: string): boolean
  copy(from: string, to: string): void
  /** Puts a file in another's place in one step. */
  move(from: string, to: string): void
  /** Removes a file; nothing happens when it is not there. */
  remove(path: string): void
  /** Removes a folder if it is empty; false when it stays. */
  removeIfEmpty(folder: string): boolean
  /** Removes a folder with all that is in it. For the tool's own work folder only. */
  removeTree(folder: string): void
}

/** Runs one step and puts a fault of the system into words. `absent` lists codes that only mean "not there". */
function attempt<T>(path: string, action: string, run: () => T, absent: readonly string[] = [], none?: T): T {
  try {
    return run()
  } catch (error) {
    if (absent.includes(systemCode(error) ?? '')) return none as T
    throw asUserError(error, path, action)
  }
}

const notThere = ['ENOENT', 'ENOTDIR']

/** The real disk. */
export const disk: Files = {
  stat: (path) =>
    attempt(
      path,
      'looked at',
      () => {
        const stat = lstatSync(path)
        const kind = stat.isFile()
          ? 'file'
          : stat.isDirectory()
            ? 'folder'
            : stat.isSymbolicLink()
              ? 'link'
              : 'other'
        return { kind, size: stat.size, modified: stat.mtimeMs, device: stat.dev }
      },
      notThere,
      null,
    ),
  read: (path) => attempt<Uint8Array | null>(path, 'read', () => readFileSync(path), notThere, null),
  names: (path) => attempt<readonly string[]>(path, 'read', () => readdirSync(path), notThere, []),
  mustBeWritable: (folder) => attempt(folder, 'written to', () => accessSync(folder, constants.W_OK)),
  makeFolder: (path) => attempt(path, 'made', () => mkdirSync(path, { recursive: true }) ?? null),
  write: (path, data) =>
    attempt(path, 'written', () => {
      try {
        writeFileSync(path, data)
      } catch (error) {
        if (systemCode(error) !== 'ENOENT') throw error
        mkdirSync(dirname(path), { recursive: true })
        writeFileSync(path, data)
      }
    }),
  writeNew: (path, data) =>
    attempt(
      path,
      'written',
      () => {
        writeFileSync(path, data, { flag: 'wx' })
        return true
      },
      ['EEXIST'],
      false,
    ),
  copy: (from, to) =>
    attempt(to, 'written', () => {
      mkdirSync(dirname(to), { recursive: true })
      copyFileSync(from, to, constants.COPYFILE_FICLONE)
    }),
  move: (from, to) => attempt(to, 'replaced', () => renameSync(from, to)),
  remove: (path) => attempt(path, 'removed', () => unlinkSync(path), notThere, undefined),
  removeIfEmpty: (folder) =>
    attempt(
      folder,
      'removed',
      () => {
        rmdirSync(folder)
        return true
      },
      [...notThere, 'ENOTEMPTY', 'EEXIST'],
      false,
    ),
  removeTree: (folder) => attempt(folder, 'removed', () => rmSync(folder, { recursive: true, force: true })),
}
