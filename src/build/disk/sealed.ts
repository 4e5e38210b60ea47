/** Texts that the tool keeps for itself, each with its checksum: what was damaged or exchanged is taken as not there. */
import { randomUUID } from 'node:crypto'
import { contentHash } from './content-hash.ts'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'

/** The bytes of a file that can be made again; null when it is gone or is no file that can be read. */
export function readCached(files: Files, path: string): Uint8Array | null {
  try {
    return files.stat(path)?.kind === 'file' ? files.read(path) : null
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return null
  }
}

/** Whether a file of that name was being written when the build was killed. */
export const isUnfinished = (name: string): boolean => name.endsWith('.new')

/** Puts it in place whole, whatever stands there. */
export function writeCached(files: Files, path: string, data: string | Uint8Array): void {
  const beside = `${path}.${randomUUID()}.new`
  files.writePrivate(beside, data)
  if (files.stat(path)?.kind === 'folder') files.removeTree(path)
  files.move(beside, path)
}

/** @param name what it is kept as, so that one cannot stand for another */
export const seal = (name: string, text: string): string => `${contentHash(name + text)}\n${text}`

/** The text as it was sealed; null when it is not. */
export function unseal(name: string, bytes: Uint8Array | null): string | null {
  if (bytes === null) return null
  const sealed = new TextDecoder().decode(bytes)
  const end = sealed.indexOf('\n')
  const text = sealed.slice(end + 1)
  return end >= 0 && sealed.slice(0, end) === contentHash(name + text) ? text : null
}
