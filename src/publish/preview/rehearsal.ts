/**
 * Makes pages that stand already, for a process that stays: the first horse to be saved then finds everything loaded
 * and is made as fast as the tenth.
 */
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { workFolderOf } from '../disk/work-folder.ts'
import type { BuildOrder, BuildWorld } from '../order.ts'
import { overview } from '../overview.ts'
import type { Bench } from '../staged-horse.ts'
import { diskMemory } from '../state.ts'

/** From here on making one takes about as long as it always will. */
const enough = 4

/** After a build, with what it remembers. Stops where it is not wanted any more. Nothing of the site is touched. */
export async function rehearse(order: BuildOrder, world: BuildWorld, isWanted: () => boolean): Promise<void> {
  const { files, program, signal } = world
  const work = workFolderOf(files, order.site)
  const onDisk = diskMemory(files, work)
  const state = (world.memory?.over(onDisk) ?? onDisk).load(program)
  const { practice, horseIds } = state.practice?.read ?? { practice: null, horseIds: [] }
  if (practice === null) return
  const staging = { site: order.site, folder: join(work, 'rehearsal') }
  const { casebook, asOf, editions } = order
  const bench: Bench = { casebook, staging, parts: join(work, 'parts'), pictures: join(work, 'pictures') }
  const make = world.makers.horses(bench)
  const isTurn = async () => {
    // Requests that came meanwhile go first.
    await setImmediate()
    return isWanted()
  }
  const listed = world.listing?.list() ?? []
  try {
    for (const id of horseIds.slice(0, enough)) {
      if (!(await isTurn())) return
      const entries = listed.filter(({ path }) => path.startsWith(`${id}/`))
      await make([{ id, entries, asOf, editions, practice }], () => {}, signal)
    }
    const all = overview(practice, Object.entries(state.horses), asOf, {})
    for (const edition of editions) if (await isTurn()) await world.makers.overAll(edition, all)
  } finally {
    // Pages that stand are not staged again, so as a rule there is nothing.
    files.removeTree(staging.folder)
  }
}
