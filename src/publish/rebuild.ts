/** A build that is done again and again in one warm process, for the preview. */
import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { disk } from './files.ts'
import { pageMakers } from './makers.ts'
import type { BuildWorld } from './order.ts'
import { packageRoot, programKey } from './package.ts'
import type { ShownProblem } from './preview-server.ts'
import { buildSite } from './site.ts'

export interface Rebuilt {
  /** Errors of the casebook, or why the build itself failed; the last good site stands under them. */
  readonly problems: readonly ShownProblem[]
  readonly changed: boolean
  readonly milliseconds: number
}

export interface Rebuilding {
  readonly casebook: string
  readonly site: string
  today(): PlainDate
  now(): number
  readonly signal: AbortSignal
}

/** @returns builds the practice edition once more; never throws for what a person can mend */
export function openBuilder({ casebook, site, today, now, signal }: Rebuilding): () => Promise<Rebuilt> {
  const world: BuildWorld = {
    files: disk,
    makers: pageMakers(disk, 1),
    program: programKey(packageRoot()),
    now,
    report: () => {},
    signal,
  }
  return async () => {
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
    }
  }
}

function shown({ file, line, message, fix }: Diagnostic): ShownProblem {
  return {
    place: line === null ? file : `${file}:${line}`,
    text: fix === null ? message : `${message} ${fix}`,
  }
}
