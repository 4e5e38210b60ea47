/** The languages that pages can be written in. Nothing else in the program knows the words of one. */
import type { LanguageTag } from '../../casebook/languages.ts'
import type { OwnerWords, Words } from './catalogue.ts'
import { de } from './de/index.ts'
import { en } from './en/index.ts'

export type { OwnerWords, Words } from './catalogue.ts'

/** Words of owners' pages, by the tags that practice.md may name. */
const ownerLanguages: Readonly<Record<LanguageTag, OwnerWords>> = { en, de }

export const ownerWordsFor = (tag: LanguageTag): OwnerWords => ownerLanguages[tag]

/** Languages that have words for every page. */
const languages = { en } satisfies Partial<Record<LanguageTag, Words>>

export const wordsFor = (tag: keyof typeof languages): Words => languages[tag]

export { practiceLanguage } from './practice-language.ts'
