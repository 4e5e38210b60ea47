/** Which of several values said in a row belongs to which foot. */
import { feet as allFeet, type Foot } from '../hoof/feet.ts'
import type { Pause } from './atoms.ts'

/** Values said together, or feet, in the order in which they were said. */
export type Entry<T> = ValueEntry<T> | FootEntry

export interface ValueEntry<T> {
  readonly kind: 'values'
  readonly values: readonly T[]
}

export interface FootEntry {
  readonly kind: 'feet'
  readonly feet: readonly Foot[]
  /** `both fronts`: one value is for each of them. */
  readonly each: boolean
  /** After `on`, `in`, `at`. */
  readonly isOn: boolean
  readonly pauseBefore: Pause
  /** Whether a measure, a finding or a number of another matter follows it, which it may belong to. */
  readonly heads: boolean
}

/** All four, where words say so of the horse. */
export const everyFoot: FootEntry = {
  kind: 'feet',
  feet: allFeet,
  each: true,
  isOn: false,
  pauseBefore: 'none',
  heads: false,
}

/** Puts a value with those said right before it. */
export function addValue<T>(entries: Entry<T>[], value: T): void {
  const last = entries.at(-1)
  if (last?.kind === 'values') entries[entries.length - 1] = { ...last, values: [...last.values, value] }
  else entries.push({ kind: 'values', values: [value] })
}

/** The feet that were spoken of before. */
export interface FeetBefore {
  readonly feet: readonly Foot[]
  readonly each: boolean
  /** Named in the same sentence. */
  readonly isFresh: boolean
  /** Named, and nothing said of them yet. */
  readonly isWaiting: boolean
}

export interface Share<T> {
  readonly foot: Foot
  readonly value: T
}

/**
 * Each value with its foot, or null where that is not sure. Feet stand before their values, or after them: what comes
 * first decides, and one foot alone after a value counts only where no foot was named before it.
 */
export function shareOut<T>(
  entries: readonly Entry<T>[],
  before: FeetBefore | null,
  order: readonly Foot[],
): readonly Share<T>[] | null {
  const pattern = entries.map(({ kind }) => (kind === 'values' ? 'v' : 'f')).join('')
  if (!pattern.includes('v')) return []
  const last = entries.at(-1)
  const trailing = last?.kind === 'feet' ? last : null
  // "Both hinds, mild in the left, moderate in the right": the pair, and then each of it.
  const [first] = entries
  if (/^f(?:vf){2,}$/.test(pattern) && first?.kind === 'feet' && first.feet.length > 1) {
    const inner = entries.slice(1)
    const isOfIt = inner.every(
      (one) => one.kind === 'values' || one.feet.every((foot) => first.feet.includes(foot)),
    )
    if (isOfIt && !trailing?.heads) return feetLast(inner, order)
  }
  if (pattern.startsWith('f')) return feetFirst(entries, order)
  const headsNext =
    trailing?.heads === true && before !== null && (before.isFresh || trailing.pauseBefore !== 'none')
  if (/^(?:vf)+$/.test(pattern) && trailing && !headsNext) {
    const isPair = pattern.length > 2
    const isSame = trailing.feet.join() === before?.feet.join()
    if (!isPair && before?.isFresh && !isSame && !(trailing.isOn && !before.isWaiting)) return null
    if (!isPair && before?.isWaiting && !isSame && trailing.feet.length === 1 && !trailing.isOn) return null
    return feetLast(entries, order)
  }
  const rest = entries.slice(1)
  const own = first?.kind === 'values' ? assigned(first.values, before, order) : null
  const others = rest.some(({ kind }) => kind === 'values') ? feetFirst(rest, order) : []
  return own && others ? [...own, ...others] : null
}

function feetFirst<T>(entries: readonly Entry<T>[], order: readonly Foot[]): readonly Share<T>[] | null {
  const shares: Share<T>[] = []
  let current: FootEntry | null = null
  for (const entry of entries) {
    if (entry.kind === 'feet') {
      current = entry
      continue
    }
    const got = current && assigned(entry.values, { ...current, isFresh: true, isWaiting: true }, order)
    if (!got) return null
    shares.push(...got)
    current = null
  }
  return shares
}

function feetLast<T>(entries: readonly Entry<T>[], order: readonly Foot[]): readonly Share<T>[] | null {
  const shares: Share<T>[] = []
  let values: readonly T[] = []
  for (const entry of entries) {
    if (entry.kind === 'values') {
      values = entry.values
      continue
    }
    const got = assigned(values, { ...entry, isFresh: true, isWaiting: true }, order)
    if (!got) return null
    shares.push(...got)
  }
  return shares
}

/** One value for one foot or for each, as many values as feet, or four for all. */
function assigned<T>(
  values: readonly T[],
  before: FeetBefore | null,
  order: readonly Foot[],
): readonly Share<T>[] | null {
  const [only] = values
  if (before && values.length === 1 && only !== undefined) {
    if (before.feet.length > 1 && !before.each) return null
    return before.feet.map((foot) => ({ foot, value: only }))
  }
  const takesAll =
    values.length === allFeet.length &&
    (before === null || before.feet.length === 4 || !(before.isFresh || before.isWaiting))
  const feet = takesAll ? order : (before?.feet ?? [])
  if (values.length < 2 || feet.length !== values.length) return null
  return feet.flatMap((foot, index) => {
    const value = values[index]
    return value === undefined ? [] : [{ foot, value }]
  })
}
