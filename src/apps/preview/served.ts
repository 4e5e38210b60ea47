/** What of a built edition is shown: all that the last build made, and nothing that lies beside it. */
import { readSiteRecord } from '../../build/disk/own-files.ts'
import { disk } from '../../build/disk/real-disk.ts'

/**
 * Paths within the edition's own folder.
 * @throws UserError when it cannot be known what the build made
 */
export function servedPaths(site: string, folder: string): ReadonlySet<string> {
  const start = `${folder}/`
  const made = [...readSiteRecord(disk, site).files.keys()].filter((path) => path.startsWith(start))
  return new Set(made.map((path) => path.slice(start.length)))
}

/** The same of paths within the site that are known: gathered when the first page is asked for. */
export function servedOf(made: readonly string[], folder: string): Pick<ReadonlySet<string>, 'has'> {
  let paths: ReadonlySet<string> | null = null
  return {
    has: (path) => {
      paths ??= new Set(made)
      return paths.has(`${folder}/${path}`)
    },
  }
}
