/**
 * Makes pages that are there already, for a process that stays: the first horse to be saved then finds everything
 * loaded and is made as fast as the tenth. Measured with 100 horses on a busy machine: that first one takes 0.1 s from
 * save to page, and 0.3 to 1.3 s without this.
 */
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { workFolderOf } from '../../build/disk/work-folder.ts'
import { diskMemory } from '../../build/state.ts'
import type { PracticeRead } from '../../casebook/read.ts'
import { untaughtPractice } from '../../trend/model/practice.ts'
import type { HorseRecord } from '../site/horse-job.ts'
import type { SiteContext, SiteOptions } from '../site/options.ts'
import { allHorses, horseJob, horsePool, sitePaths } from '../site/site-units.ts'
import { practiceUnit } from '../site/survey.ts'

/** From here on making one takes about as long as it always will. */
const enough = 4

/** After a build, with what it remembers. Stops where it is not wanted any more. Nothing of the site is touched. */
export async function warmUp(
  options: SiteOptions,
  context: SiteContext,
  isWanted: () => boolean,
): Promise<void> {
  const { files, program, signal } = context
  const { site, casebook, asOf, editions } = options
  const workFolder = workFolderOf(files, site)
  const onDisk = diskMemory(files, workFolder)
  const { units } = (context.memory?.over(onDisk) ?? onDisk).load(program)
  const read = units[practiceUnit]?.notes as PracticeRead | undefined
  const practice = read?.practice ?? null
  if (read === undefined || practice === null) return
  const staging = { site, folder: join(workFolder, 'warm-up') }
  const fragments = join(workFolder, 'fragments')
  const pool = horsePool(
    context,
    editions,
    sitePaths(casebook, { workFolder, paths: { staging, fragments } }),
  )
  const isTurn = async () => {
    // Requests that came meanwhile go first.
    await setImmediate()
    return isWanted()
  }
  const listed = context.listing?.list() ?? []
  try {
    for (const id of read.horseIds.slice(0, enough)) {
      if (!(await isTurn())) return
      const entries = listed.filter(({ path }) => path.startsWith(`${id}/`))
      const horse = {
        id,
        files: entries.map((entry) => ({ ...entry, hash: null })),
        approved: [],
        lastApproved: {},
        read: null,
      }
      await pool.pages([horseJob(horse, practice, untaughtPractice.learned, options)], () => {}, signal)
    }
    const records = read.horseIds.flatMap((id) => (units[id]?.notes as HorseRecord | undefined) ?? [])
    const { renderer, formatIn } = await context.openTools()
    const format = formatIn(practice.units)
    for (const edition of editions) {
      if (!(await isTurn())) return
      const all = allHorses(edition, records, { practice, lessons: untaughtPractice, asOf, addresses: {} })
      await edition.files?.(all, format)
      for (const view of await edition.pages(all, format)) await renderer.render(view)
    }
  } finally {
    await pool.close()
    // Pages that are published are not staged again, so as a rule there is nothing.
    files.removeTree(staging.folder)
  }
}
