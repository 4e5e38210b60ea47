/** The fragment cache: texts between builds, each under a name made from its content, in the tool's own work folder. */
import { join } from 'node:path'
import { contentHash } from './disk/content-hash.ts'
import type { Files } from './disk/files.ts'

/** Puts a text away; the same text has the same name. */
export function keepFragment(files: Files, folder: string, text: string): string {
  const name = contentHash(text)
  const path = join(folder, name)
  if (files.stat(path) === null) {
    files.write(`${path}.new`, text)
    files.move(`${path}.new`, path)
  }
  return name
}

/** Whether a text of that name is kept. */
export const hasFragment = (files: Files, folder: string, name: string): boolean =>
  files.stat(join(folder, name)) !== null

/** The text of that name; null when it is gone. */
export function readFragment(files: Files, folder: string, name: string): string | null {
  const bytes = files.read(join(folder, name))
  return bytes === null ? null : new TextDecoder().decode(bytes)
}

/** Removes every text that nothing names any more. */
export function sweepFragments(files: Files, folder: string, named: ReadonlySet<string>): void {
  for (const name of files.names(folder)) if (!named.has(name)) files.remove(join(folder, name))
}
