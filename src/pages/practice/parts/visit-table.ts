/** Four feet at one visit: each reading on arrival and after the trim, and by how much two must differ. */
import { grouped } from '../../../casebook/grouped.ts'
import type { Stage } from '../../../casebook/model.ts'
import { type Foot, feet } from '../../../hoof/feet.ts'
import { type AnyMeasureId, measureIds } from '../../../hoof/measures.ts'
import type { AssessedReading } from '../../../trend/assessment.ts'
import { z975 } from '../../../trend/student.ts'
import { capital } from '../../shared/format.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { type ShownReading, shownReading } from '../case/shown-reading.ts'

export interface VisitRow {
  readonly name: string
  readonly unit: string
  /** `from a photo`, and what two readings must differ by, where that is not the usual. */
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

export interface VisitReadings {
  /** A row a measure that was read at the visit, in the usual order. */
  readonly rows: readonly VisitRow[]
  /** What two readings must differ by where a row does not say it; null where each does. */
  readonly limits: string | null
}

export function visitReadings(of: HorseCase, visit: string): VisitReadings {
  const { words } = of
  const read = measureIds.flatMap((id) => limitedRow(of, visit, id))
  const usual = usualLimits(read)
  const row = ({ limit, ...own }: LimitedRow): VisitRow =>
    limit === null || usual.includes(limit)
      ? own
      : { ...own, notes: [...own.notes, words.visit.realFrom(limit)] }
  return {
    rows: read.map(row),
    limits: usual.length === 0 ? null : words.visit.usualLimits(of.format.list(usual)),
  }
}

interface LimitedRow extends VisitRow {
  /** With its unit; null where no foot was read at both stages. */
  readonly limit: string | null
}

/** Of each unit the limit that most measures share. */
const usualLimits = (rows: readonly LimitedRow[]): readonly string[] =>
  [...grouped(rows, ({ unit }) => unit)].flatMap(([, those]) => {
    const counts = [...grouped(those, ({ limit }) => limit)].map(
      ([limit, { length }]) => [limit, length] as const,
    )
    const [most] = counts.toSorted(([, a], [, b]) => b - a)
    return most && most[0] !== null && most[1] > 1 ? [most[0]] : []
  })

function limitedRow(of: HorseCase, visit: string, id: AnyMeasureId): readonly LimitedRow[] {
  const readings = of.readings.at(visit, id)
  if (readings.length === 0) return []
  const { format, words } = of
  const both = feet.map((foot) => bothOf(readings, foot))
  const limits = both.flatMap((one) => limitOf(one) ?? [])
  const isPhoto = both.some(({ before, after }) => before?.source === 'photo' || after?.source === 'photo')
  return [
    {
      name: capital(format.name(id)),
      unit: format.unit(id),
      notes: isPhoto ? [words.visit.photo] : [],
      limit: limits.length === 0 ? null : format.fine(id, Math.max(...limits)),
      cells: both.map((one) => cellOf(of, id, one, true)),
    },
  ]
}

/** The reading of each stage: the entered one where there are two. */
export function bothOf(readings: readonly AssessedReading[], foot: Foot): Both {
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

/** @param told whether a real change stands out */
export function cellOf({ format }: HorseCase, id: AnyMeasureId, both: Both, told: boolean): VisitCell | null {
  const shown = (reading: AssessedReading | null) =>
    reading && shownReading(reading, format.figure(id, reading.value))
  const { before, after } = both
  return before === null && after === null
    ? null
    : { arrival: shown(before), after: shown(after), isReal: told && isReal(both) }
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
