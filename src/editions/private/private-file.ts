/** A small file of the casebook that the program keeps: for the practitioner's eyes only, written in one step. */
import { randomUUID } from 'node:crypto'
import { constants, copyFileSync, linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { asUserError, systemCode } from '../../build/disk/errors.ts'

/**
 * Brings a file up to date, mode 600, whole or not at all.
 * @param next what is to stand there, null where it is to stay as it is, and what is made of it; asked again where
 * another build wrote meanwhile, so that nothing of either is lost
 * @throws UserError when the disk refuses
 */
export function keepPrivateFile<Made>(
  path: string,
  next: (given: string | null) => { readonly text: string | null; readonly made: Made },
): Made {
  for (;;) {
    const given = readIfThere(path)
    const { text, made } = next(given)
    if (text === null || writeWhole(path, given, text)) return made
  }
}

/** Null where there is none. */
export function readIfThere(path: string): string | null {
  try {
    return readFileSync(path, 'utf8')
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return null
    throw asUserError(error, path, 'read')
  }
}

/** False where the file is not as it was read, so that nothing was written. */
function writeWhole(path: string, given: string | null, text: string): boolean {
  const beside = `${path}.${randomUUID()}.new`
  try {
    writeFileSync(beside, text, { mode: 0o600, flag: 'wx', flush: true })
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
