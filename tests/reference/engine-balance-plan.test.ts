/**
 * Common practice, no source: on a flat foot a quarter-inch heel difference takes at least about four months and several
 * trims. The plan works to the 2 mm limit at 1.5 mm a trim.
 */
import { describe, expect, it } from 'vitest'
import { daysBetween, daysPerMonth } from '../../src/hoof/dates.ts'
import { assess } from '../../src/trend/assess.ts'
import { buildHorse, practice } from '../trend/build-horse.ts'

const quarterInch = 6.35
const trimmedOn = '2026-01-05'

function planFor(trimCycleDays: number, low: number | null = null) {
  const horse = buildHorse({
    trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
    targets: low === null ? {} : { 'heel-balance': { LF: { low: -low, high: low } } },
    visits: [{ date: trimmedOn, after: { 'heel-medial': 36.35, 'heel-lateral': 30 } }],
  })
  const [plan] = assess(horse, practice({ trimCycleDays }), trimmedOn).plans
  if (plan === undefined) throw new Error('no plan')
  return { plan, months: daysBetween(trimmedOn, plan.steps.at(-1)?.date ?? '') / daysPerMonth }
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

  it('takes four months with a trim every six weeks', () => expect(planFor(42).months).toBeGreaterThan(4))

  it('takes three and a half months with a trim every five weeks: about four, on its short side', () => {
    const { months } = planFor(35)
    expect(months).toBeGreaterThan(3.4)
    expect(months).toBeLessThan(3.5)
  })

  it('takes five trims, 25 weeks, to be quite level', () => {
    const { plan, months } = planFor(35, 0)
    expect(plan.trims).toBe(5)
    expect(months).toBeGreaterThan(5.7)
  })
})
