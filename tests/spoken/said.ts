/** Spoken notes of a test, and what they become. */
import { feet } from '../../src/hoof/feet.ts'
import { buildLexicon, draftVisit, type Known, type NotesFormat, understand } from '../../src/spoken/index.ts'

export const nothingKnown: Known = {
  units: 'mm',
  feetOrder: feet,
  date: '2026-11-27',
  openFindings: [],
  features: [],
}

const lexicon = buildLexicon()

export const heard = (text: string, known: Known = nothingKnown, format?: NotesFormat) =>
  understand(text, known, lexicon, format)

export const drafted = (text: string, known: Known = nothingKnown, format?: NotesFormat): string =>
  draftVisit(heard(text, known, format), known)

/** `before LF toe-length 98`. */
export const readingsOf = (text: string, known?: Known): readonly string[] =>
  heard(text, known).readings.map(
    ({ stage, foot, measure, text: value }) => `${stage} ${foot} ${measure} ${value}`,
  )

/** `LF thrush, frog, 1`. */
export const findingsOf = (text: string, known?: Known): readonly string[] =>
  heard(text, known).findings.map(
    ({ foot, what, place, grade }) => `${foot} ${what}, ${place ?? '_'}, ${grade ?? '_'}`,
  )

export const questionsOf = (text: string, known?: Known): readonly string[] =>
  heard(text, known).questions.map(({ ask }) => ask)
