/** `passphrases.yaml` of the casebook on the disk. */
import { statSync } from 'node:fs'
import { join } from 'node:path'
import { changeFile, modes, readIfThere } from '../../build/disk/whole-file.ts'
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
  const made = changeFile(path, modes.owner, (given) => {
    const { text, ...keys } = completeKeys(given, ownerIds, random)
    const isMissing = text !== given && keys.keys.size > 0
    return { text: isMissing ? text : null, made: keys }
  })
  return { ...made, isOpen: isOpenToOthers(path) }
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
