/** How fine a series can be read: the repeatability of its readings, and the smallest change in it that matters. */
import { type AnyMeasureId, isMeasureId, measures } from '../hoof/measures.ts'
import type { Column } from './columns.ts'
import { derivations, measureOf, partsMatter, propagate, typicalParts, weightSd } from './derived.ts'

interface Scale {
  /** Repeatability. */
  readonly sd: number
  /** Smallest change that matters. */
  readonly matters: number
}

/**
 * The scale of a measure is its table line. A derived one's is propagated from its parts' at the mean of each part
 * over the readings. Photo readings are never taken to be surer than the measure's repeatability, and less sure where
 * the marked points say so (root mean square of the readings' own standard deviations).
 */
export const scaleOf = (column: Column): Scale =>
  column.from === null ? plainScale(column) : derivedScale(column, column.from)

/** Readings entered or taken from a picture as they are; a derived measure among them was read with no parts beside it. */
function plainScale(column: Column): Scale {
  const { sd, matters } = isMeasureId(column.measure) ? measures[column.measure] : typicalLine(column.measure)
  return { sd: atLeast(sd, column, column.sds), matters }
}

function derivedScale(column: Column, { derivation, parts, partSds }: NonNullable<Column['from']>): Scale {
  const means = parts.map((values) => sumOver(column, values, 1) / column.n)
  const sds = derivation.parts.map((part, i) =>
    atLeast(repeatability(measureOf(part)), column, partSds[i] ?? column.sds),
  )
  return {
    sd: propagate(derivation, means, sds),
    matters: propagate(derivation, means, partsMatter(derivation)),
  }
}

/** The repeatability, or what pictures show of more; gauge readings have none but the table's. */
const atLeast = (sd: number, column: Column, own: Float64Array): number =>
  column.family === 'photo' ? Math.max(sd, Math.sqrt(sumOver(column, own, 2) / column.n)) : sd

/** Sum of what is given, or of its squares, over the visits at which a column has a reading. */
function sumOver({ values }: Column, given: Float64Array, power: 1 | 2): number {
  let sum = 0
  for (let visit = 0; visit < values.length; visit++) {
    if (Number.isNaN(values[visit])) continue
    const one = given[visit] ?? 0
    sum += power === 2 ? one ** 2 : one
  }
  return sum
}

function typicalLine(measure: string): Scale {
  const derivation = derivations.find(({ id }) => id === measure)
  if (derivation === undefined) return { sd: Number.NaN, matters: Number.NaN }
  const at = typicalParts(derivation)
  const sds = derivation.parts.map((part) => repeatability(measureOf(part)))
  return { sd: propagate(derivation, at, sds), matters: propagate(derivation, at, partsMatter(derivation)) }
}

/** Repeatability of a measure as the literature has it; a derived one's from its parts at the middle of their likely ranges. */
export const literatureSd = (measure: AnyMeasureId): number =>
  isMeasureId(measure) ? measures[measure].sd : typicalLine(measure).sd

const repeatability = (id: keyof typeof measures | null): number => (id === null ? weightSd : measures[id].sd)
