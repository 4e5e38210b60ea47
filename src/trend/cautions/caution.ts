/** A danger sign as it was found in a record: since when, last spoken of when, and whether it stands. */
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import { type CautionLevel, levelOrder } from './sign.ts'
import type { CautionCode, FactsOf } from './signs.ts'

export type CautionOf<Code extends CautionCode> = {
  readonly code: Code
  readonly level: CautionLevel
  readonly family: string | null
  /** Null where it is about a pair or the whole horse. */
  readonly foot: Foot | null
  /** Every foot that it is about. */
  readonly feet: readonly Foot[]
  /** Day on which it was first found without having ended since. */
  readonly since: PlainDate
  /** Day and visit that last spoke of it; no visit where the horse has had none. */
  readonly date: PlainDate
  readonly visit: string | null
  /** As last found. */
  readonly facts: FactsOf<Code>
  /** In force, and not said more gravely by another of its family at the same feet. */
  readonly standing: boolean
  /** A stop that reads lower than when it was found, yet is neither gone nor cleared by a vet. */
  readonly isLower: boolean
  /** Visits since that did not speak of it. */
  readonly silentVisits: number
  /** Whether its feet have no plan while it stands. */
  readonly holdsPlan: boolean
  /** The visits that found it, oldest first. */
  readonly seen: readonly Seen<Code>[]
}

export interface Seen<Code extends CautionCode> {
  readonly visit: string
  readonly date: PlainDate
  readonly facts: FactsOf<Code>
}

/** Without those of which another of the same family says the matter more gravely, at all of their feet. */
export const withoutCovered = <One extends Covering>(cautions: readonly One[]): readonly One[] =>
  cautions.filter(
    (one) =>
      !cautions.some(
        (graver) =>
          graver.family !== null &&
          graver.family === one.family &&
          levelOrder[graver.level] < levelOrder[one.level] &&
          one.feet.every((foot) => graver.feet.includes(foot)),
      ),
  )

type Covering = Pick<CautionOf<CautionCode>, 'family' | 'level' | 'feet'>

/** Any caution; its code tells its facts. */
export type Caution = { readonly [Code in CautionCode]: CautionOf<Code> }[CautionCode]
