import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { CasebookFolder, FolderEntry } from '../../src/casebook/folder.ts'

/** A fixture casebook on disk. */
export function diskFolder(root: string): CasebookFolder {
  const entries: FolderEntry[] = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry): FolderEntry => {
      const path = join(entry.parentPath, entry.name)
      const kind = entry.isSymbolicLink() ? 'link' : entry.isFile() ? 'file' : 'other'
      return {
        path: path.slice(root.length + 1).replaceAll('\\', '/'),
        kind,
        size: statSync(path).size,
        modified: 0,
      }
    })
    .sort((a, b) => (a.path < b.path ? -1 : 1))
  return { list: () => entries, read: (path) => readFileSync(join(root, path)) }
}
