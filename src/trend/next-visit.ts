/** When the horse is next due. */
import type { Practice, Visit } from '../casebook/model.ts'
import { addDays, daysBetween, type PlainDate } from '../hoof/dates.ts'
import type { NextVisit } from './assessed-care.ts'

/** Where further visits would fall: the next one, then one a trim cycle. */
export interface VisitsAhead {
  readonly next: PlainDate
  readonly cycleDays: number
}

/** As the last visit said, else one trim cycle after it; nothing for a horse without a visit. */
export function nextVisitOf(visits: readonly Visit[], practice: Practice, asOf: PlainDate): NextVisit {
  const last = visits.at(-1)
  if (last === undefined) return { last: null, due: null, from: null, overdueDays: null }
  const due = last.nextVisit ?? addDays(last.date, practice.trimCycleDays)
  return {
    last: last.date,
    due,
    from: last.nextVisit === null ? 'trim cycle' : 'visit',
    overdueDays: daysBetween(due, asOf),
  }
}

/** The next visit on the day it is due, or today if that has passed; then one each trim cycle. */
export function visitsAhead(next: NextVisit, practice: Practice, asOf: PlainDate): VisitsAhead {
  const due = next.due !== null && next.due > asOf ? next.due : asOf
  return { next: due, cycleDays: practice.trimCycleDays }
}
