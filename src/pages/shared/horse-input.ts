import type { Horse, Practice } from '../../casebook/model.ts'
import type { Assessment } from '../../trend/assessment.ts'
import type { Formatter } from './format.ts'
import type { Pictures } from './pictures.ts'

/** One horse with all that a page about it needs: what is known, what follows from it, and how to say it. */
export interface HorseInput {
  readonly horse: Horse
  readonly assessment: Assessment
  readonly practice: Practice
  readonly pictures: Pictures
  /** Words and numbers of the language that the pages are written in. */
  readonly format: Formatter
}
