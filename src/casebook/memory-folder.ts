import type { CasebookFolder, FolderEntry } from './folder.ts'

/** A casebook as texts or bytes by path, forward slashes: `juno/2026-03-14.md`. */
export type CasebookFiles = Readonly<Record<string, string | Uint8Array>>

/** A casebook that lies on no disk. */
export function memoryFolder(files: CasebookFiles): CasebookFolder {
  const encoder = new TextEncoder()
  const bytes = new Map(
    Object.entries(files).map(([path, content]) => [
      path,
      typeof content === 'string' ? encoder.encode(content) : content,
    ]),
  )
  const entries = [...bytes]
    .map(([path, { length }]): FolderEntry => ({ path, kind: 'file', size: length, modified: 0 }))
    .sort((a, b) => (a.path < b.path ? -1 : 1))
  return {
    list: () => entries,
    read: (path) => {
      const content = bytes.get(path)
      if (content === undefined) throw new Error(`${path} cannot be read`)
      return content
    },
  }
}
