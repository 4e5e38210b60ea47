/** From finished pieces to the site: who wants which place, what goes, what comes. */
import { join } from 'node:path'
import { commit } from './disk/commit.ts'
import { type Made, madeList, printMade, refuseClashes, refuseForeign } from './disk/ownership.ts'
import type { WorkFolder } from './disk/work-folder.ts'
import { editionFolders } from './edition-folders.ts'
import type { BuildOrder, BuildWorld } from './order.ts'
import type { HorsePieces, SharedPieces } from './pieces.ts'
import type { Standing } from './standing.ts'

export interface Published {
  readonly written: number
  readonly removed: number
  /** All files of the tool in the site now. */
  readonly total: number
}

export interface Finished {
  readonly horses: HorsePieces
  readonly shared: SharedPieces
  readonly standing: Standing
  /** Ids of horses whose files hold errors. */
  readonly broken: readonly string[]
}

/**
 * Checks that every place is free to take, then publishes all at once.
 * @throws Trouble that names two pages of one place, a file of someone else's, or the disk's reason
 */
export function publish(
  order: BuildOrder,
  world: BuildWorld,
  work: WorkFolder,
  finished: Finished,
): Published {
  const before = finished.standing.made()
  const claims = [
    ...finished.horses.pieces.flatMap(([id, { outputs }]) => outputs.map(({ path }) => ({ path, by: id }))),
    ...finished.shared.pieces.flatMap(([name, { outputs }]) =>
      outputs.map(({ path }) => ({ path, by: name })),
    ),
  ]
  refuseClashes(claims)
  const waiting = new Set([...finished.horses.waiting, ...finished.shared.waiting])
  const taken = claims.map(({ path }) => path).filter((path) => waiting.has(path) || !before.has(path))
  refuseForeign(world.files, order.site, before, taken)

  const after = madeAfter(order, before, finished)
  const removes = [...before.keys()].filter((path) => !after.has(path))
  const moves = [...waiting]
  if (!isSame(before, after)) {
    world.files.write(join(work.staging.folder, madeList), printMade(after))
    moves.push(madeList)
  }
  if (moves.length + removes.length > 0) {
    world.report({ step: 'publishing', files: moves.length + removes.length })
    commit(world.files, work.folder, work.staging, { moves, removes })
  }
  const pieces = [...finished.horses.pieces, ...finished.shared.pieces].map(([, piece]) => piece)
  finished.standing.published(after, pieces)
  return { written: waiting.size, removed: removes.length, total: after.size }
}

const isSame = (a: Made, b: Made): boolean =>
  a.size === b.size && [...a].every(([path, hash]) => b.get(path) === hash)

/** The tool's own files once all is done: the new ones, and those that this build leaves alone. */
function madeAfter(order: BuildOrder, before: Made, { horses, shared, broken }: Finished): Made {
  const fresh = [...horses.pieces, ...shared.pieces].flatMap(([, { outputs }]) =>
    outputs.map(({ path, hash }) => [path, hash] as const),
  )
  const built = order.editions.map((name) => editionFolders[name])
  const isLeft = (path: string) => {
    const edition = built.find(({ folder }) => path.startsWith(`${folder}/`))
    if (edition === undefined) return true
    return edition.keepsBroken && broken.some((id) => path.startsWith(`${edition.folder}/${id}/`))
  }
  return new Map([...[...before].filter(([path]) => isLeft(path)), ...fresh])
}
