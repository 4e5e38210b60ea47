/** A build that is done again and again in one warm process, for the preview. */
import { relative, sep } from 'node:path'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { disk } from '../disk/files.ts'
import { pageMakers } from '../makers.ts'
import type { BuildOrder, BuildWorld } from '../order.ts'
import { packageRoot, programKey } from '../package.ts'
import { buildSite } from '../site.ts'
import { keptStanding } from '../standing.ts'
import { warmMemory } from '../state.ts'
import { keptListing } from './kept-listing.ts'
import { rehearse } from './rehearsal.ts'
import { type SecondLook, secondLook } from './second-look.ts'
import type { ShownProblem } from './server.ts'

export interface Rebuilt {
  /** Errors of the casebook, or why the build itself failed; the last good site stands under them. */
  readonly problems: readonly ShownProblem[]
  readonly changed: boolean
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

export interface Builder {
  /**
   * Builds the practice edition once more; never rejects for what a person can mend. Of the casebook only these
   * places, and folders that are new, are looked at again.
   */
  build(places: Iterable<string>): Promise<Rebuilt>
  /** Loads and tries all that makes a horse's pages, until a build is wanted. */
  rehearse(): Promise<void>
  /** Looks now and then whether all is as builds take it to be, and calls `found` where it is not. */
  keepLooking(found: () => void): void
  /** Leaves on the disk what the next build needs to know. */
  close(): void
}

/** Quiet after a build, milliseconds, before what it remembers is written down. */
const settleAfter = 2_000

export function openBuilder({ casebook, site, threads, today, now, signal }: Rebuilding): Builder {
  const memory = warmMemory()
  const listing = keptListing(casebook)
  const standing = keptStanding(disk, site)
  let timer: NodeJS.Timeout | undefined
  let isBuilding = false
  let rehearsing = Promise.resolve()
  let second: SecondLook | undefined
  const order = (): BuildOrder => ({ casebook, site, asOf: today(), editions: ['practice'] })
  function* lookAgain() {
    yield* listing.lookAgain()
    yield* standing.lookAgain()
  }
  const world: BuildWorld = {
    memory,
    listing,
    standing,
    files: disk,
    makers: pageMakers(disk, threads),
    program: programKey(packageRoot()),
    now,
    report: () => {},
    signal,
  }
  const build = async (places: Iterable<string>) => {
    clearTimeout(timer)
    isBuilding = true
    const began = now()
    for (const path of places) listing.doubt(relative(casebook, path).replaceAll(sep, '/'))
    await rehearsing
    const rebuilt = (problems: readonly ShownProblem[], changed: boolean): Rebuilt => ({
      problems,
      changed,
      milliseconds: now() - began,
    })
    try {
      const built = await buildSite(order(), world)
      const errors = built.diagnostics.filter(({ level }) => level === 'error')
      const { published } = built
      return rebuilt(errors.map(shown), published !== null && published.written + published.removed > 0)
    } catch (error) {
      return rebuilt(
        [{ place: 'build', text: error instanceof Error ? error.message : String(error) }],
        false,
      )
    } finally {
      isBuilding = false
      second?.soon()
      timer = setTimeout(memory.settle, settleAfter)
    }
  }
  return {
    build,
    rehearse: () => {
      // What fails here fails in the next build too, which tells why.
      rehearsing = rehearse(order(), world, () => !isBuilding && !signal.aborted).catch(() => {})
      return rehearsing
    },
    keepLooking: (found) => {
      second = secondLook({ steps: lookAgain, isBusy: () => isBuilding, found })
      second.soon()
    },
    close: () => {
      second?.close()
      clearTimeout(timer)
      memory.settle()
    },
  }
}

function shown({ file, line, message, fix }: Diagnostic): ShownProblem {
  return {
    place: line === null ? file : `${file}:${line}`,
    text: fix === null ? message : `${message} ${fix}`,
  }
}
