/** What a build means for whoever keeps the folders that others read on a host: what to upload, what to delete. */
import type { Published } from '../../build/publish.ts'

/** Paths are within the site; a folder ends with a slash and stands for all that is in it. */
export interface HostChanges {
  /** The public folder. */
  readonly folder: string
  readonly upload: readonly HostPath[]
  readonly remove: readonly HostPath[]
}

export interface HostPath {
  readonly path: string
  /** How many files it stands for. */
  readonly files: number
}

/** For each of these folders. */
export function hostChanges(
  folders: readonly string[],
  { written, removed, all }: Published['paths'],
): readonly HostChanges[] {
  return folders.map((folder) => {
    const within = (paths: readonly string[]) => paths.filter((path) => path.startsWith(`${folder}/`))
    const [puts, gone, standing] = [within(written), within(removed), within(all)]
    const stays = new Set(puts)
    return {
      folder,
      upload: gathered(
        puts,
        standing.filter((path) => !stays.has(path)),
      ),
      remove: gathered(gone, standing),
    }
  })
}

/** Each folder of which nothing else is there in place of its files. */
function gathered(paths: readonly string[], others: readonly string[]): readonly HostPath[] {
  const kept = new Set(others.flatMap(foldersOf))
  const counts = new Map<string, number>()
  for (const path of paths) {
    const whole = foldersOf(path).find((folder) => !kept.has(folder))
    const name = whole ?? path
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  return [...counts].map(([path, files]) => ({ path, files })).sort((a, b) => (a.path < b.path ? -1 : 1))
}

/** `a/`, `a/b/` of `a/b/c.html`: the outermost first. */
const foldersOf = (path: string): readonly string[] => {
  const segments = path.split('/').slice(0, -1)
  return segments.map((_, index) => `${segments.slice(0, index + 1).join('/')}/`)
}
