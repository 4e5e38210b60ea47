/** What drawings know of a foot's shape. */
import { describe, expect, it } from 'vitest'
import { footMeasures } from '../../src/pages/shared/foot-measures.ts'
import type { AssessedReading } from '../../src/trend/assessment.ts'

const reading = (
  visit: string,
  measure: AssessedReading['measure'],
  value: number,
  more: Partial<AssessedReading> = {},
): AssessedReading => ({
  visit,
  date: visit,
  stage: 'after',
  foot: 'LF',
  measure,
  value,
  source: 'entered',
  sd: 1,
  ...more,
})

describe('the measures of a foot', () => {
  const readings = [
    reading('2026-01-12', 'width', 124),
    reading('2026-01-12', 'toe-length', 92),
    reading('2026-02-16', 'toe-length', 95, { stage: 'before' }),
    reading('2026-02-16', 'toe-length', 88),
    reading('2026-02-16', 'toe-length', 86, { source: 'photo' }),
    reading('2026-02-16', 'heel-gap', 7, { source: 'derived' }),
    reading('2026-02-16', 'toe-length', 80, { foot: 'RF' }),
    reading('2026-03-23', 'toe-length', 97, { stage: 'before' }),
  ]

  it('are the last of each up to a visit, by gauge before picture, none derived', () => {
    expect(footMeasures(readings, 'LF', '2026-02-16')).toEqual({ width: 124, 'toe-length': 88 })
    expect(footMeasures(readings, 'LF', '2026-01-12')).toEqual({ width: 124, 'toe-length': 92 })
  })

  it('never mix stages: those of the stage of the last visit', () => {
    expect(footMeasures(readings, 'LF', '2026-12-31')).toEqual({ 'toe-length': 97 })
  })

  it('are none where nothing was read', () => {
    expect(footMeasures(readings, 'RH', '2026-12-31')).toEqual({})
  })
})
