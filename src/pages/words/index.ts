/** The languages that pages can be written in. Nothing else in the program knows the words of one. */
import type { LanguageTag } from '../../casebook/languages.ts'
import type { OwnerWordsOfCautions } from './caution-words.ts'
import { de } from './de/index.ts'
import { en } from './en/index.ts'

/** A catalogue: all wording of one language. Another language of every page is another object of this type. */
export type Words = typeof en

/** What an owner's page is written with: the part that every language has. */
export interface OwnerWords extends Pick<Words, 'base' | 'figures' | 'owner'> {
  readonly cautions: OwnerWordsOfCautions
}

/** By the tags that practice.md may name. */
const ownerLanguages: Readonly<Record<LanguageTag, OwnerWords>> = { en, de }

/** Words of owners' pages. */
export const ownerWordsFor = (tag: LanguageTag): OwnerWords => ownerLanguages[tag]

/** Languages that have words for every page. */
const languages = { en } satisfies Partial<Record<LanguageTag, Words>>

export const wordsFor = (tag: keyof typeof languages): Words => languages[tag]

/** All pages but the owners' are in this one. */
export const practiceLanguage = 'en'
