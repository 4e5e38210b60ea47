/**
 * Numbers to text, for pages only: rounding happens here and nowhere before.
 * Lengths come in millimetres and go out in the practice's unit: whole and half millimetres, tenths of a
 * centimetre, or inches to the nearest sixteenth as a fraction, as a tape shows them.
 */
import type { PlainDate } from '../hoof/dates.ts'
import { daysPerMonth } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import { derivedMeasures, isMeasureId, measures } from '../hoof/measures.ts'
import type { LengthUnit } from '../hoof/units.ts'
import { en, type Words } from './words/index.ts'

export interface Formatter {
  readonly units: LengthUnit
  readonly words: Words
  /** `98 mm`, `9.8 cm`, `3 7/8 in`. */
  length(mm: number): string
  /** `44°`, `44.5°`. */
  angle(degrees: number): string
  /** A value of any measure with its unit. */
  measure(id: AnyMeasureId, value: number): string
  /** The same with its sign, `+2 mm`, `−3°`, `0 mm`. */
  change(id: AnyMeasureId, value: number): string
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
  /** `5 weeks`, `4 months`: a span in the unit a person would use. */
  span(days: number): string
}

const minus = '\u2212'

/** `-3` with a true minus sign; no `-0`. */
const signed = (text: string, value: number, plus: boolean): string => {
  const bare = text.replace(/^[-\u2212]/, '')
  if (/^[0.]+(?:\D|$)/.test(bare)) return bare
  return value < 0 ? minus + bare : plus ? `+${bare}` : bare
}

const trimmed = (value: number, digits: number) => String(Number(Math.abs(value).toFixed(digits)))

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
  if (unit === 'in') return sixteenths(mm / 25.4)
  if (unit === 'cm') return trimmed(mm / 10, 1)
  return trimmed(Math.round(mm * 2) / 2, 1)
}

export const kindOf = (id: AnyMeasureId) => (isMeasureId(id) ? measures[id].kind : derivedMeasures[id].kind)
export const nameOf = (id: AnyMeasureId) => (isMeasureId(id) ? measures[id].name : derivedMeasures[id].name)

export function formatter(units: LengthUnit, words: Words = en): Formatter {
  const bare = (id: AnyMeasureId, value: number): string => {
    const kind = kindOf(id)
    if (kind === 'length') return lengthFigure(value, units)
    if (kind === 'angle') return trimmed(Math.round(value * 2) / 2, 1)
    return trimmed(value, kind === 'ratio' ? 2 : 1)
  }
  const unit = (id: AnyMeasureId): string => {
    const kind = kindOf(id)
    if (kind === 'length') return units
    if (kind === 'angle') return '°'
    return kind === 'index' ? 'lb/in²' : ''
  }
  const withUnit = (id: AnyMeasureId, value: number): string => {
    const u = unit(id)
    return u === '' ? bare(id, value) : u === '°' ? `${bare(id, value)}°` : `${bare(id, value)} ${u}`
  }
  const parts = (date: PlainDate) => {
    const [year = '', month = '1', day = '1'] = date.split('-')
    return { year, month: words.base.months[Number(month) - 1] ?? '', day: String(Number(day)) }
  }
  return {
    units,
    words,
    length: (mm) => signed(`${lengthFigure(mm, units)} ${units}`, mm, false),
    angle: (degrees) => signed(`${trimmed(Math.round(degrees * 2) / 2, 1)}°`, degrees, false),
    measure: (id, value) => signed(withUnit(id, value), value, false),
    change: (id, value) => signed(withUnit(id, value), value, true),
    figure: (id, value) => signed(bare(id, value), value, false),
    unit,
    date: (date) => {
      const { year, month, day } = parts(date)
      return `${day} ${month} ${year}`
    },
    shortDate: (date) => {
      const { year, month, day } = parts(date)
      return `${day} ${month.slice(0, 3)} ${year.slice(2)}`
    },
    foot: (foot) => words.base.feet[foot],
    name: nameOf,
    span: (days) => {
      const whole = Math.round(days)
      if (whole < 14) return words.base.days(whole)
      if (whole < 70) return words.base.weeks(Math.round(whole / 7))
      return words.base.monthsSpan(Math.round(whole / daysPerMonth))
    },
  }
}
