/** Where finished files wait until all of them are ready. */
import { join } from 'node:path'
import { hashOf } from '../digest.ts'
import type { MadeFile } from '../made.ts'
import type { Output } from '../state.ts'
import type { Files } from './files.ts'

export interface Staging {
  /** The site as it stands. */
  readonly site: string
  /** Where changed files wait. */
  readonly folder: string
}

export interface Staged extends Output {
  /** Whether it waits in the staging folder; else the site holds the very same bytes already. */
  readonly waits: boolean
}

/** A text as UTF-8; the bytes may be good until the next text only. */
export type Encode = (text: string) => Uint8Array

/** Sets files ready to be published. One whose bytes stand in the site already is not written again. */
export function stage(
  files: Files,
  staging: Staging,
  made: readonly MadeFile[],
  encode: Encode = Buffer.from,
): readonly Staged[] {
  return made.map((file) => stageOne(files, staging, file, encode))
}

/** Longest text, in characters, that finds room in the buffer that texts share; few are longer. */
const longest = 2 ** 20
/** A character takes so many bytes at most. */
const widest = 3

/** An encoder with one buffer for all its texts: one for each page would have to be swept. */
export function sharedBuffer(): Encode {
  const room = Buffer.allocUnsafeSlow(widest * longest)
  return (text) => (text.length > longest ? Buffer.from(text) : room.subarray(0, room.write(text)))
}

function stageOne(files: Files, { site, folder }: Staging, file: MadeFile, encode: Encode): Staged {
  const path = mustBeInside(file.path)
  const data = 'text' in file ? encode(file.text) : read(files, file.copyFrom)
  const standing = placeIn(site, path)
  const seen = files.look(standing)
  const same =
    seen?.kind === 'file' && seen.size === data.length && Buffer.compare(read(files, standing), data) === 0
  const waiting = placeIn(folder, path)
  if (!same) {
    if ('text' in file) files.write(waiting, data)
    else files.copy(file.copyFrom, waiting)
  }
  const modified = same ? seen.modified : (files.look(waiting)?.modified ?? 0)
  return { path, hash: hashOf(data), size: data.length, modified, waits: !same }
}

function read(files: Files, path: string): Uint8Array {
  const bytes = files.read(path)
  if (bytes === null) throw new Error(`${path} is gone`)
  return bytes
}

/** A path within the site as a place on this disk. */
export const placeIn = (folder: string, path: string) => join(folder, ...path.split('/'))

/** A path that could lead out of the site is a fault of the program, so it stops everything. */
function mustBeInside(path: string): string {
  const parts = path.split('/')
  const bad = (part: string) => part === '' || part === '.' || part === '..' || /[\\:\0]/.test(part)
  if (parts.some(bad)) throw new Error(`a page cannot stand at ${JSON.stringify(path)}`)
  return path
}
