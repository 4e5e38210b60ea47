/** `passphrases.yaml` of the casebook on the disk. */
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { asUserError, systemCode } from '../../build/disk/errors.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import { passphraseFile } from './passphrase-file.ts'
import { completeKeys, type OwnerKeys, type RandomSource, secureRandom } from './passphrases.ts'

/**
 * The keys of these owners from the casebook's folder; what is missing is made and written there, for the
 * practitioner's eyes only (mode 600), whole or not at all.
 * @throws UserError when the disk refuses
 */
export function keepKeys(
  casebook: string,
  ownerIds: readonly string[],
  random: RandomSource = secureRandom,
): { keys: OwnerKeys; diagnostics: readonly Diagnostic[] } {
  const path = join(casebook, passphraseFile)
  const given = readIfThere(path)
  const { keys, text, diagnostics } = completeKeys(given, ownerIds, random)
  if (text !== given && keys.size > 0) writeWhole(path, text)
  return { keys, diagnostics }
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

function writeWhole(path: string, text: string): void {
  const beside = `${path}.new`
  try {
    rmSync(beside, { force: true })
    writeFileSync(beside, text, { mode: 0o600, flag: 'wx', flush: true })
    renameSync(beside, path)
  } catch (error) {
    rmSync(beside, { force: true })
    throw asUserError(error, path, 'written')
  }
}
