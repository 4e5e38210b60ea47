/** The work of one thread: horse after horse, each with its files at once in the staging folder. */
import { contentHash } from '../../build/disk/content-hash.ts'
import { Stopped, systemCode, UserError } from '../../build/disk/errors.ts'
import type { Files } from '../../build/disk/files.ts'
import { knownFolder } from '../../build/disk/source-folder.ts'
import { placeIn } from '../../build/disk/staging.ts'
import type { Work } from '../../build/pool.ts'
import { type MadeUnit, type UnitOutput, unitMaker } from '../../build/unit.ts'
import type { Edition, PageTools } from '../../editions/edition.ts'
import { pictureStore } from '../../pictures/store.ts'
import { horseAtFault, makeHorse } from './horse.ts'
import {
  type HorseJob,
  type HorseRecord,
  type ReadJob,
  type ReadNotes,
  readUnit,
  type SitePaths,
} from './horse-job.ts'
import type { PagesTools } from './horse-pages.ts'
import { horseAsRead, type LastRead, readToKeep, watched } from './horse-reading.ts'

export type HorseWork = Work<ReadJob | HorseJob, MadeUnit<ReadNotes | HorseRecord>>

/**
 * @param editions those that a job may name
 * @param last kept by a process that reads a horse again and again
 */
export function horseWork(
  files: Files,
  paths: SitePaths,
  editions: readonly Edition[],
  { renderer, formatIn, forOwners, own }: PageTools,
  last?: LastRead,
): HorseWork {
  const makeUnit = unitMaker(files, paths)
  const unmade = unmadeHorse(files, paths)
  const pictures = pictureStore(files, paths.pictures)
  const editionNamed = (name: string): Edition => {
    const edition = editions.find((one) => one.name === name)
    if (edition === undefined) throw new Error(`there is no edition ${name}`)
    return edition
  }
  const publishedAt = publishedIn(files, paths.staging.site)
  const tools = { renderer, formatIn, forOwners, own, pictures, publishedAt }
  const folderOf = (job: ReadJob | HorseJob, markStale: () => void) =>
    watched(knownFolder(paths.casebook, job.files), job.files, markStale)
  const horseRead = (job: HorseJob, markStale: () => void) =>
    horseAsRead(job, folderOf(job, markStale), files, paths.fragments)
  const read = (job: ReadJob) =>
    makeUnit(readUnit(job.id), async ({ put, keep, markStale }): Promise<ReadNotes> => {
      const output = telling({ put, keep })
      try {
        return readToKeep(job, folderOf(job, markStale), output.keep, last)
      } catch (error) {
        if (output.hasFailed() || isEveryonesTrouble(error)) throw error
        markStale()
        // It comes again with the pages, and is told there.
        return { read: null, teaching: null }
      }
    })
  const pages = async (job: HorseJob) => {
    let fault: string | null = null
    try {
      return await makeUnit(job.id, async ({ put, keep, keepOn, markStale }) => {
        const output = { ...telling({ put, keep }), keepOn }
        try {
          const chosen = job.editions.map(editionNamed)
          return await makeHorse(job, chosen, horseRead(job, markStale), folderOf(job, markStale), {
            ...output,
            ...tools,
          })
        } catch (error) {
          if (!output.hasFailed() && !isEveryonesTrouble(error)) fault = wordsOf(error)
          throw error
        }
      })
    } catch (error) {
      if (fault === null) throw error
      return unmade(job, fault)
    }
  }
  return (job) => (job.round === 'read' ? read(job) : pages(job))
}

const publishedIn =
  (files: Files, site: string): PagesTools['publishedAt'] =>
  ({ path, hash }) => {
    const place = placeIn(site, path)
    const bytes = files.stat(place)?.kind === 'file' ? files.read(place) : null
    return bytes !== null && contentHash(bytes) === hash ? place : null
  }

/** A horse whose work was ended by a fault, as a unit of its own: no page that was made before the fault is published. */
export function unmadeHorse(files: Files, paths: SitePaths) {
  const makeUnit = unitMaker(files, paths)
  return (job: HorseJob, fault: string): Promise<MadeUnit<HorseRecord>> =>
    makeUnit(job.id, async ({ markStale }) => {
      // The fault may not come again: the next build tries anew.
      markStale()
      return horseAtFault(job, knownFolder(paths.casebook, job.files), fault)
    })
}

/** A horse that could not be read in the first round: that is told with its pages. */
export function unreadHorse(files: Files, paths: SitePaths) {
  const makeUnit = unitMaker(files, paths)
  return ({ id }: ReadJob): Promise<MadeUnit<ReadNotes>> =>
    makeUnit(readUnit(id), async ({ markStale }) => {
      markStale()
      return { read: null, teaching: null }
    })
}

/** Tells whether it was the putting away of what is made that failed, and not the making. */
function telling({ put, keep }: Pick<UnitOutput, 'put' | 'keep'>) {
  let failed = false
  const noticed =
    <A, R>(run: (given: A) => R) =>
    (given: A): R => {
      try {
        return run(given)
      } catch (error) {
        failed = true
        throw error
      }
    }
  return { put: noticed(put), keep: noticed(keep), hasFailed: () => failed }
}

const wordsOf = (error: unknown): string =>
  error instanceof RangeError && /call stack/i.test(error.message)
    ? 'something in its files is too deep inside each other'
    : `a fault of this program: ${error instanceof Error ? error.message : String(error)}`

/** What the disk refuses, and the wish to stop, end the whole build; any other fault is that of one horse. */
const isEveryonesTrouble = (error: unknown): boolean =>
  error instanceof UserError || error instanceof Stopped || systemCode(error) !== null
