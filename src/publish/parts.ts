/** Owners' parts between builds: text under a name made from its content, in the tool's own work folder. */
import { join } from 'node:path'
import { hashOf } from './digest.ts'
import type { Files } from './disk/files.ts'

/** Puts a text away; the same text has the same name. */
export function keepPart(files: Files, folder: string, text: string): string {
  const name = hashOf(text)
  const path = join(folder, name)
  if (files.look(path) === null) {
    files.write(`${path}.new`, text)
    files.move(`${path}.new`, path)
  }
  return name
}

/** The text of that name; null when it is gone. */
export function readPart(files: Files, folder: string, name: string): string | null {
  const bytes = files.read(join(folder, name))
  return bytes === null ? null : new TextDecoder().decode(bytes)
}

/** Removes every part that nothing names any more. */
export function sweepParts(files: Files, folder: string, named: ReadonlySet<string>): void {
  for (const name of files.names(folder)) if (!named.has(name)) files.remove(join(folder, name))
}
