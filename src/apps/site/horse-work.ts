/** The work of one thread: horse after horse, each with its files at once in the staging folder. */
import { contentHash } from '../../build/disk/content-hash.ts'
import type { Files } from '../../build/disk/files.ts'
import { knownFolder } from '../../build/disk/source-folder.ts'
import type { Work } from '../../build/pool.ts'
import { type MadeUnit, unitMaker } from '../../build/unit.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import type { Edition, PageTools } from '../../editions/edition.ts'
import { pictureStore } from '../../pictures/store.ts'
import { makeHorse } from './horse.ts'
import type { HorseJob, HorseRecord, SitePaths, SourceFile } from './horse-job.ts'

export type HorseWork = Work<HorseJob, MadeUnit<HorseRecord>>

/** @param editions those that a job may name */
export function horseWork(
  files: Files,
  paths: SitePaths,
  editions: readonly Edition[],
  { renderer, formatIn, own }: PageTools,
): HorseWork {
  const makeUnit = unitMaker(files, paths)
  const pictures = pictureStore(files, paths.pictures)
  const editionNamed = (name: string): Edition => {
    const edition = editions.find((one) => one.name === name)
    if (edition === undefined) throw new Error(`there is no edition ${name}`)
    return edition
  }
  return (job) =>
    makeUnit(job.id, ({ put, keep, markStale }) => {
      const folder = watched(knownFolder(paths.casebook, job.files), job.files, markStale)
      return makeHorse(job, job.editions.map(editionNamed), folder, {
        put,
        keep,
        renderer,
        formatIn,
        own,
        pictures,
      })
    })
}

/** Notices a file that was saved since it was surveyed. */
function watched(
  folder: CasebookFolder,
  files: readonly SourceFile[],
  markStale: () => void,
): CasebookFolder {
  const hashes = new Map(files.map(({ path, hash }) => [path, hash]))
  return {
    list: () => folder.list(),
    read: (path) => {
      const bytes = folder.read(path)
      if (hashes.get(path) !== contentHash(bytes)) markStale()
      return bytes
    },
  }
}
