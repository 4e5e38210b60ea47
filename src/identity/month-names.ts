/** Names of months, in the languages that notes are written in. */

const english = 'january|february|march|april|may|june|july|august|september|october|november|december'.split(
  '|',
)

/** Each by the beginning that tells it from the others, January first; folded by nothing but case. */
const beginnings: readonly (readonly string[])[] = [
  ['jan', 'jän', 'ene', 'gen'],
  ['feb', 'fév', 'fev'],
  ['mar', 'mär', 'mrz', 'maa', 'mrt'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai', 'mei', 'mag'],
  ['jun', 'juin', 'giu'],
  ['jul', 'juil', 'lug'],
  ['aug', 'aoû', 'aou', 'ago'],
  ['sep', 'set'],
  ['oct', 'okt', 'ott', 'out'],
  ['nov'],
  ['dec', 'dez', 'déc', 'dic'],
]

/** English names, whole. */
export const englishMonth = english.join('|')

/** German names, whole: those that are English ones too are left out. */
const german = 'januar|jänner|februar|märz|mai|juni|juli|oktober|dezember'

/** Names of the languages that pages are written in. */
export const pageMonth = `${englishMonth}|${german}`

const short = 'jan|feb|mar|mär|apr|may|jun|jul|aug|sept|sep|oct|nov|dec'
const others = `${german}|januari|februari|maart|mei|augustus|december
|janvier|février|fevrier|mars|avril|juin|juillet|août|aout|septembre|octobre|novembre|décembre|decembre
|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre
|gennaio|febbraio|aprile|maggio|giugno|luglio|settembre|ottobre|dicembre|mrz|okt|dez|déc|févr|janv|avr|juil`.replaceAll(
  '\n',
  '',
)

/** Any month's name in a pattern; beside a number only, since `mars` and `mai` mean other things too. */
export const monthName = `(?:(?:${englishMonth}|${others})(?!\\p{L})|(?:${short})(?!\\p{L})\\.?)`

/** 1 to 12; 0 for no month. */
export function monthNumber(name: string): number {
  const lower = name.toLowerCase()
  if (lower.startsWith('juin')) return 6
  return beginnings.findIndex((starts) => starts.some((start) => lower.startsWith(start))) + 1
}
