/** The readings of a horse along its visits: what stands where, and what was last read there. */
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type MeasureId, measureIds } from '../../hoof/measures.ts'
import { fromMillimetres, type LengthUnit } from '../../hoof/units.ts'
import type { Stage } from '../model.ts'
import type { PlacedReading } from '../readings.ts'
import type { PlacedVisit } from '../visit-file.ts'

export const stages: readonly Stage[] = ['before', 'after']

const footIndex: Readonly<Record<Foot, number>> = { LF: 0, RF: 1, LH: 2, RH: 3 }
const measureIndex = Object.fromEntries(measureIds.map((id, index) => [id, index])) as Record<
  MeasureId,
  number
>
const cellsPerStage = measureIds.length * feet.length

const cellOf = (measure: MeasureId, foot: Foot): number =>
  measureIndex[measure] * feet.length + footIndex[foot]

/** The readings of one visit by stage, measure and foot. */
export interface Grid {
  at(stage: Stage, measure: MeasureId, foot: Foot): PlacedReading | undefined
}

export function gridOf(visit: PlacedVisit): Grid {
  const cells: (PlacedReading | undefined)[] = new Array(2 * cellsPerStage)
  for (const placed of visit.readings) {
    const { stage, measure, foot } = placed.reading
    cells[(stage === 'after' ? cellsPerStage : 0) + cellOf(measure, foot)] = placed
  }
  return {
    at: (stage, measure, foot) => cells[(stage === 'after' ? cellsPerStage : 0) + cellOf(measure, foot)],
  }
}

/** The latest reading of a measure at a foot, with the one before it while it is itself in doubt. */
export interface Last {
  readonly value: number
  readonly stage: Stage
  readonly date: PlainDate
  readonly unlessDoubted: Last | null
}

export interface LastReadings {
  get(measure: MeasureId, foot: Foot): Last | undefined
  set(measure: MeasureId, foot: Foot, last: Last): void
}

export function lastReadings(): LastReadings {
  const cells: (Last | undefined)[] = new Array(cellsPerStage)
  return {
    get: (measure, foot) => cells[cellOf(measure, foot)],
    set: (measure, foot, last) => {
      cells[cellOf(measure, foot)] = last
    },
  }
}

/** A value in words: degrees, or a length in the practice's unit. */
export function inWords(value: number, kind: 'length' | 'angle', units: LengthUnit): string {
  if (kind === 'angle') return `${Number(value.toFixed(1))}°`
  return `${Number(fromMillimetres(value, units).toFixed(units === 'mm' ? 1 : 2))} ${units}`
}
