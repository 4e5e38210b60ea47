import type { Edition } from './edition.ts'
import { passphraseFile } from './lock/passphrase-file.ts'
import type { YardFragment } from './yard/horse-fragment.ts'

/**
 * The practice in the practitioner's pocket: one locked page with all horses, and the form for their next visits.
 * @param workFactor base-2 logarithm of the work of unlocking; tests take less
 */
export const yardEdition = (workFactor?: number): Edition<YardFragment> => ({
  name: 'yard',
  folder: 'yard',
  // Parts of a horse with errors are kept within the page.
  keepsBroken: false,
  assets: {
    styles: [
      'growdown',
      'parts',
      'problems',
      'tables',
      'figures',
      'lists',
      'gate',
      'mark',
      'yard',
      'yard-form',
      'yard-visit',
    ],
    scripts: ['yard-gate', 'yard'],
    isInline: true,
  },
  isPractitioners: true,
  announcement: ({ site, casebook }) =>
    `The yard page, locked: ${site('yard')}; what opens it: yard in ${casebook(passphraseFile)}`,
  ofHorse: async (horse, tools) => {
    const { yardFragment } = await import('./yard/horse-fragment.ts')
    return yardFragment(horse, tools)
  },
  pages: async () => [],
  files: async () => {
    const { robots } = await import('../pages/owner/pages.ts')
    return [{ path: 'robots.txt', text: robots }]
  },
  protection: {
    units: async (all, tools) => {
      const { yardUnits } = await import('./yard/yard-units.ts')
      return yardUnits(all, { ...tools, workFactor })
    },
  },
})

export const yard = yardEdition()
