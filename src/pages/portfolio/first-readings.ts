/** The readings of the first visit, and which of them lay outside their bands. */
import { nearestEdge } from '../../hoof/bands.ts'
import { feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import type { AssessedReading, Trend } from '../../trend/assessment.ts'
import type { CaseContext } from './context.ts'

export const measureOrder: readonly AnyMeasureId[] = [...measureIds, ...derivedIds]

/** Readings of the first visit: before the trim where they were taken so, else after. */
export function firstReadings({ assessment, first }: CaseContext): AssessedReading[] {
  const all = assessment.readings.filter(({ visit }) => visit === first.id)
  const key = ({ foot, measure }: AssessedReading) => `${foot}|${measure}`
  const chosen = new Map<string, AssessedReading>()
  for (const stage of ['after', 'before'] as const) {
    for (const source of ['photo', 'derived', 'entered'] as const) {
      for (const reading of all)
        if (reading.stage === stage && reading.source === source) chosen.set(key(reading), reading)
    }
  }
  const order = ({ foot, measure }: AssessedReading) =>
    feet.indexOf(foot) * 100 + measureOrder.indexOf(measure)
  return [...chosen.values()].sort((a, b) => order(a) - order(b))
}

export interface OutsideBand {
  readonly reading: AssessedReading
  readonly trend: Trend
  readonly edge: number
}

/** Readings of the first visit outside the bands that the engine judged by, the furthest in smallest real changes first. */
export function outsideBand(context: CaseContext): readonly OutsideBand[] {
  const { assessment } = context
  return firstReadings(context)
    .flatMap((reading) => {
      const trend = assessment.trends.find(
        ({ foot, measure }) => foot === reading.foot && measure === reading.measure,
      )
      const edge = trend?.target ? nearestEdge(reading.value, trend.target) : null
      return trend === undefined || edge === null ? [] : [{ reading, trend, edge }]
    })
    .toSorted((a, b) => distance(b) - distance(a))
}

const distance = ({ reading, trend, edge }: OutsideBand) =>
  Math.abs(reading.value - edge) / trend.smallestRealChange
