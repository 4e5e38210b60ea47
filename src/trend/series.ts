/** Which readings make the one trend of a measure at a foot. */
import { type Foot, feet } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { SeriesPoint } from './assessed-trend.ts'
import { allMeasures, type Column, type Columns, type Family, families } from './columns.ts'
import { lazily } from './lazily.ts'

/** A column's readings in order of time; days count from the first of them. */
export interface Series {
  readonly column: Column
  /** Place of each reading's visit in the record. */
  readonly places: readonly number[]
  readonly days: Float64Array
  readonly values: Float64Array
  /** Day number of day 0. */
  readonly firstDay: number
  /** The readings as a page shows them. */
  readonly points: () => readonly SeriesPoint[]
}

/** The one series of each foot and measure that has a reading, in order of feet, then measures. */
export const allSeries = (columns: Columns): readonly Series[] =>
  feet.flatMap((foot) =>
    allMeasures.flatMap((measure) => {
      const column = columnForTrend(columns, foot, measure)
      return column === null ? [] : [seriesOf(column, columns)]
    }),
  )

function seriesOf(column: Column, columns: Columns): Series {
  const places: number[] = []
  const days = new Float64Array(column.n)
  const values = new Float64Array(column.n)
  let firstDay = 0
  for (let place = 0; place < columns.visits.length; place++) {
    const value = column.values[place] ?? Number.NaN
    if (Number.isNaN(value)) continue
    const day = columns.days[place] ?? 0
    if (places.length === 0) firstDay = day
    days[places.length] = day - firstDay
    values[places.length] = value
    places.push(place)
  }
  const points = lazily(() => pointsOf(columns, places, days, values))
  return { column, places, days, values, firstDay, points }
}

const pointsOf = (
  { visits }: Columns,
  places: readonly number[],
  days: Float64Array,
  values: Float64Array,
): readonly SeriesPoint[] =>
  places.map((place, i) => ({
    visit: visits[place]?.id ?? '',
    date: visits[place]?.date ?? '',
    day: days[i] ?? 0,
    value: values[i] ?? 0,
  }))

/**
 * The column that the trend is made of: gauge readings if a stage of them has two, else photo readings if a stage of
 * them has two, else whichever there are, gauge first. Within a family: `after` where it has two readings, else
 * `before`; where there is nothing before, the single reading after.
 */
export function columnForTrend(columns: Columns, foot: Foot, measure: AnyMeasureId): Column | null {
  return chooseColumn(trendCandidates(columns, foot, measure), ({ n }) => n)
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

/** Candidates by likeness, where none has two readings: gauge before, gauge after, photo before, photo after. */
const byLikeness = [1, 0, 3, 2]

/** The rule alone, for any way of counting: the backtest counts up to an earlier visit. */
export function chooseColumn<Candidate>(
  candidates: readonly (Candidate | null)[],
  countOf: (candidate: Candidate) => number,
): Candidate | null {
  for (const candidate of candidates) if (candidate !== null && countOf(candidate) >= 2) return candidate
  for (const place of byLikeness) {
    const candidate = candidates[place] ?? null
    if (candidate !== null && countOf(candidate) > 0) return candidate
  }
  return null
}
