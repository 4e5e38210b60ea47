/** What the parts of the form are handed. */
import type { YardWords } from '../../../../src/pages/words/yard.ts'
import type { OpenedYard } from '../opened.ts'
import type { Drafts } from './drafts.ts'

export interface FormFrame {
  readonly yard: OpenedYard
  readonly drafts: Drafts
  readonly words: YardWords
}
