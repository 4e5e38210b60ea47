/** The languages that pages can be written in. Nothing else in the program knows one by its name. */
import { assessment } from './en/assessment.ts'
import { base } from './en/base.ts'
import { calendar } from './en/calendar.ts'
import { cautions } from './en/cautions.ts'
import { figures } from './en/figures.ts'
import { mark } from './en/mark.ts'
import { owner } from './en/owner.ts'
import { photos } from './en/photos.ts'
import { portfolio } from './en/portfolio.ts'
import { practice } from './en/practice.ts'
import { reference } from './en/reference.ts'
import { starter } from './en/starter.ts'

const en = {
  assessment,
  base,
  calendar,
  cautions,
  figures,
  mark,
  owner,
  photos,
  portfolio,
  practice,
  reference,
  starter,
}

/** A catalogue: all wording of one language. Another language is another object of this type. */
export type Words = typeof en

/** By BCP 47 tag. The one list to extend. */
const languages = { en } satisfies Record<string, Words>
export type LanguageTag = keyof typeof languages

export const wordsFor = (tag: LanguageTag): Words => languages[tag]

/** Case files do not name a language yet, so every practice has this one. */
export const practiceLanguage: LanguageTag = 'en'
