/** The language that tests read pages in, so that what they expect can be written out; and the second one of owners' pages. */
import { formatters } from '../src/pages/shared/format.ts'
import { ownerWordsFor, wordsFor } from '../src/pages/words/index.ts'

export const english = wordsFor('en')
export const formatIn = formatters(english)

export const german = ownerWordsFor('de')
export const germanIn = formatters(german)
