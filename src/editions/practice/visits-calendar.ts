/** The next visits as an iCalendar file (RFC 5545) that any calendar program can read. */
import ical, { foldLines } from 'ical-generator'
import type { Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Formatter } from '../../pages/shared/format.ts'
import type { HorseSummary } from '../../pages/shared/summary.ts'

/**
 * One all-day event for each horse with a next visit. A horse keeps its event's identity, so that a new date moves
 * the event; the stamp is the day of the build and not its hour, so that the same day gives the same bytes.
 */
export function visitsCalendar(
  practice: Practice,
  summaries: readonly HorseSummary[],
  asOf: PlainDate,
  { date, words: { base, calendar: words } }: Formatter,
): string {
  const calendar = ical({
    name: words.title(practice.name),
    prodId: { company: 'growdown', product: 'visits', language: base.lang.toUpperCase() },
  })
  const frame = calendar.toString().slice(0, -end.length)
  const events = summaries.map((horse) => {
    if (horse.due === null) return ''
    const event = calendar.createEvent({
      id: `next-visit-${horse.id}@growdown`,
      stamp: `${asOf}T00:00:00Z`,
      start: horse.due,
      allDay: true,
      summary: words.visit(horse.name),
      description: horse.lastVisit === null ? null : words.last(date(horse.lastVisit)),
    })
    return folded(event.toString())
  })
  return `${frame}${events.join('')}${end}\r\n`
}

const end = 'END:VCALENDAR'
/** Octets of a line that `foldLines` leaves as it is. */
const shortLine = 74

/** Folds the few lines that are long: `foldLines` measures sign by sign, and a practice has tens of thousands of lines. */
const folded = (text: string): string =>
  text
    .split('\r\n')
    .map((line) => (Buffer.byteLength(line) > shortLine ? foldLines(line) : line))
    .join('\r\n')
