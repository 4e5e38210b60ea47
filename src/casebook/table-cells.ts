/** A cell of a table that holds a reading: what it measures, and how it is written in a case file. */
import type { Measure } from '../hoof/measures.ts'
import { type LengthUnit, plainSigns, unitNamed } from '../hoof/units.ts'
import { doubtOf, quantitiesOf, readingsIn, shown } from './quantities.ts'
import { meansNotRead } from './slips.ts'
import { normal, quote } from './words.ts'

export interface CellRead {
  /** Millimetres or degrees; the mean of a foot that was read twice. */
  readonly value: number
  /** As a case file says it, unit and all: `3 5/8 in`, `98 and 97 mm`. */
  readonly written: string
}

/** A foot that was not read is an empty cell, or one of the signs that people put there. */
export const isNotRead = (cell: string): boolean => cell === '' || cell === '~' || meansNotRead(cell)

/**
 * A number in all the ways in which case files may write it. One that carries its unit keeps it.
 *
 * @param unit that the line or the column names; empty for none
 * @param usual unit of a length for which neither says one
 * @returns the reading, or why it is none
 */
export function readCell(cell: string, unit: string, measure: Measure, usual: LengthUnit): CellRead | string {
  const named = unit === '' ? null : unitNamed(normal(unit))
  if (measure.kind === 'angle' && unit !== '' && named !== 'deg')
    return `${quote(unit)} is not a unit of an angle: expected deg`
  if (measure.kind === 'length' && unit !== '' && (named === null || named === 'deg'))
    return `${quote(unit)} is not a unit of a length: expected mm, cm or in`
  const bareUnit = named === null || named === 'deg' ? usual : named
  const read = quantitiesOf(cell, measure, bareUnit)
  const [first, second] = read
  if (!first) {
    return measure.kind === 'angle'
      ? `${quote(cell)} is not a number: expected 44, 44.5, 44,5 or 44°`
      : `${quote(cell)} is not a number: expected 98, 98.5, 98,5, 9.8 cm or 3 5/8 in`
  }
  const impossible = read.find((one) => doubtOf(one, measure)?.impossible)
  if (impossible) return `${shown(impossible)} cannot be`
  const parts = readingsIn(cell)
  const written = read.map((one, index) =>
    one.unit === 'deg' ? plainNumber(parts[index] ?? '') : `${plainNumber(parts[index] ?? '')} ${one.unit}`,
  )
  return {
    value: second ? (first.value + second.value) / 2 : first.value,
    written: written.join(' and '),
  }
}

/** The number of a cell without its unit, as nothing in braces can misread: a point, single spaces, figures. */
function plainNumber(cell: string): string {
  const number = /^[-+\d\s.,/]*/.exec(plainSigns(cell))?.[0] ?? ''
  return number.replace(',', '.').trim()
}
