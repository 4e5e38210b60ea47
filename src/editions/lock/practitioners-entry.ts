/**
 * The entry of `passphrases.yaml` that opens the practitioner's own page. An owner of that id would share it, and could
 * open every record of the practice; so there can be none.
 */
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import { passphraseFile } from './passphrase-file.ts'

export const practitionersEntry = 'yard'

export const ownerOfThatId: Diagnostic = {
  code: 'owner-id-taken',
  level: 'error',
  file: 'practice.md',
  line: null,
  column: null,
  endColumn: null,
  sourceLine: null,
  message: `an owner cannot have the id ${practitionersEntry}: ${passphraseFile} keeps the passphrase of your own page under it`,
  expected: 'another id; until then neither this owner’s page nor yours is made',
  fix: null,
  change: null,
  advice: `give the owner another id in practice.md and in horse.md of each of the owner's horses, and rename the entry in ${passphraseFile} in the same way`,
}
