/**
 * All readings of a horse as columns: one measure at one foot and stage, from one family of sources, one place a visit.
 * Gauge readings are those a person entered and what is derived from them; photo readings are those of marked
 * pictures and what is derived from them. The two are never mixed: published comparisons found no two methods alike.
 */
import type { Horse, Stage, Visit } from '../casebook/model.ts'
import { dayOf } from '../hoof/dates.ts'
import { type Foot, feet, feetOf, pairOf, sideOf } from '../hoof/feet.ts'
import { measureLandmarks } from '../hoof/landmarks.ts'
import { type AnyMeasureId, derivedIds, isDerivedId, measureIds, measures } from '../hoof/measures.ts'
import { type Derivation, derivations, propagate } from './derived.ts'

export type Family = 'gauge' | 'photo'
export const families: readonly Family[] = ['gauge', 'photo']
export const stages: readonly Stage[] = ['before', 'after']
export const allMeasures: readonly AnyMeasureId[] = [...measureIds, ...derivedIds]

export interface Column {
  readonly family: Family
  readonly stage: Stage
  readonly foot: Foot
  readonly measure: AnyMeasureId
  /** By visit; NaN where not read. */
  readonly values: Float64Array
  /** Standard deviation of each reading. */
  readonly sds: Float64Array
  /** What it was derived from; null for readings entered or taken from a picture as they are. */
  readonly from: DerivedFrom | null
}

interface DerivedFrom {
  readonly derivation: Derivation
  /** Values of each part, by visit. */
  readonly parts: readonly Float64Array[]
  /** Standard deviations of each part, by visit. */
  readonly partSds: readonly Float64Array[]
}

/** The record of one horse up to a day: its visits, oldest first, and every column of readings. */
export interface Columns {
  readonly visits: readonly Visit[]
  /** Day number of each visit. */
  readonly days: readonly number[]
  readonly all: readonly Column[]
  find(family: Family, stage: Stage, foot: Foot, measure: AnyMeasureId): Column | null
}

const places = Object.fromEntries(allMeasures.map((id, i) => [id, i])) as Record<AnyMeasureId, number>
const footPlaces: Readonly<Record<Foot, number>> = { LF: 0, RF: 1, LH: 2, RH: 3 }

const slot = (family: Family, stage: Stage, foot: Foot, measure: AnyMeasureId): number =>
  (((family === 'gauge' ? 0 : 2) + (stage === 'before' ? 0 : 1)) * feet.length + footPlaces[foot]) *
    allMeasures.length +
  places[measure]

export function columnsOf(horse: Horse, visits: readonly Visit[]): Columns {
  const slots = new Array<Column | undefined>(4 * feet.length * allMeasures.length)
  const open = (family: Family, stage: Stage, foot: Foot, measure: AnyMeasureId): Column => {
    const at = slot(family, stage, foot, measure)
    const column = slots[at] ?? emptyColumn(family, stage, foot, measure, visits.length)
    slots[at] = column
    return column
  }
  for (const [i, visit] of visits.entries()) {
    for (const { stage, foot, measure, value } of visit.readings)
      setReading(open('gauge', stage, foot, measure), i, value, measures[measure].sd)
    for (const { foot, landmarks, stage, view } of visit.photos) {
      if (foot === null || landmarks === null) continue
      // A picture that does not say when it was taken is taken as one of the arrival.
      for (const { measure, value, sd } of measureLandmarks(landmarks, view)) {
        const column = open('photo', stage ?? 'before', foot, measure)
        // Of two pictures that show the same, the surer one counts.
        if (!(sd >= (column.sds[i] ?? Number.NaN))) setReading(column, i, value, sd)
      }
    }
  }
  const find: Columns['find'] = (family, stage, foot, measure) =>
    slots[slot(family, stage, foot, measure)] ?? null
  const weights = Float64Array.from(
    visits,
    (visit) => visit.bodyState.weightKg ?? horse.weightKg ?? Number.NaN,
  )
  for (const family of families)
    for (const stage of stages)
      for (const foot of feet)
        for (const derivation of derivations) {
          const at = slot(family, stage, foot, derivation.id)
          // A derived measure that a picture shows outright is left as the picture shows it.
          slots[at] ??= deriveColumn(derivation, family, stage, foot, find, weights)
        }
  return {
    visits,
    days: visits.map(({ date }) => dayOf(date)),
    all: slots.filter((column) => column !== undefined),
    find,
  }
}

const emptyColumn = (
  family: Family,
  stage: Stage,
  foot: Foot,
  measure: AnyMeasureId,
  length: number,
): Column => ({
  family,
  stage,
  foot,
  measure,
  values: new Float64Array(length).fill(Number.NaN),
  sds: new Float64Array(length).fill(Number.NaN),
  from: null,
})

function setReading(column: Column, visit: number, value: number, sd: number): void {
  column.values[visit] = value
  column.sds[visit] = sd
}

/** The column of a derived measure; undefined where a part is missing or no visit has all of them. */
function deriveColumn(
  derivation: Derivation,
  family: Family,
  stage: Stage,
  foot: Foot,
  find: Columns['find'],
  weights: Float64Array,
): Column | undefined {
  // A pair's difference is carried by its left foot.
  if (derivation.id === 'pair-mismatch' && sideOf(foot) === 'right') return undefined
  const parts: Float64Array[] = []
  const partSds: Float64Array[] = []
  for (const part of derivation.parts) {
    if (part === 'weight') {
      parts.push(weights)
      partSds.push(new Float64Array(weights.length))
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
  const column = emptyColumn(family, stage, foot, derivation.id, weights.length)
  const at = parts.map(() => 0)
  const errors = parts.map(() => 0)
  let some = false
  for (let i = 0; i < weights.length; i++) {
    for (let k = 0; k < parts.length; k++) {
      at[k] = parts[k]?.[i] ?? Number.NaN
      errors[k] = partSds[k]?.[i] ?? Number.NaN
    }
    const value = derivation.value(at)
    if (!Number.isFinite(value)) continue
    some = true
    setReading(column, i, value, propagate(derivation, at, errors))
  }
  return some ? { ...column, from: { derivation, parts, partSds } } : undefined
}

/** The value of a column at a visit, null where not read. */
export function valueAt(column: Column | null, visit: number): number | null {
  const value = column?.values[visit]
  return value === undefined || Number.isNaN(value) ? null : value
}

/** Where the readings of a column come from, as the export says it. */
export const sourceOf = (column: Column): 'entered' | 'photo' | 'derived' =>
  column.family === 'photo' ? 'photo' : isDerivedId(column.measure) ? 'derived' : 'entered'
