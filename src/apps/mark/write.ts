/** Marked points into a visit's file: read anew, checked as a case file, replaced in one step, the old one kept. */
import { randomUUID } from 'node:crypto'
import { lstatSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { asUserError, UserError } from '../../build/disk/errors.ts'
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
  replace(file, old, bytes)
  return `${visit.file} has the points; as it was, it is kept as ${visit.file}.before-mark.`
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

/** In one step, the old file first put beside it; a link stays as it is. */
function replace(file: string, old: Uint8Array, bytes: Uint8Array): void {
  const partial = `${file}.${randomUUID()}.new`
  try {
    const stat = lstatSync(file)
    if (!stat.isFile()) throw new UserError(`Nothing was written: ${file} is a link or no plain file.`)
    const { mode } = stat
    writeFileSync(partial, old, { mode, flag: 'wx' })
    renameSync(partial, `${file}.before-mark`)
    writeFileSync(partial, bytes, { mode, flag: 'wx' })
    renameSync(partial, file)
  } catch (error) {
    rmSync(partial, { force: true })
    throw asUserError(error, file, 'written')
  }
}
