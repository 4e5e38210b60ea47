/** What is marked, what it was before, and all of it again after the page was closed. */
import type { Point } from '../../../src/hoof/landmarks.ts'

export interface Marked {
  readonly marks: Readonly<Record<string, Point>>
  /** Of the scale, as written. */
  readonly length: string
  readonly nearer: string
  /** How the camera stood: `yard`, `block`, `flat`, or as the case file has it. */
  readonly camera: string
  readonly usesCard: boolean
}

export interface History {
  now(): Marked
  change(to: Partial<Marked>): void
  /** Whether there was anything. */
  undo(): boolean
  redo(): boolean
  readonly can: () => { readonly undo: boolean; readonly redo: boolean }
  /** Whether points of an earlier time were taken up. */
  readonly isTakenUp: boolean
}

/** Most steps that are kept. */
const most = 200

/** @param key under which it is kept in this browser; null where it is not */
export function historyOf(first: Marked, key: string | null): History {
  const past: Marked[] = []
  const future: Marked[] = []
  const kept = read(key)
  const isTakenUp = kept !== null && JSON.stringify(kept) !== JSON.stringify(first)
  let now = first
  if (isTakenUp) {
    past.push(first)
    now = kept
  }
  const step = (from: Marked[], to: Marked[]) => {
    const next = from.pop()
    if (next === undefined) return false
    to.push(now)
    now = next
    write(key, now)
    return true
  }
  return {
    now: () => now,
    change: (to) => {
      const next = { ...now, ...to }
      if (JSON.stringify(next) === JSON.stringify(now)) return
      past.push(now)
      past.splice(0, past.length - most)
      future.length = 0
      now = next
      write(key, now)
    },
    undo: () => step(past, future),
    redo: () => step(future, past),
    can: () => ({ undo: past.length > 0, redo: future.length > 0 }),
    isTakenUp,
  }
}

const prefix = 'growdown marking '

/** A browser may allow no storage, or hold what another program wrote: then there is nothing. */
function read(key: string | null): Marked | null {
  if (key === null) return null
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(prefix + key) ?? 'null')
    return isMarked(kept) ? kept : null
  } catch {
    return null
  }
}

function write(key: string | null, marked: Marked): void {
  if (key === null) return
  try {
    localStorage.setItem(prefix + key, JSON.stringify(marked))
  } catch {
    // Full or forbidden: the points are on the page all the same.
  }
}

const isMarked = (kept: unknown): kept is Marked =>
  typeof kept === 'object' &&
  kept !== null &&
  'marks' in kept &&
  typeof kept.marks === 'object' &&
  Object.values(kept.marks ?? {}).every(
    (point) => Array.isArray(point) && point.length === 2 && point.every(Number.isFinite),
  ) &&
  ['length', 'nearer', 'camera'].every(
    (name) => typeof (kept as Record<string, unknown>)[name] === 'string',
  ) &&
  'usesCard' in kept &&
  typeof kept.usesCard === 'boolean'
