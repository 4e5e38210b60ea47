/** The listing of a casebook in a process that stays: looked at whole once, then only where something may have changed. */
import { listPart, sortEntries, topOf } from '../../build/disk/source-folder.ts'
import type { FolderEntry } from '../../casebook/folder.ts'

export interface WarmListing {
  /**
   * Every file, as a first look would list it. Looks at new names and at what is invalid.
   * @throws UserError when the folder cannot be read; what was invalid stays so
   */
  list(): readonly FolderEntry[]
  /** Has the next listing look again around a path within the casebook, forward slashes; an empty one means everywhere. */
  invalidate(path: string): void
  /** Looks at everything, a step for each name in the casebook's own folder; what is not as listed is invalid. */
  recheck(): Generator<boolean>
}

export function warmListing(root: string): WarmListing {
  /** Entries by the first name of their path: a horse's folder is small, so it is looked at whole. */
  let groups: ReadonlyMap<string, readonly FolderEntry[]> = new Map()
  const invalid = new Set<string>()

  const list = () => {
    const top = topOf(root)
    const names = new Set(top.map(({ name }) => name))
    // A path of which nothing is known may be another way of writing a name that is.
    const isPlaced = [...invalid].every((name) => names.has(name) || groups.has(name))
    const known = (name: string) => (isPlaced && !invalid.has(name) ? groups.get(name) : undefined)
    groups = new Map(top.map((named) => [named.name, known(named.name) ?? listPart(root, named)]))
    invalid.clear()
    return sortEntries([...groups.values()].flat())
  }

  return {
    list,
    invalidate: (path) => void invalid.add(path.replace(/\/.*/, '')),
    *recheck() {
      const top = topOf(root)
      const now = new Map(top.map((named) => [named.name, named]))
      for (const name of new Set([...now.keys(), ...groups.keys()])) {
        const named = now.get(name)
        const isOther = !isSame(named ? listPart(root, named) : [], groups.get(name) ?? [])
        if (isOther) invalid.add(name)
        yield isOther
      }
    },
  }
}

const isSame = (a: readonly FolderEntry[], b: readonly FolderEntry[]): boolean =>
  a.length === b.length && a.every((entry, index) => isSameEntry(entry, b[index]))

const isSameEntry = (a: FolderEntry, b: FolderEntry | undefined): boolean =>
  a.path === b?.path && a.kind === b.kind && a.size === b.size && a.modified === b.modified
