import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { commonStyles } from '../build/program.ts'
import type { Edition } from './edition.ts'
import { passphraseFile } from './lock/passphrase-file.ts'
import type { HorseFragment } from './owner/horse-fragment.ts'

/**
 * A page for each owner, of that owner's horses alone, locked with a passphrase of the owner's own.
 * @param workFactor base-2 logarithm of the work of unlocking; tests take less
 */
export const ownerEdition = (workFactor?: number): Edition<HorseFragment> => ({
  name: 'owner',
  folder: 'owners',
  keepsBroken: false,
  assets: { styles: [...commonStyles, 'gate', 'owner'], scripts: ['unlock'], isInline: true },
  shownIn: { consent: 'owner site', of: ({ owner }, addresses) => addresses[owner] ?? null },
  announcement: ({ site, casebook }) =>
    `Owners' pages, locked: ${site('owners')}; what opens them: ${casebook(passphraseFile)}`,
  ofHorse: async (horse, { forOwners, pictures, keep }) => {
    const { ownerFragment } = await import('./owner/horse-fragment.ts')
    return ownerFragment(horse, forOwners, pictures, keep)
  },
  pages: async () => [],
  files: async () => {
    const { robots } = await import('../pages/owner/pages.ts')
    return [{ path: 'robots.txt', text: robots }]
  },
  protection: {
    units: async ({ practice, kept }, tools) => {
      const { lockedUnits } = await import('./owner/locked-units.ts')
      return lockedUnits(practice, kept, { ...tools, ...tools.edition, workFactor })
    },
  },
  addresses: async (practice, casebook, kept) => {
    if (kept === null && !existsSync(join(casebook, passphraseFile))) return {}
    const { keepKeys, readKeys } = await import('./lock/keep-keys.ts')
    const { ownersShown } = await import('./owner/horse-fragment.ts')
    const { practitionersEntry } = await import('./lock/practitioners-entry.ts')
    const ids = (kept === null ? practice.owners : ownersShown(practice, kept))
      .map(({ id }) => id)
      .filter((id) => id !== practitionersEntry)
    const keys = kept === null ? readKeys(casebook, ids) : keepKeys(casebook, ids).keys
    return Object.fromEntries([...keys].map(([id, { token }]) => [id, token]))
  },
})

export const owner = ownerEdition()
