/** From finished units to the site: who wants which place, what goes, what comes. */
import { join } from 'node:path'
import { commit } from './disk/commit.ts'
import type { Files } from './disk/files.ts'
import { type Manifest, manifestFile, printManifest, refuseClashes, refuseForeign } from './disk/manifest.ts'
import type { WorkFolder } from './disk/work-folder.ts'
import type { SiteCheck } from './site-check.ts'
import type { BuiltUnit } from './unit.ts'

export interface Published {
  readonly written: number
  readonly removed: number
  /** All files of the tool in the site now. */
  readonly total: number
}

interface Finished {
  /** By name. */
  readonly units: ReadonlyMap<string, BuiltUnit>
  /** Paths of the files in the staging folder. */
  readonly staged: ReadonlySet<string>
  /** Whether a file of an earlier build stays, though no unit has it now. */
  readonly isLeftAlone: (path: string) => boolean
}

/**
 * Checks that every place is free to take, then publishes all at once.
 * @throws UserError that names two units that want one place, a file of someone else's, or the disk's reason
 */
export function publish(
  files: Files,
  { folder, staging }: WorkFolder,
  siteCheck: SiteCheck,
  { units, staged, isLeftAlone }: Finished,
  report: (files: number) => void,
): Published {
  const before = siteCheck.manifest()
  const claims = [...units].flatMap(([by, { outputs }]) => outputs.map(({ path }) => ({ path, by })))
  refuseClashes(claims)
  const taken = claims.map(({ path }) => path).filter((path) => staged.has(path) || !before.has(path))
  refuseForeign(files, staging.site, before, taken)

  const fresh = [...units.values()].flatMap(({ outputs }) =>
    outputs.map(({ path, hash }) => [path, hash] as const),
  )
  const after: Manifest = new Map([...[...before].filter(([path]) => isLeftAlone(path)), ...fresh])
  const removes = [...before.keys()].filter((path) => !after.has(path))
  const moves = [...staged]
  if (!isSame(before, after)) {
    files.write(join(staging.folder, manifestFile), printManifest(after))
    moves.push(manifestFile)
  }
  if (moves.length + removes.length > 0) {
    report(moves.length + removes.length)
    commit(files, folder, staging, { moves, removes })
  }
  siteCheck.published(after, [...units.values()])
  return { written: staged.size, removed: removes.length, total: after.size }
}

const isSame = (a: Manifest, b: Manifest): boolean =>
  a.size === b.size && [...a].every(([path, hash]) => b.get(path) === hash)
