/** Readings found by visit and measure, without a search through all of them each time. */
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { AssessedReading } from '../../trend/assessment.ts'

/** All feet, stages and sources of one measure at one visit, in the order of the record. */
export type ReadingsAt = (visit: string, measure: AnyMeasureId) => readonly AssessedReading[]

export function readingsAt(all: readonly AssessedReading[]): ReadingsAt {
  const visits = new Map<string, Map<AnyMeasureId, AssessedReading[]>>()
  for (const reading of all) {
    const measures = visits.get(reading.visit) ?? new Map<AnyMeasureId, AssessedReading[]>()
    const there = measures.get(reading.measure) ?? []
    there.push(reading)
    measures.set(reading.measure, there)
    visits.set(reading.visit, measures)
  }
  return (visit, measure) => visits.get(visit)?.get(measure) ?? []
}
