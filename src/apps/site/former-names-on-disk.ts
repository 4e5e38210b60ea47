/** `former-names.yaml` of the casebook on the disk: whoever leaves the casebook is searched for all the same. */
import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import { changeFile, modes } from '../../build/disk/whole-file.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { Practice } from '../../casebook/model.ts'
import { reportOn } from '../../casebook/report.ts'
import { type FormerNames, parseFormer, printFormer, withFormer } from '../../identity/former-names.ts'
import type { HorseIdentity } from '../../identity/identifiers.ts'

/** Where it stands within the casebook. */
const formerNamesFile = 'former-names.yaml'

interface Kept {
  readonly former: FormerNames
  readonly diagnostics: readonly Diagnostic[]
}

/**
 * Every name that the casebook holds now, added to those that it ever held; the file is written where that says more than
 * it did. It is kept while the names are still known: of a horse whose folder is gone nothing else would tell. A file
 * with lines that cannot be read is left as it is.
 * @throws UserError when the disk refuses
 */
export function keepFormerNames(casebook: string, names: readonly string[]): Kept {
  return changeFile(join(casebook, formerNamesFile), modes.owner, (given) => {
    const { former: known, strange } = parseFormer(given ?? '')
    const former = withFormer(known, names, () => randomBytes(16).toString('hex'))
    const isToWrite = strange.length === 0 && (given !== null || names.length > 0)
    return {
      text: isToWrite ? printFormer(former) : null,
      made: { former, diagnostics: strangeLines(strange) },
    }
  })
}

function strangeLines(lines: readonly string[]): readonly Diagnostic[] {
  if (lines.length === 0) return []
  const report = reportOn(formerNamesFile, '')
  report.warning('former-names', null, `Lines of this file cannot be read: ${lines.length}.`, {
    expected: 'lines as growdown writes them',
    advice: 'delete them; names that they kept are searched for no more',
  })
  return report.diagnostics
}

/** The names of horses, owners and people of the practice, each once, in an order that does not change from build to build. */
export const namesInCasebook = (
  { owners, people }: Pick<Practice, 'owners' | 'people'>,
  horses: readonly Pick<HorseIdentity, 'name'>[],
): readonly string[] => [...new Set([...owners, ...people, ...horses].map(({ name }) => name))].sort()
