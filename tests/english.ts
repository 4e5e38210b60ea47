/** The language that tests read pages in, so that what they expect can be written out. */
import { formatters } from '../src/pages/shared/format.ts'
import { wordsFor } from '../src/pages/words/index.ts'

export const english = wordsFor('en')
export const formatIn = formatters(english)
