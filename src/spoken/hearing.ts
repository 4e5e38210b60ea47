/** What has been heard so far: the running context, and what was understood. */
import type { Foot, Pair } from '../hoof/feet.ts'
import { pairOf } from '../hoof/feet.ts'
import type { LengthUnit } from '../hoof/units.ts'
import type { FeetBefore } from './share-out.ts'
import type { Token } from './tokens.ts'
import type {
  Changeable,
  Known,
  SpokenBody,
  SpokenComfort,
  SpokenFeature,
  SpokenFinding,
  SpokenLine,
  SpokenQuestion,
  SpokenReading,
  SpokenSurface,
  Stage,
  WordRange,
} from './understood.ts'
import type { Measured } from './vocabulary/sense.ts'

/** The feet being spoken of, and since which sentence. */
export interface FeetContext {
  readonly feet: readonly Foot[]
  readonly each: boolean
  readonly sentence: number
  readonly from: WordRange
  /** Whether something was said of them. */
  used: boolean
}

export interface StageContext {
  readonly stage: Stage
  /** The feet that it was said of; null where it was said of the whole horse. */
  readonly feet: readonly Foot[] | null
  readonly sentence: number
  readonly from: WordRange
  used: boolean
}

/** A measure that was named. */
export interface MeasureContext {
  readonly measured: Measured
  readonly sentence: number
  readonly from: WordRange
}

export interface Hearing {
  readonly known: Known
  feet: FeetContext | null
  pair: Pair | null
  /** Whether the feet of the pair are told apart as left and right alone. */
  isBySide: boolean
  stage: StageContext | null
  /** Named at the end of a sentence, and no number yet. */
  heading: MeasureContext | null
  /** The measures of the sentence before and of this one, in order. */
  measuresBefore: readonly MeasureContext[]
  measuresNow: MeasureContext[]
  readonly unitsSaid: Set<LengthUnit>
  /** What was understood last, which a correction is about. */
  last: Last | null
  readonly readings: Changeable<SpokenReading>[]
  readonly findings: Changeable<SpokenFinding>[]
  readonly features: SpokenFeature[]
  readonly comfort: Changeable<SpokenComfort>[]
  readonly surfaces: SpokenSurface[]
  readonly body: SpokenBody[]
  readonly care: SpokenLine[]
  nextVisit: SpokenLine | null
  readonly questions: SpokenQuestion[]
}

export type Last =
  | {
      readonly kind: 'readings'
      readonly items: readonly Changeable<SpokenReading>[]
      readonly measured: Measured
      readonly sentence: number
    }
  | {
      readonly kind: 'findings'
      readonly items: readonly Changeable<SpokenFinding>[]
      readonly sentence: number
    }

export const startHearing = (known: Known): Hearing => ({
  known,
  feet: null,
  pair: null,
  isBySide: false,
  stage: null,
  heading: null,
  measuresBefore: [],
  measuresNow: [],
  unitsSaid: new Set(),
  last: null,
  readings: [],
  findings: [],
  features: [],
  comfort: [],
  surfaces: [],
  body: [],
  care: [],
  nextVisit: null,
  questions: [],
})

/** The feet of the context as the sharing out of values wants them. */
export const feetBefore = (context: FeetContext | null, sentence: number): FeetBefore | null =>
  context && {
    feet: context.feet,
    each: context.each,
    isFresh: context.sentence === sentence,
    isWaiting: !context.used,
  }

export function setFeet(
  hearing: Hearing,
  feet: readonly Foot[],
  each: boolean,
  from: WordRange,
  sentence: number,
  isBySide = false,
): void {
  hearing.isBySide = isBySide || feet.length === 2
  hearing.feet = { feet, each, sentence, from, used: false }
  const [first] = feet
  const pairs = new Set(feet.map(pairOf))
  hearing.pair = first !== undefined && pairs.size === 1 ? pairOf(first) : null
}

export const rangeOfTokens = (first: Token, last: Token = first): WordRange => ({
  first: Math.min(first.first, last.first),
  last: Math.max(first.last, last.last),
})

/** Stretches in order, those that touch put together. */
export function merged(ranges: readonly WordRange[]): readonly WordRange[] {
  const result: WordRange[] = []
  for (const range of ranges.toSorted((a, b) => a.first - b.first)) {
    const before = result.at(-1)
    if (before && range.first <= before.last + 1) {
      result[result.length - 1] = { first: before.first, last: Math.max(before.last, range.last) }
    } else result.push(range)
  }
  return result
}

/** The stretch of the feet's name, the first time that something is said of them in it. */
export function contextRanges(hearing: Hearing): readonly WordRange[] {
  const ranges: WordRange[] = []
  for (const context of [hearing.feet, hearing.stage]) {
    if (!context) continue
    if (!context.used) ranges.push(context.from)
    context.used = true
  }
  return ranges
}

/** Stretches that one line is said to come from; what is said still more often stays in the notes. */
const mostStretches = 12

/** The stretches of a line that is said once more. */
export const alsoFrom = (before: readonly WordRange[], more: readonly WordRange[]): readonly WordRange[] =>
  before.length >= mostStretches ? before : merged([...before, ...more])
