/** Dates, lists and spans as a language writes them, from the platform's tables. */
import type { PlainDate } from '../../hoof/dates.ts'
import { daysPerMonth } from '../../hoof/dates.ts'

/** A language's own choices among what the platform offers. */
export interface LanguageTags {
  /** Of the pages, BCP 47. */
  readonly lang: string
  /** Whose order of day and month, and whose commas: `en-GB` for `14 March 2026` and `a, b and c`. */
  readonly formats: string
  readonly shortDate: (day: string, month: string, year: string) => string
}

export interface LocalFormats {
  date(date: PlainDate): string
  shortDate(date: PlainDate): string
  month(date: PlainDate): string
  monthOf(date: PlainDate): string
  list(items: readonly string[]): string
  span(days: number): string
}

const instant = (date: PlainDate): number => Date.parse(`${date}T00:00:00Z`)

/** Names of the twelve months, January first. */
function monthNames(lang: string, month: 'long' | 'short'): readonly string[] {
  const { format } = new Intl.DateTimeFormat(lang, { month, timeZone: 'UTC' })
  return Array.from({ length: 12 }, (_, i) => format(Date.UTC(2001, i, 1)))
}

/** `Jan`, `Feb`, ... */
export const shortMonths = (lang: string): readonly string[] => monthNames(lang, 'short')

/** `Mon`, ... `Sun`. */
export function weekdays(lang: string): readonly string[] {
  const { format } = new Intl.DateTimeFormat(lang, { weekday: 'short', timeZone: 'UTC' })
  return Array.from({ length: 7 }, (_, i) => format(Date.UTC(2001, 0, 1 + i)))
}

/** What parts the whole from the tenths: a point, or a comma. */
export const decimalSign = (lang: string): string =>
  new Intl.NumberFormat(lang).formatToParts(0.5).find(({ type }) => type === 'decimal')?.value ?? '.'

/** A date is written many times on a page and put into words once. */
function once(write: (date: PlainDate) => string): (date: PlainDate) => string {
  const known = new Map<PlainDate, string>()
  return (date) => {
    const before = known.get(date)
    if (before !== undefined) return before
    const text = write(date)
    known.set(date, text)
    return text
  }
}

/** Costs a good part of a millisecond to make: meant to be kept. */
export function localFormats({ lang, formats, shortDate }: LanguageTags): LocalFormats {
  const dates = new Intl.DateTimeFormat(formats, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  })
  const months = new Intl.DateTimeFormat(formats, { month: 'long', year: 'numeric', timeZone: 'UTC' })
  const lists = new Intl.ListFormat(formats)
  const counted = (unit: 'day' | 'week' | 'month') =>
    new Intl.NumberFormat(formats, { style: 'unit', unit, unitDisplay: 'long', useGrouping: false })
  const [inDays, inWeeks, inMonths] = [counted('day'), counted('week'), counted('month')]
  const [long, short] = [monthNames(lang, 'long'), monthNames(lang, 'short')]
  const index = (date: PlainDate) => Number(date.slice(5, 7)) - 1
  return {
    date: once((date) => dates.format(instant(date))),
    shortDate: once((date) =>
      shortDate(String(Number(date.slice(8, 10))), short[index(date)] ?? '', date.slice(2, 4)),
    ),
    month: (date) => long[index(date)] ?? '',
    monthOf: once((date) => months.format(instant(date))),
    list: (items) => lists.format(items),
    span: (days) => {
      const whole = Math.round(days)
      if (whole < 14) return inDays.format(whole)
      if (whole < 70) return inWeeks.format(Math.round(whole / 7))
      return inMonths.format(Math.round(whole / daysPerMonth))
    },
  }
}

/** Every word that the platform may put into a page: a name that is one of them is an everyday word there. */
export const platformWords = ({ lang, formats }: LanguageTags): readonly string[] => {
  const counted = (['day', 'week', 'month'] as const).flatMap((unit) =>
    [1, 2, 5].map((n) =>
      new Intl.NumberFormat(formats, { style: 'unit', unit, unitDisplay: 'long' }).format(n),
    ),
  )
  const joined = new Intl.ListFormat(formats).format(['-', '-', '-'])
  return [...monthNames(lang, 'long'), ...shortMonths(lang), ...weekdays(lang), ...counted, joined]
}
