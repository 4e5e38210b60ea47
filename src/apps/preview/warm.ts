/**
 * All that a process that stays knows, so that a build need not look at everything anew. Measured with 100 horses: a
 * save takes 58 to 112 ms of processor time, and 162 to 254 ms where memory, listing and site are looked at anew. With
 * 1,000 on a busy machine the main thread works 150 to 177 ms from a save until pages are told of it, and 279 to 356
 * where it reads the site's record, lists its folders, surveys every horse and reads every visit of one anew, and puts
 * nothing off.
 */
import type { Files } from '../../build/disk/files.ts'
import { warmCheck } from '../../build/site-check.ts'
import { warmMemory } from '../../build/state.ts'
import type { SiteContext } from '../site/options.ts'
import { lazyPageTools } from '../site/site-units.ts'
import { warmListing } from './warm-listing.ts'

export interface Warm
  extends Required<
    Pick<SiteContext, 'memory' | 'listing' | 'known' | 'lastRead' | 'siteCheck' | 'openTools'>
  > {
  /** Has the next build look again around a path within the casebook, forward slashes; an empty one means everywhere. */
  invalidate(path: string): void
  /** Looks whether all is as it is taken to be, a step at a time; what is not is invalid from then on. */
  recheck(): Generator<boolean>
  /** Leaves on the disk what a later process needs to know. */
  flush(): void
}

export function warmOver(files: Files, casebook: string, site: string): Warm {
  const memory = warmMemory()
  const listing = warmListing(casebook)
  const siteCheck = warmCheck(files, site)
  return {
    memory,
    listing,
    known: new Map(),
    lastRead: { kept: null },
    siteCheck,
    openTools: lazyPageTools(),
    invalidate: listing.invalidate,
    *recheck() {
      yield* listing.recheck()
      yield* siteCheck.recheck()
    },
    flush: memory.flush,
  }
}
