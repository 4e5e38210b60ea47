/** A horse of the yard page opened: read once, then asked with each key that is pressed. */
import type { Horse, Practice } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { Caution } from '../trend/assessment.ts'
import type { YardDraft } from './draft.ts'
import type { YardField } from './field.ts'
import type { HorseKnowledge } from './knowledge.ts'
import type { YardHorsePart, YardIndex } from './payload.ts'

export interface OpenHorse {
  readonly practice: Practice
  /** As far as its files can be read. */
  readonly horse: Horse
  readonly knowledge: HorseKnowledge
  /** The draft judged beside the horse's other files, as the desk will judge it. */
  check(draft: YardDraft): YardChecked
  /** What was dictated, heard into the draft: its `dictated` becomes the text (see `dictation.ts`). */
  hear(draft: YardDraft, text: string): YardDraft
}

export interface YardChecked {
  /** Errors first, then in the order of the file. */
  readonly messages: readonly YardMessage[]
  /** Standing, the gravest first; those that this visit brings before those that stood. */
  readonly cautions: readonly YardCaution[]
  /** Feet that get no plan while what was found at them stands. */
  readonly heldFeet: readonly Foot[]
}

/** What the reader of case files says of the draft; in the reader's language, as `check` says it at the desk. */
export interface YardMessage {
  readonly code: string
  /** `gap`: a place that is still to be filled in. */
  readonly level: 'error' | 'warning' | 'gap'
  /** Null where it is about the visit as a whole. */
  readonly field: YardField | null
  readonly message: string
  readonly expected: string | null
  /** The text that would be right in this field; null where nothing is sure. */
  readonly fix: string | null
  /** What to do where no fix is sure. */
  readonly advice: string | null
}

/** A danger sign; its words are made by `pages/words`, as everywhere. */
export interface YardCaution {
  readonly caution: Caution
  /** Whether this visit brings it, or makes it graver: it did not stand before. */
  readonly isNew: boolean
}

/**
 * Null where practice.md or horse.md cannot be read: nothing can be judged then, and a visit is written all the same.
 * @param today where the phone is
 */
export function openHorse(
  _index: Pick<YardIndex, 'practiceFile' | 'learned'>,
  _part: Pick<YardHorsePart, 'id' | 'files' | 'pictures'>,
  _today: PlainDate,
): OpenHorse | null {
  throw new Error('not written yet')
}
