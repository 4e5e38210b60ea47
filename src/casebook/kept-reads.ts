/**
 * What was read of the files of a horse, kept for an editor: of forty visits one changes with each key, and the other
 * thirty-nine need not be taken apart again.
 */
import type { Diagnostic } from './diagnostic.ts'
import type { CasebookFolder, FolderEntry } from './folder.ts'
import { type CaseFile, openCaseFile } from './front-matter.ts'
import { type Report, reportOn } from './report.ts'

/** What of a file was placed; each of the readers of case files gives such. */
interface Placed {
  readonly report: Report
}

interface KeptRead {
  /** The folder hands out the same bytes for as long as a file is as it was. */
  readonly bytes: Uint8Array
  /** What it was read beside, of other files of the horse, as JSON. */
  readonly beside: string
  readonly file: CaseFile
  readonly placed: Placed | null
  /** What its reader alone reported, before visits were held against each other. */
  readonly own: readonly Diagnostic[]
  told: { readonly of: string; readonly told: readonly Diagnostic[] } | null
}

export interface KeptReads {
  get(path: string, bytes: Uint8Array, beside: string): KeptRead | null
  /** Null forgets it. */
  set(path: string, read: KeptRead | null): void
  /** What is told of a report; where the report is as it was, what was told then, fixes and all. */
  told(report: Report, tell: () => readonly Diagnostic[]): readonly Diagnostic[]
}

/** Nothing kept yet. What else the readers were given, practice, names of files and day, must stay the same for all of it. */
export function keptReads(): KeptReads {
  const reads = new Map<string, KeptRead>()
  return {
    get: (path, bytes, beside) => {
      const read = reads.get(path)
      return read?.bytes === bytes && read.beside === beside ? read : null
    },
    set: (path, read) => void (read ? reads.set(path, read) : reads.delete(path)),
    told: (report, tell) => {
      const read = reads.get(report.file)
      if (!read) return tell()
      const of = JSON.stringify(report.diagnostics)
      if (read.told?.of !== of) read.told = { of, told: tell() }
      return read.told.told
    },
  }
}

/**
 * Opens and reads a file, or gives what was read of it before. Each time with a report of its own, for others to add to.
 *
 * @param others what of other files of the horse decides how it is read
 */
export function readKept<T extends Placed>(
  folder: CasebookFolder,
  entry: FolderEntry,
  kept: KeptReads | null,
  read: (file: CaseFile) => T | null,
  others: readonly unknown[] = [],
): { readonly file: CaseFile | null; readonly report: Report; readonly placed: T | null } {
  const bytes = kept && entry.kind === 'file' ? bytesOf(folder, entry.path) : null
  const beside = bytes ? JSON.stringify(others) : ''
  const before = bytes && kept ? kept.get(entry.path, bytes, beside) : null
  if (before) {
    const report = reportOn(entry.path, before.file.text, before.own)
    const placed = before.placed && ({ ...before.placed, report } as T)
    return { file: { ...before.file, report }, report, placed }
  }
  const { file, report } = openCaseFile(folder, entry)
  const placed = file && read(file)
  const own = [...report.diagnostics]
  kept?.set(entry.path, file && bytes && { bytes, beside, file, placed, own, told: null })
  return { file, report, placed }
}

/** Null where it cannot be read, which is told of where it is opened. */
function bytesOf(folder: CasebookFolder, path: string): Uint8Array | null {
  try {
    return folder.read(path)
  } catch {
    return null
  }
}
