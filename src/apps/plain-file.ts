/** Files that a server may hand out: opened so that nothing on the way to them can lead elsewhere or hold it up. */
import {
  closeSync,
  constants,
  createReadStream,
  fstatSync,
  lstatSync,
  openSync,
  type ReadStream,
  readFileSync,
  realpathSync,
} from 'node:fs'
import { join, sep } from 'node:path'
import { asUserError, systemCode, UserError } from '../build/disk/errors.ts'

/** Bytes; the largest page of a thousand horses has a tenth of that. */
const mostRead = 16 * 1024 * 1024

/**
 * The bytes of a file at a path within a folder, forward slashes; null where no plain file lies there, links not
 * followed. The folder itself may be a link.
 * @throws UserError when the disk refuses, or when it is far too large for a page
 */
export function readPlainFile(folder: string, path: string): Uint8Array | null {
  const opened = openPlainFile(folder, path)
  if (opened === null) return null
  try {
    if (opened.size > mostRead) throw new UserError(`${path} is too large for a page`)
    return readFileSync(opened.handle)
  } finally {
    closeSync(opened.handle)
  }
}

/** The same file, of any size, a bit at a time; the reader ends or destroys it. */
export function streamPlainFile(folder: string, path: string): { stream: ReadStream; size: number } | null {
  const opened = openPlainFile(folder, path)
  if (opened === null) return null
  const { handle, size } = opened
  return { stream: createReadStream('', { fd: handle, start: 0, end: Math.max(0, size - 1) }), size }
}

/** Whether such a file lies there and can be read. */
export function isPlainFile(folder: string, path: string): boolean {
  const opened = openPlainFile(folder, path)
  if (opened !== null) closeSync(opened.handle)
  return opened !== null
}

/** A pipe is opened without waiting for who writes into it, a link not at all. Windows has neither sign. */
const careful = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

/** Nothing is there, or a link, a folder, a socket; or a file stands where a folder would. */
const notPlain = ['ENOENT', 'ENOTDIR', 'ELOOP', 'EMLINK', 'EISDIR', 'ENXIO', 'ENAMETOOLONG']

function openPlainFile(folder: string, path: string): { handle: number; size: number } | null {
  let handle: number | null = null
  try {
    const root = realpathSync(folder)
    const place = join(root, ...path.split('/'))
    if (!place.startsWith(root + sep) || place.includes('\0')) return null
    handle = openSync(place, careful)
    const stat = fstatSync(handle)
    // A folder on the way may be a link. Looked at after opening, so that none can be put there in between.
    const there = realpathSync(place) === place ? lstatSync(place) : null
    if (!stat.isFile() || there?.ino !== stat.ino || there.dev !== stat.dev) return null
    const opened = { handle, size: stat.size }
    handle = null
    return opened
  } catch (error) {
    if (notPlain.includes(systemCode(error) ?? '')) return null
    throw asUserError(error, path, 'read')
  } finally {
    if (handle !== null) closeSync(handle)
  }
}
