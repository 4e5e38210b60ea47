/**
 * Lengths, angles, heights and weights as people write them, turned into engine units:
 * millimetres, degrees, centimetres for a height, kilograms for a weight.
 * A function returns null where the text is no such quantity; the caller says so with a place.
 */
export type LengthUnit = 'mm' | 'cm' | 'in'

/** International yard and pound agreement of 1959: an inch is 25.4 mm exactly. */
export const mmPerInch = 25.4
/** International yard and pound agreement of 1959: a pound is 0.45359237 kg exactly. */
export const kgPerPound = 0.45359237
/** A hand is 4 inches. */
export const inchesPerHand = 4

const mmPer: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: mmPerInch }

/** Inches go by tenths of a millimetre, so that 3 5/8 in is 92.075 mm and no binary crumb is left. */
export const toMillimetres = (amount: number, unit: LengthUnit): number =>
  unit === 'in' ? (amount * 254) / 10 : amount * mmPer[unit]
export const fromMillimetres = (mm: number, unit: LengthUnit): number => mm / mmPer[unit]
export const toKilograms = (pounds: number): number => pounds * kgPerPound
export const toPounds = (kilograms: number): number => kilograms / kgPerPound

/** A number and the word or sign after it, in lower case; the sign is empty for a bare number. */
interface Amount {
  readonly amount: number
  readonly sign: string
}

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/** Spaces, minus signs, inch marks and printed fractions in one spelling each. */
export const plainSigns = (text: string): string =>
  text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${vulgar[sign]}`)
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\u201C\u201D\u2033]|''|\u2032\u2032/g, '"')
    .replace(/[\s\u00A0\u202F]+/g, ' ')
    .trim()

/** `98`, `9.8`, `98,5`, `3 5/8`, `3-5/8`, `5/8`, each with what follows; null when it begins with no number. */
function parseAmount(text: string): Amount | null {
  if (text.length > 60) return null
  // Most readings are this, and a large practice has a million of them.
  if (/^\d+(?:\.\d+)?$/.test(text)) return { amount: Number(text), sign: '' }
  const match =
    /^([+-]?)(?:(?:(\d+)[ -])?(\d+)\/(\d+)|(\d+(?:[.,]\d+)?|[.,]\d+))(?: ?([a-z°"%][^\d]*))?$/i.exec(
      plainSigns(text),
    )
  if (!match) return null
  const [, minus, whole, top, bottom, decimal, sign] = match
  let amount: number
  if (decimal === undefined) {
    if (Number(bottom) === 0 || Number(top) >= Number(bottom)) return null
    amount = Number(whole ?? 0) + Number(top) / Number(bottom)
  } else {
    amount = Number(decimal.replace(',', '.'))
  }
  return { amount: minus === '-' ? -amount : amount, sign: (sign ?? '').trim().toLowerCase() }
}

export interface ParsedLength {
  readonly mm: number
  /** The number as written, in `unit`. */
  readonly amount: number
  readonly unit: LengthUnit
  /** False for a bare number, which was taken in the practice's unit. */
  readonly unitWritten: boolean
}

const lengthSigns: Readonly<Record<string, LengthUnit>> = {
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  centimetre: 'cm',
  centimetres: 'cm',
  centimeter: 'cm',
  centimeters: 'cm',
  in: 'in',
  'in.': 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
}
const angleSigns: ReadonlySet<string> = new Set(['°', 'deg', 'deg.', 'degree', 'degrees'])

/** The unit of a length or an angle by any of its names, in lower case; null for another word. */
export function unitNamed(name: string): LengthUnit | 'deg' | null {
  if (angleSigns.has(name)) return 'deg'
  return Object.hasOwn(lengthSigns, name) ? (lengthSigns[name] ?? null) : null
}

/** A length: `98`, `98 mm`, `9.8 cm`, `98,5`, `3.75 in`, `3 5/8 in`, `3 5/8"`. A bare number is in `bareUnit`. */
export function parseLength(text: string, bareUnit: LengthUnit): ParsedLength | null {
  const read = parseAmount(text)
  if (!read) return null
  const unit = read.sign === '' ? bareUnit : (lengthSigns[read.sign] ?? null)
  if (unit === null) return null
  return { mm: toMillimetres(read.amount, unit), amount: read.amount, unit, unitWritten: read.sign !== '' }
}

/** An angle in degrees: `44`, `44.5`, `44 deg`, `44°`. */
export function parseAngle(text: string): number | null {
  const read = parseAmount(text)
  return read && (read.sign === '' || angleSigns.has(read.sign)) ? read.amount : null
}

/** A bare number, decimal comma forgiven: `0.67`. */
export function parseNumber(text: string): number | null {
  const read = parseAmount(text)
  return read && read.sign === '' ? read.amount : null
}

/**
 * A height in centimetres: `14.2 hh` (14 hands 2 inches), `148 cm`, `1.48 m`, `58 in`.
 * In hands the figure after the point is whole inches, 0 to 3. A bare number is not read: it could be either.
 */
export function parseHeight(text: string): number | null {
  const hands = /^(\d+)(?:\.([0-3]))?(?: (1\/4|1\/2|3\/4))? ?(?:hh|h|hands?)$/i.exec(plainSigns(text))
  if (hands) {
    const part = hands[3] ? Number(hands[3][0]) / Number(hands[3][2]) : 0
    const inches = Number(hands[1]) * inchesPerHand + Number(hands[2] ?? 0) + part
    return (inches * mmPerInch) / 10
  }
  const read = parseAmount(text)
  if (!read) return null
  if (read.sign === 'm') return read.amount * 100
  const unit = lengthSigns[read.sign]
  return unit === undefined ? null : toMillimetres(read.amount, unit) / 10
}

/** A weight in kilograms: `505 kg`, `1100 lb`, `1,100 lb`. A bare number is not read: it could be either. */
export function parseWeight(text: string): number | null {
  const read = parseAmount(text.replace(/^\s*(\d{1,2}),(\d{3})(?!\d)/, '$1$2'))
  if (!read) return null
  if (['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'].includes(read.sign)) return read.amount
  if (['lb', 'lbs', 'lb.', 'pound', 'pounds'].includes(read.sign)) return toKilograms(read.amount)
  return null
}
