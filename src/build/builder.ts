/**
 * An incremental build of one site: units whose key and files are as they were are kept, the others made and staged;
 * then all is published or nothing. It knows nothing of what the units are.
 */
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { Stopped } from './disk/errors.ts'
import type { Files } from './disk/files.ts'
import type { SiteRecord } from './disk/own-files.ts'
import { type Output, placeIn } from './disk/staging.ts'
import { topOf } from './disk/top-folder.ts'
import { openWorkFolder, type WorkFolder } from './disk/work-folder.ts'
import { fragmentsIn, readFragment, sweepFragments } from './fragments.ts'
import { isSameInputs, type KnownInputs } from './inputs.ts'
import { inThisThread, type Pool } from './pool.ts'
import { type Publication, type Published, publish } from './publish.ts'
import { diskCheck, type WarmCheck } from './site-check.ts'
import { type BuildState, diskMemory, type Memory } from './state.ts'
import {
  type BuildPaths,
  type BuiltUnit,
  type MadeUnit,
  type PooledUnit,
  type Unit,
  unitMaker,
} from './unit.ts'

export type Progress =
  | { readonly step: 'reading' }
  | { readonly step: 'making' | 'protecting'; readonly done: number; readonly total: number }
  | { readonly step: 'publishing'; readonly files: number }

/** What a build needs of the world around it. */
export interface BuildContext {
  readonly files: Files
  /** Names the program that builds; another one makes everything again. */
  readonly program: string
  /** Kept by a process that builds again and again: what the last build remembers. */
  readonly memory?: { over(disk: Memory): Memory }
  /** Likewise: the site as the last build left it. */
  readonly siteCheck?: Pick<WarmCheck, 'record' | 'seen' | 'open'>
  /**
   * Likewise: takes what is left to do once all pages stand, to be done in this order before the next build. Until then
   * no other build comes in, and one that finds it undone, since this process was killed, does it. Done at once where
   * there is no such thing.
   */
  later?(work: () => void): void
  /** Milliseconds, for telling old files from fresh ones; no page shows it. */
  now(): number
  report(progress: Progress): void
  readonly signal: AbortSignal
}

/** Notes of a unit, and whether it was made in this build. */
export interface Result<Notes> {
  readonly notes: Notes
  readonly isNew: boolean
}

export interface Builder {
  /** What the last build remembered. */
  readonly before: BuildState
  readonly workFolder: string
  readonly paths: BuildPaths
  /** The site as it stands. */
  readonly standing: Pick<SiteRecord, 'files' | 'restsOn'>
  /** Builds units in this thread; their results in the same order. */
  build<Notes>(units: readonly Unit<Notes>[], step?: 'protecting'): Promise<readonly Result<Notes>[]>
  /** Builds units in a pool; their results in the same order. */
  buildInPool<Job, Notes>(
    units: readonly PooledUnit<Job, Notes>[],
    pool: Pool<Job, MadeUnit<Notes>>,
  ): Promise<readonly Result<Notes>[]>
  /** Every file of the units so far, or of the one of that name. */
  outputs(unit?: string): readonly Output[]
  /** The bytes of such a file, or of one that the last build left; null when it is gone. */
  read(path: string): Uint8Array | null
  /**
   * The text of that name in the fragment cache.
   * @throws DamagedFragment when it is not as it was kept
   */
  fragment(name: string): string
  /**
   * Publishes the units, and removes the tool's own files that belong to none, but for those that are to stay. A unit of
   * which anything is held back is remembered as it was before, since that is what still stands.
   * @throws UserError that names two units that want one place, a file of someone else's, another source of the site,
   * or the disk's reason; Stopped when asked to stop
   */
  publish(publication: Publication): Promise<Published>
  /** Does something of which no page depends, when all else is done. */
  afterwards(work: () => void): void
  /** Leaves for the next build what it needs to know. */
  remember(inputs: KnownInputs, listedAt: number): void
  /** Lets the next build in. */
  close(): void
}

/**
 * Takes the lock of a site and puts right what a killed build left.
 * @param source folder of what the site is made from
 * @throws UserError while another build holds the lock, when the site is made from another source, or
 * when the disk refuses
 */
export function openBuilder(site: string, source: string, context: BuildContext): Builder {
  const { siteCheck } = context
  const work = openWorkFolder(context.files, site, source, siteCheck && (() => siteCheck.record()))
  try {
    return builderIn(work, context)
  } catch (error) {
    work.close()
    throw error
  }
}

function builderIn(work: WorkFolder, context: BuildContext): Builder {
  const { files, program, signal } = context
  const { site, workFolder, staged: folder } = work.at
  const paths = { staging: { site, folder }, fragments: join(workFolder, 'fragments') }
  const onDisk = diskMemory(files, workFolder)
  const memory = context.memory?.over(onDisk) ?? onDisk
  const before = memory.load(program)
  const siteCheck = context.siteCheck?.open() ?? diskCheck(files, site)
  const units = new Map<string, BuiltUnit>()
  const staged = new Set<string>()
  const heldBack = new Set<string>()
  /** By name, as it is remembered; null until all is done. */
  let remembered: ReadonlyMap<string, BuiltUnit> | null = null
  let isNews = false
  let found: ReadonlySet<string> | null = null
  /** As this build found them, listed once: what it adds is of units that are made. */
  const fragmentsNow = () => {
    found ??= fragmentsIn(files, paths.fragments)
    return found
  }
  let isAnyLeft = false
  const afterwards = (work: () => void) => {
    if (context.later === undefined) return work()
    isAnyLeft = true
    context.later(work)
  }

  /** The unit as last built, where nothing about it has changed. */
  const keptUnit = <Notes>({ name, key, isCurrent }: Pick<Unit<Notes>, 'name' | 'key' | 'isCurrent'>) => {
    const unit = before.units[name] as BuiltUnit<Notes> | undefined
    if (unit?.key !== key || !siteCheck.isIntact(unit)) return undefined
    if (!unit.fragments.every((fragment) => fragmentsNow().has(fragment))) return undefined
    return isCurrent?.(unit.notes) === false ? undefined : unit
  }

  async function buildWith<Job, Notes>(
    all: readonly PooledUnit<Job, Notes>[],
    pool: Pool<Job, MadeUnit<Notes>>,
    step: 'making' | 'protecting' | null,
  ): Promise<readonly Result<Notes>[]> {
    const built = new Map<string, BuiltUnit<Notes>>()
    const changed = new Map<string, PooledUnit<Job, Notes>>()
    for (const unit of all) {
      const kept = keptUnit(unit)
      if (!kept) changed.set(unit.name, unit)
      else {
        built.set(unit.name, kept)
        // An earlier try of this build may have made something else.
        for (const { path } of kept.outputs) staged.delete(path)
        heldBack.delete(unit.name)
      }
    }
    const jobs = [...changed.values()].map(({ job }) => job())
    const report = (done: number) => step !== null && context.report({ step, done, total: jobs.length })
    let done = 0
    const take = ({ name, outputs, fragments, isStale, isHeldBack, notes }: MadeUnit<Notes>) => {
      const key = isStale ? '' : (changed.get(name)?.key ?? '')
      built.set(name, { key, outputs: outputs.map(plainOutput), fragments, notes })
      for (const { path, isStaged } of outputs) isStaged ? staged.add(path) : staged.delete(path)
      isHeldBack ? heldBack.add(name) : heldBack.delete(name)
      isNews = true
      done += 1
      report(done)
    }
    if (jobs.length > 0) {
      report(done)
      await pool(jobs, take, signal)
    }
    return all.map(({ name }) => {
      const unit = built.get(name)
      if (unit === undefined) throw new Error(`${name} was not made`)
      units.set(name, unit)
      return { notes: unit.notes, isNew: changed.has(name) }
    })
  }

  /** Once all is published; of which anything is held back, that is as it was before. */
  function unitsAfter(fateOf: Publication['fateOf']) {
    const isHeld = (name: string, { outputs }: BuiltUnit) =>
      heldBack.has(name) || outputs.some(({ path }) => fateOf(path) !== 'made')
    const isStanding = ({ outputs }: BuiltUnit) =>
      outputs.length > 0 && outputs.every(({ path }) => fateOf(path) === 'kept')
    const asBefore = Object.entries(before.units).filter(([name, unit]) => {
      const now = units.get(name)
      return now === undefined ? isStanding(unit) : isHeld(name, now)
    })
    return { asBefore, asMade: [...units].filter(([name, unit]) => !isHeld(name, unit)) }
  }

  const makeUnit = unitMaker(files, paths)
  return {
    before,
    workFolder,
    paths,
    standing: work.record,
    buildInPool: (all, pool) => buildWith(all, pool, 'making'),
    build: <Notes>(all: readonly Unit<Notes>[], step: 'protecting' | null = null) => {
      const here = inThisThread((unit: Unit<Notes>) =>
        makeUnit(unit.name, (output) =>
          unit.make(output, before.units[unit.name] as BuiltUnit<Notes> | undefined),
        ),
      )
      return buildWith(
        all.map((unit) => ({ ...unit, job: () => unit })),
        here,
        step,
      )
    },
    outputs: (name) =>
      name === undefined
        ? [...units.values()].flatMap(({ outputs }) => outputs)
        : (units.get(name)?.outputs ?? []),
    read: (path) => files.read(placeIn(staged.has(path) ? folder : site, path)),
    fragment: (name) => readFragment(files, paths.fragments, name),
    publish: async (publication) => {
      // Hears a wish to stop, which arrives as an event, before the site is touched.
      await setImmediate()
      if (signal.aborted) throw new Stopped()
      const report = (count: number) => context.report({ step: 'publishing', files: count })
      const finished = { ...publication, units, staged }
      const done = publish(files, work, finished, context.siteCheck?.seen ?? new Map(), report)
      isNews ||= done.published.written + done.published.removed > 0
      let renamed: readonly string[] = []
      afterwards(() => {
        renamed = done.finish()
        const { left, times, record } = done
        const now = unitsAfter(publication.fateOf)
        const all = new Map(
          [...now.asBefore, ...now.asMade].map(([name, unit]) => [name, timed(unit, times)]),
        )
        remembered = all
        const known = now.asMade.flatMap(([name]) => all.get(name) ?? [])
        const isLeft = ({ path }: Output) => left.has(path)
        siteCheck.published(
          left.size === 0 ? known : known.filter(({ outputs }) => !outputs.some(isLeft)),
          record,
        )
        const named = new Set([...all.values()].flatMap(({ fragments }) => fragments))
        sweepFragments(files, paths.fragments, named)
      })
      return { ...done.published, left: [...done.published.left, ...renamed] }
    },
    afterwards,
    remember: (inputs, listedAt) =>
      afterwards(() => {
        if (remembered === null) return
        const isOther =
          isNews ||
          Object.keys(before.units).length !== remembered.size ||
          !isSameInputs(inputs, before.inputs)
        if (isOther) memory.save({ program, listedAt, inputs, units: Object.fromEntries(remembered) })
      }),
    close: () => (isAnyLeft ? afterwards(work.close) : work.close()),
  }
}

const plainOutput = ({ path, hash, size, modified }: Output): Output => ({ path, hash, size, modified })

/** With the times that its files share with others now; the same unit where nothing about it changes. */
function timed(unit: BuiltUnit, times: ReadonlyMap<string, number>): BuiltUnit {
  const outputs = unit.outputs.map((output) => {
    const modified = times.get(topOf(output.path) ?? '')
    const isAsItWas = modified === undefined || (output.isTimeShared === true && output.modified === modified)
    return isAsItWas ? output : { ...output, modified, isTimeShared: true }
  })
  return outputs.every((output, index) => output === unit.outputs[index]) ? unit : { ...unit, outputs }
}
