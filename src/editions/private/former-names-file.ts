/** `former-names.yaml` of the casebook on the disk: whoever leaves the casebook is searched for all the same. */
import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import type { Practice } from '../../casebook/model.ts'
import type { HorseIdentity } from '../../identity/identifiers.ts'
import { keepPrivateFile } from './private-file.ts'

/** Where it stands within the casebook. */
export const formerNamesFile = 'former-names.yaml'

/** How names are kept so that nobody can read them out of the file. */
export interface FormerNamesFormat<Former> {
  parseFormer(text: string | null): Former
  printFormer(former: Former): string
  withFormer(former: Former, names: readonly string[], random: (bytes: number) => Uint8Array): Former
}

/**
 * Every name that the casebook holds now, added to those that it ever held; the file is written where that says more than
 * it did. It is kept while the names are still known: of a horse whose folder is gone nothing else would tell.
 * @throws UserError when the disk refuses
 */
export function keepFormerNames<Former>(
  casebook: string,
  names: readonly string[],
  { parseFormer, printFormer, withFormer }: FormerNamesFormat<Former>,
  random: (bytes: number) => Uint8Array = randomBytes,
): Former {
  return keepPrivateFile(join(casebook, formerNamesFile), (given) => {
    const made = withFormer(parseFormer(given), names, random)
    const text = printFormer(made)
    return { text: text === given || (given === null && names.length === 0) ? null : text, made }
  })
}

/** The names of horses and owners, each once, in an order that does not change from build to build. */
export const namesInCasebook = (
  { owners }: Pick<Practice, 'owners'>,
  horses: readonly Pick<HorseIdentity, 'name'>[],
): readonly string[] => [...new Set([...owners, ...horses].map(({ name }) => name))].sort()
