/** The first round of a build: each horse is read, and what was read is kept, so that its files are read once. */
import { contentHash } from '../../build/disk/content-hash.ts'
import type { Files } from '../../build/disk/files.ts'
import { DamagedFragment, readFragment } from '../../build/fragments.ts'
import type { UnitOutput } from '../../build/unit.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import { type HorseRead, readHorse } from '../../casebook/read.ts'
import { teachingOf, teachingText } from '../../trend/model/teaching.ts'
import type { HorseJob, ReadJob, ReadNotes, SourceFile } from './horse-job.ts'

export function readToKeep(
  { id, practice, asOf }: ReadJob,
  folder: CasebookFolder,
  keep: UnitOutput['keep'],
): ReadNotes {
  const read = readHorse(folder, id, practice, asOf)
  const { horse } = read
  return {
    read: keep(JSON.stringify(read)),
    teaching: horse && keep(teachingText(teachingOf(horse, asOf))),
  }
}

/** As it was read in the first round; read anew where that is not at hand. */
export function horseAsRead(
  { id, practice, asOf, read }: HorseJob,
  folder: CasebookFolder,
  files: Files,
  fragments: string,
): HorseRead {
  if (read !== null) {
    try {
      return JSON.parse(readFragment(files, fragments, read)) as HorseRead
    } catch (error) {
      if (!(error instanceof DamagedFragment)) throw error
    }
  }
  return readHorse(folder, id, practice, asOf)
}

/** Notices a file that was saved since it was surveyed. */
export function watched(
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
