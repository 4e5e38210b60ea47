/**
 * Growdown as a library where there is no Node, and the part of it that is the same everywhere: a casebook as text in,
 * what the pages are made from out. It knows no disk and no clock; the day is handed in.
 */
import type { Diagnostic } from './casebook/diagnostic.ts'
import type { CasebookFolder } from './casebook/folder.ts'
import { type CasebookFiles, memoryFolder } from './casebook/memory-folder.ts'
import type { Casebook } from './casebook/model.ts'
import { readCasebook } from './casebook/read.ts'
import type { PlainDate } from './hoof/dates.ts'
import { type Export, exportOf as exportIn } from './pages/export.ts'
import { formatter } from './pages/shared/format.ts'
import { practiceLanguage, wordsFor } from './pages/words/index.ts'
import type { Assessment } from './trend/assessment.ts'
import { lessonsOf, type PracticeLessons, untaughtPractice } from './trend/model/practice.ts'

export type { Diagnostic } from './casebook/diagnostic.ts'
export type { CasebookFolder, FolderEntry } from './casebook/folder.ts'
export type { CasebookFiles } from './casebook/memory-folder.ts'
export type { Casebook, Horse, Practice, Reading, Visit } from './casebook/model.ts'
export { printDiagnostic } from './casebook/print.ts'
export type { PlainDate } from './hoof/dates.ts'
export { type Export, exportSchema, exportShape } from './pages/export.ts'
export { assess } from './trend/assess.ts'
export type { Assessment } from './trend/assessment.ts'
export type { PracticeLessons } from './trend/model/practice.ts'

export interface CasebookRead {
  /** Null where practice.md cannot be used; horses whose files hold errors are left out. */
  readonly casebook: Casebook | null
  /** Errors first, then warnings, each by file and line. */
  readonly diagnostics: readonly Diagnostic[]
}

const isFolder = (casebook: CasebookFolder | CasebookFiles): casebook is CasebookFolder =>
  typeof casebook.list === 'function'

/**
 * Reads a whole casebook. All problems of all files are told, none is thrown.
 * @param casebook a folder, or texts by path: `{'practice.md': '---\npractice: ...', 'juno/horse.md': ...}`
 * @param asOf today as `2026-03-14`: nothing later may stand in a record
 */
export const read = (casebook: CasebookFolder | CasebookFiles, asOf: PlainDate): CasebookRead =>
  readCasebook(isFolder(casebook) ? casebook : memoryFolder(casebook), asOf)

/**
 * What the horses of a practice teach of its readings and of growth on a day, from whole months: `assess` takes its
 * `learned`, the export its `lessons`. Without it the literature alone stands.
 */
export const learn = (casebook: Casebook, asOf: PlainDate): PracticeLessons =>
  lessonsOf(casebook.horses, asOf)

/**
 * The machine-readable result of assessments that were made for one day, as `growdown export` prints it. `exportShape`
 * is its shape as a zod schema, `exportSchema()` the same as JSON Schema.
 */
export const exportOf = (
  assessments: readonly Assessment[],
  asOf: PlainDate,
  lessons: Pick<PracticeLessons, 'lessons'> = untaughtPractice,
): Export => exportIn(assessments, lessons, asOf, formatter('mm', wordsFor(practiceLanguage)))
