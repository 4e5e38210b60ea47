/** `passphrases.yaml` of the casebook on the disk. */
import { randomUUID } from 'node:crypto'
import {
  constants,
  copyFileSync,
  linkSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { asUserError, systemCode } from '../../build/disk/errors.ts'
import { passphraseFile } from './passphrase-file.ts'
import {
  completeKeys,
  type KeysText,
  type OwnerKeys,
  type RandomSource,
  secureRandom,
} from './passphrases.ts'

interface Kept extends Pick<KeysText, 'keys' | 'secret' | 'diagnostics'> {
  /** Whether other accounts of this machine can read the file. */
  readonly isOpen: boolean
}

/**
 * The keys of these owners from the casebook's folder; what is missing is made and written there, for the
 * practitioner's eyes only (mode 600), whole or not at all.
 * @throws UserError when the disk refuses
 */
export function keepKeys(
  casebook: string,
  ownerIds: readonly string[],
  random: RandomSource = secureRandom,
): Kept {
  const path = join(casebook, passphraseFile)
  for (;;) {
    const given = readIfThere(path)
    const { text, ...made } = completeKeys(given, ownerIds, random)
    const isMissing = text !== given && made.keys.size > 0
    // Another build may have made keys meanwhile: they stand, so that no address or passphrase is lost.
    if (!isMissing || writeWhole(path, given, text)) return { ...made, isOpen: isOpenToOthers(path) }
  }
}

function isOpenToOthers(path: string): boolean {
  const stat = statSync(path, { throwIfNoEntry: false })
  return process.platform !== 'win32' && stat !== undefined && (stat.mode & 0o077) !== 0
}

/** The keys that the casebook has already, of these owners; nothing is made. */
export function readKeys(casebook: string, ownerIds: readonly string[]): OwnerKeys {
  const given = readIfThere(join(casebook, passphraseFile))
  if (given === null) return new Map()
  const { keys, text } = completeKeys(given, ownerIds)
  // What was made to complete the file is not in it.
  return new Map([...keys].filter(([, { token }]) => text === given || given.includes(token)))
}

function readIfThere(path: string): string | null {
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
