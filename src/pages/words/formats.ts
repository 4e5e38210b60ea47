/** What the sentences of a catalogue may be given besides their facts: figures, dates and names as text, in its language. */
import type { Band } from '../../hoof/bands.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'

export interface Formats {
  /** `98 mm`, `9.8 cm`, `3 7/8 in`. */
  length(mm: number): string
  /** What a trim takes, on the scale of a rasp: half millimetres, or sixteenths of an inch. */
  amount(mm: number): string
  /** `505 kg`, or `1113 lb` where lengths go in inches. */
  weight(kg: number): string
  /** `44°`, `44.5°`. */
  angle(degrees: number): string
  /** A value of any measure with its unit. */
  measure(id: AnyMeasureId, value: number): string
  /** The same with its sign, `+2 mm`, `−3°`, `0 mm`. */
  change(id: AnyMeasureId, value: number): string
  /** The bare figure of a change with its sign. */
  changeFigure(id: AnyMeasureId, value: number): string
  /** The bare figure, for table cells under a head that names the unit. */
  figure(id: AnyMeasureId, value: number): string
  /** The unit as a head names it: `mm`, `°`, or nothing for a ratio. */
  unit(id: AnyMeasureId): string
  /** A grade that may have halves: `7.5`. */
  grade(value: number): string
  /** `14 March 2026`. */
  date(date: PlainDate): string
  /** `14 Mar 26`. */
  shortDate(date: PlainDate): string
  /** `May`. */
  month(date: PlainDate): string
  /** `May 2026`. */
  monthOf(date: PlainDate): string
  /** `left fore`. */
  foot(foot: Foot): string
  /** Name of a measure, `toe length`. */
  name(id: AnyMeasureId): string
  /** A value with one digit more than a reading carries, for rates, limits and scatter: `1.24°`, `8.4 mm`, `0.33 in`. */
  fine(id: AnyMeasureId, value: number): string
  /** The same without its unit, where that stands beside it. */
  fineFigure(id: AnyMeasureId, value: number): string
  /** A change a month with its sign: `+1.2° a month`. */
  rate(id: AnyMeasureId, perMonth: number): string
  /** `+1.2`. */
  rateFigure(id: AnyMeasureId, perMonth: number): string
  /** `0.6 to 1.8°`: an interval in fine figures with one unit. */
  interval(id: AnyMeasureId, low: number, high: number): string
  /** `0.6 to 1.8`. */
  intervalFigure(id: AnyMeasureId, low: number, high: number): string
  /** A wanted band: `50° to 54°`, `up to 84 mm`, `0.67 or more`. */
  band(id: AnyMeasureId, band: Band): string
  /** `5 weeks`, `4 months`: a span in the unit a person would use. */
  span(days: number): string
  /** `a, b and c`. */
  list(items: readonly string[]): string
}
