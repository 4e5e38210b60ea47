/** A spoken number as a reading of a measure: in which unit, and whether it is a likely one. */
import { type Measure, type MeasureId, measures } from '../hoof/measures.ts'
import { type LengthUnit, toMillimetres } from '../hoof/units.ts'
import type { SpokenNumber } from './numbers.ts'
import type { Inward, Measured } from './vocabulary/sense.ts'

export interface Amount {
  readonly number: SpokenNumber
  readonly unit: LengthUnit | 'deg' | null
}

export interface Quantity {
  readonly measure: MeasureId
  readonly value: number
  /** As a case file has it. */
  readonly text: string
  /** What was supplied that nobody said. */
  readonly supplied: string | null
}

const lengthUnits: readonly LengthUnit[] = ['mm', 'cm', 'in']

/** Feet shorter than this are a foal's, or the number is the angle. */
const surelyLength = 76

/**
 * The reading that the number must be, or null where it is none, or could be two.
 *
 * @param said units that the speaker has used so far
 */
export function quantityOf(
  amount: Amount,
  measured: Measured,
  practice: LengthUnit,
  said: ReadonlySet<LengthUnit>,
  side: Inward | null = null,
): Quantity | null {
  const id = idOf(amount, measured, side, practice, said)
  if (id === null) return null
  const measure = measures[id]
  return measure.kind === 'angle' ? angle(amount, measure) : length(amount, measure, practice, said)
}

function idOf(
  amount: Amount,
  measured: Measured,
  side: Inward | null,
  practice: LengthUnit,
  said: ReadonlySet<LengthUnit>,
): MeasureId | null {
  const { number, unit } = amount
  switch (measured) {
    case 'toe': {
      if (unit === 'deg') return 'toe-angle'
      if (unit !== null) return 'toe-length'
      // A bare number below may be the angle, unless it can be no angle.
      const isAngle =
        number.value >= measures['toe-angle'].likely[0] && number.value < surelyLength && !number.isFraction
      const asLength = length(amount, measures['toe-length'], practice, said)
      return isAngle && asLength?.supplied === null && practice === 'mm' ? null : 'toe-length'
    }
    case 'heels':
    case 'heel':
      if (side !== null) return `heel-${side}`
      return unit === 'deg' ? 'heel-angle' : null
    case 'quarters':
      return side === null ? null : `quarter-${side}`
    case 'any-width':
      return 'width'
    case 'any-length':
      return 'toe-length'
    default:
      return measured
  }
}

function angle({ number, unit }: Amount, measure: Measure): Quantity | null {
  const isFit = unit === null || unit === 'deg'
  if (!isFit || !isLikely(number.value, measure)) return null
  return { measure: measure.id, value: number.value, text: figure(number.value), supplied: null }
}

function length(
  { number, unit }: Amount,
  measure: Measure,
  practice: LengthUnit,
  said: ReadonlySet<LengthUnit>,
): Quantity | null {
  if (unit === 'deg') return null
  const chosen = unit ?? likelyUnit(number, measure, practice, said)
  if (chosen === null) return null
  const value = toMillimetres(number.value, chosen)
  if (!isLikely(value, measure)) return null
  return {
    measure: measure.id,
    value,
    text: written(number, chosen, practice),
    supplied: unit === null && chosen !== practice ? `the unit was not said: ${chosen}` : null,
  }
}

/** Eighths are of inches; else the practice's unit, else the only one in which the number is likely. */
function likelyUnit(
  number: SpokenNumber,
  measure: Measure,
  practice: LengthUnit,
  said: ReadonlySet<LengthUnit>,
): LengthUnit | null {
  const fits = lengthUnits.filter((unit) => isLikely(toMillimetres(number.value, unit), measure))
  if (number.isFraction && fits.includes('in')) return 'in'
  if (fits.includes(practice)) return practice
  if (fits.length === 1) return fits[0] ?? null
  const heard = fits.filter((unit) => said.has(unit))
  return heard.length === 1 ? (heard[0] ?? null) : null
}

const isLikely = (value: number, { likely: [low, high] }: Measure): boolean => value >= low && value <= high

/** As a person would write it in a case file. */
export function written(number: SpokenNumber, unit: LengthUnit, practice: LengthUnit): string {
  const amount = unit === 'in' && number.isFraction ? inSixteenths(number.value) : figure(number.value)
  return unit === practice ? amount : `${amount} ${unit}`
}

export const figure = (value: number): string => String(Number(value.toFixed(3)))

/** `3 5/8`, in lowest terms. */
function inSixteenths(value: number): string {
  const whole = Math.floor(value)
  let top = Math.round((value - whole) * 32)
  let bottom = 32
  if (top / bottom !== value - whole) return figure(value)
  while (top > 0 && top % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  if (top === 0) return String(whole)
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`
}
