/** Spoken notes: what was said of a visit, understood and written as a case file. */
export { type AskedLines, draftVisit } from './draft.ts'
export { knownBefore } from './known.ts'
export { buildLexicon } from './lexicon.ts'
export { understand } from './understand.ts'
export type { Known, Understood } from './understood.ts'
export type { NotesFormat } from './words.ts'
