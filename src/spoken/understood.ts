/** What was understood of spoken notes, each with the words that it came from. */
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'
import type { LengthUnit } from '../hoof/units.ts'
import type { Word } from './words.ts'

/** First and last word of a stretch. */
export interface WordRange {
  readonly first: number
  readonly last: number
}

interface Heard {
  /** Stretches of words, in order. */
  readonly from: readonly WordRange[]
  /** Said with doubt, or read with some: what about. */
  readonly doubt: string | null
}

export type Stage = 'before' | 'after'

export interface SpokenReading extends Heard {
  readonly stage: Stage
  readonly foot: Foot
  readonly measure: MeasureId
  /** Millimetres or degrees; null where two readings were said and neither taken back. */
  readonly value: number | null
  /** As a case file has it: `98`, `9.8 cm`, `3 5/8 in`; `_` where it is asked. */
  readonly text: string
}

export interface SpokenFinding extends Heard {
  readonly foot: Foot
  readonly what: string
  /** Null where it was not said. */
  readonly place: string | null
  readonly grade: 0 | 1 | 2 | 3 | null
}

/** Something followed as it grows down the wall. */
export interface SpokenFeature extends Heard {
  readonly foot: Foot
  readonly what: string
  readonly place: string | null
  readonly text: string
}

export type PerFootScale = 'lameness' | 'landing' | 'digital pulse'

export interface SpokenComfort extends Heard {
  readonly scale: PerFootScale
  readonly foot: Foot
  readonly level: string
  readonly by: 'vet' | 'practitioner' | null
}

export interface SpokenSurface extends Heard {
  readonly surface: string
  readonly level: string
}

export interface SpokenBody extends Heard {
  readonly key: 'weight' | 'condition' | 'crest'
  readonly text: string
}

export interface SpokenLine extends Heard {
  readonly text: string
}

/** What is not sure, to be settled by the person who spoke. */
export interface SpokenQuestion {
  readonly ask: string
  readonly from: readonly WordRange[]
}

export interface Understood {
  readonly words: readonly Word[]
  readonly readings: readonly SpokenReading[]
  readonly findings: readonly SpokenFinding[]
  readonly features: readonly SpokenFeature[]
  readonly comfort: readonly SpokenComfort[]
  readonly surfaces: readonly SpokenSurface[]
  readonly body: readonly SpokenBody[]
  readonly care: readonly SpokenLine[]
  readonly nextVisit: SpokenLine | null
  readonly questions: readonly SpokenQuestion[]
  /** Sentences by their words: each is whole in what was understood, or stays in the notes. */
  readonly sentences: readonly SpokenSentence[]
}

export interface SpokenSentence extends WordRange {
  /** Whether every word of it stands beside a line of the draft. */
  readonly isUsed: boolean
}

/** What was known before this visit, and how the practice writes. */
export interface Known {
  readonly units: LengthUnit
  readonly feetOrder: readonly Foot[]
  /** Day of the visit. */
  readonly date: PlainDate
  /** Findings of earlier visits not yet said to be gone. */
  readonly openFindings: readonly { readonly foot: Foot; readonly what: string; readonly place: string }[]
  readonly features: readonly { readonly foot: Foot; readonly what: string; readonly place: string }[]
}

export type Changeable<T> = { -readonly [K in keyof T]: T[K] }
