/**
 * Numbers to text, for pages only: rounding happens here and nowhere before.
 * Lengths come in millimetres and go out in the practice's unit: whole and half millimetres, tenths of a
 * centimetre, or inches to the nearest sixteenth as a fraction, as a tape shows them.
 */
import type { Band } from '../../hoof/bands.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { daysPerMonth } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { derivedMeasures, measures } from '../../hoof/measures.ts'
import { fromMillimetres, type LengthUnit, toPounds } from '../../hoof/units.ts'
import { en, type Words } from '../words/index.ts'

export interface Formatter {
  readonly units: LengthUnit
  readonly words: Words
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
  /** `14 March 2026`. */
  date(date: PlainDate): string
  /** `14 Mar 26`. */
  shortDate(date: PlainDate): string
  /** `left fore`. */
  foot(foot: Foot): string
  /** Name of a measure, `toe length`. */
  name(id: AnyMeasureId): string
  /** `May 2026`. */
  monthOf(date: PlainDate): string
  /** A value with one digit more than a reading carries, for rates, limits and scatter: `1.24°`, `8.4 mm`, `0.33 in`. */
  fine(id: AnyMeasureId, value: number): string
  /** A change a month with its sign: `+1.2° a month`. */
  rate(id: AnyMeasureId, perMonth: number): string
  /** `0.6 to 1.8°`: an interval in fine figures with one unit. */
  interval(id: AnyMeasureId, low: number, high: number): string
  /** A wanted band: `50° to 54°`, `up to 84 mm`, `0.67 or more`. */
  band(id: AnyMeasureId, band: Band): string
  /** `5 weeks`, `4 months`: a span in the unit a person would use. */
  span(days: number): string
}

const minus = '\u2212'

/** A figure without a sign given its own: `-3` with a true minus sign; no `-0`. */
const signed = (bare: string, value: number, plus: boolean): string => {
  if (bare.startsWith('0') && !/[1-9]/.test(bare)) return bare
  return value < 0 ? minus + bare : plus ? `+${bare}` : bare
}

const trimmed = (value: number, digits: number) => String(Number(Math.abs(value).toFixed(digits)))

/** Whole and half units, as a gauge is read. */
function halves(value: number): string {
  const twice = Math.abs(Math.round(value * 2))
  return twice % 2 === 0 ? String(twice / 2) : `${(twice - 1) / 2}.5`
}

/** Inches to the nearest sixteenth: `3 5/8`, `1/4`, `2`. */
function sixteenths(inches: number): string {
  const count = Math.round(Math.abs(inches) * 16)
  const whole = Math.floor(count / 16)
  let part = count % 16
  if (part === 0) return String(whole)
  let of = 16
  while (part % 2 === 0) {
    part /= 2
    of /= 2
  }
  return whole === 0 ? `${part}/${of}` : `${whole} ${part}/${of}`
}

function lengthFigure(mm: number, unit: LengthUnit): string {
  if (unit === 'in') return sixteenths(fromMillimetres(mm, unit))
  if (unit === 'cm') return trimmed(mm / 10, 1)
  return halves(mm)
}

function amountText(mm: number, unit: LengthUnit, words: Words): string {
  if (unit === 'cm') return `${String(Math.round(mm * 2) / 20)} cm`
  if (unit === 'mm') return `${halves(mm)} mm`
  const figure = sixteenths(fromMillimetres(mm, unit))
  return figure === '0' && mm > 0 ? words.base.under('1/16 in') : `${figure} in`
}

/** One digit more than a reading carries. Inches as decimals here, since a rate is no tape reading. */
function fineFigure(id: AnyMeasureId, value: number, units: LengthUnit): string {
  const kind = kindOf(id)
  if (kind !== 'length') return Math.abs(value).toFixed(kind === 'ratio' ? 3 : 1)
  return Math.abs(fromMillimetres(value, units)).toFixed(units === 'mm' ? 1 : 2)
}

/** The first letter as a capital. */
export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

const all = { ...measures, ...derivedMeasures }
export const kindOf = (id: AnyMeasureId) => all[id].kind
export const nameOf = (id: AnyMeasureId) => all[id].name

/** A date is written many times on a page and put into words once. */
function once(write: (date: PlainDate) => string): (date: PlainDate) => string {
  const written = new Map<PlainDate, string>()
  return (date) => {
    const known = written.get(date)
    if (known !== undefined) return known
    const text = write(date)
    written.set(date, text)
    return text
  }
}

export function formatter(units: LengthUnit, words: Words = en): Formatter {
  const bare = (id: AnyMeasureId, value: number): string => {
    const kind = kindOf(id)
    if (kind === 'length') return lengthFigure(value, units)
    if (kind === 'angle') return halves(value)
    return trimmed(value, kind === 'ratio' ? 2 : 1)
  }
  const unit = (id: AnyMeasureId): string => {
    const kind = kindOf(id)
    if (kind === 'length') return units
    if (kind === 'angle') return '°'
    return kind === 'index' ? 'lb/in²' : ''
  }
  const united = (id: AnyMeasureId, figure: string): string => {
    const u = unit(id)
    return u === '' ? figure : u === '°' ? `${figure}°` : `${figure} ${u}`
  }
  const withUnit = (id: AnyMeasureId, value: number) => united(id, bare(id, value))
  const measure = (id: AnyMeasureId, value: number) => signed(withUnit(id, value), value, false)
  const fineBare = (id: AnyMeasureId, value: number, plus: boolean) =>
    signed(fineFigure(id, value, units), value, plus)
  const parts = (date: PlainDate) => {
    const [year = '', month = '1', day = '1'] = date.split('-')
    return { year, month: words.base.months[Number(month) - 1] ?? '', day: String(Number(day)) }
  }
  return {
    units,
    words,
    length: (mm) => signed(`${lengthFigure(mm, units)} ${units}`, mm, false),
    amount: (mm) => amountText(mm, units, words),
    weight: (kg) => (units === 'in' ? `${Math.round(toPounds(kg))} lb` : `${Math.round(kg)} kg`),
    angle: (degrees) => signed(`${halves(degrees)}°`, degrees, false),
    measure,
    change: (id, value) => signed(withUnit(id, value), value, true),
    changeFigure: (id, value) => signed(bare(id, value), value, true),
    figure: (id, value) => signed(bare(id, value), value, false),
    unit,
    date: once((date) => {
      const { year, month, day } = parts(date)
      return `${day} ${month} ${year}`
    }),
    shortDate: once((date) => {
      const { year, month, day } = parts(date)
      return `${day} ${month.slice(0, 3)} ${year.slice(2)}`
    }),
    foot: (foot) => words.base.feet[foot],
    name: nameOf,
    monthOf: (date) => {
      const { year, month } = parts(date)
      return `${month} ${year}`
    },
    fine: (id, value) => united(id, fineBare(id, value, false)),
    rate: (id, perMonth) => words.base.perMonth(united(id, fineBare(id, perMonth, true))),
    interval: (id, low, high) =>
      words.base.fromTo(fineBare(id, low, false), united(id, fineBare(id, high, false))),
    band: (id, { low, high }) => {
      if (low !== null && high !== null) return words.base.fromTo(measure(id, low), measure(id, high))
      if (high !== null) return words.base.upTo(measure(id, high))
      return low === null ? '' : words.base.orMore(measure(id, low))
    },
    span: (days) => {
      const whole = Math.round(days)
      if (whole < 14) return words.base.days(whole)
      if (whole < 70) return words.base.weeks(Math.round(whole / 7))
      return words.base.monthsSpan(Math.round(whole / daysPerMonth))
    },
  }
}
