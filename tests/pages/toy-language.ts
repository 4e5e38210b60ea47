/**
 * A second language, made from the first by machine: every text of the catalogue stands between marks, and dates and
 * numbers are German. What stands on a page without marks came from somewhere else than the words handed in.
 */
import type { Words } from '../../src/pages/words/index.ts'
import { english } from '../english.ts'

const marked = (text: string) => (text === '' ? '' : `⟦${text}⟧`)

function toyOf(value: unknown): unknown {
  if (typeof value === 'string') return marked(value)
  if (typeof value === 'function') return (...given: unknown[]) => toyOf(value(...given))
  if (Array.isArray(value)) return value.map(toyOf)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, toyOf(entry)]))
}

const everything = toyOf(english) as Words

export const toy: Words = {
  ...everything,
  base: { ...everything.base, lang: 'de-x-toy', formats: 'de' },
}

/** A text without what stands between marks; marks may stand within marks. */
export function unmarked(text: string): string {
  let depth = 0
  let rest = ''
  for (const sign of text) {
    if (sign === '⟦') depth += 1
    else if (sign === '⟧') {
      depth -= 1
      if (depth === 0) rest += '\n'
    } else if (depth === 0) rest += sign
  }
  if (depth !== 0) throw new Error('a mark is opened and not closed')
  return rest
}

/** Every stretch of text that the English catalogue holds: whole texts, and what stands between the gaps of the others. */
export function phrases(value: unknown = english): readonly string[] {
  if (typeof value === 'string') return [value]
  if (typeof value === 'function') return stretches(String(value))
  return typeof value === 'object' && value !== null
    ? Object.values(value).flatMap((one) => phrases(one))
    : []
}

/** The texts in the source of a function, without the gaps of its templates. */
function stretches(source: string): readonly string[] {
  const texts = source.match(/`(?:[^`\\]|\\.)*`|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g) ?? []
  return texts.flatMap((text) => text.slice(1, -1).split(/\$\{(?:[^{}]|\{[^{}]*\})*\}/))
}
