/** Dates of a table: day or month first is told by the table as a whole, never line by line. */
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { likelyDate } from './readers.ts'
import { quote } from './words.ts'

/** Which comes first in a date such as `3/4/2026`. */
export type DateOrder = 'dd/mm' | 'mm/dd'

/** `3/4/2026`, `3-4-26`; a clock behind it counts for nothing. Dots part days from months alone. */
const numbered = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})(?: +\d{1,2}:[\d:.]*(?: *[ap]m)?)?$/i

export interface DatesOfTable {
  /** The date, or why it is none. */
  read(written: string): { readonly date: PlainDate } | { readonly message: string }
}

/**
 * @param written every date of the table
 * @param asked what the person said, which wins
 */
export function datesOf(written: readonly string[], asked: DateOrder | null): DatesOfTable {
  const order = asked ?? orderIn(written)
  return {
    read: (text) => {
      const match = numbered.exec(text.trim())
      const date = match ? inOrder(match, order) : (parseDate(text.trim()) ?? likelyDate(text.trim()))
      if (date) return { date }
      if (match && match[2] !== '.' && order === 'either') {
        return {
          message: `${quote(text)} may be day or month first, and no date of the table tells: say --dates dd/mm or --dates mm/dd`,
        }
      }
      if (match && match[2] !== '.' && order === 'both') {
        return {
          message: `${quote(text)}: in some dates of the table the day comes first, in others the month. Write them all alike, as 2026-03-14`,
        }
      }
      const why =
        match && match[2] !== '.' ? ` with ${order === 'mm/dd' ? 'the month' : 'the day'} first` : ''
      return { message: `${quote(text)} is not a date${why}: expected 2026-03-14 or 14.03.2026` }
    },
  }
}

/** What a number above 12 tells. */
function orderIn(written: readonly string[]): DateOrder | 'either' | 'both' {
  const found = new Set<DateOrder>()
  for (const text of written) {
    const [, first, mark, second] = numbered.exec(text.trim()) ?? []
    if (mark === undefined || mark === '.') continue
    if (Number(first) > 12) found.add('dd/mm')
    if (Number(second) > 12) found.add('mm/dd')
  }
  const [only] = found
  return found.size > 1 ? 'both' : (only ?? 'either')
}

function inOrder(
  [, first = '', mark, second = '', year = '']: RegExpExecArray,
  order: DateOrder | 'either' | 'both',
): PlainDate | null {
  const isDayFirst = mark === '.' || order === 'dd/mm'
  if (!isDayFirst && order !== 'mm/dd') return null
  const [day, month] = isDayFirst ? [first, second] : [second, first]
  const century = year.length === 2 ? '20' : ''
  return parseDate(`${century}${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`)
}
