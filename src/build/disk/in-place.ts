/**
 * Publishing file by file, for a folder that cannot be exchanged whole: a mount point, a disk without links. What is
 * to be done is written down first; a build that is killed while doing it is carried to its end by the next one.
 */
import { dirname, join } from 'node:path'
import { UserError } from './errors.ts'
import { besideEnding, type Files } from './files.ts'
import { seal, unseal } from './sealed.ts'
import { isInside, placeIn } from './staging.ts'

/** Paths are within a folder directly in the site. */
export interface Changes {
  readonly name: string
  readonly puts: readonly string[]
  readonly removes: readonly string[]
}

export interface InPlace extends Changes {
  /** In which of the two folders the files are that come. */
  readonly from: 'staged' | 'next'
}

/** Where all that is, and whose it is. */
export interface Places {
  readonly live: string
  readonly staged: string
  readonly next: string
  /** Whether nothing is at that path, or what the tool wrote there. */
  isFree(path: string): boolean
}

const journalName = 'journal'

/** Asks before anything is changed whether every folder can be written in, or the one that it will stand in. */
export function mustAllBeWritable(files: Files, live: string, { puts, removes }: Changes): void {
  const asked = new Set<string>()
  for (const folder of new Set([...puts, ...removes].map((path) => dirname(placeIn(live, path))))) {
    let existing = folder
    while (!asked.has(existing) && files.stat(existing) === null) existing = dirname(existing)
    if (!asked.has(existing)) files.mustBeWritable(existing)
    asked.add(existing)
  }
}

/** @throws UserError when the disk refuses; the next build goes on where this one stopped */
export function publishInPlace(files: Files, workFolder: string, changes: InPlace, places: Places): void {
  const journal = join(workFolder, journalName)
  files.writePrivate(`${journal}.new`, seal(journalName, JSON.stringify(changes)))
  files.move(`${journal}.new`, journal)
  try {
    carryOut(files, changes, places)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    throw new UserError(`${error.message}. Publishing stopped part-way; the next build takes it to its end.`)
  }
  files.remove(journal)
}

export const isBegunInPlace = (files: Files, workFolder: string): boolean =>
  files.stat(join(workFolder, journalName)) !== null

/** Carries a publication that was begun in place to its end. */
export function finishInPlace(files: Files, workFolder: string, placesOf: (name: string) => Places): void {
  const journal = join(workFolder, journalName)
  const changes = readJournal(unseal(journalName, files.read(journal)))
  if (changes !== null) carryOut(files, changes, placesOf(changes.name))
  files.remove(journal)
}

function readJournal(text: string | null): InPlace | null {
  if (text === null) return null
  const changes: InPlace = JSON.parse(text)
  return [changes.name, ...changes.puts, ...changes.removes].every(isInside) ? changes : null
}

/** Each step may have been done before. */
function carryOut(files: Files, { from, puts, removes }: InPlace, { live, isFree, ...places }: Places): void {
  for (const path of puts) {
    const [staged, place] = [placeIn(places[from], path), placeIn(live, path)]
    if (files.stat(staged) === null || !isFree(path)) continue
    files.makeFolder(dirname(place))
    files.move(staged, place)
  }
  for (const path of puts) files.remove(placeIn(live, path) + besideEnding)
  for (const path of removes.filter(isFree)) files.remove(placeIn(live, path))
  removeEmptied(files, live, removes)
}

/** Folders out of which the last file went, innermost first. Others' empty folders stay. */
export function removeEmptied(files: Files, root: string, removed: readonly string[]): void {
  const folders = new Set(removed.flatMap(foldersOf))
  const innermostFirst = [...folders].sort((a, b) => b.length - a.length)
  for (const folder of innermostFirst) files.removeIfEmpty(placeIn(root, folder))
}

/** `a`, `a/b` of `a/b/c.html`. */
export const foldersOf = (path: string): readonly string[] => {
  const segments = path.split('/').slice(0, -1)
  return segments.map((_, index) => segments.slice(0, index + 1).join('/'))
}
