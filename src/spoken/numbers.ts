/**
 * Numbers as they are said.
 *
 * Own code, since the packages tried do not hold up: words-to-numbers makes "three and five eighths" 3 and 5, compromise
 * makes "thirty, thirty-one" 0 and 1, and Microsoft's recognizers, the best of them, read "hundred and three" as 3,
 * "three and three quarter" as 3 and 3, "one oh four" as 1 and 4, and weigh 435 kB in a page.
 */
import type { Atom } from './atoms.ts'

export interface SpokenNumber {
  readonly value: number
  /** Said with halves, quarters, eighths or sixteenths. */
  readonly isFraction: boolean
  /** First atom after it. */
  readonly end: number
}

const units: Readonly<Record<string, number>> = {
  zero: 0,
  nought: 0,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
}
const teens: Readonly<Record<string, number>> = {
  ten: 10,
  eleven: 11,
  twelve: 12,
  thirteen: 13,
  fourteen: 14,
  fifteen: 15,
  sixteen: 16,
  seventeen: 17,
  eighteen: 18,
  nineteen: 19,
}
const tens: Readonly<Record<string, number>> = {
  twenty: 20,
  thirty: 30,
  forty: 40,
  fourty: 40,
  fifty: 50,
  sixty: 60,
  seventy: 70,
  eighty: 80,
  ninety: 90,
}
const parts: Readonly<Record<string, number>> = {
  half: 2,
  halves: 2,
  quarter: 4,
  quarters: 4,
  eighth: 8,
  eighths: 8,
  sixteenth: 16,
  sixteenths: 16,
}
const signs: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
}

const isDigits = (text: string): boolean => /^\d/.test(text)
const own = (table: Readonly<Record<string, number>>, text: string | undefined): number | undefined =>
  text !== undefined && Object.hasOwn(table, text) ? table[text] : undefined
const unitOf = (text: string | undefined): number | undefined => own(units, text)

/** The next atom where no pause comes between. */
const after = (atoms: readonly Atom[], at: number): string | undefined =>
  at > 0 && atoms[at - 1]?.pause !== 'none' ? undefined : atoms[at]?.text

/** The number that begins at this atom, or null. */
export function numberAt(atoms: readonly Atom[], at: number): SpokenNumber | null {
  const bare = bareFraction(atoms, at)
  if (bare) return bare
  const whole = wholeAt(atoms, at)
  if (!whole) return null
  return pointed(atoms, whole) ?? withFraction(atoms, whole)
}

interface Whole {
  readonly value: number
  readonly end: number
}

function wholeAt(atoms: readonly Atom[], at: number): Whole | null {
  const text = atoms[at]?.text ?? ''
  if (isDigits(text)) return figuresAt(text, atoms, at)
  if (text === 'hundred' || ((text === 'a' || text === 'an') && after(atoms, at + 1) === 'hundred')) {
    return hundreds(atoms, 1, text === 'hundred' ? at + 1 : at + 2)
  }
  const small = smallAt(atoms, at)
  if (!small) return null
  const next = after(atoms, small.end)
  if (next === 'hundred' && small.value > 0 && small.value < 20)
    return hundreds(atoms, small.value, small.end + 1)
  if (small.value === 1 && small.end === at + 1) return overHundred(atoms, small.end) ?? small
  return small
}

function figuresAt(text: string, atoms: readonly Atom[], at: number): Whole | null {
  if (text.includes('/')) return null
  const value = Number(text.replace(/,(?=\d{3})/g, '').replace(',', '.'))
  if (!Number.isFinite(value)) return null
  if (after(atoms, at + 1) === 'hundred' && value > 0 && value < 20) return hundreds(atoms, value, at + 2)
  return { value, end: at + 1 }
}

/** Up to 99. */
function smallAt(atoms: readonly Atom[], at: number): Whole | null {
  const text = atoms[at]?.text
  const ten = own(tens, text)
  if (ten !== undefined) {
    const unit = unitOf(after(atoms, at + 1))
    return unit === undefined || unit === 0 ? { value: ten, end: at + 1 } : { value: ten + unit, end: at + 2 }
  }
  const value = own(teens, text) ?? unitOf(text)
  return value === undefined ? null : { value, end: at + 1 }
}

/** After "two hundred": "and ten", "ten", or nothing. */
function hundreds(atoms: readonly Atom[], count: number, at: number): Whole {
  const from = after(atoms, at) === 'and' ? at + 1 : at
  const rest = after(atoms, from) === undefined ? null : smallAt(atoms, from)
  // "A hundred and a half" and "a hundred and three quarters" add no whole number.
  if (!rest || rest.value === 0 || own(parts, after(atoms, rest.end)) !== undefined)
    return { value: count * 100, end: at }
  return { value: count * 100 + rest.value, end: rest.end }
}

/** "One oh four", "one ten", "one twenty-five": over a hundred without saying it. */
function overHundred(atoms: readonly Atom[], at: number): Whole | null {
  const next = after(atoms, at)
  if (next === 'oh' || next === 'o') {
    const unit = unitOf(after(atoms, at + 1))
    return unit === undefined ? null : { value: 100 + unit, end: at + 2 }
  }
  const rest = next === undefined ? null : smallAt(atoms, at)
  return rest && rest.value > 9 ? { value: 100 + rest.value, end: rest.end } : null
}

/** "Nine point eight". */
function pointed(atoms: readonly Atom[], whole: Whole): SpokenNumber | null {
  if (after(atoms, whole.end) !== 'point') return null
  let digits = ''
  let at = whole.end + 1
  for (let text = after(atoms, at); text !== undefined; text = after(atoms, at)) {
    const digit = text === 'oh' ? 0 : (unitOf(text) ?? (/^\d$/.test(text) ? Number(text) : undefined))
    if (digit === undefined || digits.length > 2) break
    digits += digit
    at++
  }
  if (digits === '') {
    const two = smallAt(atoms, at)
    if (!two || two.value < 10) return null
    digits = String(two.value)
    at = two.end
  }
  return { value: Number(`${whole.value}.${digits}`), isFraction: false, end: at }
}

function withFraction(atoms: readonly Atom[], whole: Whole): SpokenNumber {
  const alone = { value: whole.value, isFraction: false, end: whole.end }
  if (!Number.isInteger(whole.value)) return alone
  const next = after(atoms, whole.end)
  const sign = own(signs, next)
  if (sign !== undefined) return { value: whole.value + sign, isFraction: true, end: whole.end + 1 }
  const from = next === 'and' ? whole.end + 1 : whole.end
  const part = after(atoms, from) === undefined ? null : partAt(atoms, from)
  // "Ninety a half" is nobody's number, "three five eighths" is.
  if (!part || (from === whole.end && part.isSingle)) return alone
  return { value: whole.value + part.value, isFraction: true, end: part.end }
}

interface Part extends Whole {
  readonly isSingle: boolean
}

/** "A half", "five eighths", "3/8". */
function partAt(atoms: readonly Atom[], at: number): Part | null {
  const text = atoms[at]?.text ?? ''
  const figures = /^(\d{1,2})\/(2|4|8|16|32)$/.exec(text)
  if (figures) {
    const [, top, bottom] = figures
    const value = Number(top) / Number(bottom)
    return value > 0 && value < 1 ? { value, end: at + 1, isSingle: false } : null
  }
  const sign = own(signs, text)
  if (sign !== undefined) return { value: sign, end: at + 1, isSingle: false }
  const single = text === 'a' || text === 'an'
  const top = single
    ? 1
    : (unitOf(text) ?? own(teens, text) ?? (/^\d{1,2}$/.test(text) ? Number(text) : undefined))
  const bottom = own(parts, after(atoms, at + 1))
  if (top === undefined || bottom === undefined || top < 1 || top >= bottom) return null
  return { value: top / bottom, end: at + 2, isSingle: single }
}

/**
 * "Five eighths of an inch", "half an inch": a fraction alone is a number only before inches, since a quarter is also a
 * place on the foot, and a time.
 */
function bareFraction(atoms: readonly Atom[], at: number): SpokenNumber | null {
  const half = atoms[at]?.text === 'half' ? { value: 0.5, end: at + 1 } : null
  const part = half ?? partAt(atoms, at)
  if (!part) return null
  let end = part.end
  for (const filler of ['of', 'an', 'a']) if (after(atoms, end) === filler) end++
  const unit = after(atoms, end)
  if (unit === 'inch' || unit === 'inches' || unit === '"')
    return { value: part.value, isFraction: true, end }
  return /[/½¼¾⅛⅜⅝⅞]/.test(atoms[at]?.text ?? '')
    ? { value: part.value, isFraction: true, end: part.end }
    : null
}

/**
 * The first atom after a telephone number, a code or a long figure that begins here, or null: digits said one by one,
 * four or more of them, or any that begin with a nought, through their pauses.
 */
export function codeAt(atoms: readonly Atom[], at: number): number | null {
  const text = atoms[at]?.text ?? ''
  if (/^0\d+$|^\d{5,}$/.test(text)) return figuresEnd(atoms, at)
  const first = digitsRun(atoms, at)
  const begins = text === 'oh' || text === 'double' || text === 'treble' || text === 'triple'
  if (first.count < (begins || text === 'zero' ? 3 : 4)) return null
  let end = first.end
  for (let more = digitsRun(atoms, end); more.count > 1; more = digitsRun(atoms, end)) end = more.end
  return figuresEnd(atoms, end - 1)
}

/** Groups of figures that follow: `01632 960 123`. */
function figuresEnd(atoms: readonly Atom[], at: number): number {
  let end = at + 1
  while (/^\d{2,}$|^hundred$/.test(after(atoms, end) ?? '')) end++
  const more = digitsRun(atoms, end)
  return more.count > 1 ? more.end : end
}

/** Digits said one by one with no pause between. */
function digitsRun(atoms: readonly Atom[], at: number): { readonly count: number; readonly end: number } {
  let count = 0
  let end = at
  for (let text = atoms[at]?.text; text !== undefined; text = after(atoms, end)) {
    const isDigit = text === 'oh' || unitOf(text) !== undefined || /^\d$/.test(text)
    const isTimes = /^(?:double|treble|triple)$/.test(text)
    if (!isDigit && !isTimes && !(count > 2 && text === 'hundred')) break
    // "Seven five eighths" is no code.
    if (isDigit && own(parts, after(atoms, end + 1)) !== undefined) break
    count++
    end++
  }
  return { count, end }
}
