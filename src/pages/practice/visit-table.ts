/** Four feet before and after, with what the trim changed and the smallest real change. */
import type { Stage } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import type { AssessedReading } from '../../trend/assessment.ts'
import { z975 } from '../../trend/student.ts'
import { capital } from '../shared/format.ts'
import { type HorseCase, measureHref } from './horse-case.ts'

export interface VisitRow {
  readonly name: string
  readonly href: string
  readonly unit: string
  /** `worked out`, `from a photo`; null for a reading by gauge. */
  readonly note: string | null
  /** One a foot; null where nothing was read. */
  readonly cells: readonly (VisitCell | null)[]
  readonly smallest: string | null
}

export interface VisitCell {
  /** The reading on arrival where there is one after the trim as well; else empty. */
  readonly from: string
  /** The last reading of the visit. */
  readonly value: string
  /** With its sign; null unless both were read. */
  readonly change: string | null
  /** The change and whether it is real; or the stage, where only one was read. */
  readonly note: string
}

interface Both {
  readonly before: AssessedReading | null
  readonly after: AssessedReading | null
}

const anyIds: readonly AnyMeasureId[] = [...measureIds, ...derivedIds]

/** One row a measure that was read at the visit, in the usual order. */
export function visitRows(of: HorseCase, visit: string): readonly VisitRow[] {
  return anyIds.flatMap((id) => rowOf(of, of.readings.at(visit, id), id))
}

function rowOf(of: HorseCase, readings: readonly AssessedReading[], id: AnyMeasureId): readonly VisitRow[] {
  if (readings.length === 0) return []
  const { format, words } = of
  const both = feet.map((foot) => bothOf(readings, foot))
  const limits = both.flatMap((one) => limitOf(one) ?? [])
  const isFrom = (source: AssessedReading['source']) =>
    both.some(({ before, after }) => before?.source === source || after?.source === source)
  const note = isFrom('derived') ? words.visit.derived : isFrom('photo') ? words.visit.photo : null
  return [
    {
      name: capital(format.name(id)),
      href: measureHref(id),
      unit: format.unit(id),
      note,
      cells: both.map((one) => cellOf(of, id, one)),
      smallest: limits.length === 0 ? null : format.fine(id, Math.max(...limits)),
    },
  ]
}

/** The reading of each stage: the entered one where there are two. */
function bothOf(readings: readonly AssessedReading[], foot: Foot): Both {
  const of = (stage: Stage) => {
    let found: AssessedReading | null = null
    for (const reading of readings) {
      if (reading.foot !== foot || reading.stage !== stage) continue
      if (reading.source === 'entered') return reading
      found ??= reading
    }
    return found
  }
  return { before: of('before'), after: of('after') }
}

/** What the two readings must differ by, from the scatter of each: 95 %. */
const limitOf = ({ before, after }: Both): number | null =>
  before === null || after === null ? null : z975 * Math.hypot(before.sd, after.sd)

function cellOf({ format, words }: HorseCase, id: AnyMeasureId, both: Both): VisitCell | null {
  const { before, after } = both
  const limit = limitOf(both)
  if (before !== null && after !== null && limit !== null) {
    const change = format.changeFigure(id, after.value - before.value)
    return {
      from: words.visit.from(format.figure(id, before.value)),
      value: format.figure(id, after.value),
      change,
      note: words.visit.change(change, Math.abs(after.value - before.value) >= limit),
    }
  }
  const only = after ?? before
  return (
    only && { from: '', value: format.figure(id, only.value), change: null, note: words.visit[only.stage] }
  )
}
