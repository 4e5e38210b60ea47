import type { CasebookFolder } from '../../src/casebook/folder.ts'
import { type CasebookFiles, memoryFolder as plainFolder } from '../../src/casebook/memory-folder.ts'

export interface MemoryFolderOptions {
  /** Paths that are links. They are listed and must never be read. */
  readonly links?: readonly string[]
}

/** A casebook folder held in memory: path to text or bytes. */
export function memoryFolder(files: CasebookFiles, { links = [] }: MemoryFolderOptions = {}): CasebookFolder {
  const plain = plainFolder(files)
  const entries = [
    ...plain.list(),
    ...links.map((path) => ({ path, kind: 'link' as const, size: 0, modified: 0 })),
  ].sort((a, b) => (a.path < b.path ? -1 : 1))
  return { ...plain, list: () => entries }
}
