/** Readings found by visit and measure, without a search through all of them each time. */
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { AssessedReading } from '../../trend/assessment.ts'

/** All feet, stages and sources, in the order of the record. */
export interface ReadingIndex {
  of(measure: AnyMeasureId): readonly AssessedReading[]
  at(visit: string, measure: AnyMeasureId): readonly AssessedReading[]
}

export function indexReadings(all: readonly AssessedReading[]): ReadingIndex {
  const byMeasure = new Map<AnyMeasureId, AssessedReading[]>()
  const visits = new Map<string, Map<AnyMeasureId, AssessedReading[]>>()
  for (const reading of all) {
    const those = byMeasure.get(reading.measure) ?? []
    those.push(reading)
    byMeasure.set(reading.measure, those)
    const measures = visits.get(reading.visit) ?? new Map<AnyMeasureId, AssessedReading[]>()
    const there = measures.get(reading.measure) ?? []
    there.push(reading)
    measures.set(reading.measure, there)
    visits.set(reading.visit, measures)
  }
  return {
    of: (measure) => byMeasure.get(measure) ?? [],
    at: (visit, measure) => visits.get(visit)?.get(measure) ?? [],
  }
}
