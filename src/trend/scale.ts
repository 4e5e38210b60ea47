/** How fine a series can be read: the repeatability of its readings, and the smallest change in it that matters. */
import { type AnyMeasureId, isMeasureId, measures } from '../hoof/measures.ts'
import type { Column } from './columns.ts'
import { derivations, measureOf, partsMatter, propagate, typicalParts, weightSd } from './derived.ts'

/** Grows with the readings of a column, so that the scale of any first part of a series is at hand. */
export interface RunningScale {
  /** Takes in the reading of a visit. */
  add(visit: number): void
  /** Repeatability over the readings taken in. */
  sd(): number
  /** Smallest change that matters, at the readings taken in. */
  matters(): number
}

/**
 * The scale of a measure is its table line. A derived one's is propagated from its parts' at the mean of each part
 * over the readings taken in. Photo readings are never taken to be surer than the measure's repeatability, and less
 * sure where the marked points say so (root mean square of the readings' own standard deviations).
 */
export const runningScale = (column: Column): RunningScale =>
  column.from === null ? plainScale(column) : derivedScale(column, column.from)

/** Adds to each sum what its column has at a visit. */
function addEach(sums: number[], columns: readonly Float64Array[], visit: number, power: 1 | 2): void {
  for (let i = 0; i < columns.length; i++) {
    const column = columns[i]
    const value = column === undefined ? 0 : (column[visit] ?? 0)
    sums[i] = (sums[i] ?? 0) + (power === 2 ? value ** 2 : value)
  }
}

/** Sums the squares of the readings' standard deviations; gauge readings have none but the table's. */
function squaresOf(family: Column['family'], sds: readonly Float64Array[]) {
  const squares = sds.map(() => 0)
  return {
    add(visit: number) {
      if (family === 'photo') addEach(squares, sds, visit, 2)
    },
    atLeast: (sd: number, i: number, n: number) =>
      n === 0 ? sd : Math.max(sd, Math.sqrt((squares[i] ?? 0) / n)),
  }
}

/** Readings entered or taken from a picture as they are; a derived measure among them was read with no parts beside it. */
function plainScale({ measure, family, sds }: Column): RunningScale {
  const squares = squaresOf(family, [sds])
  const line = isMeasureId(measure) ? measures[measure] : typicalLine(measure)
  let n = 0
  return {
    add(visit) {
      n++
      squares.add(visit)
    },
    sd: () => squares.atLeast(line.sd, 0, n),
    matters: () => line.matters,
  }
}

function typicalLine(measure: string): { readonly sd: number; readonly matters: number } {
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

function derivedScale(
  { family }: Column,
  { derivation, parts, partSds }: NonNullable<Column['from']>,
): RunningScale {
  const squares = squaresOf(family, partSds)
  const tableSds = derivation.parts.map((part) => repeatability(measureOf(part)))
  const sums = parts.map(() => 0)
  const at = parts.map(() => 0)
  const sds = parts.map(() => 0)
  const slopes = parts.map(() => 0)
  let n = 0
  const setMeans = () => {
    for (let i = 0; i < sums.length; i++) at[i] = (sums[i] ?? 0) / n
  }
  return {
    add(visit) {
      n++
      addEach(sums, parts, visit, 1)
      squares.add(visit)
    },
    sd() {
      setMeans()
      for (let i = 0; i < sds.length; i++) {
        sds[i] = squares.atLeast(tableSds[i] ?? 0, i, n)
      }
      return propagate(derivation, at, sds, slopes)
    },
    matters() {
      setMeans()
      return propagate(derivation, at, partsMatter(derivation), slopes)
    },
  }
}

/** The scale over all readings of a column. */
export function scaleOf(column: Column): { readonly sd: number; readonly matters: number } {
  const running = runningScale(column)
  // Of gauge readings as they are the table line says all.
  if (column.from !== null || column.family === 'photo')
    for (let visit = 0; visit < column.values.length; visit++)
      if (!Number.isNaN(column.values[visit])) running.add(visit)
  return { sd: running.sd(), matters: running.matters() }
}
