/** A measure's values and feet as they are gathered. */
import type { Foot } from '../hoof/feet.ts'
import type { MeasureContext } from './hearing.ts'
import type { Amount } from './quantity.ts'
import type { Entry } from './share-out.ts'
import type { WordRange } from './understood.ts'
import type { Inward, Measured } from './vocabulary/sense.ts'

/** A number of a group. */
export interface Value {
  readonly amount: Amount
  readonly side: Inward | null
  readonly isDoubted: boolean
  /** From what was said before it to its own last word. */
  readonly from: WordRange
}

/** What was gathered since the measure was named. */
export interface Group {
  readonly measure: MeasureContext
  readonly entries: Entry<Value>[]
  readonly mentioned: Foot[]
  side: Inward | null
  sideFirst: boolean | null
  isDoubted: boolean
  /** Something in it says that not all of it is meant. */
  isUnclear: boolean
  /** Unknown words between the measure and its first value. */
  strange: number
  /** First token that no value's words hold yet. */
  open: number
  /** The foot named last. */
  feetFrom: WordRange | null
  /** Stage said after the values of this group, rather than before them. */
  stagesLast: boolean | null
}

/** Measures that are one of an inner and an outer. */
export const families: ReadonlySet<Measured> = new Set<Measured>(['heels', 'quarters', 'heel'])

/** A group of which nothing is gathered yet. `from` is the first token that may be its. */
export const startGroup = (measure: MeasureContext, from: number): Group => ({
  measure,
  entries: [],
  mentioned: [],
  side: null,
  sideFirst: null,
  isDoubted: false,
  isUnclear: false,
  strange: 0,
  open: from,
  feetFrom: null,
  stagesLast: null,
})

export const hasValues = (group: Group): boolean => group.entries.some(({ kind }) => kind === 'values')

/** Says more of the value that was said last, where no foot came after it. */
export function changeLast(group: Group, more: Partial<Value>): void {
  const last = group.entries.at(-1)
  const value = last?.kind === 'values' ? last.values.at(-1) : undefined
  if (last?.kind !== 'values' || !value) return
  group.entries[group.entries.length - 1] = {
    ...last,
    values: [...last.values.slice(0, -1), { ...value, ...more }],
  }
}
