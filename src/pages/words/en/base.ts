import type { Foot } from '../../../hoof/feet.ts'

/** Names that every edition uses. */
export const base = {
  feet: { LF: 'left fore', RF: 'right fore', LH: 'left hind', RH: 'right hind' } satisfies Record<
    Foot,
    string
  >,
  months: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ],
  notRead: 'not read',
  perMonth: (amount: string) => `${amount} a month`,
  days: (n: number) => (n === 1 ? '1 day' : `${n} days`),
  weeks: (n: number) => (n === 1 ? '1 week' : `${n} weeks`),
  monthsSpan: (n: number) => (n === 1 ? '1 month' : `${n} months`),
  fromTo: (low: string, high: string) => `${low} to ${high}`,
  upTo: (high: string) => `up to ${high}`,
  remark: (about: string, text: string) => `${about}: ${text}`,
  matterAt: (matter: string, feet: string) => `${matter}, ${feet}`,
  notSpokenOf: (date: string, matters: string) =>
    `Not spoken of since ${date}, and not said to be gone: ${matters}.`,
  lowerNotGone: 'It reads lower now, but it is not gone and no vet has cleared it.',
  under: (amount: string) => `under ${amount}`,
  orMore: (low: string) => `${low} or more`,
  /** `a, b and c`. */
  listed: (items: readonly string[]) =>
    items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`,

  /** BCP 47. */
  lang: 'en',
  skip: 'To the content',
  pagesOfSite: 'Pages of this site',
}
