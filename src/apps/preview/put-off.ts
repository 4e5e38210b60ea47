/** Work that a build leaves for when its pages have been told of: putting away what was live, lists, the lock. */
import { UserError } from '../../build/disk/errors.ts'

export interface PutOff {
  later(work: () => void): void
  /** Does all of it, in order, once pages that are asked for meanwhile have been sent. */
  soon(): void
  /** Does it now: before the next build, and at the end. */
  now(): void
}

/** Pages that are told to load again are asked for within a few milliseconds. */
const soonAfter = 150

export function putOff(): PutOff {
  let waiting: (() => void)[] = []
  let timer: NodeJS.Timeout | undefined
  const now = () => {
    clearTimeout(timer)
    const works = waiting
    waiting = []
    works.forEach(attempt)
  }
  return {
    later: (work) => void waiting.push(work),
    soon: () => {
      clearTimeout(timer)
      timer = setTimeout(now, soonAfter)
    },
    now,
  }
}

/** What the disk refuses is left to the next build, as by a build that was killed; what comes after it is done all the same. */
function attempt(work: () => void): void {
  try {
    work()
  } catch (error) {
    if (!(error instanceof UserError)) throw error
  }
}
