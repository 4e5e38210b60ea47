/** What may stand where in a case file: the keys, the words, and a line about each. */
import type { Horse, Practice, Visit } from '../../../casebook/model.ts'
import type { Foot } from '../../../hoof/feet.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'

/** What a proposal may depend on. */
export interface Around {
  readonly practice: Practice
  /** As far as its files can be read; null in practice.md and where there is no horse.md. */
  readonly horse: Horse | null
  /** The visits before the one that is written. */
  readonly past: readonly Visit[]
  /** Order of a list of four. */
  readonly feetOrder: readonly Foot[]
  /** Paths from the horse's folder. */
  readonly files: readonly string[]
}

/** A word that may stand there. */
export interface Choice {
  readonly word: string
  readonly about: string | null
  /** Comes before the others. */
  readonly isLikely?: boolean
}

export interface Shape {
  /** What it is, in a line; empty where its key says all. */
  readonly about: string
  /** Keys of a map. */
  readonly keys?: Readonly<Record<string, Shape>>
  /** What stands under keys that a person names: an owner's id, a surface. */
  readonly each?: Shape
  /** What stands for each foot: in a list of four, or under LF, RF, LH and RH. */
  readonly feet?: Shape
  /** What each line of a list is. */
  readonly items?: Shape
  /** Words of a value, one list for each part between commas. */
  readonly words?: readonly ((around: Around, at: At) => readonly Choice[])[]
  /** The measure that is read here. */
  readonly measure?: AnyMeasureId
  /** What follows the colon of the key when it is chosen; a `$1` is where the cursor goes. */
  readonly snippet?: string
}

/** What is known of a place besides its shape. */
export interface At {
  readonly foot: Foot | null
  /** The parts of the line before this one. */
  readonly before: readonly string[]
  /** What stands there already, as far as the cursor. */
  readonly typed: string
}

/** Free words, a number, a day: nothing can be offered. */
export const free = (about: string): Shape => ({ about })

export const words = (about: string, ...known: readonly (string | Choice)[]): Shape => ({
  about,
  words: [() => known.map((one) => (typeof one === 'string' ? { word: one, about: null } : one))],
})

export const map = (about: string, keys: Readonly<Record<string, Shape>>, snippet = '{$1}'): Shape => ({
  about,
  keys,
  snippet,
})
