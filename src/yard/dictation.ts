/** Dictated text heard into a draft. */
import type { Known, Understood } from '../spoken/index.ts'
import type { YardDraft } from './draft.ts'

/**
 * The draft with what was understood of the whole text so far. What an earlier hearing put there is taken back first; a
 * field that a hand has written, changed or emptied since stays the hand's, and the words for it stay in the notes.
 */
export function heardInto(_draft: YardDraft, _text: string, _understood: Understood): YardDraft {
  throw new Error('not written yet')
}

/** The draft without a question that the person has settled. */
export function settled(_draft: YardDraft, _question: number): YardDraft {
  throw new Error('not written yet')
}

export type { Known }
