/** A small file that a person keeps and that several programs may change: read, and written whole or not at all. */
import { randomUUID } from 'node:crypto'
import {
  closeSync,
  constants,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { asUserError, systemCode } from './errors.ts'

/** A link could lead anywhere, and builds follow none. */
const noLink = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0)

/**
 * Its text; null where there is none.
 * @throws UserError when the disk refuses
 */
export function readIfThere(path: string): string | null {
  try {
    const handle = openSync(path, noLink)
    try {
      return readFileSync(handle, 'utf8')
    } finally {
      closeSync(handle)
    }
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return null
    throw asUserError(error, path, 'read')
  }
}

/**
 * Changes it in one step. Where another program has changed it meanwhile, the change is made to what that one left.
 * @param changed the text as it should be, from the text as it is
 * @throws UserError when the disk refuses
 */
export function changeFile(path: string, changed: (given: string | null) => string): void {
  for (;;) {
    const given = readIfThere(path)
    const text = changed(given)
    if (text === given || writeOver(path, given, text)) return
  }
}

/** False where the file is not as it was read, so that nothing was written. */
function writeOver(path: string, given: string | null, text: string): boolean {
  const beside = join(dirname(path), `.${basename(path)}.${randomUUID()}`)
  try {
    writeFileSync(beside, text, { flag: 'wx', flush: true })
    if (given === null && isNewName(beside, path)) return true
    if (readIfThere(path) !== given) return false
    renameSync(beside, path)
    return true
  } catch (error) {
    throw asUserError(error, path, 'written')
  } finally {
    rmSync(beside, { force: true })
  }
}

/** Gives a file a name that only one can take; false where it is taken, or on a disk without links. */
function isNewName(file: string, name: string): boolean {
  try {
    linkSync(file, name)
    return true
  } catch {
    return false
  }
}
