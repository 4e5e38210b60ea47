import type { CasebookFolder, FolderEntry } from '../../src/casebook/folder.ts'

export interface MemoryFolderOptions {
  /** Paths that are links. They are listed and must never be read. */
  readonly links?: readonly string[]
}

/** A casebook folder held in memory: path to text or bytes. */
export function memoryFolder(
  files: Readonly<Record<string, string | Uint8Array>>,
  options: MemoryFolderOptions = {},
): CasebookFolder {
  const bytes = new Map(
    Object.entries(files).map(([path, content]) => [
      path,
      typeof content === 'string' ? new TextEncoder().encode(content) : content,
    ]),
  )
  const entries: FolderEntry[] = [...bytes].map(([path, content]) => ({
    path,
    kind: 'file',
    size: content.length,
    modified: 0,
  }))
  for (const path of options.links ?? []) entries.push({ path, kind: 'link', size: 0, modified: 0 })
  entries.sort((a, b) => (a.path < b.path ? -1 : 1))
  return {
    list: () => entries,
    read: (path) => {
      const content = bytes.get(path)
      if (!content) throw new Error(`${path} cannot be read`)
      return content
    },
  }
}
