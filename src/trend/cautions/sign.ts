/**
 * What a danger sign is: its level, the rule that finds it, and what it says when it has been found. Its words for each
 * reader stand beside its code in the words of a language; nothing else needs to know a new one.
 */
import type { Horse, Visit } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot, Pair } from '../../hoof/feet.ts'
import type { Facts, NextVisit } from '../assessed-care.ts'
import type { CareRecord, FootFinding } from './record.ts'

/** `stop`: ask a vet before any more work. `vet`: tell the vet. `mind`: take care. */
export type CautionLevel = 'stop' | 'vet' | 'mind'

/** Gravest first. */
export const levelOrder: Readonly<Record<CautionLevel, number>> = { stop: 0, vet: 1, mind: 2 }

export interface Sign<Code extends string, F extends Facts> {
  readonly code: Code
  readonly level: CautionLevel
  /** Set where the foot has no plan while it stands, as every `stop` does. */
  readonly holdsPlan?: true
  /** Signs of one family say one matter in several degrees: at the same feet only the gravest is shown. */
  readonly family?: string
  /** Given the record once, so that the rule can find what it needs; null where nothing could be found. */
  readonly over: (record: CareRecord) => Look<F> | null
  /** For what depends on the day and on no visit. */
  readonly onDay?: (
    next: NextVisit,
    horse: Horse,
    asOf: PlainDate,
  ) => { readonly date: PlainDate; readonly facts: F; readonly feet: readonly Foot[] } | null
}

/** Looks at one visit after another, oldest first, and speaks of the matters of which that visit says something. */
export type Look<F extends Facts> = (at: Moment, speak: Speak<F>) => void

/** One visit of the record. */
export interface Moment {
  readonly place: number
  readonly visit: Visit
  /** Each place of each foot once: where one finding is written twice, the graver. */
  readonly findings: readonly FootFinding[]
  readonly isLast: boolean
}

/** What a sign is about. */
export type Subject = Foot | Pair | 'horse'

/**
 * What a visit says of a matter: that it is there, with its facts; that it is as before, which keeps it standing and
 * raises nothing; that it is gone; or that it is less than the rule asks for, which ends a `vet` or `mind` and leaves a
 * `stop` standing. A visit that does not speak changes nothing.
 */
export type Word<F extends Facts> = F | 'same' | 'gone' | 'lower'

/**
 * @param matter what else parts one matter from another at that subject, such as the place of a finding;
 *   `every` ends all matters of the subject
 * @param date of the matter, where it is not the visit's
 */
export type Speak<F extends Facts> = (
  subject: Subject,
  word: Word<F>,
  matter?: string,
  date?: PlainDate,
) => void

export const every = '*'

export const sign = <Code extends string, F extends Facts>(one: Sign<Code, F>): Sign<Code, F> => one
