/**
 * All readings of a horse as columns: one measure at one foot and stage, from one family of sources, one place a visit.
 * Gauge readings are those a person entered and what is derived from them; photo readings are those of marked
 * pictures and what is derived from them. The two are never mixed: published comparisons found no two methods alike.
 */
import type { Horse, Stage, Visit } from '../casebook/model.ts'
import { dayOf } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { measureLandmarks } from '../hoof/landmarks.ts'
import { type AnyMeasureId, derivedIds, isDerivedId, measureIds, measures } from '../hoof/measures.ts'
import { type Column, emptyColumn, type Family, type FindColumn, setReading } from './column.ts'
import { derivations } from './derived.ts'
import { deriveColumn } from './derived-column.ts'

export type { Column, Family } from './column.ts'

export const families: readonly Family[] = ['gauge', 'photo']
export const stages: readonly Stage[] = ['before', 'after']
export const allMeasures: readonly AnyMeasureId[] = [...measureIds, ...derivedIds]

/** The record of one horse up to a day: its visits, oldest first, and every column of readings. */
export interface Columns {
  readonly visits: readonly Visit[]
  /** Day number of each visit. */
  readonly days: readonly number[]
  readonly all: readonly Column[]
  readonly find: FindColumn
}

const places = Object.fromEntries(allMeasures.map((id, i) => [id, i])) as Record<AnyMeasureId, number>
const footPlaces: Readonly<Record<Foot, number>> = { LF: 0, RF: 1, LH: 2, RH: 3 }

const slot = (family: Family, stage: Stage, foot: Foot, measure: AnyMeasureId): number =>
  (((family === 'gauge' ? 0 : 2) + (stage === 'before' ? 0 : 1)) * feet.length + footPlaces[foot]) *
    allMeasures.length +
  places[measure]

export function columnsOf(horse: Horse, visits: readonly Visit[]): Columns {
  const slots = new Array<Column | undefined>(4 * feet.length * allMeasures.length)
  const open: OpenColumn = (family, stage, foot, measure) => {
    const at = slot(family, stage, foot, measure)
    const column = slots[at] ?? emptyColumn(family, stage, foot, measure, visits.length)
    slots[at] = column
    return column
  }
  readGauge(visits, open)
  readPhotos(visits, open)
  const find: FindColumn = (family, stage, foot, measure) => slots[slot(family, stage, foot, measure)] ?? null
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

/** The column of a measure, made where there is none yet. */
type OpenColumn = (family: Family, stage: Stage, foot: Foot, measure: AnyMeasureId) => Column

function readGauge(visits: readonly Visit[], open: OpenColumn): void {
  for (const [i, { readings }] of visits.entries())
    for (const { stage, foot, measure, value, twice } of readings)
      setReading(
        open('gauge', stage, foot, measure),
        i,
        value,
        measures[measure].sd * (twice === undefined ? 1 : Math.SQRT1_2),
      )
}

/** A picture with the card against one with a ruler is at half or less. */
const clearlySurer = 0.7

function readPhotos(visits: readonly Visit[], open: OpenColumn): void {
  for (const [i, visit] of visits.entries())
    for (const { foot, landmarks, stage, view } of visit.photos) {
      if (foot === null || landmarks === null) continue
      // A picture that does not say when it was taken is taken as one of the arrival.
      for (const { measure, value, sd } of measureLandmarks(landmarks, view)) {
        const column = open('photo', stage ?? 'before', foot, measure)
        // Of two pictures that show the same, the one that is clearly surer counts, else the first: a scale that lay
        // nearer makes lengths and their error smaller alike, and does not make them surer.
        if (!(sd >= clearlySurer * (column.sds[i] ?? Number.NaN))) setReading(column, i, value, sd)
      }
    }
}

/** The value of a column at a visit, null where not read. */
export function valueAt(column: Column | null, visit: number): number | null {
  const value = column?.values[visit]
  return value === undefined || Number.isNaN(value) ? null : value
}

/** Where the readings of a column come from, as the export says it. */
export const sourceOf = (column: Column): 'entered' | 'photo' | 'derived' =>
  column.family === 'photo' ? 'photo' : isDerivedId(column.measure) ? 'derived' : 'entered'
