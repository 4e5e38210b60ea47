/** Where finished files are kept until all of them are ready. */
import { join } from 'node:path'
import { contentHash } from './content-hash.ts'
import type { Files } from './files.ts'

/** A file ready to be written: text, or the path of a file on this disk to copy from. */
export type MadeFile =
  | { readonly path: string; readonly text: string }
  | { readonly path: string; readonly copyFrom: string }

/** A file of the site as last written. */
export interface Output {
  /** Within the site, forward slashes. */
  readonly path: string
  readonly hash: string
  readonly size: number
  readonly modified: number
  /** Whether other files carry the same time on purpose, so that only the bytes tell whether it is as it was. */
  readonly isTimeShared?: boolean
}

export interface Staging {
  /** The site as it stands. */
  readonly site: string
  /** Where changed files are until they are published. */
  readonly folder: string
}

export interface Staged extends Output {
  /** Whether the staging folder holds it; else the site has the very same bytes already. */
  readonly isStaged: boolean
}

/** A text as UTF-8; the bytes may be good until the next text only. */
export type Encode = (text: string) => Uint8Array

/** Longest text, in characters, that fits the buffer that texts share; few are longer. */
const longest = 2 ** 20
/** A character takes so many bytes at most. */
const widest = 3

/** An encoder with one buffer for all its texts: one for each page would have to be swept. */
export function sharedBuffer(): Encode {
  const buffer = Buffer.allocUnsafeSlow(widest * longest)
  return (text) => (text.length > longest ? Buffer.from(text) : buffer.subarray(0, buffer.write(text)))
}

/** Makes a file ready to be published. One whose bytes stand in the site already is not written again. */
export function stage(
  files: Files,
  { site, folder }: Staging,
  file: MadeFile,
  encode: Encode = Buffer.from,
): Staged {
  const path = mustBeInside(file.path)
  const data = 'text' in file ? encode(file.text) : read(files, file.copyFrom)
  const published = placeIn(site, path)
  const seen = files.stat(published)
  const isSame =
    seen?.kind === 'file' && seen.size === data.length && Buffer.compare(read(files, published), data) === 0
  const staged = placeIn(folder, path)
  if (!isSame) files.write(staged, data)
  const modified = isSame ? seen.modified : (files.stat(staged)?.modified ?? 0)
  return { path, hash: contentHash(data), size: data.length, modified, isStaged: !isSame }
}

function read(files: Files, path: string): Uint8Array {
  const bytes = files.read(path)
  if (bytes === null) throw new Error(`${path} is gone`)
  return bytes
}

/** A path within the site as a place on this disk. */
export const placeIn = (folder: string, path: string) => join(folder, ...path.split('/'))

/** Whether a path within the site cannot lead out of it. */
export const isInside = (path: string): boolean =>
  path
    .split('/')
    .every((segment) => segment !== '' && segment !== '.' && segment !== '..' && !/[\\:\0]/.test(segment))

/** A path that could lead out of the site is a fault of the program, so it stops everything. */
function mustBeInside(path: string): string {
  if (!isInside(path)) throw new Error(`a page cannot stand at ${JSON.stringify(path)}`)
  return path
}
