/** What was read last, in the words that stand behind a row to be filled in. */
import type { Stage, Visit } from '../../casebook/model.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { Formatter } from '../shared/format.ts'

/** The last visit and stage at which a measure was read; after the trim where both were. */
export function latestOf(
  past: readonly Visit[],
  measure: MeasureId,
): { readonly visit: Visit; readonly stage: Stage } | null {
  for (const visit of past.toReversed()) {
    for (const stage of ['after', 'before'] as const) {
      if (visit.readings.some((reading) => reading.measure === measure && reading.stage === stage))
        return { visit, stage }
    }
  }
  return null
}

/** `14 Mar, after: LF 90 mm, RF 89 mm`; null where the measure was never read. */
export function lastReadings(
  past: readonly Visit[],
  measure: MeasureId,
  order: readonly Foot[],
  format: Formatter,
): string | null {
  const latest = latestOf(past, measure)
  if (latest === null) return null
  const { visit, stage } = latest
  const { starter: w } = format.words
  const here = visit.readings.filter((one) => one.measure === measure && one.stage === stage)
  const text = order
    .flatMap((foot) => here.filter((one) => one.foot === foot))
    .map(({ foot, value }) => `${foot} ${format.measure(measure, value)}`)
    .join(', ')
  return (stage === 'after' ? w.lastAfter : w.lastBefore)(format.shortDate(visit.date), text)
}
