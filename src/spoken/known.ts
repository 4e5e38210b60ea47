import type { Practice, Visit } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { openFindings } from '../trend/assessment.ts'
import type { Known } from './understood.ts'

/** What the visits up to that day leave open, and how the practice writes. */
export function knownBefore(visits: readonly Visit[], practice: Practice, date: PlainDate): Known {
  const past = visits.filter((visit) => visit.date <= date)
  const features = past.flatMap(({ growOut }) =>
    growOut.map(({ foot, what, place }) => ({ foot, what, place })),
  )
  return {
    units: practice.units,
    feetOrder: practice.feetOrder,
    date,
    openFindings: openFindings(past).map(({ finding: { foot, what, place } }) => ({ foot, what, place })),
    features: [...new Map(features.map((one) => [`${one.foot} ${one.what} ${one.place}`, one])).values()],
  }
}
