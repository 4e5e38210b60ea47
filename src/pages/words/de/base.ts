import type { OwnerWords } from '../catalogue.ts'
import { measureNames } from './measure-names.ts'

/** Names that every page uses. */
export const base: OwnerWords['base'] = {
  lang: 'de',
  formats: 'de-DE',
  shortDate: (day, month, year) => `${day}. ${month} ${year}`,

  feet: { LF: 'vorne links', RF: 'vorne rechts', LH: 'hinten links', RH: 'hinten rechts' },
  measureName: (id) => measureNames[id],
  notRead: 'nicht gemessen',
  perMonth: (amount) => `${amount} im Monat`,
  fromTo: (low, high) => `${low} bis ${high}`,
  upTo: (high) => `bis ${high}`,
  remark: (about, text) => `${about}: ${text}`,
  matterAt: (matter, feet) => `${matter} (${feet})`,
  notSpokenOf: (date, matters) =>
    `Seit dem ${date} nicht mehr erwähnt, aber auch nicht als erledigt vermerkt: ${matters}.`,
  lowerNotGone: 'Der Wert ist jetzt niedriger, aber es ist nicht weg, und kein Tierarzt hat es freigegeben.',
  under: (amount) => `unter ${amount}`,
  orMore: (low) => `${low} oder mehr`,

  skip: 'Zum Inhalt',
  pagesOfSite: 'Seiten',
}
