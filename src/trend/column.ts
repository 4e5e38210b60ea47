/** One measure at one foot and stage, from one family of sources: a place for each visit. */
import type { Stage } from '../casebook/model.ts'
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { Derivation } from './derived.ts'

export type Family = 'gauge' | 'photo'

export interface Column {
  readonly family: Family
  readonly stage: Stage
  readonly foot: Foot
  readonly measure: AnyMeasureId
  /** How many visits have a reading. */
  readonly n: number
  /** By visit; NaN where not read. */
  readonly values: Float64Array
  /** Standard deviation of each reading. */
  readonly sds: Float64Array
  /** What it was derived from; null for readings entered or taken from a picture as they are. */
  readonly from: DerivedFrom | null
}

export interface DerivedFrom {
  readonly derivation: Derivation
  /** Values of each part, by visit. */
  readonly parts: readonly Float64Array[]
  /** Standard deviations of each part, by visit. */
  readonly partSds: readonly Float64Array[]
}

/** Null where a record has no such column. */
export type FindColumn = (family: Family, stage: Stage, foot: Foot, measure: AnyMeasureId) => Column | null

export const emptyColumn = (
  family: Family,
  stage: Stage,
  foot: Foot,
  measure: AnyMeasureId,
  length: number,
  from: DerivedFrom | null = null,
): Column => ({
  family,
  stage,
  foot,
  measure,
  n: 0,
  values: new Float64Array(length).fill(Number.NaN),
  sds: new Float64Array(length).fill(Number.NaN),
  from,
})

/** While a column is being filled it counts its readings. */
export function setReading(column: Column & { n: number }, visit: number, value: number, sd: number): void {
  if (Number.isNaN(column.values[visit])) column.n++
  column.values[visit] = value
  column.sds[visit] = sd
}

/** The value of a column at a visit; NaN where not read or where there is no such column. For loops over all visits. */
export const readingAt = (column: Column | null, visit: number): number =>
  column === null ? Number.NaN : (column.values[visit] ?? Number.NaN)
