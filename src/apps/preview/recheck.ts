/**
 * Looks again, while nobody waits, at what a process that stays takes to be as it was. The system may fail to tell
 * of a change; this finds it, so that no page stays stale for good.
 */
import { setTimeout as rest } from 'node:timers/promises'
import { UserError } from '../../build/disk/errors.ts'

export interface Recheck {
  /** Has a look begin soon: something was changed just now. */
  soon(): void
  close(): void
}

export interface RecheckOptions {
  /** One look at everything, a step each; each step says whether something was not as it was taken to be. */
  steps(): Iterable<boolean>
  /** Whether someone waits for other work. */
  isBusy(): boolean
  /** Called after a look that found something. */
  found(): void
}

/** Milliseconds. */
export interface Pace {
  readonly soon: number
  /** Between looks where nothing happens. */
  readonly seldom: number
  /** At one go, after which others have their turn: a save may wait so long. */
  readonly slice: number
  readonly pause: number
}

const usualPace: Pace = { soon: 2_000, seldom: 60_000, slice: 4, pause: 12 }

export function recheck({ steps, isBusy, found }: RecheckOptions, pace: Pace = usualPace): Recheck {
  const closing = new AbortController()
  let timer: NodeJS.Timeout | undefined
  let isRunning = false
  let isSoon = false

  const plan = (wait: number) => {
    clearTimeout(timer)
    if (!closing.signal.aborted) timer = setTimeout(look, wait)
  }
  const look = async () => {
    isSoon = false
    isRunning = true
    try {
      if (await findsAny()) found()
    } catch (error) {
      // What cannot be looked at is reported by the next build, which finds it as well.
      if (!(error instanceof UserError) && !closing.signal.aborted) throw error
    } finally {
      isRunning = false
      plan(isSoon ? pace.soon : pace.seldom)
    }
  }
  const findsAny = async () => {
    let isAny = false
    let began = Number.NEGATIVE_INFINITY
    for (const isFound of steps()) {
      isAny ||= isFound
      if (performance.now() - began < pace.slice) continue
      do await rest(pace.pause, undefined, { signal: closing.signal })
      while (isBusy())
      began = performance.now()
    }
    return isAny
  }

  return {
    soon: () => {
      if (!isSoon && !isRunning) plan(pace.soon)
      isSoon = true
    },
    close: () => {
      closing.abort()
      clearTimeout(timer)
    },
  }
}
