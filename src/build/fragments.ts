/** The fragment cache: texts between builds, each under a name made from its content, in the tool's own work folder. */
import { join } from 'node:path'
import { contentHash } from './disk/content-hash.ts'
import type { Files } from './disk/files.ts'
import { readCached, writeCached } from './disk/sealed.ts'

/** A kept text was damaged, and is removed now: built once more, all that needs it is made again. */
export class DamagedFragment extends Error {
  override readonly name = 'DamagedFragment'
}

/** Puts a text away; the same text has the same name. */
export function keepFragment(files: Files, folder: string, text: string): string {
  const name = contentHash(text)
  const path = join(folder, name)
  if (!hasFragment(files, folder, name)) {
    // Whatever else stands in its place.
    files.removeTree(path)
    writeCached(files, path, text)
  }
  return name
}

/** Names of all that is kept: asked for thousands at once, a list is quicker than a look at each. */
export const fragmentsIn = (files: Files, folder: string): ReadonlySet<string> => new Set(files.names(folder))

/** Whether a text of that name is kept. */
export const hasFragment = (files: Files, folder: string, name: string): boolean =>
  files.stat(join(folder, name))?.kind === 'file'

/**
 * The text of that name.
 * @throws DamagedFragment when it is not as it was kept
 */
export function readFragment(files: Files, folder: string, name: string): string {
  const path = join(folder, name)
  const bytes = readCached(files, path)
  if (bytes !== null && contentHash(bytes) === name) return new TextDecoder().decode(bytes)
  files.removeTree(path)
  throw new DamagedFragment(`the kept text ${name} was damaged`)
}

/** Removes every text that nothing names any more, and nothing that is none of these texts. */
export function sweepFragments(files: Files, folder: string, named: ReadonlySet<string>): void {
  for (const name of files.names(folder)) {
    if (/^[\w-]{43}(?:\.|$)/.test(name) && !named.has(name)) files.remove(join(folder, name))
  }
}
