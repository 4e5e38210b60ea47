/** The words of the yard page alone, for its script: those of all other pages would weigh on a phone. */
import type { Words } from './catalogue.ts'
import { base } from './en/base.ts'
import { cautions } from './en/cautions/index.ts'
import { mark } from './en/mark.ts'
import { front } from './en/practice/front.ts'
import { yard } from './en/yard.ts'
import { yardForm } from './en/yard-form.ts'
import type { practiceLanguage } from './practice-language.ts'

export interface YardWords extends Pick<Words, 'base' | 'cautions' | 'mark' | 'yard' | 'yardForm'> {
  readonly practice: Pick<Words['practice'], 'front'>
}

/** The same languages as those of all pages. */
const languages: Readonly<Record<typeof practiceLanguage, YardWords>> = {
  en: { base, cautions, mark, practice: { front }, yard, yardForm },
}

export const yardWordsFor = (tag: keyof typeof languages): YardWords => languages[tag]
