import {
  accessSync,
  chmodSync,
  constants,
  copyFileSync,
  type Dirent,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
  symlinkSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname } from 'node:path'
import { asUserError, systemCode } from './errors.ts'
import { besideEnding, type FileStat, type Files } from './files.ts'
import { native } from './native.ts'
import { takeSystemLock } from './system-lock.ts'

/** Runs one step and puts a fault of the system into words; these codes mean `otherwise`. */
function attempt<T>(
  path: string,
  action: string,
  run: () => T,
  codes: readonly string[] = [],
  otherwise?: T,
): T {
  try {
    return run()
  } catch (error) {
    if (codes.includes(systemCode(error) ?? '')) return otherwise as T
    throw asUserError(error, path, action)
  }
}

const notThere = ['ENOENT', 'ENOTDIR']

/** No such thing on this disk or system, not across disks, not for a mount point, or not for this account. */
const notHere = ['EXDEV', 'EBUSY', 'EINVAL', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EPERM', 'EACCES', 'EMLINK']

const ownerOnly = { file: 0o600, folder: 0o700 }

const kindOf = (entry: Stats | Dirent): FileStat['kind'] =>
  entry.isFile() ? 'file' : entry.isDirectory() ? 'folder' : entry.isSymbolicLink() ? 'link' : 'other'

function writeWithFolder(path: string, data: string | Uint8Array, modes?: typeof ownerOnly): void {
  try {
    writeFileSync(path, data, { mode: modes?.file })
  } catch (error) {
    if (systemCode(error) !== 'ENOENT') throw error
    mkdirSync(dirname(path), { recursive: true, mode: modes?.folder })
    writeFileSync(path, data, { mode: modes?.file })
  }
}

function renameAcross(from: string, to: string): void {
  try {
    renameSync(from, to)
  } catch (error) {
    if (systemCode(error) !== 'EXDEV') throw error
    copyFileSync(from, to + besideEnding)
    renameSync(to + besideEnding, to)
    unlinkSync(from)
  }
}

/** The real disk. */
export const disk: Files = {
  stat: (path) =>
    attempt(
      path,
      'looked at',
      () => {
        const stat = lstatSync(path)
        const { size, mtimeMs: modified, mode, dev: device, ino: inode } = stat
        return { kind: kindOf(stat), size, modified, mode: mode & 0o7777, device, inode }
      },
      notThere,
      null,
    ),
  realPath: (path) =>
    attempt<string | null>(path, 'looked at', () => realpathSync.native(path), notThere, null),
  read: (path) => attempt<Uint8Array | null>(path, 'read', () => readFileSync(path), notThere, null),
  names: (path) => attempt<readonly string[]>(path, 'read', () => readdirSync(path), notThere, []),
  entries: (path) =>
    attempt(
      path,
      'read',
      () =>
        readdirSync(path, { withFileTypes: true }).map((entry) => ({
          name: entry.name,
          kind: kindOf(entry),
        })),
      notThere,
      [],
    ),
  mustBeWritable: (folder) => attempt(folder, 'written to', () => accessSync(folder, constants.W_OK)),
  makeFolder: (path) => attempt(path, 'made', () => void mkdirSync(path, { recursive: true })),
  makePrivateFolder: (path) =>
    attempt(path, 'made', () => {
      mkdirSync(path, { recursive: true, mode: ownerOnly.folder })
      if ((lstatSync(path).mode & 0o777) !== ownerOnly.folder) chmodSync(path, ownerOnly.folder)
    }),
  setMode: (path, mode) => attempt(path, 'made', () => chmodSync(path, mode)),
  setModified: (path, time) => attempt(path, 'written', () => utimesSync(path, time / 1000, time / 1000)),
  write: (path, data) => attempt(path, 'written', () => writeWithFolder(path, data)),
  writePrivate: (path, data) => attempt(path, 'written', () => writeWithFolder(path, data, ownerOnly)),
  link: (from, to) =>
    attempt(
      to,
      'made',
      () => {
        linkSync(from, to)
        return true
      },
      notHere,
      false,
    ),
  copyNew: (from, to) => attempt(to, 'made', () => copyFileSync(from, to, constants.COPYFILE_EXCL)),
  copyLink: (from, to) => attempt(to, 'made', () => symlinkSync(readlinkSync(from), to)),
  move: (from, to) => attempt(to, 'replaced', () => renameAcross(from, to)),
  moveFolder: (from, to) =>
    attempt(
      to,
      'made',
      () => {
        renameSync(from, to)
        return true
      },
      notHere,
      false,
    ),
  exchange: (a, b) => {
    const system = native()
    if (system === null || process.platform === 'win32') return false
    return attempt(
      a,
      'replaced',
      () => {
        system.swapSync(a, b)
        return true
      },
      notHere,
      false,
    )
  },
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
  lock: (path, holder) => attempt(path, 'written', () => takeSystemLock(path, holder)),
}
