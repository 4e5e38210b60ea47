import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addDays, dateOfDay, dayOf, daysBetween, parseDate } from '../../src/hoof/dates.ts'

describe('plain dates', () => {
  it('knows which dates exist', () => {
    expect(parseDate('2024-02-29')).toBe('2024-02-29')
    expect(parseDate('2026-02-29')).toBeNull()
    expect(parseDate('2026-13-01')).toBeNull()
    expect(parseDate('2026-3-1')).toBeNull()
    expect(parseDate('0026-03-01')).toBeNull()
  })

  it('counts days across months, leap days and changes of clock', () => {
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2)
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2)
    expect(daysBetween('2026-03-14', '2026-01-12')).toBe(-61)
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01')
  })

  it('goes from a date to its day and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: dayOf('1900-01-01'), max: dayOf('2199-12-31') }), (day) => {
        expect(dayOf(dateOfDay(day))).toBe(day)
        expect(parseDate(dateOfDay(day))).toBe(dateOfDay(day))
      }),
    )
  })
})
