/** Slips of a tired hand in single values, and what was meant where only one thing can have been. */
import { nearest, normal } from './words.ts'

/** Ways to say that a foot was not read, for which the format has `~`. */
const notRead = new Set([
  'n/a',
  'na',
  'n.a.',
  'none',
  'nil',
  'x',
  'xx',
  '-',
  '--',
  '\u2013',
  '\u2014',
  '.',
  '*',
  'not read',
  'missing',
])
export const meansNotRead = (text: string): boolean => notRead.has(normal(text)) || notRead.has(text.trim())

/** The values of a row written with no comma between, with semicolons or strokes, or without its brackets. */
export function listItems(text: string): readonly string[] {
  if (text.length > 200) return [text]
  const inner = text.trim().replace(/^[[({]\s*|\s*[\])}]$/g, '')
  const mark = [/\s*;\s*/, /\s*,\s+|,(?!\d)/, /\s*\|\s*/, /\s*,\s*/].find((one) => one.test(inner))
  const items = inner.split(mark ?? (/^[\d.~]+(?:\s+[\d.~]+)+$/.test(inner) ? /\s+/ : /\s*\/\s*/))
  return items.map((item) => item.trim().replace(/^(\d+),(\d+)/, '$1.$2'))
}

/** Units with a wrong key hit, too short for the general comparison. */
const unitSlips: Readonly<Record<string, string>> = {
  mn: 'mm',
  nm: 'mm',
  nn: 'mm',
  mmm: 'mm',
  cn: 'cm',
  xm: 'cm',
  vm: 'cm',
  ccm: 'cm',
}

/**
 * A number with one slip in it put right: letters for digits (`9O`, `l04`), a point or a word too many, a doubtful sign
 * that the format has no place for. Null where nothing of the kind is seen.
 */
export function numberMeant(text: string, kind: 'length' | 'angle'): string | null {
  const plain = text.trim()
  const letters = /^[\dOolI.]+$/.test(plain) && /\d/.test(plain)
  if (letters && /[OolI]/.test(plain)) return plain.replace(/[Oo]/g, '0').replace(/[lI]/g, '1')
  const points = /^(\d+)\.(?:\.(\d+)|(\d*)\.?)$/.exec(plain)
  if (points) return points[2] || points[3] ? `${points[1]}.${points[2] ?? points[3]}` : (points[1] ?? null)
  const unit = /^(\d+(?:\.\d+)?)\s*([a-z]{2,12})\.?$/i.exec(plain)
  const known = kind === 'length' ? ['mm', 'cm', 'inches', 'millimetres', 'centimetres'] : ['deg', 'degrees']
  const short = (unit?.[2] ?? '').toLowerCase()
  const meant = unit && ((kind === 'length' && unitSlips[short]) || nearest(short, known))
  return meant ? `${unit[1]} ${meant}` : null
}

export const numberWords: Readonly<Record<string, string>> = {
  zero: '0',
  one: '1',
  two: '2',
  three: '3',
  four: '4',
  five: '5',
}

/**
 * A line whose colon is missing, with the colon where the end of the key is plain to see: before a bracket or a figure.
 * Four values without their brackets get those too.
 */
export function withColon(line: string): string | null {
  const match = line.length > 200 ? null : /^([a-z][a-z -]*[a-z])\s+([[{\d].*)$/i.exec(line.trim())
  if (!match) return null
  const [, key = '', value = ''] = match
  const items = listItems(value)
  return `${key}: ${items.length === 4 ? `[${items.join(', ')}]` : value}`
}
