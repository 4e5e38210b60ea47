import type { PlainDate } from '../../hoof/dates.ts'
import { monthText, type OwnerFormatter } from '../shared/format.ts'

/** `in May`, with the year where it is not this one; the day where it was in the month of the other date. */
export function sinceText(
  date: PlainDate,
  beside: PlainDate,
  asOf: PlainDate,
  format: OwnerFormatter,
): string {
  const { owner: words } = format.words
  return date.slice(0, 7) === beside.slice(0, 7)
    ? words.sinceDay(format.date(date))
    : words.sinceMonth(monthText(date, asOf, format))
}
