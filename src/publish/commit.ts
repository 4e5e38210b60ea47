/**
 * From waiting files to the site, all or nothing. What is to be done is written down first; a build that is
 * killed while doing it is carried to its end by the next one, and one killed before leaves no trace.
 */
import { dirname, join } from 'node:path'
import type { Files } from './files.ts'
import { foldersOf } from './ownership.ts'
import { placeIn, type Staging } from './staging.ts'
import { Trouble } from './trouble.ts'

/** What publishing will do, paths within the site. */
export interface Changes {
  /** Files that wait, the list of the tool's own files last. */
  readonly moves: readonly string[]
  readonly removes: readonly string[]
}

const journalFile = (workFolder: string) => join(workFolder, 'journal.json')

/**
 * Publishes what waits in staging. Until the journal stands nothing of the site is touched.
 * @throws Trouble when the disk refuses
 */
export function commit(files: Files, workFolder: string, staging: Staging, changes: Changes): void {
  const folders = prepareFolders(files, staging.site, changes)
  const journal = journalFile(workFolder)
  try {
    files.write(`${journal}.new`, JSON.stringify(changes))
    files.move(`${journal}.new`, journal)
  } catch (error) {
    for (const folder of folders.toReversed()) files.removeIfEmpty(folder)
    throw error
  }
  carryOut(files, workFolder, staging, changes)
}

/**
 * Puts right what a killed build left: a begun publication is carried to its end, anything else is thrown away.
 * @returns whether a publication was carried to its end
 */
export function recover(files: Files, workFolder: string, staging: Staging): boolean {
  const changes = readJournal(files, workFolder)
  if (changes !== null) {
    for (const path of changes.moves) files.makeFolder(dirname(placeIn(staging.site, path)))
    carryOut(files, workFolder, staging, changes)
  }
  files.removeTree(staging.folder)
  return changes !== null
}

/** Throws away what waits, unless a publication was begun: then the next build needs it. */
export function throwAway(files: Files, workFolder: string, staging: Staging): void {
  if (files.look(journalFile(workFolder)) === null) files.removeTree(staging.folder)
}

function readJournal(files: Files, workFolder: string): Changes | null {
  const bytes = files.read(journalFile(workFolder))
  if (bytes === null) return null
  try {
    return JSON.parse(new TextDecoder().decode(bytes))
  } catch {
    return null
  }
}

/** Makes every folder that is needed and asks whether it can be written, before anything is changed. */
function prepareFolders(files: Files, site: string, { moves, removes }: Changes): readonly string[] {
  const targets = new Set(moves.map((path) => dirname(placeIn(site, path))))
  const made: string[] = []
  try {
    for (const folder of targets) {
      for (const missing of missingFolders(files, folder)) {
        files.makeFolder(missing)
        made.push(missing)
      }
    }
    const left = removes
      .map((path) => dirname(placeIn(site, path)))
      .filter((folder) => files.look(folder) !== null)
    for (const folder of new Set([...targets, ...left])) files.mustBeWritable(folder)
  } catch (error) {
    for (const folder of made.toReversed()) files.removeIfEmpty(folder)
    throw error
  }
  return made
}

/** The folders on the way that are not there yet, outermost first. */
function missingFolders(files: Files, folder: string): readonly string[] {
  const missing: string[] = []
  for (let at = folder; files.look(at) === null; at = dirname(at)) missing.unshift(at)
  return missing
}

/** Does what the journal says. Each step may have been done before. */
function carryOut(files: Files, workFolder: string, staging: Staging, changes: Changes): void {
  try {
    for (const path of changes.moves) {
      const waiting = placeIn(staging.folder, path)
      if (files.look(waiting) !== null) files.move(waiting, placeIn(staging.site, path))
    }
    for (const path of changes.removes) files.remove(placeIn(staging.site, path))
    removeEmptied(files, staging.site, changes.removes)
  } catch (error) {
    if (!(error instanceof Trouble)) throw error
    throw new Trouble(`${error.message}. Publishing stopped part-way; the next build takes it to its end.`)
  }
  files.remove(journalFile(workFolder))
}

/** Folders out of which the last file went, innermost first. Others' empty folders stay. */
function removeEmptied(files: Files, site: string, removes: readonly string[]): void {
  const folders = [...new Set(removes.flatMap(foldersOf))].sort((a, b) => b.length - a.length)
  for (const folder of folders) files.removeIfEmpty(placeIn(site, folder))
}
