/** What of the site stands as the tool left it. */
import { join } from 'node:path'
import type { Files } from './disk/files.ts'
import { type Made, madeList, readMade } from './disk/ownership.ts'
import { placeIn } from './disk/staging.ts'
import type { Piece } from './state.ts'

export interface Standing {
  /**
   * The list of the tool's own files.
   * @throws Trouble when it cannot be understood
   */
  made(): Made
  /** Whether the site still holds every file of a piece as it was written. */
  stands(piece: Piece): boolean
  /** To be told once a build has put everything in place. */
  published(made: Made, pieces: readonly Piece[]): void
}

/** The site as one look at every file has it. */
export const lookedAt = (files: Files, site: string): Standing => ({
  made: () => readMade(files, site),
  stands: ({ outputs }) =>
    outputs.every(({ path, size, modified }) => {
      const seen = files.look(placeIn(site, path))
      return seen?.kind === 'file' && seen.size === size && seen.modified === modified
    }),
  published: () => {},
})

/** What a process that stays knows of a site that it wrote, so that it need not look at every file again. */
export interface KeptStanding {
  /** For one build. Where that does not come to its end, nothing is taken as known any more. */
  open(): Standing
  /** Looks at everything that is taken as known, a piece a step; what stands no more is not taken as known. */
  lookAgain(): Generator<boolean>
}

/** The site as the last build left it, and nothing of what it was before that. */
interface Left {
  readonly made: Made
  /** How the list of own files looked: another build in this site changes that. */
  readonly list: string
  readonly pieces: Set<Piece>
}

export function keptStanding(files: Files, site: string): KeptStanding {
  const looked = lookedAt(files, site)
  const listNow = () => JSON.stringify(files.look(join(site, madeList)))
  let left: Left | null = null
  return {
    open: () => {
      const known = left?.list === listNow() ? left : null
      left = null
      return {
        made: () => known?.made ?? looked.made(),
        stands: (piece) => known?.pieces.has(piece) || looked.stands(piece),
        published: (made, pieces) => {
          left = { made, list: listNow(), pieces: new Set(pieces) }
        },
      }
    },
    *lookAgain() {
      for (const piece of left?.pieces ?? []) {
        const isGone = !looked.stands(piece) && left?.pieces.delete(piece) === true
        yield isGone
      }
    },
  }
}
