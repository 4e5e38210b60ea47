/** Calendar dates in running text, however they are written. */
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { claims } from './claims.ts'
import { looseDates } from './date-words.ts'
import { monthName, monthNumber } from './month-names.ts'

export interface WrittenDate {
  readonly start: number
  readonly end: number
  readonly text: string
  /** What it can mean: `3/4/2026` is 3 April or 4 March. Empty where no year stands. */
  readonly dates: readonly PlainDate[]
  /** `03-14`: month and day, for a date without a year; null otherwise. */
  readonly monthDay: string | null
  /** `2026-03`: month and year without a day; null otherwise. */
  readonly month: string | null
  /** A month alone, from 1; null otherwise. */
  readonly inMonth: number | null
  /** A word for a date, or a layout that only its neighbours tell from a measurement. */
  readonly isLoose: boolean
}

type Meaning = Omit<WrittenDate, 'start' | 'end' | 'text'>

const nothing = { dates: [], monthDay: null, month: null, inMonth: null, isLoose: false }
const dated = (dates: readonly PlainDate[]): Meaning => ({ ...nothing, dates })
const ofMonth = (month: string): Meaning => ({ ...nothing, month })
const ofDay = (day: string | null): Meaning => ({ ...nothing, monthDay: day })

const ordinal = '(?:st|nd|rd|th|\\.)?'
const gap = '[\\s\\u00A0,./-]{1,3}(?:of\\s|the\\s)?'
const noGap = '[\\s\\u00A0,./-]{0,3}(?:of\\s|the\\s)?'
const weekday =
  /(?<!\p{L})(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?\.?,?\s{1,2}(?:the\s)?$/iu
const edge = '(?<![\\p{L}\\p{N}.])'
const end = '(?![\\p{L}\\p{N}])'
// Dates of digits alone are looked for in whole pages, drawings and all, so their patterns are the quick kind.
const digitEdge = '(?=\\d)(?<![\\w.])'
const digitEnd = '(?!\\w)'

const two = (n: number) => String(n).padStart(2, '0')
const fullYear = (text: string): number => (text.length === 2 ? 2000 + Number(text) : Number(text))
const real = (year: number, month: number, day: number): PlainDate[] => {
  const date = parseDate(`${year}-${two(month)}-${two(day)}`)
  return date === null ? [] : [date]
}
const eitherWay = (a: string, b: string, y: string): PlainDate[] => {
  const year = fullYear(y)
  return [...new Set([...real(year, Number(b), Number(a)), ...real(year, Number(a), Number(b))])]
}
/** Two digits that can be a year of a case: `12-11-10` is three lengths. */
const recent = (y: string) => Number(y) >= 15 && Number(y) <= 45

/** Small `may` and `march` are everyday words: "2 may do" names no day. */
const monthDay = (month: string, day: string): string | null =>
  /^(?:may|mar|march|mai|mars)$/.test(month) || Number(day) < 1 || Number(day) > 31
    ? null
    : `${two(monthNumber(month))}-${two(Number(day))}`

const anyMonth = new RegExp(`(?<!\\p{L})${monthName}`, 'iu')

interface Form {
  readonly pattern: RegExp
  /** With the name of a month. */
  readonly isWritten?: true
  read(parts: readonly string[]): Meaning
}

/** Longer forms first: a place that one form has read is not read again by a shorter one. */
const forms: readonly Form[] = [
  {
    pattern: new RegExp(`${digitEdge}(\\d{4})[-/._](\\d{1,2})[-/._](\\d{1,2})(?!\\d)`, 'g'),
    read: ([y = '', m = '', d = '']) => dated(real(Number(y), Number(m), Number(d))),
  },
  {
    pattern: new RegExp(`${digitEdge}((?:19|20)\\d{2})(\\d{2})(\\d{2})(?!\\d)`, 'g'),
    read: ([y = '', m = '', d = '']) => dated(real(Number(y), Number(m), Number(d))),
  },
  {
    pattern: new RegExp(
      `${edge}(\\d{1,2})${ordinal}${noGap}(${monthName})${noGap}['’]?(\\d{4}|\\d{2})${end}`,
      'giu',
    ),
    isWritten: true,
    read: ([d = '', m = '', y = '']) => dated(real(fullYear(y), monthNumber(m), Number(d))),
  },
  {
    pattern: new RegExp(
      `${edge}(${monthName})${gap}(\\d{1,2})${ordinal}${gap}['’]?(\\d{4}|\\d{2})${end}`,
      'giu',
    ),
    isWritten: true,
    read: ([m = '', d = '', y = '']) => dated(real(fullYear(y), monthNumber(m), Number(d))),
  },
  {
    pattern: new RegExp(`${digitEdge}(\\d{1,2})([/.-])(\\d{1,2})\\2(\\d{4})${digitEnd}`, 'g'),
    read: ([a = '', , b = '', y = '']) => dated(eitherWay(a, b, y)),
  },
  {
    pattern: new RegExp(`${digitEdge}(\\d{1,2})/(\\d{1,2})/(\\d{2})(?![/\\d])${digitEnd}`, 'g'),
    read: ([a = '', b = '', y = '']) => dated(recent(y) ? eitherWay(a, b, y) : []),
  },
  {
    pattern: new RegExp(`${digitEdge}(?<!-)(\\d{1,2})([.-])(\\d{1,2})\\2(\\d{2})(?![-.]\\d)${digitEnd}`, 'g'),
    read: ([d = '', , m = '', y = '']) => dated(recent(y) ? real(fullYear(y), Number(m), Number(d)) : []),
  },
  {
    pattern: new RegExp(`${edge}(${monthName})[\\s\\u00A0,]{1,3}((?:19|20)\\d{2})${end}`, 'giu'),
    isWritten: true,
    read: ([m = '', y = '']) => ofMonth(`${y}-${two(monthNumber(m))}`),
  },
  {
    pattern: new RegExp(`${edge}(\\d{1,2})${ordinal}[\\s\\u00A0]{1,3}(?:of\\s)?(${monthName})${end}`, 'giu'),
    isWritten: true,
    read: ([d = '', m = '']) => ofDay(monthDay(m, d)),
  },
  {
    pattern: new RegExp(`${edge}(${monthName})[\\s\\u00A0]{1,3}(?:the\\s)?(\\d{1,2})${ordinal}${end}`, 'giu'),
    isWritten: true,
    read: ([m = '', d = '']) => ofDay(monthDay(m, d)),
  },
]

const isSaid = ({ dates, monthDay: day, month }: Meaning) =>
  dates.length > 0 || day !== null || month !== null

type Take = (match: RegExpExecArray, meaning: Meaning) => void

/** Every written date of a text, in order of place. */
export function findDates(text: string): readonly WrittenDate[] {
  return gathered(text, (take) => {
    takeExact(text, take)
    takeLoose(text, take)
  })
}

/** Only those whose layout alone makes them dates, for text that is not prose: scripts, drawings, file names. */
export const findExactDates = (text: string): readonly WrittenDate[] =>
  gathered(text, (take) => takeExact(text, take))

function gathered(text: string, go: (take: Take) => void): readonly WrittenDate[] {
  const found: WrittenDate[] = []
  const claim = claims(text.length)
  go((match, meaning) => {
    const stop = match.index + match[0].length
    // The day of the week belongs to its date.
    const lead = weekday.exec(text.slice(Math.max(0, match.index - 16), match.index))?.[0].length ?? 0
    const start = match.index - lead
    if (claim({ start, end: stop }))
      found.push({ start, end: stop, text: text.slice(start, stop), ...meaning })
  })
  return found.sort((a, b) => a.start - b.start)
}

function takeExact(text: string, take: Take): void {
  const hasMonth = anyMonth.test(text)
  for (const { pattern, isWritten, read } of forms) {
    if (isWritten && !hasMonth) continue
    for (const match of text.matchAll(pattern)) {
      const meaning = read(match.slice(1))
      if (isSaid(meaning)) take(match, meaning)
    }
  }
}

function takeLoose(text: string, take: Take): void {
  for (const { pattern, read, isOne } of looseDates) {
    for (const match of text.matchAll(pattern)) {
      const stop = match.index + match[0].length
      const before = text.slice(Math.max(0, match.index - 24), match.index)
      if (isOne && !isOne(before, text.slice(stop, stop + 16), match[0])) continue
      const { monthDay: day = null, month = null, inMonth = null } = read(match.slice(1))
      take(match, { dates: [], monthDay: day, month, inMonth, isLoose: true })
    }
  }
}
