/** Work that a build leaves for when its pages have been told of: putting away what was live, lists, the lock. */
import { UserError } from '../../build/disk/errors.ts'

export interface PutOff {
  later(work: () => void): void
  /** Does all of it, in order, once pages that are asked for meanwhile have been sent. */
  soon(): void
  /**
   * Does it now: before the next build, and at the end. What the disk refuses is left to the next build, as by one that
   * was killed, and what comes after it is done all the same.
   * @throws a fault of this program, also one that came when nobody heard of it
   */
  now(): void
}

/** Milliseconds. Pages that are told to load again are asked for within a few; to do it all takes 30 at 1,000 horses. */
const soonAfter = 150

export function putOff(): PutOff {
  let waiting: (() => void)[] = []
  let faults: unknown[] = []
  let timer: NodeJS.Timeout | undefined
  const work = () => {
    clearTimeout(timer)
    const works = waiting
    waiting = []
    for (const one of works) {
      try {
        one()
      } catch (error) {
        if (!(error instanceof UserError)) faults.push(error)
      }
    }
  }
  return {
    later: (one) => void waiting.push(one),
    soon: () => {
      clearTimeout(timer)
      timer = setTimeout(work, soonAfter)
    },
    now: () => {
      work()
      const [fault] = faults
      faults = []
      if (fault !== undefined) throw fault
    },
  }
}
