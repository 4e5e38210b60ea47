/** The units of a site, and what makes them. All that is heavy is loaded when the first page is made, and kept. */
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { assetFiles } from '../../build/assets.ts'
import type { Builder } from '../../build/builder.ts'
import { cacheKey } from '../../build/cache-key.ts'
import { once } from '../../build/once.ts'
import { inThisThread, inThreads, type Pool } from '../../build/pool.ts'
import { packageRoot } from '../../build/program.ts'
import type { BuildState } from '../../build/state.ts'
import type { MadeUnit, PooledUnit, Unit } from '../../build/unit.ts'
import type { Practice } from '../../casebook/model.ts'
import { type AllHorses, type Edition, isForOthers } from '../../editions/edition.ts'
import type { Learned } from '../../trend/model/learned.ts'
import type { PracticeLessons } from '../../trend/model/practice.ts'
import {
  type HorseJob,
  type HorseRecord,
  type ReadJob,
  type ReadNotes,
  readUnit,
  type SitePaths,
} from './horse-job.ts'
import type { SiteContext, SiteOptions } from './options.ts'
import type { Survey } from './survey.ts'

/** What pages are made with, loaded when first asked for. */
export const lazyPageTools = (): SiteContext['openTools'] =>
  once(async () => (await import('./page-tools.ts')).openPageTools())

/** Reads horses, and makes their pages. */
export interface HorsePool {
  readonly read: Pool<ReadJob, MadeUnit<ReadNotes>>
  readonly pages: Pool<HorseJob, MadeUnit<HorseRecord>>
  close(): Promise<void>
}

/** In this thread, in worker threads where there are many. */
export function horsePool(
  { files, threads, openTools, lastRead }: Pick<SiteContext, 'files' | 'threads' | 'openTools' | 'lastRead'>,
  editions: readonly Edition[],
  paths: SitePaths,
): HorsePool {
  const work = once(async () => {
    const { horseWork } = await import('./horse-work.ts')
    return horseWork(files, paths, editions, await openTools(), lastRead)
  })
  const here = inThisThread(async (job: ReadJob | HorseJob) => (await work())(job))
  const script = pathToFileURL(join(packageRoot(), 'dist', 'worker.js'))
  const lost = async (job: ReadJob | HorseJob) => {
    const { unmadeHorse, unreadHorse } = await import('./horse-work.ts')
    if (job.round === 'read') return unreadHorse(files, paths)(job)
    return unmadeHorse(files, paths)(job, 'its files take more memory than there is')
  }
  const { pool, close } = inThreads({ script, data: paths, count: threads, lost }, here)
  // A job of a round gives what that round gives.
  const round = <Job extends ReadJob | HorseJob, Notes>(): Pool<Job, MadeUnit<Notes>> =>
    pool as Pool<ReadJob | HorseJob, MadeUnit<unknown>> as Pool<Job, MadeUnit<Notes>>
  return { read: round(), pages: round(), close }
}

/** Where horses find and leave things. */
export const sitePaths = (
  casebook: string,
  { paths, workFolder }: Pick<Builder, 'paths' | 'workFolder'>,
): SitePaths => ({
  ...paths,
  casebook,
  pictures: join(workFolder, 'pictures'),
})

type Options = Pick<SiteOptions, 'asOf' | 'editions'>

/** The first round. */
export const readUnits = (
  { horses }: Survey,
  practice: Practice,
  { asOf }: Options,
): readonly PooledUnit<ReadJob, ReadNotes>[] =>
  horses.map(({ id, files, readKey }) => ({
    name: readUnit(id),
    key: readKey,
    job: () => ({ round: 'read', id, practice, asOf, files }),
  }))

/** What all horses teach: learned anew only where what they teach is not as it was. */
export const lessonsUnit = (
  teachings: readonly string[],
  program: string,
  fragment: (name: string) => string,
): Unit<PracticeLessons> => ({
  name: 'casebook: lessons',
  key: cacheKey(program, teachings),
  make: async () => {
    const { learnPractice } = await import('../../trend/model/practice.ts')
    const { teachingFrom } = await import('../../trend/model/teaching.ts')
    return learnPractice(teachings.map((name) => teachingFrom(fragment(name))))
  },
})

export const horseJob = (
  horse: Pick<HorseJob, 'id' | 'files' | 'approved' | 'lastApproved' | 'read'>,
  practice: Practice,
  learned: Learned,
  { asOf, editions }: Options,
): HorseJob => ({
  ...horse,
  round: 'pages',
  practice,
  learned,
  asOf,
  editions: editions.map(({ name }) => name),
})

/** The second round. */
export function horseUnits(
  { horses }: Survey,
  reads: readonly ReadNotes[],
  practice: Practice,
  learned: Learned,
  options: Options,
  { units }: BuildState,
): readonly PooledUnit<HorseJob, HorseRecord>[] {
  const taught = cacheKey(learned)
  return horses.map(({ id, key, files, approved }, i) => {
    const job = () => {
      const { lastApproved = {} } = (units[id]?.notes ?? {}) as Partial<HorseRecord>
      const horse = { id, files, approved, lastApproved, read: reads[i]?.read ?? null }
      return horseJob(horse, practice, learned, options)
    }
    return { name: id, key: cacheKey(key, taught), job }
  })
}

/** What an edition's pages over all horses need to know. */
export function allHorses<Kept>(
  edition: Edition<Kept>,
  records: readonly HorseRecord[],
  common: Pick<AllHorses<Kept>, 'practice' | 'lessons' | 'asOf' | 'addresses'>,
): AllHorses<Kept> {
  return {
    ...common,
    kept: records.flatMap(({ kept }) => (kept[edition.name] as Kept | undefined) ?? []),
    broken: records.flatMap(({ id, isBroken, diagnostics }) =>
      isBroken ? [{ id, problems: diagnostics.filter(({ level }) => level === 'error').length }] : [],
    ),
  }
}

/** A horse as an edition's pages over all of them know it. */
export interface ShownHorse {
  readonly id: string
  readonly kept: unknown
}

export const shownHorses = ({ name }: Edition, records: readonly HorseRecord[]): readonly ShownHorse[] =>
  records.flatMap(({ id, kept }) => (kept[name] === undefined ? [] : [{ id, kept: kept[name] }]))

export const overallUnit = ({ name }: Edition): string => `${name}: pages over all horses`

type EditionNotes = readonly ShownHorse[] | null

/**
 * Pages over all horses; style sheet and scripts.
 * @param shown is remembered where others may read the edition, so that a horse can be taken out of what was published
 */
export function editionUnits(
  edition: Edition,
  all: AllHorses<unknown>,
  shown: readonly ShownHorse[],
  program: string,
  openTools: SiteContext['openTools'],
): readonly Unit<EditionNotes>[] {
  const { name, folder } = edition
  return [
    {
      name: overallUnit(edition),
      key: cacheKey(program, all),
      make: async ({ put }) => {
        const { renderer, formatIn } = await openTools()
        const format = formatIn(all.practice.units)
        for (const file of (await edition.files?.(all, format)) ?? [])
          put({ ...file, path: `${folder}/${file.path}` })
        for (const view of await edition.pages(all, format)) {
          put({ path: `${folder}/${view.path}`, text: await renderer.render(view) })
        }
        return isForOthers(edition) ? shown : null
      },
    },
    {
      name: `${name}: style and scripts`,
      key: program,
      make: async ({ put }) => {
        for (const file of assetFiles(packageRoot(), edition.assets)) {
          put({ ...file, path: `${folder}/${file.path}` })
        }
        return null
      },
    },
  ]
}
