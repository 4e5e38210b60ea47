/** The next visits as an iCalendar file (RFC 5545) that any calendar program can read. */
import ical, { escape as escapeText, foldLines } from 'ical-generator'
import { withoutControls } from '../../casebook/control-characters.ts'
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
    // The library escapes the texts of an event, but not a calendar's name.
    name: escapeText(calendarText(words.title(practice.name)), false),
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
      summary: calendarText(words.visit(horse.name)),
      description: horse.lastVisit === null ? null : words.last(date(horse.lastVisit)),
    })
    return folded(event.toString())
  })
  return `${frame}${events.join('')}${end}\r\n`
}

const end = 'END:VCALENDAR'

/**
 * A value of type TEXT before it is escaped (RFC 5545, section 3.3.11): it holds no control character but tabs and line
 * ends. The line and paragraph separators of Unicode are such ends here: some programs split a file's lines at them.
 */
const calendarText = (text: string): string =>
  withoutControls(text.replaceAll('\u0085', '\n')).replace(/[\u2028\u2029]/g, '\n')
/** Octets of a line that `foldLines` leaves as it is. */
const shortLine = 74

/** Folds the few lines that are long: `foldLines` measures sign by sign, and a practice has tens of thousands of lines. */
const folded = (text: string): string =>
  text
    .split('\r\n')
    .map((line) => (Buffer.byteLength(line) > shortLine ? foldLines(line) : line))
    .join('\r\n')
