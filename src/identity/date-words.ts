/** Words for a date, and dates that no one day can be told of. */
import { englishMonth, monthNumber, pageMonth } from './month-names.ts'

export interface LooseDate {
  readonly pattern: RegExp
  /** What is known of it: `12-26`, or a month with or without its year; nothing where it is a word for some day. */
  read(parts: readonly (string | undefined)[]): {
    readonly monthDay?: string
    readonly month?: string
    readonly inMonth?: number
  }
  /** Whether it is a date here, by the text just before and after. */
  isOne?(before: string, after: string, found: string): boolean
}

const two = (n: number) => String(n).padStart(2, '0')
const word = (text: string, flags = 'giu') =>
  new RegExp(`(?<![\\p{L}\\p{N}])(?:${text})(?![\\p{L}\\p{N}])`, flags)

/** Feasts that fall on the same day every year. */
const fixed: readonly (readonly [string, string])[] = [
  ["New Year['’]?s Eve|Hogmanay|Silvester|Sylvester", '12-31'],
  ["New Year(?:['’]?s)?(?: Day)?|Neujahr", '01-01'],
  ['Twelfth Night|Epiphany', '01-06'],
  ['Burns Night', '01-25'],
  ['Candlemas', '02-02'],
  ["(?:St\\.? |Saint )?Valentine['’]?s(?: Day)?", '02-14'],
  ["(?:St\\.? |Saint )David['’]?s Day", '03-01'],
  ["(?:St\\.? |Saint )Patrick['’]?s Day", '03-17'],
  ["April Fool['’]?s?(?:['’])? Day", '04-01'],
  ["(?:St\\.? |Saint )George['’]?s Day", '04-23'],
  ['Anzac Day', '04-25'],
  ['May Day', '05-01'],
  ["Midsummer['’]?s? Day", '06-24'],
  ['Canada Day', '07-01'],
  ['Independence Day|(?:the )?Fourth of July', '07-04'],
  ['Bastille Day', '07-14'],
  ['Lammas', '08-01'],
  ['Michaelmas', '09-29'],
  ["Hallowe['’]?en", '10-31'],
  ["All Saints['’]?(?: Day)?", '11-01'],
  ['Bonfire Night|Guy Fawkes(?: Night| Day)?', '11-05'],
  ['Armistice Day|Martinmas', '11-11'],
  ["(?:St\\.? |Saint )Andrew['’]?s Day", '11-30'],
  ['Christmas Eve|Heiligabend', '12-24'],
  ["Boxing Day|(?:St\\.? |Saint )Stephen['’]?s Day", '12-26'],
  ['Christmas(?: Day)?|Xmas(?: Day)?|Weihnachten|Noël', '12-25'],
]

/** Feasts that move, and days that differ from place to place. */
const moving =
  `(?:${englishMonth})?\\s?bank holiday(?: (?:Monday|Friday|weekend))?|(?:Early |Late )?(?:May|Spring|Summer|August) bank holiday
|Easter(?: (?:Sunday|Monday|Saturday|weekend|week))?|Good Friday|Holy Week|Palm Sunday|Maundy Thursday|Ash Wednesday|Shrove Tuesday|Pancake Day
|Mardi Gras|Lent|Whit(?:sun| Monday| Sunday)|Pentecost|Ascension Day|Corpus Christi|Advent|Mothering Sunday
|Mother['’]?s Day|Father['’]?s Day|Remembrance (?:Sunday|Day)|Thanksgiving(?: Day)?|Labou?r Day|Memorial Day
|Veterans['’]? Day|Presidents['’]? Day|Columbus Day|Australia Day|Black Friday|Ramadan|Eid(?: al-\\p{L}+)?|Diwali|Hanukk?ah|Chanukah|Passover
|Pesach|Yom Kippur|Rosh Hashanah?|Purim|Sukkot|Holi|Chinese New Year|Lunar New Year|Ostern|Ostermontag|Ostersonntag|Karfreitag
|Pfingsten|Pfingstmontag|Himmelfahrt|Fronleichnam|Fasching|Karneval`.replaceAll('\n', '')

const ordinals =
  `first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth
|sixteenth|seventeenth|eighteenth|nineteenth|twentieth|twenty-first|twenty-second|twenty-third|twenty-fourth|twenty-fifth
|twenty-sixth|twenty-seventh|twenty-eighth|twenty-ninth|thirtieth|thirty-first`
    .replaceAll('\n', '')
    .split('|')
const day =
  '(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?\\.?|(?:Mon|Diens|Donners|Frei|Sams|Sonn)tag|Mittwoch|Sonnabend)'
const year = '(?:19|20)\\d{2}'
const season = 'spring|summer|autumn|fall|winter|frühling|frühjahr|sommer|herbst'
const capitalMonth = pageMonth.replace(/(?:^|(?<=\|))\p{L}/gu, (letter) => letter.toUpperCase())

/** A date may stand there: `on 12/3`, `seen 12/3`. */
const leadsToDate =
  /(?:^|[\s(])(?:on|by|since|until|till|dated|seen|visited|trimmed|shod|date|due|am|vom|bis|seit|le|visit of|visit on|of the)[:\s]\s*$/i
const endsThere =
  /^(?:\s*[.,;:!?)]|\s*$|\s+(?:and|or|to|she|he|it|we|i|the|but|when|her|his|was|were|again|last|at|with)(?![\p{L}]))/iu
/** Scales and fractions: `2/5`, `3/4`, `7/9`. */
const isScale = (a: number, b: number) => a <= b && [2, 3, 4, 5, 8, 9, 10, 16].includes(b)

/** Longer forms first. */
export const looseDates: readonly LooseDate[] = [
  {
    pattern: word(`(?:the )?(${ordinals.join('|')}) of (${englishMonth})`),
    read: ([nth = '', month = '']) => ({
      monthDay: `${two(monthNumber(month))}-${two(ordinals.indexOf(nth.toLowerCase()) + 1)}`,
    }),
  },
  {
    pattern: word(`(${englishMonth}),? the (\\d{1,2})(?:st|nd|rd|th)`),
    read: ([month = '', nth = '']) => ({ monthDay: `${two(monthNumber(month))}-${two(Number(nth))}` }),
  },
  {
    pattern: word(
      `(?:the )?(?:${season}|turn of the year)(?: of)? ['’]?(?:${year}(?:[/–-](?:${year}|\\d\\d))?|['’]\\d\\d)`,
    ),
    read: () => ({}),
  },
  {
    pattern: word(
      `(?:Q[1-4]|(?:first|second|third|fourth|last) quarter(?: of)?|(?:first|second) half(?: of)?) ${year}|${year}[- ]?Q[1-4]`,
    ),
    read: () => ({}),
  },
  {
    pattern: word(`${year}-?W\\d{2}(?:-[1-7])?|(?:week|wk|KW) ?\\d{1,2}(?:,| of|/)? ?${year}`),
    read: () => ({}),
  },
  { pattern: /(?:19|20)\d{2}\s?[年년]\s?\d{1,2}\s?[月월](?:\s?\d{1,2}\s?[日일])?/gu, read: () => ({}) },
  {
    pattern: word(fixed.map(([names]) => `(${names})`).join('|'), 'gu'),
    read: (parts) => {
      const day = fixed[parts.findIndex((part) => part !== undefined)]?.[1]
      return day === undefined ? {} : { monthDay: day }
    },
  },
  { pattern: word(moving, 'gu'), read: () => ({}) },
  {
    pattern: word('(?:August|May|Spring|Summer|Easter|Christmas)? ?bank holiday(?: (?:Monday|weekend))?'),
    read: () => ({}),
  },
  {
    pattern: word(
      `(?:the )?(?:(?:very )?(?:early|mid|late|Anfang|Mitte|Ende)[ -]|(?:beginning|start|middle|end|first (?:days|half|week)|second half|last (?:days|half|week)|first|last) of )(${capitalMonth})(?: ${year})?`,
      'gu',
    ),
    read: ([month = '']) => ({ inMonth: monthNumber(month) }),
  },
  {
    pattern: word(`(${pageMonth}) ['’](\\d\\d)`),
    read: ([month = '', y = '']) => ({ month: `20${y}-${two(monthNumber(month))}` }),
  },
  {
    pattern: /(?<![\d./])(0?[1-9]|1[0-2])\/((?:19|20)\d{2})(?![\d/])/gu,
    read: ([month = '', y = '']) => ({ month: `${y}-${two(Number(month))}` }),
  },
  {
    pattern: new RegExp(
      `(?<=(?:^|[^\\p{L}])(?:in|since|until|till|by|from|during|through|throughout|last|this|next|every|of last|of this|before|after|to|im|seit|bis|ab|vor|nach|vom|zum|letzten|vergangenen|nächsten|${season},?) )(${capitalMonth})(?![\\p{L}\\p{N}])`,
      'giu',
    ),
    read: ([month = '']) => ({ inMonth: monthNumber(month) }),
    isOne: (_before, after, found) => /^\p{Lu}/u.test(found) && !/^['’]s/.test(after),
  },
  { pattern: word(`${day},? (?:the )?(\\d{1,2})(?:st|nd|rd|th)`), read: () => ({}) },
  { pattern: word(`${day},? (\\d{1,2})[/.](\\d{1,2})\\.?`), read: (parts) => dayMonth(parts) },
  {
    pattern: word('the ([12]?\\d|3[01])(?:st|nd|rd|th)'),
    read: () => ({}),
    isOne: (before, after) =>
      /(?:^|[^\p{L}])(?:on|by|until|till|since|before|from|after)\s+$/iu.test(before) &&
      endsThere.test(after),
  },
  {
    pattern: /(?<![\p{L}\p{N}./,-])([0-2]?\d|3[01])[/](0?[1-9]|1[0-2])(?![\p{N}/]|[.,]\d)/gu,
    read: (parts) => dayMonth(parts),
    isOne: (before, after, found) => {
      const [a = 0, b = 0] = found.split('/').map(Number)
      return leadsToDate.test(before) && !isScale(a, b) && endsThere.test(after)
    },
  },
  {
    pattern: /(?<![\p{L}\p{N}./,-])([0-2]?\d|3[01])\.(0?[1-9]|1[0-2])\.(?!\d)/gu,
    read: (parts) => dayMonth(parts),
    isOne: (before) => leadsToDate.test(before),
  },
]

function dayMonth([d = '', m = '']: readonly (string | undefined)[]): { monthDay?: string } {
  const [day, month] = [Number(d), Number(m)]
  return day >= 1 && day <= 31 && month >= 1 && month <= 12 ? { monthDay: `${two(month)}-${two(day)}` } : {}
}
