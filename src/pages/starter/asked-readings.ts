/** The rows of readings that a new visit asks for: what the case is about, and what the last visits read. */
import type { Horse, Practice, Stage, Visit } from '../../casebook/model.ts'
import { type MeasureId, measures } from '../../hoof/measures.ts'
import { askedAt } from '../../trend/asked-readings.ts'
import type { Formatter } from '../shared/format.ts'
import { lastReadings } from './last-values.ts'
import { blanks, remarked } from './lines.ts'

export function readingLines(
  horse: Horse,
  past: readonly Visit[],
  { feetOrder }: Practice,
  format: Formatter,
): readonly string[] {
  const { starter: w } = format.words
  const told = new Set<MeasureId>()
  const rows = (stage: Stage) =>
    askedAt(stage, horse, past).map(({ measure, of }) => {
      const last = told.has(measure) ? null : lastReadings(past, measure, feetOrder, format)
      told.add(measure)
      return remarked(`  ${measures[measure].name}: ${blanks(of, feetOrder)}`, last)
    })
  const [before, after] = [rows('before'), rows('after')]
  return [
    ...(before.length === 0 ? [] : [remarked('before:', w.before(feetOrder.join(' '))), ...before]),
    ...(after.length === 0 ? [] : [remarked('after:', w.after), ...after]),
  ]
}
