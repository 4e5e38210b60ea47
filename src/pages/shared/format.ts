/**
 * Numbers to text, for pages only: rounding happens here and nowhere before.
 * Lengths come in millimetres and go out in the practice's unit: whole and half millimetres, tenths of a
 * centimetre, or inches to the nearest sixteenth as a fraction, as a tape shows them.
 */
import type { PlainDate } from '../../hoof/dates.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { derivedMeasures, measures } from '../../hoof/measures.ts'
import { fromMillimetres, type LengthUnit, toPounds } from '../../hoof/units.ts'
import type { Formats } from '../words/formats.ts'
import type { OwnerWords, Words } from '../words/index.ts'
import { decimalSign, localFormats, weekdays } from '../words/local.ts'

/** What formats need of a language. */
type BaseWords = Pick<OwnerWords, 'base'>

/** The formats of one language and one unit of length, with the words that stand between them. */
export interface Formatter<W extends BaseWords = Words> extends Formats {
  readonly units: LengthUnit
  readonly words: W
  /** `Mon`, ... `Sun`. */
  readonly weekdays: readonly string[]
}

/** In a language that may have words for owners alone. */
export type OwnerFormatter = Formatter<OwnerWords>

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

function amountText(mm: number, unit: LengthUnit, words: BaseWords): string {
  if (unit === 'cm') return `${String(Math.round(mm * 2) / 20)} cm`
  if (unit === 'mm') return `${halves(mm)} mm`
  const figure = sixteenths(fromMillimetres(mm, unit))
  return figure === '0' && mm > 0 ? words.base.under('1/16 in') : `${figure} in`
}

/** As charts draw it: a length in the practice's unit. */
export const drawnValue = (id: AnyMeasureId, value: number, units: LengthUnit): number =>
  kindOf(id) === 'length' ? fromMillimetres(value, units) : value

/** One digit more than a reading carries, or some more. Inches as decimals here, since a rate is no tape reading. */
function fineDigits(id: AnyMeasureId, value: number, units: LengthUnit, more: number): string {
  const kind = kindOf(id)
  if (kind !== 'length') return Math.abs(value).toFixed((kind === 'ratio' ? 3 : 1) + more)
  return Math.abs(fromMillimetres(value, units)).toFixed((units === 'mm' ? 1 : 2) + more)
}

/** The first letter as a capital. */
export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

const all = { ...measures, ...derivedMeasures }
export const kindOf = (id: AnyMeasureId) => all[id].kind
export const nameOf = (id: AnyMeasureId) => all[id].name

/** Formatters of one language, each made once: what they ask of the platform takes longer to make than to use. */
export function formatters<W extends OwnerWords>(words: W): (units: LengthUnit) => Formatter<W> {
  const made = new Map<LengthUnit, Formatter<W>>()
  return (units) => {
    const known = made.get(units) ?? formatter(units, words)
    made.set(units, known)
    return known
  }
}

export function formatter<W extends BaseWords>(units: LengthUnit, words: W): Formatter<W> {
  const { date, shortDate, month, monthOf, list, span } = localFormats(words.base)
  const sign = decimalSign(words.base.formats)
  const local = (figure: string) => (sign === '.' ? figure : figure.replace('.', sign))
  const bare = (id: AnyMeasureId, value: number): string => {
    const kind = kindOf(id)
    if (kind === 'length') return local(lengthFigure(value, units))
    if (kind === 'angle') return local(halves(value))
    return local(trimmed(value, kind === 'ratio' ? 2 : 1))
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
  const fineBare = (id: AnyMeasureId, value: number, plus: boolean, more = 0) =>
    signed(local(fineDigits(id, value, units, more)), value, plus)
  const fineFigure = (id: AnyMeasureId, value: number) => fineBare(id, value, false)
  const rateFigure = (id: AnyMeasureId, perMonth: number) => fineBare(id, perMonth, true)
  /** Both ends of an interval. A narrow one is none where they read alike. */
  const ends = (id: AnyMeasureId, low: number, high: number): [string, string] => {
    const both = (more: number): [string, string] => [
      fineBare(id, low, false, more),
      fineBare(id, high, false, more),
    ]
    const [from, to] = both(0)
    return from === to ? both(1) : [from, to]
  }
  return {
    units,
    words,
    length: (mm) => signed(local(`${lengthFigure(mm, units)} ${units}`), mm, false),
    amount: (mm) => local(amountText(mm, units, words)),
    weight: (kg) => (units === 'in' ? `${Math.round(toPounds(kg))} lb` : `${Math.round(kg)} kg`),
    angle: (degrees) => signed(local(`${halves(degrees)}°`), degrees, false),
    measure,
    change: (id, value) => signed(withUnit(id, value), value, true),
    changeFigure: (id, value) => signed(bare(id, value), value, true),
    figure: (id, value) => signed(bare(id, value), value, false),
    unit,
    grade: (value) => local(String(value)),
    date,
    shortDate,
    month,
    monthOf,
    list,
    span,
    weekdays: weekdays(words.base.lang),
    foot: (foot) => words.base.feet[foot],
    name: words.base.measureName,
    fine: (id, value) => united(id, fineFigure(id, value)),
    fineFigure,
    rate: (id, perMonth) => words.base.perMonth(united(id, rateFigure(id, perMonth))),
    rateFigure,
    interval: (id, low, high) => {
      const [from, to] = ends(id, low, high)
      return words.base.fromTo(from, united(id, to))
    },
    intervalFigure: (id, low, high) => words.base.fromTo(...ends(id, low, high)),
    band: (id, { low, high }) => {
      if (low !== null && high !== null) return words.base.fromTo(measure(id, low), measure(id, high))
      if (high !== null) return words.base.upTo(measure(id, high))
      return low === null ? '' : words.base.orMore(measure(id, low))
    },
  }
}

/** `October`, or `October 2027` where the year is not that of `beside`. */
export const monthText = (date: PlainDate, beside: PlainDate, format: OwnerFormatter): string =>
  date.slice(0, 4) === beside.slice(0, 4) ? format.month(date) : format.monthOf(date)
