/**
 * Files added to a folder all together or not at all, none ever replaced, and taken back again: only those that are
 * still as they were written. What is begun is noted in the tool's own folder beside, so that one that was killed is
 * taken back by the next.
 */
import { dirname, join } from 'node:path'
import { contentHash } from './content-hash.ts'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import { realPlace } from './real-place.ts'
import { isInside } from './staging.ts'
import { makeWorkFolder, workFolderOf } from './work-folder.ts'

export interface AddedFile {
  /** Path within the folder, forward slashes. */
  readonly path: string
  readonly bytes: Uint8Array
  /** Paths of others that are not taken back while this one stays. */
  readonly needs: readonly string[]
}

export interface TakenBack {
  readonly removed: readonly string[]
  /** Not as they were written, and left as they are; with what they need. */
  readonly kept: readonly string[]
  /** Not there any more. */
  readonly gone: readonly string[]
}

/** The folder opened for adding; no other may add to it meanwhile. */
export interface Adding {
  /** What an earlier one had begun when it was stopped, and was now taken back. */
  readonly unfinished: readonly string[]
  /** @throws UserError where a name is taken or the disk refuses; then nothing was added */
  add(added: readonly AddedFile[]): void
  /** Takes back what was added last; null where nothing is known. */
  takeBack(): TakenBack | null
  close(): void
}

interface Noted {
  readonly path: string
  readonly hash: string
  readonly needs: readonly string[]
}

/** Folders that were made for the files, the deepest last. */
interface Note {
  readonly files: readonly Noted[]
  readonly folders: readonly string[]
}

const [begunNote, doneNote, stagedFolder] = ['adding.json', 'added.json', 'adding']

/** @throws UserError while another adds to the folder, or when the disk refuses */
export function openAdding(files: Files, named: string): Adding {
  const folder = realPlace(files, named)
  const own = workFolderOf(files, folder)
  makeWorkFolder(files, own)
  const lock = files.lock(join(own, 'lock'), String(process.pid))
  if ('by' in lock) {
    throw new UserError(
      `Another growdown adds files to this casebook just now. Wait until it is done${lock.leftOver === null ? '' : `; if there is none, delete ${lock.leftOver}`}.`,
    )
  }
  const at = (path: string) => join(folder, ...path.split('/'))
  const [begun, done, staged] = [begunNote, doneNote, stagedFolder].map((name) => join(own, name ?? '')) as [
    string,
    string,
    string,
  ]
  const stagedAt = (index: number) => join(staged, String(index))

  /** Whether it is what was to be written there, or the beginning of it where a copy was broken off. */
  const isBegun = (path: string, index: number) => {
    const [bytes, whole] = [files.read(at(path)), files.read(stagedAt(index))]
    return bytes !== null && whole !== null && Buffer.compare(bytes, whole.subarray(0, bytes.length)) === 0
  }
  const undoBegun = (): readonly string[] => {
    const note = readNote(files, begun)
    const removed = note.files.filter(({ path }, index) => isBegun(path, index)).map(({ path }) => path)
    for (const path of removed.toReversed()) files.remove(at(path))
    for (const made of note.folders.toReversed()) files.removeIfEmpty(at(made))
    files.removeTree(staged)
    files.remove(begun)
    return removed
  }

  try {
    const unfinished = undoBegun()
    return {
      unfinished,
      add: (added) => {
        for (const { path } of added) refuseTaken(files, folder, path)
        added.forEach(({ bytes }, index) => {
          files.write(stagedAt(index), bytes)
        })
        const note: Note = {
          files: added.map(({ path, bytes, needs }) => ({ path, hash: contentHash(bytes), needs })),
          folders: newFolders(
            files,
            folder,
            added.map(({ path }) => path),
          ),
        }
        files.writePrivate(begun, JSON.stringify(note))
        try {
          added.forEach(({ path }, index) => {
            files.makeFolder(dirname(at(path)))
            if (!files.link(stagedAt(index), at(path))) files.copyNew(stagedAt(index), at(path))
          })
        } catch (error) {
          undoBegun()
          throw error
        }
        files.move(begun, done)
        files.removeTree(staged)
      },
      takeBack: () => {
        if (files.read(done) === null) return null
        const taken = takeBack(files, at, readNote(files, done))
        files.remove(done)
        return taken
      },
      close: () => lock.giveBack(),
    }
  } catch (error) {
    lock.giveBack()
    throw error
  }
}

/** What stands in a note; nothing where there is none or it is damaged, for then nothing is known to be the tool's own. */
function readNote(files: Files, path: string): Note {
  const bytes = files.read(path)
  const none: Note = { files: [], folders: [] }
  if (bytes === null) return none
  try {
    const note = JSON.parse(new TextDecoder().decode(bytes)) as Note
    const paths = [...note.files.map((one) => one.path), ...note.folders]
    return paths.every(isInside) ? note : none
  } catch {
    return none
  }
}

function refuseTaken(files: Files, folder: string, path: string): void {
  const segments = path.split('/')
  segments.forEach((_, index) => {
    const way = join(folder, ...segments.slice(0, index + 1))
    const stat = files.stat(way)
    const isLast = index === segments.length - 1
    if (stat?.kind === 'link') throw new UserError(`${way} is a link: nothing is written through links.`)
    if (isLast && stat) throw new UserError(`${path} came to be there meanwhile and was left as it is.`)
  })
}

function newFolders(files: Files, folder: string, paths: readonly string[]): readonly string[] {
  const above = paths.flatMap((path) => {
    const segments = path.split('/').slice(0, -1)
    return segments.map((_, index) => segments.slice(0, index + 1).join('/'))
  })
  return [...new Set(above)]
    .filter((path) => files.stat(join(folder, path)) === null)
    .toSorted((a, b) => a.length - b.length)
}

function takeBack(files: Files, at: (path: string) => string, note: Note): TakenBack {
  const here = note.files.map((one) => ({ ...one, bytes: files.read(at(one.path)) }))
  const changed = here.filter(({ bytes, hash }) => bytes !== null && contentHash(bytes) !== hash)
  const needed = new Set(changed.flatMap(({ path, needs }) => [path, ...needs]))
  const removed = here.filter(({ path, bytes }) => bytes !== null && !needed.has(path))
  // What names others goes before them, so that one that is broken off leaves no picture missing.
  for (const { path } of removed.toReversed()) files.remove(at(path))
  for (const made of note.folders.toReversed()) files.removeIfEmpty(at(made))
  return {
    removed: removed.map(({ path }) => path),
    kept: here.filter(({ path, bytes }) => bytes !== null && needed.has(path)).map(({ path }) => path),
    gone: here.filter(({ bytes }) => bytes === null).map(({ path }) => path),
  }
}
