/** The first round of a build: each horse is read, and what was read is kept, so that its files are read once. */
import { contentHash } from '../../build/disk/content-hash.ts'
import type { Files } from '../../build/disk/files.ts'
import { DamagedFragment, readFragment } from '../../build/fragments.ts'
import type { UnitOutput } from '../../build/unit.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import { type KeptReads, keptReads } from '../../casebook/kept-reads.ts'
import { type HorseRead, readHorse, readLiveHorse } from '../../casebook/read.ts'
import { teachingOf, teachingText } from '../../trend/model/teaching.ts'
import type { HorseJob, ReadJob, ReadNotes, SourceFile } from './horse-job.ts'

/**
 * What was read of the files of the horse that was read last, for a process that reads it again at each save: of eight
 * visits one is taken apart, which spares half of the reading.
 */
export interface LastRead {
  kept: {
    /** All that the readers were given beside the files. */
    readonly under: string
    readonly bytes: Map<string, Uint8Array>
    readonly reads: KeptReads
  } | null
}

/** @param last where the reading is to be spared; what comes of it is the same */
export function readToKeep(
  job: ReadJob,
  folder: CasebookFolder,
  keep: UnitOutput['keep'],
  last?: LastRead,
): ReadNotes {
  const { id, practice, asOf } = job
  const read = last ? readAgain(job, folder, last) : readHorse(folder, id, practice, asOf)
  const { horse } = read
  return {
    read: keep(JSON.stringify(read)),
    teaching: horse && keep(teachingText(teachingOf(horse, asOf))),
  }
}

function readAgain(
  { id, practice, asOf, files }: ReadJob,
  folder: CasebookFolder,
  last: LastRead,
): HorseRead {
  const under = JSON.stringify([id, practice, asOf, files.map(({ path, kind }) => [path, kind])])
  const kept = last.kept?.under === under ? last.kept : { under, bytes: new Map(), reads: keptReads() }
  last.kept = kept
  const same: CasebookFolder = {
    list: () => folder.list(),
    read: (path) => {
      const [bytes, before] = [folder.read(path), kept.bytes.get(path)]
      if (before !== undefined && Buffer.compare(before, bytes) === 0) return before
      kept.bytes.set(path, bytes)
      return bytes
    },
  }
  const { readable: _unsure, ...read } = readLiveHorse(same, id, practice, asOf, kept.reads)
  return read
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
