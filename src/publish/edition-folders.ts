import type { Edition } from './made.ts'

/** Where each edition stands below the site; nothing else writes there. */
export interface EditionFolder {
  readonly folder: string
  /** Whether the pages of a horse with errors stay as they were last built; else they go. */
  readonly keepsBroken: boolean
}

export const editionFolders: Readonly<Record<Edition, EditionFolder>> = {
  practice: { folder: 'practice', keepsBroken: true },
  owner: { folder: 'owners', keepsBroken: false },
  portfolio: { folder: 'portfolio', keepsBroken: false },
}
