/** One holder at a time. */
import { closeSync, constants, ftruncateSync, openSync, readFileSync, unlinkSync, writeSync } from 'node:fs'
import { systemCode } from './errors.ts'
import type { Held, Lock } from './files.ts'
import { native } from './native.ts'

const { O_CREAT, O_EXCL, O_RDWR, O_NOFOLLOW = 0 } = constants
const ownerOnly = 0o600

/**
 * Takes the system's lock on a file, which ends with its process however that ends. The file stays: removing it would
 * let two builds hold a lock of that name. Where the system has no such lock, the file beside it that only one can
 * make is the lock; that of a build that died has to be deleted by a person, since nobody can take it over soundly.
 * @param holder what others are to know of this one
 * @throws the system's errors
 */
export function takeSystemLock(path: string, holder: string): Lock | Held {
  const handle = openSync(path, O_RDWR | O_CREAT | O_NOFOLLOW, ownerOnly)
  const isTaken = tryLock(handle)
  if (isTaken === null) {
    closeSync(handle)
    return makeLockFile(`${path}.held`, holder)
  }
  if (!isTaken) {
    const by = readFileSync(handle, 'utf8')
    closeSync(handle)
    return { by, leftOver: null }
  }
  ftruncateSync(handle)
  writeSync(handle, holder, 0)
  return {
    giveBack: () => {
      ftruncateSync(handle)
      closeSync(handle)
    },
  }
}

/** Null where the system, or this disk, has no lock. */
function tryLock(handle: number): boolean | null {
  const system = native()
  if (system === null) return null
  try {
    return system.tryLock(handle)
  } catch (error) {
    const code = systemCode(error)
    if (code === 'EACCES' || code === 'EWOULDBLOCK') return false
    return null
  }
}

/** The lock where the system has none: a file that only one can make. */
export function makeLockFile(path: string, holder: string): Lock | Held {
  try {
    const handle = openSync(path, O_RDWR | O_CREAT | O_EXCL, ownerOnly)
    writeSync(handle, holder)
    closeSync(handle)
    return { giveBack: () => unlinkSync(path) }
  } catch (error) {
    if (systemCode(error) !== 'EEXIST') throw error
    return { by: readFileSync(path, 'utf8'), leftOver: path }
  }
}
