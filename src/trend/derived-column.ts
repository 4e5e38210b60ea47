/** The column of a measure that follows from others, visit by visit. */
import type { Stage } from '../casebook/model.ts'
import { type Foot, feetOf, pairOf, sideOf } from '../hoof/feet.ts'
import { type Column, emptyColumn, type Family, type FindColumn, setReading } from './column.ts'
import { type Derivation, propagate, weightSd } from './derived.ts'

/**
 * Undefined where a part is missing or no visit has all of them.
 * @param weights the horse's weight in kilograms, by visit; NaN where not known
 */
export function deriveColumn(
  derivation: Derivation,
  family: Family,
  stage: Stage,
  foot: Foot,
  find: FindColumn,
  weights: Float64Array,
): Column | undefined {
  // A pair's difference is carried by its left foot.
  if (derivation.id === 'pair-mismatch' && sideOf(foot) === 'right') return undefined
  const parts: Float64Array[] = []
  const partSds: Float64Array[] = []
  for (const part of derivation.parts) {
    if (part === 'weight') {
      parts.push(weights)
      partSds.push(new Float64Array(weights.length).fill(weightSd))
      continue
    }
    const column =
      typeof part === 'string'
        ? find(family, stage, foot, part)
        : find(family, stage, feetOf(pairOf(foot))[1], part.rightFoot)
    if (column === null) return undefined
    parts.push(column.values)
    partSds.push(column.sds)
  }
  const from = { derivation, parts, partSds }
  const column = emptyColumn(family, stage, foot, derivation.id, weights.length, from)
  const at = parts.map(() => Number.NaN)
  const errors = parts.map(() => Number.NaN)
  const slopes = parts.map(() => Number.NaN)
  for (let i = 0; i < weights.length; i++) {
    takePlace(parts, i, at)
    const value = derivation.value(at)
    if (!Number.isFinite(value)) continue
    takePlace(partSds, i, errors)
    setReading(column, i, value, propagate(derivation, at, errors, slopes))
  }
  return column.n > 0 ? column : undefined
}

/** Copies what each column has at one place. */
function takePlace(columns: readonly Float64Array[], place: number, into: number[]): void {
  for (let k = 0; k < columns.length; k++) {
    const column = columns[k]
    if (column !== undefined) into[k] = column[place] ?? Number.NaN
  }
}
