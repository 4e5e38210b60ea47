/** The languages that pages can be written in. Nothing else in the program knows one by its name. */
import { en } from './en/index.ts'

/** A catalogue: all wording of one language. Another language is another object of this type. */
export type Words = typeof en

/** By BCP 47 tag. The one list to extend. */
const languages = { en } satisfies Record<string, Words>
export type LanguageTag = keyof typeof languages

export const languageTags = Object.keys(languages) as readonly LanguageTag[]

export const wordsFor = (tag: LanguageTag): Words => languages[tag]

/** Case files do not name a language yet, so every practice has this one. */
export const practiceLanguage: LanguageTag = 'en'
