/** A number of a row as a length or an angle, and whether it is a likely one. */
import type { Foot } from '../hoof/feet.ts'
import type { Measure } from '../hoof/measures.ts'
import { fromMillimetres, type LengthUnit, parseAngle, parseLength, toMillimetres } from '../hoof/units.ts'
import type { TextRange } from './report.ts'
import type { YamlEntry, YamlNode } from './yaml-tree.ts'

/** Whether the text, written under another measure, is a likely reading of this one. */
export function fits(text: string, measure: Measure, units: LengthUnit): boolean {
  const quantities = quantitiesOf(text, measure, units)
  return quantities.length > 0 && quantities.every((quantity) => doubtOf(quantity, measure) === null)
}

/** A number as written, with the unit it was taken in; `value` in millimetres or degrees. */
export interface Quantity {
  readonly value: number
  readonly amount: number
  readonly unit: LengthUnit | 'deg'
  readonly unitWritten: boolean
}

/** A row as read, before anything is said about its cells. */
export interface ReadRow {
  readonly row: YamlEntry
  readonly measure: Measure
  readonly cells: readonly RowCell[]
}

export interface RowCell {
  readonly foot: Foot
  readonly value: YamlNode
  /** One, or two where the foot was read twice; none when the text is no quantity of the measure's kind. */
  readonly quantities: readonly PlacedQuantity[]
  readonly doubts: readonly PlacedDoubt[]
}

export interface PlacedQuantity {
  readonly quantity: Quantity
  readonly at: TextRange
}

export interface PlacedDoubt extends RawDoubt {
  readonly at: TextRange
}

/** Words between two readings of one foot. */
const between = /\s+and\s+|\s*&\s*/i

/** The parts of `98 and 97`, or the whole text where it has no such word or is no cell's. */
export const readingsIn = (text: string): readonly string[] =>
  text.length > mostLetters ? [text] : text.split(between)
/** A cell with its units; longer text is words. */
export const mostLetters = 120

/**
 * The reading of a cell, or the two of a foot that was read twice; none where the text is not that. In `9.8 and 9.7 cm` the
 * unit that is written once holds for both.
 */
export function quantitiesOf(text: string, measure: Measure, units: LengthUnit): readonly Quantity[] {
  const single = quantityOf(text, measure, units)
  if (single) return [single]
  const read = readingsIn(text).map((part) => quantityOf(part, measure, units))
  const [first, second] = read
  if (read.length !== 2 || !first || !second) return []
  return [withUnit(first, second, measure), withUnit(second, first, measure)]
}

/** A bare number beside one that carries its unit: in that unit, unless it is only likely in the practice's own. */
function withUnit(one: Quantity, { unit, unitWritten }: Quantity, measure: Measure): Quantity {
  if (one.unitWritten || !unitWritten || unit === 'deg') return one
  const same: Quantity = { ...one, unit, unitWritten: true, value: toMillimetres(one.amount, unit) }
  return doubtOf(same, measure) && !doubtOf(one, measure) ? one : same
}

/** The quantities of a cell with their places; in a text that YAML has changed, the place of the whole. */
export function placedIn(value: YamlNode, measure: Measure, units: LengthUnit): readonly PlacedQuantity[] {
  if (value.kind !== 'text') return []
  const quantities = quantitiesOf(value.text, measure, units)
  if (quantities.length < 2 || !value.verbatim) return quantities.map((quantity) => ({ quantity, at: value }))
  const [first = '', second = ''] = readingsIn(value.text)
  const { start, end } = value
  const places = [
    { start, end: start + first.length },
    { start: end - second.length, end },
  ]
  return quantities.map((quantity, index) => ({ quantity, at: places[index] ?? value }))
}

function quantityOf(text: string, measure: Measure, units: LengthUnit): Quantity | null {
  if (measure.kind === 'angle') {
    const angle = parseAngle(text)
    return angle === null ? null : { value: angle, amount: angle, unit: 'deg', unitWritten: true }
  }
  const length = parseLength(text, units)
  return (
    length && { value: length.mm, amount: length.amount, unit: length.unit, unitWritten: length.unitWritten }
  )
}

export interface Slip {
  /** What the number looks like, after "looks like". */
  readonly looksLike: string
  /** Null where it looks like two things. */
  readonly fix: string | null
}

export interface RawDoubt {
  readonly impossible: boolean
  readonly quantity: Quantity
  readonly slip: Slip | null
}

/** No hoof has an edge a metre long, and no wall lies flat or leans over. */
function isImpossible(value: number, measure: Measure): boolean {
  if (measure.kind === 'angle') return value <= 0 || value >= 90
  return value < 0 || value > 1000 || (value === 0 && measure.likely[0] > 0)
}

/** @param beside a likely reading of the same row, which tells centimetres from inches where a number could be both */
export function doubtOf(quantity: Quantity, measure: Measure, beside: number | null = null): RawDoubt | null {
  const [low, high] = measure.likely
  const impossible = isImpossible(quantity.value, measure)
  if (!impossible && quantity.value >= low && quantity.value <= high) return null
  return { impossible, quantity, slip: likelySlip(quantity, measure, beside) }
}

const unitNames: Readonly<Record<LengthUnit, string>> = { mm: 'millimetres', cm: 'centimetres', in: 'inches' }

const isNear = (value: number, beside: number): boolean => value > beside / 1.5 && value < beside * 1.5

/**
 * The one other unit in which the number would be likely, else a decimal point lost or put in. Where two things may have
 * been meant, as with 5 for a toe length, which can be centimetres or inches, the row decides, or nobody.
 */
function likelySlip(quantity: Quantity, measure: Measure, beside: number | null): Slip | null {
  const isLikely = (value: number) => value >= measure.likely[0] && value <= measure.likely[1]
  const { amount, unit, unitWritten } = quantity
  if (unit !== 'deg') {
    const units = (['mm', 'cm', 'in'] as const).filter(
      (other) => other !== unit && isLikely(toMillimetres(amount, other)),
    )
    const near = units.filter((other) => beside !== null && isNear(toMillimetres(amount, other), beside))
    const [only] = units.length > 1 ? near : units
    if (only && near.length < 2) return { looksLike: unitNames[only], fix: `${figure(amount)} ${only}` }
    if (units.length > 1) return { looksLike: units.map((other) => unitNames[other]).join(' or '), fix: null }
  }
  if (amount < 0 && isLikely(-quantity.value)) {
    return { looksLike: 'a dash before the number', fix: figure(-amount) }
  }
  // A point can only have been lost from a whole number, and have slipped in one that has it.
  for (const factor of Number.isInteger(amount) ? [0.1, 0.01] : [10]) {
    if (/^\d+(?:\.\d)?$/.test(String(amount)) && isLikely(quantity.value * factor)) {
      const written = unit !== 'deg' && unitWritten ? ` ${unit}` : ''
      return { looksLike: 'a lost decimal point', fix: `${figure(amount * factor)}${written}` }
    }
  }
  return null
}

export const figure = (value: number): string => String(Number(value.toFixed(2)))

export const shown = ({ amount, unit }: Quantity): string =>
  unit === 'deg' ? `${figure(amount)}°` : `${figure(amount)} ${unit}`

export function rangeOf(measure: Measure, { unit }: Quantity): string {
  const [low, high] = measure.likely
  if (unit === 'deg') return `${low} to ${high}°`
  return `${figure(fromMillimetres(low, unit))} to ${figure(fromMillimetres(high, unit))} ${unit}`
}
