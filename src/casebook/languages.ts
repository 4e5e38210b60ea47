/** The languages of owners' pages by BCP 47 tag, as `language` in practice.md names them. Their words are in `pages/words`. */
import type { Reader } from './fields.ts'
import { oneOf } from './readers.ts'
import { normal } from './words.ts'

export const languageTags = ['en', 'de'] as const
export type LanguageTag = (typeof languageTags)[number]

/** What people write instead of a tag. */
const names: Readonly<Record<string, LanguageTag>> = {
  english: 'en',
  german: 'de',
  deutsch: 'de',
}

/** `de`, or `German`. */
export const language: Reader<LanguageTag> = (value, context, name) => {
  const word = value.kind === 'text' ? normal(value.text) : ''
  return Object.hasOwn(names, word) ? names[word] : oneOf(languageTags)(value, context, name)
}
