import type { Foot } from '../../../hoof/feet.ts'
import { type AnyMeasureId, derivedMeasures, measures } from '../../../hoof/measures.ts'

const allMeasures = { ...measures, ...derivedMeasures }

/** Names that every edition uses. */
export const base = {
  /** BCP 47. */
  lang: 'en',
  /** The platform's `en` puts the month first and a comma before the last of a list. */
  formats: 'en-GB',
  /** The platform's `en-GB` writes `Sept`; the other months have three letters. */
  shortDate: (day: string, month: string, year: string) => `${day} ${month} ${year}`,

  feet: { LF: 'left fore', RF: 'right fore', LH: 'left hind', RH: 'right hind' } satisfies Record<
    Foot,
    string
  >,
  measureName: (id: AnyMeasureId) => allMeasures[id].name,
  notRead: 'not read',
  perMonth: (amount: string) => `${amount} a month`,
  fromTo: (low: string, high: string) => `${low} to ${high}`,
  upTo: (high: string) => `up to ${high}`,
  remark: (about: string, text: string) => `${about}: ${text}`,
  matterAt: (matter: string, feet: string) => `${matter}, ${feet}`,
  notSpokenOf: (date: string, matters: string) =>
    `Not spoken of since ${date}, and not said to be gone: ${matters}.`,
  lowerNotGone: 'It reads lower now, but it is not gone and no vet has cleared it.',
  under: (amount: string) => `under ${amount}`,
  orMore: (low: string) => `${low} or more`,

  skip: 'To the content',
  pagesOfSite: 'Pages of this site',
}
