/** A small file that a person keeps and that several programs may change: read, and written whole or not at all. */
import { randomUUID } from 'node:crypto'
import {
  closeSync,
  constants,
  copyFileSync,
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

/** Who may read what is written. */
export const modes = { everyone: 0o666, owner: 0o600 } as const

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
 * Changes it in one step.
 * @param next what is to stand there, null where it is to stay as it is, and what is made of it; asked again where
 * another program wrote meanwhile, so that nothing of either is lost
 * @throws UserError when the disk refuses
 */
export function changeFile<Made>(
  path: string,
  mode: number,
  next: (given: string | null) => { readonly text: string | null; readonly made: Made },
): Made {
  for (;;) {
    const given = readIfThere(path)
    const { text, made } = next(given)
    if (text === null || text === given || writeOver(path, mode, given, text)) return made
  }
}

/** False where the file is not as it was read, so that nothing was written. */
function writeOver(path: string, mode: number, given: string | null, text: string): boolean {
  const beside = join(dirname(path), `.${basename(path)}.${randomUUID()}`)
  try {
    writeFileSync(beside, text, { mode, flag: 'wx', flush: true })
    if (given === null) return isNewName(beside, path)
    if (readIfThere(path) !== given) return false
    renameSync(beside, path)
    return true
  } catch (error) {
    throw asUserError(error, path, 'written')
  } finally {
    rmSync(beside, { force: true })
  }
}

/** Gives a file a name that only one can take. */
function isNewName(file: string, name: string): boolean {
  try {
    linkSync(file, name)
    return true
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false
    // A disk without links.
    copyFileSync(file, name, constants.COPYFILE_EXCL)
    return true
  }
}
