/** The listing of a casebook in a process that stays: looked at whole once, then only where something may have changed. */

import { listPart, sortEntries, topOf } from '../../build/disk/source-folder.ts'
import type { FolderEntry } from '../../casebook/folder.ts'

export interface WarmListing {
  /**
   * Every file, as a first look would list it. Looks at new names and at what is in doubt.
   * @throws UserError when the folder cannot be read; what was in doubt stays so
   */
  list(): readonly FolderEntry[]
  /** Has the next listing look again around a path within the casebook, forward slashes; an empty one means everywhere. */
  doubt(path: string): void
  /** Looks at everything, a step for each name in the casebook's own folder; what is not as listed is in doubt. */
  lookAgain(): Generator<boolean>
}

export function warmListing(root: string): WarmListing {
  /** Entries by the first name of their path: a horse's folder is small, so it is looked at whole. */
  let parts: ReadonlyMap<string, readonly FolderEntry[]> = new Map()
  const doubted = new Set<string>()

  const list = () => {
    const top = topOf(root)
    const names = new Set(top.map(({ name }) => name))
    // A path of which nothing is known may be another way of writing a name that is.
    const isPlaced = [...doubted].every((name) => names.has(name) || parts.has(name))
    const known = (name: string) => (isPlaced && !doubted.has(name) ? parts.get(name) : undefined)
    parts = new Map(top.map((named) => [named.name, known(named.name) ?? listPart(root, named)]))
    doubted.clear()
    return sortEntries([...parts.values()].flat())
  }

  return {
    list,
    doubt: (path) => void doubted.add(path.replace(/\/.*/, '')),
    *lookAgain() {
      const top = topOf(root)
      const now = new Map(top.map((named) => [named.name, named]))
      for (const name of new Set([...now.keys(), ...parts.keys()])) {
        const named = now.get(name)
        const isOther = !isSame(named ? listPart(root, named) : [], parts.get(name) ?? [])
        if (isOther) doubted.add(name)
        yield isOther
      }
    },
  }
}

const isSame = (a: readonly FolderEntry[], b: readonly FolderEntry[]): boolean =>
  a.length === b.length && a.every((entry, index) => isSameEntry(entry, b[index]))

const isSameEntry = (a: FolderEntry, b: FolderEntry | undefined): boolean =>
  a.path === b?.path && a.kind === b.kind && a.size === b.size && a.modified === b.modified
