import { stringify } from 'csv-stringify/sync'
import { kindOf } from '../shared/format.ts'
import type { CaseContext } from './context.ts'

const units = { length: 'mm', angle: 'deg', ratio: '', index: 'lb/in2' } as const

/**
 * Every reading of the case, a line each: alias, day, stage, foot, measure, value, unit, source.
 * Lengths in millimetres, angles in degrees; four decimals at most. RFC 4180, line ends LF.
 */
export function readingsCsv({ assessment, alias, dayOf }: CaseContext): string {
  return stringify(
    assessment.readings.map(({ date, stage, foot, measure, value, source }) => ({
      case: alias,
      day: dayOf(date),
      stage,
      foot,
      measure,
      value: Number(value.toFixed(4)),
      unit: units[kindOf(measure)],
      source,
    })),
    { header: true, columns: ['case', 'day', 'stage', 'foot', 'measure', 'value', 'unit', 'source'] },
  )
}
