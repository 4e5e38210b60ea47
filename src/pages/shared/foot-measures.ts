/** What is known of a foot's shape at a visit, for drawings. */
import type { Foot } from '../../hoof/feet.ts'
import { isMeasureId, type MeasureId } from '../../hoof/measures.ts'
import type { FootMeasures } from '../../hoof/stand-ins.ts'
import type { AssessedReading } from '../../trend/assessment.ts'

/**
 * The last readings of a foot up to a visit, all of one stage: that of its last visit, after the trim where both were
 * taken. Readings of the gauge before those of pictures.
 */
export function footMeasures(readings: readonly AssessedReading[], foot: Foot, upTo: string): FootMeasures {
  const own = readings.filter((one) => one.foot === foot && one.visit <= upTo && one.source !== 'derived')
  const lastVisit = own
    .map(({ visit }) => visit)
    .toSorted()
    .at(-1)
  const isAfter = own.some(({ visit, stage }) => visit === lastVisit && stage === 'after')
  const known = new Map<MeasureId, AssessedReading>()
  for (const reading of own) {
    const { measure, stage, visit, source } = reading
    if (!isMeasureId(measure) || stage !== (isAfter ? 'after' : 'before')) continue
    const other = known.get(measure)
    const isBetter =
      other === undefined || visit > other.visit || (visit === other.visit && source === 'entered')
    if (isBetter) known.set(measure, reading)
  }
  return Object.fromEntries([...known].map(([measure, { value }]) => [measure, value]))
}
