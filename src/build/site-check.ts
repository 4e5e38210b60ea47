/** What of the site is as the tool left it. */
import { join } from 'node:path'
import { contentHash } from './disk/content-hash.ts'
import type { Files } from './disk/files.ts'
import { comingFilesList, ownFilesList, readSiteRecord, type SiteRecord } from './disk/own-files.ts'
import type { SeenFolders } from './disk/publication.ts'
import { type Output, placeIn } from './disk/staging.ts'

interface HasOutputs {
  readonly outputs: readonly Output[]
}

export interface SiteCheck {
  /** Whether the site still holds every file of a unit as it was written. */
  isIntact(unit: HasOutputs): boolean
  /** Called once a build has put everything in place, with all that the site is now. */
  published(units: readonly HasOutputs[], record: SiteRecord): void
}

/** Looks at every file of the site. */
export const diskCheck = (files: Files, site: string): SiteCheck => ({
  isIntact: ({ outputs }) =>
    outputs.every(({ path, size, modified, hash, isTimeShared }) => {
      const place = placeIn(site, path)
      const seen = files.stat(place)
      const isAlike = seen?.kind === 'file' && seen.size === size && seen.modified === modified
      return isAlike && (!isTimeShared || contentHash(files.read(place) ?? '') === hash)
    }),
  published: () => {},
})

/** What a process that stays knows of a site that it wrote, so that it need not look at every file again. */
export interface WarmCheck {
  /** The site's record: not read again where the last build left it. */
  record(): SiteRecord
  /** Folders of the site as they were seen last. */
  readonly seen: SeenFolders
  /** For one build. Where that does not come to its end, nothing is taken as known any more. */
  open(): SiteCheck
  /** Looks at everything that is taken as known, a unit a step; what is not intact is not taken as known any more. */
  recheck(): Generator<boolean>
}

/** The site as the last build left it, and nothing of what it was before that. */
interface Left {
  /** How the lists of own files looked: another build in this site changes that. */
  readonly list: string
  readonly record: SiteRecord
  readonly units: Set<HasOutputs>
}

export function warmCheck(files: Files, site: string): WarmCheck {
  const onDisk = diskCheck(files, site)
  const lists = [ownFilesList, comingFilesList].map((name) => join(site, name))
  const listNow = () => JSON.stringify(lists.map((path) => files.stat(path)))
  let left: Left | null = null
  const knownNow = () => (left?.list === listNow() ? left : null)
  return {
    record: () => knownNow()?.record ?? readSiteRecord(files, site),
    seen: new Map(),
    open: () => {
      const known = knownNow()
      left = null
      return {
        isIntact: (unit) => known?.units.has(unit) || onDisk.isIntact(unit),
        published: (units, record) => {
          left = { list: listNow(), record, units: new Set(units) }
        },
      }
    },
    *recheck() {
      for (const unit of left?.units ?? []) {
        const isGone = !onDisk.isIntact(unit) && left?.units.delete(unit) === true
        yield isGone
      }
    },
  }
}
