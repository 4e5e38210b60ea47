import type { Horse, Practice } from '../../casebook/model.ts'
import type { Assessment } from '../../trend/assessment.ts'
import type { OwnerWords, Words } from '../words/index.ts'
import type { Formatter } from './format.ts'
import type { Pictures } from './pictures.ts'

/** One horse with all that a page about it needs: what is known, what follows from it, and how to say it. */
export interface HorseInput<W extends OwnerWords = Words> {
  readonly horse: Horse
  readonly assessment: Assessment
  readonly practice: Practice
  readonly pictures: Pictures
  /** Words and numbers of the language that the pages are written in. */
  readonly format: Formatter<W>
}

/** In a language that may have words for owners alone. */
export type OwnerInput = HorseInput<OwnerWords>
