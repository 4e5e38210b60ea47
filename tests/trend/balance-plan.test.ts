/**
 * Common practice, no source: on a flat foot a quarter-inch heel difference takes at least about four months and several
 * trims. The plan works to the 2 mm limit at 1.5 mm a trim, and counts as done when the heels arrive level a cycle after
 * the last trim.
 */
import { describe, expect, it } from 'vitest'
import { daysBetween, daysPerMonth } from '../../src/hoof/dates.ts'
import { assess } from '../../src/trend/assess.ts'
import { buildHorse, practice } from './build-horse.ts'

const quarterInch = 6.35
const trimmedOn = '2026-01-05'

function planFor(trimCycleDays: number, limit: number | null = null) {
  const horse = buildHorse({
    trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
    targets: limit === null ? {} : { 'heel-balance': { LF: { low: -limit, high: limit } } },
    visits: ['2025-12-01', trimmedOn].map((date) => ({
      date,
      after: { 'heel-medial': 36.35, 'heel-lateral': 30 },
    })),
  })
  const [plan] = assess(horse, practice({ trimCycleDays }), trimmedOn).plans
  if (plan === undefined) throw new Error('no plan')
  const monthsTo = (date: string | null | undefined) => daysBetween(trimmedOn, date ?? '') / daysPerMonth
  return { plan, toLastTrim: monthsTo(plan.steps.at(-1)?.date), inAll: monthsTo(plan.shownOn) }
}

describe('a quarter-inch difference on a flat foot', () => {
  it('takes three trims to come within 2 mm', () => {
    const { plan } = planFor(42)
    expect(plan.now).toBeCloseTo(quarterInch, 10)
    expect(plan.excess).toBeCloseTo(4.35, 10)
    expect(plan.trims).toBe(3)
    const expected = plan.steps.map((step) => step.expected)
    for (const [i, left] of [4.85, 3.35, 2].entries()) expect(expected[i]).toBeCloseTo(left, 10)
  })

  it.each([
    [28, 2.76, 3.68],
    [35, 3.45, 4.6],
    [42, 4.14, 5.52],
    [56, 5.52, 7.36],
  ])(
    'with a trim every %i days has its last trim after %f months and arrives level after %f',
    (cycle, trims, all) => {
      const { plan, toLastTrim, inAll } = planFor(cycle)
      expect(plan.readOn).toBe(trimmedOn)
      expect(toLastTrim).toBeCloseTo(trims, 2)
      expect(inAll).toBeCloseTo(all, 2)
    },
  )

  it('takes at least about four months at every usual cycle, 4 to 8 weeks', () => {
    for (const weeks of [4, 5, 6, 7, 8])
      expect(Math.round(planFor(weeks * 7).inAll)).toBeGreaterThanOrEqual(4)
  })

  it('takes five trims and seven months to be quite level, with a trim every five weeks', () => {
    const { plan, inAll } = planFor(35, 0)
    expect(plan.trims).toBe(5)
    expect(Math.round(inAll)).toBe(7)
  })
})
