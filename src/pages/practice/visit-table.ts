/** Four feet at one visit: each reading on arrival and after the trim, and by how much two must differ. */
import type { Stage } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import type { AssessedReading } from '../../trend/assessment.ts'
import { z975 } from '../../trend/student.ts'
import { capital } from '../shared/format.ts'
import { type HorseCase, measureHref } from './horse-case.ts'
import { type ShownReading, shownReading } from './shown-reading.ts'

export interface VisitRow {
  readonly name: string
  readonly href: string
  readonly unit: string
  /** `from a photo`, and what two readings must differ by. */
  readonly notes: readonly string[]
  /** One a foot; null where nothing was read. */
  readonly cells: readonly (VisitCell | null)[]
}

export interface VisitCell {
  readonly arrival: ShownReading | null
  readonly after: ShownReading | null
  /** Whether the trim changed it by more than both errors explain. */
  readonly isReal: boolean
}

/** What one trim changed at one foot. */
export interface TrimChange {
  readonly foot: Foot
  /** With its sign; the figure alone, and with its unit. */
  readonly figure: string
  readonly change: string
  readonly isReal: boolean
}

interface Both {
  readonly before: AssessedReading | null
  readonly after: AssessedReading | null
}

/** A row a measure that was read at the visit, in the usual order; what follows from the readings in rows of its own. */
export const visitRows = (of: HorseCase, visit: string): readonly VisitRow[] =>
  measureIds.flatMap((id) => rowOf(of, visit, id))

export const workedOutRows = (of: HorseCase, visit: string): readonly VisitRow[] =>
  derivedIds.flatMap((id) => rowOf(of, visit, id))

function rowOf(of: HorseCase, visit: string, id: AnyMeasureId): readonly VisitRow[] {
  const readings = of.readings.at(visit, id)
  if (readings.length === 0) return []
  const { format, words } = of
  const both = feet.map((foot) => bothOf(readings, foot))
  const limits = both.flatMap((one) => limitOf(one) ?? [])
  const isPhoto = both.some(({ before, after }) => before?.source === 'photo' || after?.source === 'photo')
  return [
    {
      name: capital(format.name(id)),
      href: measureHref(id),
      unit: format.unit(id),
      notes: [
        ...(isPhoto ? [words.visit.photo] : []),
        ...(limits.length === 0 ? [] : [words.visit.realFrom(format.fine(id, Math.max(...limits)))]),
      ],
      cells: both.map((one) => cellOf(of, id, one)),
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

function isReal(both: Both): boolean {
  const limit = limitOf(both)
  return limit !== null && Math.abs((both.after?.value ?? 0) - (both.before?.value ?? 0)) >= limit
}

function cellOf({ format }: HorseCase, id: AnyMeasureId, both: Both): VisitCell | null {
  const shown = (reading: AssessedReading | null) =>
    reading && shownReading(reading, format.figure(id, reading.value))
  const { before, after } = both
  return before === null && after === null
    ? null
    : { arrival: shown(before), after: shown(after), isReal: isReal(both) }
}

/** What the trim of a visit changed, a measure at a time; those that no foot shows are left out. */
export function trimChanges(
  of: HorseCase,
  visit: string,
): readonly { readonly measure: AnyMeasureId; readonly feet: readonly TrimChange[] }[] {
  const { format } = of
  return measureIds.flatMap((measure) => {
    const readings = of.readings.at(visit, measure)
    const changed = feet.flatMap((foot): TrimChange[] => {
      const both = bothOf(readings, foot)
      if (both.before === null || both.after === null) return []
      const change = both.after.value - both.before.value
      return [
        {
          foot,
          figure: format.changeFigure(measure, change),
          change: format.change(measure, change),
          isReal: isReal(both),
        },
      ]
    })
    return changed.length === 0 ? [] : [{ measure, feet: changed }]
  })
}
