/** What the last visits made a habit of: a new one asks for that, and not for what was read once, long ago. */
import type { Visit } from '../casebook/model.ts'
import { type Foot, feet, type PerFoot } from '../hoof/feet.ts'

const looksBack = 3

/** The visits that count, oldest first. */
export const lastVisits = (past: readonly Visit[]): readonly Visit[] => past.slice(-looksBack)

/** Whether two of the last three did it; while there are no three, one is enough. */
export function isHabit(past: readonly Visit[], did: (visit: Visit) => boolean): boolean {
  const recent = lastVisits(past)
  return recent.filter(did).length >= (recent.length < looksBack ? 1 : 2)
}

/** The feet of which that is so. */
export const habitFeet = (
  past: readonly Visit[],
  valuesOf: (visit: Visit) => PerFoot<unknown>,
): readonly Foot[] => feet.filter((foot) => isHabit(past, (visit) => valuesOf(visit)[foot] !== undefined))

/** What the latest visit that says anything of it says; null where none does. */
export function lastSaying<T>(
  past: readonly Visit[],
  read: (visit: Visit) => T,
  isSaid: (value: T) => boolean,
): T | null {
  const visit = past.findLast((one) => isSaid(read(one)))
  return visit === undefined ? null : read(visit)
}
