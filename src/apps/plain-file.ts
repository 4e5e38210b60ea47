/** Files that a server may hand out: opened so that nothing on the way to them can lead elsewhere or hold it up. */
import { closeSync, constants, fstatSync, lstatSync, openSync, readFileSync, realpathSync } from 'node:fs'
import { join, sep } from 'node:path'
import { asUserError, systemCode, UserError } from '../build/disk/errors.ts'

/** Bytes; a built page or picture has a twentieth of that. */
const mostRead = 32 * 1024 * 1024

/** Not one of these is there to be read: nothing, a link, a folder in a file's place or the other way round, a socket. */
const notPlain = ['ENOENT', 'ENOTDIR', 'ELOOP', 'EMLINK', 'EISDIR', 'ENXIO', 'ENAMETOOLONG']

/**
 * The bytes of a file at a path within a folder, forward slashes; null where no plain file lies there, links not
 * followed. The folder itself may be a link.
 * @throws UserError when the disk refuses, or when it is far too large
 */
export const readPlainFile = (folder: string, path: string): Uint8Array | null =>
  withPlainFile(folder, path, (handle, size) => {
    if (size > mostRead) throw new UserError(`${path} is too large to be shown`)
    return readFileSync(handle)
  })

/** Whether such a file lies there and can be read. */
export const isPlainFile = (folder: string, path: string): boolean =>
  withPlainFile(folder, path, () => true) ?? false

/** A pipe is opened without waiting for who writes into it, a link not at all. Windows has neither sign. */
const careful = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

function withPlainFile<T>(folder: string, path: string, use: (handle: number, size: number) => T): T | null {
  let handle: number | null = null
  try {
    const root = realpathSync(folder)
    const place = join(root, ...path.split('/'))
    if (!place.startsWith(root + sep) || place.includes('\0')) return null
    handle = openSync(place, careful)
    const opened = fstatSync(handle)
    // A folder on the way may be a link. Looked at after opening, so that none can be put there in between.
    const there = realpathSync(place) === place ? lstatSync(place) : null
    if (!opened.isFile() || there?.ino !== opened.ino || there.dev !== opened.dev) return null
    return use(handle, opened.size)
  } catch (error) {
    if (notPlain.includes(systemCode(error) ?? '')) return null
    throw asUserError(error, path, 'read')
  } finally {
    if (handle !== null) closeSync(handle)
  }
}
