/** A build that is done again and again in one warm process, for the preview. */
import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { disk } from './files.ts'
import { pageMakers } from './makers.ts'
import type { BuildWorld } from './order.ts'
import { packageRoot, programKey } from './package.ts'
import type { ShownProblem } from './preview-server.ts'
import { buildSite } from './site.ts'
import { warmMemory } from './state.ts'

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
  /** Builds the practice edition once more; never rejects for what a person can mend. */
  build(): Promise<Rebuilt>
  /** Leaves on the disk what the next build needs to know. */
  close(): void
}

/** Quiet after a build, milliseconds, before what it remembers is written down. */
const settleAfter = 2_000

export function openBuilder({ casebook, site, threads, today, now, signal }: Rebuilding): Builder {
  const memory = warmMemory()
  let timer: NodeJS.Timeout | undefined
  const world: BuildWorld = {
    memory,
    files: disk,
    makers: pageMakers(disk, threads),
    program: programKey(packageRoot()),
    now,
    report: () => {},
    signal,
  }
  const build = async () => {
    clearTimeout(timer)
    const began = now()
    const rebuilt = (problems: readonly ShownProblem[], changed: boolean): Rebuilt => ({
      problems,
      changed,
      milliseconds: now() - began,
    })
    try {
      const built = await buildSite({ casebook, site, asOf: today(), editions: ['practice'] }, world)
      const errors = built.diagnostics.filter(({ level }) => level === 'error')
      const { published } = built
      return rebuilt(errors.map(shown), published !== null && published.written + published.removed > 0)
    } catch (error) {
      return rebuilt(
        [{ place: 'build', text: error instanceof Error ? error.message : String(error) }],
        false,
      )
    } finally {
      timer = setTimeout(memory.settle, settleAfter)
    }
  }
  return {
    build,
    close: () => {
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
