/** The languages of owners' pages by BCP 47 tag, as `language` in practice.md names them. Their words are in `pages/words`. */
export const languageTags = ['en', 'de'] as const
export type LanguageTag = (typeof languageTags)[number]

/** By tag, and by what people write instead. */
export const knownLanguages: Readonly<Record<string, LanguageTag>> = {
  en: 'en',
  english: 'en',
  de: 'de',
  german: 'de',
  deutsch: 'de',
}
