import { findingMeanings, places } from '../hoof/findings.ts'
import { derivedMeasures, measures } from '../hoof/measures.ts'
import { scales } from '../hoof/scales.ts'
import { sources } from '../hoof/sources.ts'
import type { OwnWords } from './common-words.ts'
import { wordsOf } from './words.ts'

/** Words that charts, drawings and page code use for their parts; they stand in no catalogue. */
const markup = `mark group role axis frame title label text path rule symbol line area rect scope legend root
background foreground grid domain tick layer layout view tspan span main style script section figure table row
stroke fill color font family sans serif marker content width height data image svg meta link head body html`

const inMarkup: ReadonlySet<string> = new Set(markup.split(/\s+/))

/** Whether a folded word is what a part of a page, a chart or a drawing is called. */
export const isMarkup = (word: string): boolean => inMarkup.has(word)

/**
 * The tool's own words, from its templates, its catalogues and the trade's vocabulary.
 * A catalogue's functions count too: their text holds the words they put together.
 */
export function ownWords(texts: readonly string[], catalogues: readonly unknown[]): OwnWords {
  const single = new Set<string>()
  const pairs = new Set<string>()
  const written = new Set<string>()
  const take = (text: string) => {
    const words = wordsOf(text)
    words.forEach((word, i) => {
      single.add(word.folded)
      const next = words[i + 1]
      if (next === undefined) return
      pairs.add(`${word.folded} ${next.folded}`)
      written.add(`${word.raw} ${next.raw}`)
    })
  }
  const walk = (value: unknown): void => {
    if (typeof value === 'string') take(value)
    else if (typeof value === 'function') take(String(value))
    else if (Array.isArray(value)) value.forEach(walk)
    else if (value !== null && typeof value === 'object') {
      for (const [key, entry] of Object.entries(value)) {
        take(key)
        walk(entry)
      }
    }
  }
  for (const text of texts) take(text)
  for (const catalogue of catalogues) walk(catalogue)
  for (const known of [measures, derivedMeasures, findingMeanings, places, scales, sources, markup])
    walk(known)
  return { single, pairs, written }
}
