/** What a stretch of words can mean. */
import type { Foot } from '../../hoof/feet.ts'
import type { Place } from '../../hoof/findings.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { LengthUnit } from '../../hoof/units.ts'

/**
 * A measure by its name, or a word that leaves open which: `toe` is its length or its angle by the number, `heels` and
 * `quarters` are the inner and the outer one, `heel` may be any of three, `width` and `length` go by what was named before.
 */
export type Measured = MeasureId | 'toe' | 'heel' | 'heels' | 'quarters' | 'any-width' | 'any-length'

export type Inward = 'medial' | 'lateral'

export type Sense =
  /** Passing: "anywhere", "all round", after which the feet spoken of are those spoken of before. */
  | {
      readonly kind: 'feet'
      readonly feet: readonly Foot[]
      readonly each: boolean
      readonly passing: boolean
    }
  /** Left or right of the pair that was named. */
  | { readonly kind: 'side'; readonly side: 'left' | 'right' }
  /** The feet that were not named yet. */
  | { readonly kind: 'others' }
  | { readonly kind: 'both' }
  /** The fore, or hind, that is not the one spoken of. */
  | { readonly kind: 'other-foot'; readonly pair: 'fore' | 'hind' }
  /** Both feet of the pair that was named. */
  | { readonly kind: 'pair' }
  | { readonly kind: 'all' }
  /** All but what follows. */
  | { readonly kind: 'except' }
  /** Words that say the stage whatever stands round them are sure. */
  | {
      readonly kind: 'stage'
      readonly stage: 'before' | 'after'
      readonly sure: boolean
      readonly all: boolean
    }
  | { readonly kind: 'measure'; readonly measure: Measured; readonly place: Place | null }
  | { readonly kind: 'inward'; readonly side: Inward }
  | { readonly kind: 'unit'; readonly unit: LengthUnit | 'deg' }
  /** Not sure: an everyday word, which wants a place after it. */
  | {
      readonly kind: 'finding'
      readonly what: string
      readonly where: Place | null
      readonly sure: boolean
    }
  /** `ragged` is a finding once the frog is named in the same breath. */
  | { readonly kind: 'quality'; readonly of: readonly string[]; readonly what: string }
  | { readonly kind: 'place'; readonly place: Place | null; readonly part: string }
  /** Weak: one of manner, "a bit of", which a plain one replaces. Null: some grade, and who knows which. */
  | { readonly kind: 'grade'; readonly grade: 0 | 1 | 2 | 3 | null; readonly weak: boolean }
  | { readonly kind: 'grade-next' }
  /** A part of the horse that is no part of the foot. */
  | { readonly kind: 'body-part' }
  | { readonly kind: 'down' }
  /** `No` denies what follows, or puts right what came before; `not` only denies. */
  | { readonly kind: 'no' }
  | { readonly kind: 'not' }
  | { readonly kind: 'gone' }
  | { readonly kind: 'still' }
  | { readonly kind: 'correct'; readonly strong: boolean }
  | { readonly kind: 'doubt' }
  /** Another day, another horse, or a wish. */
  | { readonly kind: 'elsewhere' }
  /** A number that something is held against. */
  | { readonly kind: 'compared' }
  | { readonly kind: 'today' }
  | { readonly kind: 'hypothetical' }
  /** After a number: of things counted, of time, of money. Before one: a time, a name. */
  | { readonly kind: 'counted' }
  | { readonly kind: 'labelled' }
  | { readonly kind: 'range' }
  | { readonly kind: 'and' }
  | { readonly kind: 'or' }
  | {
      readonly kind: 'scale'
      readonly scale: 'pulse' | 'landing' | 'lame' | 'condition' | 'crest' | 'weight'
    }
  | { readonly kind: 'level'; readonly scale: 'pulse' | 'landing' | 'ease'; readonly level: string }
  | { readonly kind: 'surface'; readonly surface: string }
  | { readonly kind: 'mass'; readonly unit: 'kg' | 'lb' }
  | { readonly kind: 'out-of-five' }
  | { readonly kind: 'judge'; readonly by: 'vet' | 'practitioner' }
  | { readonly kind: 'next-visit' }
  | { readonly kind: 'care' }
  /** Punctuation that is said aloud. */
  | { readonly kind: 'pause'; readonly pause: 'comma' | 'stop' }
  | { readonly kind: 'neutral' }

export type Phrase = readonly [words: string, sense: Sense]

/** Every combination of one word of each list, with blanks between. */
export const combined = (...lists: readonly (readonly string[])[]): readonly string[] =>
  lists.reduce<readonly string[]>(
    (made, list) => made.flatMap((one) => list.map((word) => `${one} ${word}`.trim())),
    [''],
  )

export const phrases = (words: readonly string[], sense: Sense): readonly Phrase[] =>
  words.map((word) => [word, sense])

/** The phrases of a list with commas between. */
export const listed = (text: string): readonly string[] =>
  text
    .split(',')
    .map((phrase) => phrase.replaceAll(/\s+/g, ' ').trim())
    .filter((phrase) => phrase !== '')
