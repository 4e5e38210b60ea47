/** Four feet before and after, with what the trim changed and the smallest real change. */
import type { Stage } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import type { AssessedReading } from '../../trend/assessment.ts'
import { smallestRealChangeOf } from '../../trend/fit.ts'
import { capital } from '../format.ts'
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

interface VisitCell {
  readonly before: string | null
  readonly after: string | null
  /** With its sign; null unless both were read. */
  readonly change: string | null
  readonly isReal: boolean
}

interface Both {
  readonly before: AssessedReading | null
  readonly after: AssessedReading | null
}

const anyIds: readonly AnyMeasureId[] = [...measureIds, ...derivedIds]

/** One row a measure that was read at the visit, in the usual order. */
export function visitRows(of: HorseCase, visit: string): readonly VisitRow[] {
  return anyIds.flatMap((id) => rowOf(of, of.readingsAt(visit, id), id))
}

function rowOf(of: HorseCase, readings: readonly AssessedReading[], id: AnyMeasureId): readonly VisitRow[] {
  if (readings.length === 0) return []
  const { format, words } = of
  const both = feet.map((foot) => bothOf(readings, foot))
  const limits = both.flatMap((one) => limitOf(one) ?? [])
  const sources = new Set(
    both.flatMap(({ before, after }) => [before, after].flatMap((one) => one?.source ?? [])),
  )
  const note = sources.has('derived') ? words.visit.derived : sources.has('photo') ? words.visit.photo : null
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
    const here = readings.filter((reading) => reading.foot === foot && reading.stage === stage)
    return here.find(({ source }) => source === 'entered') ?? here[0] ?? null
  }
  return { before: of('before'), after: of('after') }
}

/** What the two readings must differ by: engine section 3, from the scatter of each. */
const limitOf = ({ before, after }: Both): number | null =>
  before === null || after === null
    ? null
    : smallestRealChangeOf(Math.sqrt((before.sd ** 2 + after.sd ** 2) / 2))

function cellOf({ format }: HorseCase, id: AnyMeasureId, both: Both): VisitCell | null {
  const { before, after } = both
  if (before === null && after === null) return null
  const change = before === null || after === null ? null : after.value - before.value
  const limit = limitOf(both)
  return {
    before: before && format.figure(id, before.value),
    after: after && format.figure(id, after.value),
    change: change === null ? null : format.changeFigure(id, change),
    isReal: change !== null && limit !== null && Math.abs(change) >= limit,
  }
}
