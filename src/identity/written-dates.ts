/** Calendar dates in running text, however they are written. */
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { claims } from './claims.ts'

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
}

const names = 'january|february|march|april|may|june|july|august|september|october|november|december'
const short = 'jan|feb|mar|apr|may|jun|jul|aug|sept|sep|oct|nov|dec'
const monthName = `(?:${names}|(?:${short})\\.?)`
const ordinal = '(?:st|nd|rd|th)?'
const gap = '[\\s\\u00A0,.-]{1,3}(?:of\\s)?'

const monthNumber = (name: string): number =>
  names.split('|').findIndex((month) => month.startsWith(name.toLowerCase().slice(0, 3))) + 1

const two = (n: number) => String(n).padStart(2, '0')
const fullYear = (text: string): number => (text.length === 2 ? 2000 + Number(text) : Number(text))
const real = (year: number, month: number, day: number): PlainDate[] => {
  const date = parseDate(`${year}-${two(month)}-${two(day)}`)
  return date === null ? [] : [date]
}

interface Form {
  readonly pattern: RegExp
  read(parts: readonly string[]): Omit<WrittenDate, 'start' | 'end' | 'text'>
}

const dated = (dates: readonly PlainDate[]) => ({ dates, monthDay: null, month: null })
const edge = '(?<![\\p{L}\\p{N}.])'
const end = '(?![\\p{L}\\p{N}])'

/** Longer forms first: a place that one form has read is not read again by a shorter one. */
const forms = (): readonly Form[] => [
  {
    pattern: new RegExp(`${edge}(\\d{4})[-/._](\\d{1,2})[-/._](\\d{1,2})(?!\\d)`, 'gu'),
    read: ([y = '', m = '', d = '']) => dated(real(Number(y), Number(m), Number(d))),
  },
  {
    pattern: new RegExp(`${edge}((?:19|20)\\d{2})(\\d{2})(\\d{2})(?!\\d)`, 'gu'),
    read: ([y = '', m = '', d = '']) => dated(real(Number(y), Number(m), Number(d))),
  },
  {
    pattern: new RegExp(
      `${edge}(\\d{1,2})${ordinal}${gap}(${monthName})${gap}['’]?(\\d{4}|\\d{2})${end}`,
      'giu',
    ),
    read: ([d = '', m = '', y = '']) => dated(real(fullYear(y), monthNumber(m), Number(d))),
  },
  {
    pattern: new RegExp(
      `${edge}(${monthName})${gap}(\\d{1,2})${ordinal}${gap}['’]?(\\d{4}|\\d{2})${end}`,
      'giu',
    ),
    read: ([m = '', d = '', y = '']) => dated(real(fullYear(y), monthNumber(m), Number(d))),
  },
  {
    pattern: new RegExp(`${edge}(\\d{1,2})([/.-])(\\d{1,2})\\2(\\d{4})${end}`, 'gu'),
    read: ([a = '', , b = '', y = '']) => dated(eitherWay(a, b, y)),
  },
  {
    pattern: new RegExp(`${edge}(\\d{1,2})/(\\d{1,2})/(\\d{2})${end}`, 'gu'),
    read: ([a = '', b = '', y = '']) => dated(eitherWay(a, b, y)),
  },
  {
    pattern: new RegExp(`${edge}(${monthName})[\\s\\u00A0,]{1,3}((?:19|20)\\d{2})${end}`, 'giu'),
    read: ([m = '', y = '']) => ({ dates: [], monthDay: null, month: `${y}-${two(monthNumber(m))}` }),
  },
  {
    pattern: new RegExp(`${edge}(\\d{1,2})${ordinal}[\\s\\u00A0]{1,3}(?:of\\s)?(${monthName})${end}`, 'giu'),
    read: ([d = '', m = '']) => ({ dates: [], monthDay: monthDay(m, d), month: null }),
  },
  {
    pattern: new RegExp(`${edge}(${monthName})[\\s\\u00A0]{1,3}(\\d{1,2})${ordinal}${end}`, 'giu'),
    read: ([m = '', d = '']) => ({ dates: [], monthDay: monthDay(m, d), month: null }),
  },
]

const eitherWay = (a: string, b: string, y: string): PlainDate[] => {
  const year = fullYear(y)
  return [...new Set([...real(year, Number(b), Number(a)), ...real(year, Number(a), Number(b))])]
}

/** Small `may` and `march` are everyday words: "2 may do" names no day. */
const monthDay = (month: string, day: string): string | null =>
  /^(?:may|mar|march)$/.test(month) ? null : `${two(monthNumber(month))}-${two(Number(day))}`

/** Every written date of a text, in order of place. */
export function findDates(text: string): readonly WrittenDate[] {
  const found: WrittenDate[] = []
  const claim = claims(text.length)
  for (const form of forms()) {
    for (const match of text.matchAll(form.pattern)) {
      const start = match.index
      const stop = start + match[0].length
      const read = form.read(match.slice(1))
      if (read.dates.length === 0 && read.monthDay === null && read.month === null) continue
      if (!claim({ start, end: stop })) continue
      found.push({ start, end: stop, text: match[0], ...read })
    }
  }
  return found.sort((a, b) => a.start - b.start)
}
