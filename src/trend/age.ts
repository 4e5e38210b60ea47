/** Age of a horse on a day. */
import type { Horse } from '../casebook/model.ts'
import { dayOf, daysPerMonth, type PlainDate } from '../hoof/dates.ts'

/**
 * In years; null where no birth is known. Where only the year is known the age counts from 1 January, as studbooks do
 * (common practice, no source).
 */
export function ageOn({ born }: Pick<Horse, 'born'>, day: PlainDate): number | null {
  const found = /^(\d{4})(?:-(\d{2})-(\d{2}))?$/.exec(born ?? '')
  if (found === null) return null
  const birth = `${found[1]}-${found[2] ?? '01'}-${found[3] ?? '01'}`
  return (dayOf(day) - dayOf(birth)) / (12 * daysPerMonth)
}
