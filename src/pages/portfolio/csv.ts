import { csvText } from '../shared/csv.ts'
import { kindOf } from '../shared/format.ts'
import type { CaseContext } from './context.ts'

const units = { length: 'mm', angle: 'deg', ratio: '', index: 'lb/in2' } as const

/**
 * Every reading of the case, a line each: alias, week or day, stage, foot, measure, value, unit, source.
 * Lengths in millimetres, angles in degrees; four decimals at most.
 */
export const readingsCsv = ({ assessment, practice, alias, timeOf }: CaseContext): string =>
  csvText(
    [
      'case',
      practice.portfolio.time === 'weeks' ? 'week' : 'day',
      'stage',
      'foot',
      'measure',
      'value',
      'unit',
      'source',
    ],
    assessment.readings.map(({ date, stage, foot, measure, value, source }) => [
      alias,
      timeOf(date),
      stage,
      foot,
      measure,
      Number(value.toFixed(4)),
      units[kindOf(measure)],
      source,
    ]),
  )
