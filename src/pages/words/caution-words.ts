/** What a language says of a caution to each reader, by its code. */
import type { CautionCode, FactsOf } from '../../trend/assessment.ts'
import type { Formats } from './formats.ts'

/** What every language says. */
export interface OwnerCautionWords<F> {
  /** The matter in a word or two. */
  readonly name: (facts: F) => string
  /** To the owner: what it is, what to do now and whom to ring. The feet stand beside it. Nothing here is a diagnosis. */
  readonly owner: (facts: F, f: Formats) => string
}

export interface CautionWords<F> extends OwnerCautionWords<F> {
  /** To the practitioner: what, why, and what not to do. The word of its level and the feet stand beside it. */
  readonly practice: (facts: F, f: Formats) => string
  /** Asked of whoever takes over. */
  readonly question: string
  /** To a reader who learns from the case. */
  readonly portfolio: (facts: F, f: Formats) => string
}

export type OwnerWordsOfCautions = { readonly [Code in CautionCode]: OwnerCautionWords<FactsOf<Code>> }
export type WordsOfCautions = { readonly [Code in CautionCode]: CautionWords<FactsOf<Code>> }
