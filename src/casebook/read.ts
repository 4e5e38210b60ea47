import type { PlainDate } from '../hoof/dates.ts'
import type { Diagnostic } from './diagnostic.ts'
import type { CasebookFolder } from './folder.ts'
import type { Casebook, Horse, Practice } from './model.ts'

export interface PracticeRead {
  /** Null when practice.md is missing or cannot be used. */
  readonly practice: Practice | null
  /** Of practice.md and of files that lie in no known place. */
  readonly diagnostics: readonly Diagnostic[]
  /** Ids of the folders that hold a horse, sorted. */
  readonly horseIds: readonly string[]
}

export interface HorseRead {
  /** Null when its files hold an error. */
  readonly horse: Horse | null
  readonly diagnostics: readonly Diagnostic[]
}

/** practice.md, and which horses there are. `asOf` is today. */
export function readPractice(_folder: CasebookFolder, _asOf: PlainDate): PracticeRead {
  throw new Error('to be written')
}

/** One horse with all its visits. Needs nothing of other horses, so horses can be read apart. */
export function readHorse(
  _folder: CasebookFolder,
  _id: string,
  _practice: Practice,
  _asOf: PlainDate,
): HorseRead {
  throw new Error('to be written')
}

/** The whole casebook: errors first, then warnings, each by file and line. */
export function readCasebook(
  _folder: CasebookFolder,
  _asOf: PlainDate,
): { casebook: Casebook | null; diagnostics: readonly Diagnostic[] } {
  throw new Error('to be written')
}
