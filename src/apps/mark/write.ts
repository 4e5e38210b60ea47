/** Marked points into a visit's file: read anew, checked as a case file, replaced in one step, the old one kept. */
import { randomUUID } from 'node:crypto'
import { chmodSync, lstatSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { asUserError, systemCode, UserError } from '../../build/disk/errors.ts'
import { diskFolder } from '../../build/disk/source-folder.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import type { Practice, Visit } from '../../casebook/model.ts'
import { readHorse } from '../../casebook/read.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Landmarks } from '../../hoof/landmarks.ts'
import { type EntryName, withLandmarks } from './edit.ts'

export interface MarkTarget {
  readonly casebook: string
  readonly horse: string
  readonly practice: Practice
  readonly visit: Visit
  readonly entry: EntryName
  readonly asOf: PlainDate
}

/**
 * @returns what was done, in words
 * @throws UserError where nothing was written, and why
 */
export function writeLandmarks(target: MarkTarget, landmarks: Landmarks): string {
  const { casebook, visit, entry } = target
  const folder = diskFolder(casebook)
  const old = folder.read(visit.file)
  const text = withLandmarks(decoded(old), entry, landmarks)
  const bytes = new TextEncoder().encode(text)
  refuseImpossible(target, folder, bytes)
  const file = join(casebook, ...visit.file.split('/'))
  const kept = replace(file, old, bytes)
  return `${visit.file} has the points; as it was, it is kept as ${target.horse}/${basename(kept)}.`
}

/** Every byte has its place in the text, a byte-order mark as well. */
function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new UserError('Nothing was written: the file is not in UTF-8. See what "growdown check" says.')
  }
}

/** Points that cannot be, a heel in front of the toe, are reported now and not at the next check. */
function refuseImpossible(target: MarkTarget, folder: CasebookFolder, bytes: Uint8Array): void {
  const { horse, practice, visit, asOf } = target
  const changed: CasebookFolder = {
    list: () => folder.list(),
    read: (path) => (path === visit.file ? bytes : folder.read(path)),
  }
  const found = readHorse(changed, horse, practice, asOf).diagnostics.filter(
    ({ file, level, code }) => file === visit.file && level === 'error' && code.startsWith('landmark'),
  )
  if (found.length === 0) return
  throw new UserError(
    `Nothing was written: these points cannot be. ${found.map(({ message }) => message).join(' ')}`,
  )
}

/**
 * In one step, the old file first put beside it; a link stays as it is. Libraries that replace files would do as well,
 * but the one that is widely used takes a write cut short by a full disk for a whole one.
 *
 * @returns where the old file is kept
 */
function replace(file: string, old: Uint8Array, bytes: Uint8Array): string {
  const partial = `${file}.${randomUUID()}.new`
  let kept: Kept | null = null
  try {
    const stat = lstatSync(file)
    if (!stat.isFile()) throw new UserError(`Nothing was written: ${file} is a link or no plain file.`)
    kept = keep(file, old, stat.mode)
    writeWhole(partial, bytes, stat.mode)
    if (!isSame(readFileSync(file), old))
      throw new UserError('Nothing was written: the file was changed meanwhile. Write the points again.')
    renameSync(partial, file)
    return kept.path
  } catch (error) {
    rmSync(partial, { force: true })
    if (kept?.isNew) rmSync(kept.path, { force: true })
    throw asUserError(error, file, 'written')
  }
}

interface Kept {
  readonly path: string
  readonly isNew: boolean
}

/** Under the first name that is free, `.before-mark-2` after `.before-mark`; once only where the same is kept already. */
function keep(file: string, old: Uint8Array, mode: number): Kept {
  for (let number = 1; ; number++) {
    const path = `${file}.before-mark${number === 1 ? '' : `-${number}`}`
    const there = lstatSync(path, { throwIfNoEntry: false })
    if (there === undefined) {
      writeWhole(path, old, mode)
      return { path, isNew: true }
    }
    if (there.isFile() && there.size === old.length && isSame(readFileSync(path), old))
      return { path, isNew: false }
  }
}

const isSame = (one: Uint8Array, other: Uint8Array): boolean => Buffer.compare(one, other) === 0

/** Makes a file and waits until the disk has it, with just these rights; one that cannot be made whole is taken away. */
function writeWhole(path: string, bytes: Uint8Array, mode: number): void {
  try {
    writeFileSync(path, bytes, { mode, flag: 'wx', flush: true })
    chmodSync(path, mode)
  } catch (error) {
    if (systemCode(error) !== 'EEXIST') rmSync(path, { force: true })
    throw error
  }
}
