import type { PlainDate } from '../../hoof/dates.ts'
import type { Formatter } from '../shared/format.ts'

/** `October`, or `October 2027` where the year is not that of `beside`. */
export function monthText(date: PlainDate, beside: PlainDate, format: Formatter): string {
  const [, month = '', year = ''] = format.date(date).split(' ')
  return date.slice(0, 4) === beside.slice(0, 4) ? month : `${month} ${year}`
}
