/** The next visits by day: under which heading a horse stands today. */
import { addDays, dayOf, daysBetween, type PlainDate } from '../../hoof/dates.ts'

export const openGroups = ['overdue', 'today', 'tomorrow', 'thisWeek', 'nextWeek'] as const
export const foldedGroups = ['later', 'long', 'none'] as const
export type DayGroupId = (typeof openGroups)[number] | (typeof foldedGroups)[number]

/** A horse that was to be seen longer ago is hardly waiting. */
const longOverdue = 183

/** Monday is 0. */
export const weekdayOf = (date: PlainDate): number => (dayOf(date) + 3) % 7

/** Weeks begin on Monday. */
export function dayGroupOf(due: PlainDate | null, today: PlainDate): DayGroupId {
  if (due === null) return 'none'
  const overdue = daysBetween(due, today)
  if (overdue > longOverdue) return 'long'
  if (overdue > 0) return 'overdue'
  if (overdue === 0) return 'today'
  if (overdue === -1) return 'tomorrow'
  const sunday = addDays(today, 6 - weekdayOf(today))
  if (due <= sunday) return 'thisWeek'
  return due <= addDays(sunday, 7) ? 'nextWeek' : 'later'
}
