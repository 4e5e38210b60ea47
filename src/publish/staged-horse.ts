/** A horse whose files are written and wait to be published. Small, so that a thousand of them are too. */

import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { CasebookFolder, FolderEntry } from '../casebook/folder.ts'
import type { HorseSummary } from '../pages/shared/summary.ts'
import { hashOf } from './digest.ts'
import { knownFolder } from './disk/disk.ts'
import type { Files } from './disk/files.ts'
import { type Staged, type Staging, sharedBuffer, stage } from './disk/staging.ts'
import { Trouble } from './disk/trouble.ts'
import type { ForOthers } from './for-others.ts'
import type { HorseJob, HorseTools } from './horse.ts'
import type { MadeFile, MadeHorse } from './made.ts'
import { keepPart } from './parts.ts'
import { pictureStore } from './pictures/store.ts'

/** A horse to be made, with the listing of its files. */
export interface PooledJob extends HorseJob {
  readonly entries: readonly FolderEntry[]
}

/** Makes one horse and sets its files ready. */
export type HorseWorker = (job: PooledJob) => Promise<StagedHorse>

export interface StagedHorse {
  readonly id: string
  readonly diagnostics: readonly Diagnostic[]
  readonly summary: HorseSummary | null
  readonly forOthers: ForOthers | null
  readonly outputs: readonly Staged[]
  /** Path to hash of each file as it was read, to notice one that was saved meanwhile. */
  readonly read: Readonly<Record<string, string>>
}

/** Where a worker finds and leaves things; plain data, so that it can be handed to a thread. */
export interface Bench {
  readonly casebook: string
  readonly staging: Staging
  /** Where owners' parts are kept between builds. */
  readonly parts: string
  /** Where processed pictures are kept between builds. */
  readonly pictures: string
}

/** Makes one horse; `makeHorse` with its page maker, or a test's own. */
export type MakeHorse = (
  job: HorseJob,
  tools: Pick<HorseTools, 'folder' | 'keep' | 'store' | 'put'>,
) => Promise<MadeHorse>

/** Makes horses one by one and writes their files to the staging folder at once, so that memory stays small. */
export function stagingWorker(files: Files, bench: Bench, make: MakeHorse): HorseWorker {
  const encode = sharedBuffer()
  return async (job) => {
    const read: Record<string, string> = {}
    const folder = noted(knownFolder(bench.casebook, job.entries), read)
    const keep = (text: string) => keepPart(files, bench.parts, text)
    const store = pictureStore(files, bench.pictures)
    try {
      const outputs: Staged[] = []
      const put = (file: MadeFile) => outputs.push(...stage(files, bench.staging, [file], encode))
      const made = await make(job, { folder, keep, store, put })
      const { id, diagnostics, summary, forOthers } = made
      return { id, diagnostics, summary, forOthers, outputs, read }
    } catch (error) {
      if (error instanceof Trouble || !(error instanceof Error)) throw error
      error.message = `the pages of ${job.id} could not be made: ${error.message}`
      throw error
    }
  }
}

const noted = (folder: CasebookFolder, read: Record<string, string>): CasebookFolder => ({
  list: () => folder.list(),
  read: (path) => {
    const bytes = folder.read(path)
    read[path] = hashOf(bytes)
    return bytes
  },
})
