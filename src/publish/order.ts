import type { FolderEntry } from '../casebook/folder.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Files } from './disk/files.ts'
import type { AllHorses } from './editions.ts'
import type { Edition, MadeFile } from './made.ts'
import type { OthersMaker } from './others.ts'
import type { HorseMaker } from './pool.ts'
import type { Bench } from './staged-horse.ts'
import type { Standing } from './standing.ts'
import type { Memory } from './state.ts'

/** What is to be built. Folders are absolute. */
export interface BuildOrder {
  readonly casebook: string
  readonly site: string
  readonly asOf: PlainDate
  readonly editions: readonly Edition[]
}

/** Who makes the content. Pages are made lazily, so that a build with nothing to do starts fast. */
export interface Makers {
  horses(bench: Bench): HorseMaker
  /** Pages and files over all horses, paths within the site. */
  overAll(edition: Edition, all: AllHorses): Promise<readonly MadeFile[]>
  /** What locking and searching the editions for others needs. */
  others(): Promise<OthersMaker>
  /** Style sheet and scripts, paths within the site. */
  assets(edition: Edition): readonly MadeFile[]
}

export interface BuildWorld {
  readonly files: Files
  readonly makers: Makers
  /** Names the program that builds; another one makes everything again. */
  readonly program: string
  /** Kept by a process that builds again and again. */
  readonly memory?: { over(disk: Memory): Memory }
  /** Likewise: the casebook's listing, so that not every file is looked at again. */
  readonly listing?: { list(): readonly FolderEntry[] }
  /** Likewise: the site as the last build left it. */
  readonly standing?: { open(): Standing }
  /** Milliseconds, for telling old files from fresh ones; no page shows it. */
  now(): number
  report(progress: Progress): void
  readonly signal: AbortSignal
}

export type Progress =
  | { readonly step: 'reading' }
  | { readonly step: 'making'; readonly done: number; readonly total: number }
  | { readonly step: 'locking'; readonly done: number; readonly total: number }
  | { readonly step: 'publishing'; readonly files: number }
