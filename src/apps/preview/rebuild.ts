/** A build that is done again and again in one warm process, for the preview. */
import { relative, sep } from 'node:path'
import { disk } from '../../build/disk/real-disk.ts'
import { packageRoot, programKey } from '../../build/program.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import { practice } from '../../editions/practice.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { buildSite } from '../site/build-site.ts'
import type { SiteContext, SiteOptions } from '../site/options.ts'
import type { ShownProblem } from './news.ts'
import { putOff } from './put-off.ts'
import { type Recheck, recheck } from './recheck.ts'
import { servedOf, servedPaths } from './served.ts'
import { warmOver } from './warm.ts'
import { warmUp } from './warm-up.ts'

export interface Rebuilt {
  /** What is wrong in the casebook or likely so, or why the build itself failed; the last good site stands under it. */
  readonly problems: readonly ShownProblem[]
  readonly changed: boolean
  /** Sentences and photographs that wait for approval before they leave. */
  readonly waiting: number
  readonly milliseconds: number
}

export interface Rebuilding {
  readonly casebook: string
  readonly site: string
  /** How many horses are made at once, where many are to be made. */
  readonly threads: number
  today(): PlainDate
  now(): number
  readonly signal: AbortSignal
}

export interface Rebuilder {
  /**
   * Builds the practice edition once more; never rejects for what a person can mend. Of the casebook only these
   * places, and folders that are new, are looked at again.
   */
  build(places: Iterable<string>): Promise<Rebuilt>
  /** Paths within the edition's own folder of all that the last build made. Throws UserError when that cannot be known. */
  served(): Pick<ReadonlySet<string>, 'has'>
  /** Loads and tries all that makes a horse's pages, until a build is wanted. */
  warmUp(): Promise<void>
  /** Looks now and then whether all is as builds take it to be, and calls `found` where it is not. */
  keepChecking(found: () => void): void
  /** Leaves on the disk what the next build needs to know. */
  close(): void
}

/** Quiet after a build, milliseconds, before what it remembers is written down. */
const flushAfter = 2_000

export function openRebuilder({ casebook, site, threads, today, now, signal }: Rebuilding): Rebuilder {
  const warm = warmOver(disk, casebook, site)
  const rest = putOff()
  let served: ReturnType<Rebuilder['served']> | null = null
  let timer: NodeJS.Timeout | undefined
  let isBuilding = false
  let warming = Promise.resolve()
  let checking: Recheck | undefined
  const options = (): SiteOptions => ({ casebook, site, asOf: today(), editions: [practice] })
  const context: SiteContext = {
    ...warm,
    later: rest.later,
    files: disk,
    threads,
    program: programKey(packageRoot()),
    now,
    report: () => {},
    signal,
  }
  const build = async (places: Iterable<string>) => {
    clearTimeout(timer)
    isBuilding = true
    const began = now()
    for (const path of places) warm.invalidate(relative(casebook, path).replaceAll(sep, '/'))
    await warming
    served = null
    const rebuilt = (problems: readonly ShownProblem[], changed: boolean, waiting: number): Rebuilt => ({
      problems,
      changed,
      waiting,
      milliseconds: now() - began,
    })
    try {
      rest.now()
      const built = await buildSite(options(), context)
      const { published } = built
      served = published && servedOf(published.paths.all, practice.folder)
      return rebuilt(
        built.diagnostics.map(shown),
        published !== null && published.written + published.removed > 0,
        built.waiting.reduce((sum, { count }) => sum + count, 0),
      )
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error)
      return rebuilt(
        [{ level: 'error', place: 'build', message, expected: null, fix: null, advice: null }],
        false,
        0,
      )
    } finally {
      isBuilding = false
      rest.soon()
      checking?.soon()
      timer = setTimeout(warm.flush, flushAfter)
    }
  }
  return {
    build,
    served: () => served ?? servedPaths(site, practice.folder),
    warmUp: () => {
      const isWanted = () => !isBuilding && !signal.aborted
      const rehearse = async () => {
        rest.now()
        await warmUp(options(), context, isWanted)
      }
      // What fails here fails in the next build too, which says why.
      warming = rehearse().catch(() => {})
      return warming
    },
    keepChecking: (found) => {
      checking = recheck({ steps: warm.recheck, isBusy: () => isBuilding, found })
      checking.soon()
    },
    close: () => {
      checking?.close()
      clearTimeout(timer)
      rest.now()
      warm.flush()
    },
  }
}

function shown({ file, line, column, level, message, expected, fix, advice }: Diagnostic): ShownProblem {
  const place = [file, line, column].filter((part) => part !== null).join(':')
  return { level, place, message, expected, fix, advice }
}
