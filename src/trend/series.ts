/** Which readings make the one trend of a measure at a foot. */
import { type Foot, feet } from '../hoof/feet.ts'
import { type AnyMeasureId, isMeasureId, measures } from '../hoof/measures.ts'
import type { SeriesPoint } from './assessed-trend.ts'
import { allMeasures, type Column, type Columns, type Family, families } from './columns.ts'
import { derivations, measureOf, partsMatter, propagate, typicalParts } from './derived.ts'

/** A column's readings in order of time; `day` counts from the first of them. */
export interface Series {
  readonly column: Column
  /** Place of each reading's visit in the record. */
  readonly visits: readonly number[]
  readonly points: readonly SeriesPoint[]
  /** Day number of day 0. */
  readonly firstDay: number
}

/** The one series of each foot and measure that has a reading, in order of feet, then measures. */
export const allSeries = (columns: Columns): readonly Series[] =>
  feet.flatMap((foot) =>
    allMeasures.flatMap((measure) => {
      const column = columnForTrend(columns, foot, measure)
      return column === null ? [] : [seriesOf(column, columns)]
    }),
  )

function seriesOf(column: Column, { visits: all, days }: Columns): Series {
  const visits: number[] = []
  const points: SeriesPoint[] = []
  let firstDay = 0
  for (const [i, visit] of all.entries()) {
    const value = column.values[i] ?? Number.NaN
    if (Number.isNaN(value)) continue
    const day = days[i] ?? 0
    if (points.length === 0) firstDay = day
    visits.push(i)
    points.push({ visit: visit.id, date: visit.date, day: day - firstDay, value })
  }
  return { column, visits, points, firstDay }
}

/**
 * The column that the trend is made of: gauge readings if a stage of them has two, else photo readings if a stage of
 * them has two, else whichever there are, gauge first. Within a family: `after` where it has two readings, else
 * `before`; where there is nothing before, the single reading after.
 */
export function columnForTrend(columns: Columns, foot: Foot, measure: AnyMeasureId): Column | null {
  return chooseColumn(trendCandidates(columns, foot, measure), count)
}

/** Gauge after, gauge before, photo after, photo before: the order in which `chooseColumn` looks. */
export const trendCandidates = (
  columns: Columns,
  foot: Foot,
  measure: AnyMeasureId,
): readonly (Column | null)[] =>
  families.flatMap((family: Family) => [
    columns.find(family, 'after', foot, measure),
    columns.find(family, 'before', foot, measure),
  ])

/** The rule alone, for any way of counting: the backtest counts up to an earlier visit. */
export function chooseColumn(
  candidates: readonly (Column | null)[],
  countOf: (column: Column) => number,
): Column | null {
  const with2 = candidates.find((column) => column !== null && countOf(column) >= 2)
  if (with2) return with2
  const [gaugeAfter = null, gaugeBefore = null, photoAfter = null, photoBefore = null] = candidates
  const byLikeness = [gaugeBefore, gaugeAfter, photoBefore, photoAfter]
  return byLikeness.find((column) => column !== null && countOf(column) > 0) ?? null
}

function count(column: Column): number {
  let n = 0
  for (const value of column.values) if (!Number.isNaN(value)) n++
  return n
}

/** Repeatability and smallest change that matters of a series. */
export interface Scale {
  readonly sd: number
  readonly matters: number
}

/** Grows with the readings of a column, so that the scale of any first part of a series is at hand. */
export interface RunningScale {
  /** Takes in the reading of a visit. */
  add(visit: number): void
  now(): Scale
}

/**
 * The scale of a measure is its table line. A derived one's is propagated from its parts' at the mean of each part
 * over the readings taken in. Photo readings are never taken to be surer than the measure's repeatability, and less
 * sure where the marked points say so (root mean square of the readings' own standard deviations).
 */
export function runningScale(column: Column): RunningScale {
  const { from, measure, family } = column
  const sums = from?.parts.map(() => 0) ?? []
  const squares = from?.parts.map(() => 0) ?? [0]
  let n = 0
  return {
    add(visit) {
      n++
      for (const [i, values] of (from?.parts ?? []).entries()) sums[i] = (sums[i] ?? 0) + (values[visit] ?? 0)
      if (family === 'photo')
        for (const [i, sds] of (from?.partSds ?? [column.sds]).entries())
          squares[i] = (squares[i] ?? 0) + (sds[visit] ?? 0) ** 2
    },
    now() {
      const own = (i: number, sd: number) => Math.max(sd, n === 0 ? 0 : Math.sqrt((squares[i] ?? 0) / n))
      if (isMeasureId(measure))
        return { sd: own(0, measures[measure].sd), matters: measures[measure].matters }
      const derivation = from?.derivation ?? derivations.find(({ id }) => id === measure)
      if (derivation === undefined) return { sd: Number.NaN, matters: Number.NaN }
      const at = from === null ? typicalParts(derivation) : sums.map((sum) => sum / n)
      const sds = derivation.parts.map((part, i) => {
        const id = measureOf(part)
        return id === null ? 0 : from === null ? measures[id].sd : own(i, measures[id].sd)
      })
      const sd = propagate(derivation, at, sds)
      return {
        sd: from === null ? own(0, sd) : sd,
        matters: propagate(derivation, at, partsMatter(derivation)),
      }
    },
  }
}

/** The scale over a whole series. */
export function scaleOf(series: Series): Scale {
  const running = runningScale(series.column)
  for (const visit of series.visits) running.add(visit)
  return running.now()
}
