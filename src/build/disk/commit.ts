/**
 * From staged files to the site, all or nothing. What is to be done is written down first; a build that is
 * killed while doing it is carried to its end by the next one, and one killed before leaves no trace.
 */
import { dirname, join } from 'node:path'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import { foldersOf } from './manifest.ts'
import { placeIn, type Staging } from './staging.ts'

/** What publishing will do, paths within the site. */
export interface Changes {
  /** Staged files, the list of the tool's own files last. */
  readonly moves: readonly string[]
  readonly removes: readonly string[]
}

const journalFile = (workFolder: string) => join(workFolder, 'journal.json')

/**
 * Publishes what is staged. Until the journal stands nothing of the site is touched.
 * @throws UserError when the disk refuses
 */
export function commit(files: Files, workFolder: string, staging: Staging, changes: Changes): void {
  mustAllBeWritable(files, staging.site, changes)
  const journal = journalFile(workFolder)
  files.write(`${journal}.new`, JSON.stringify(changes))
  files.move(`${journal}.new`, journal)
  carryOut(files, workFolder, staging, changes)
}

/**
 * Puts right what a killed build left: a begun publication is carried to its end, anything else is thrown away.
 * @returns whether a publication was carried to its end
 */
export function recover(files: Files, workFolder: string, staging: Staging): boolean {
  const changes = readJournal(files, workFolder)
  if (changes !== null) carryOut(files, workFolder, staging, changes)
  files.removeTree(staging.folder)
  return changes !== null
}

/** Throws away what is staged, unless a publication was begun: then the next build needs it. */
export function throwAway(files: Files, workFolder: string, staging: Staging): void {
  if (files.stat(journalFile(workFolder)) === null) files.removeTree(staging.folder)
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

/** Asks before anything is changed whether every folder can be written in, or the one that it will stand in. */
function mustAllBeWritable(files: Files, site: string, { moves, removes }: Changes): void {
  const asked = new Set<string>()
  for (const folder of new Set([...moves, ...removes].map((path) => dirname(placeIn(site, path))))) {
    let existing = folder
    while (!asked.has(existing) && files.stat(existing) === null) existing = dirname(existing)
    if (!asked.has(existing)) files.mustBeWritable(existing)
    asked.add(existing)
  }
}

/** Does what the journal says. Each step may have been done before. */
function carryOut(files: Files, workFolder: string, staging: Staging, { moves, removes }: Changes): void {
  try {
    const whole = moveWholeFolders(files, staging, moves)
    for (const path of moves) {
      if (foldersOf(path).some((folder) => whole.has(folder))) continue
      const staged = placeIn(staging.folder, path)
      if (files.stat(staged) !== null) files.move(staged, placeIn(staging.site, path))
    }
    for (const path of removes) files.remove(placeIn(staging.site, path))
    removeEmptied(files, staging.site, removes)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    throw new UserError(`${error.message}. Publishing stopped part-way; the next build takes it to its end.`)
  }
  files.remove(journalFile(workFolder))
}

/**
 * A folder that is not in the site yet comes in one step with what is staged in it, if all of that is to move.
 * Returns those that came.
 */
function moveWholeFolders(
  files: Files,
  { site, folder: from }: Staging,
  moves: readonly string[],
): ReadonlySet<string> {
  files.makeFolder(site)
  const moving = new Set(moves)
  const onTheWay = new Set(moves.flatMap(foldersOf))
  const isAllToMove = (folder: string): boolean =>
    files
      .names(placeIn(from, folder))
      .map((name) => `${folder}/${name}`)
      .every((path) => moving.has(path) || (onTheWay.has(path) && isAllToMove(path)))
  const came = new Set<string>()
  const existing = new Set<string>()
  for (const folders of moves.map(foldersOf)) {
    for (const folder of folders) {
      if (existing.has(folder)) continue
      if (came.has(folder)) break
      const staged = placeIn(from, folder)
      const place = placeIn(site, folder)
      if (files.stat(place) === null && files.stat(staged) !== null) {
        if (isAllToMove(folder)) {
          files.move(staged, place)
          came.add(folder)
          break
        }
        files.makeFolder(place)
      }
      existing.add(folder)
    }
  }
  return came
}

/** Folders out of which the last file went, innermost first. Others' empty folders stay. */
function removeEmptied(files: Files, site: string, removes: readonly string[]): void {
  const folders = [...new Set(removes.flatMap(foldersOf))].sort((a, b) => b.length - a.length)
  for (const folder of folders) files.removeIfEmpty(placeIn(site, folder))
}
