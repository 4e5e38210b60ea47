/** Two people of a practice, one of whom reads finer: told apart once each has read enough. */
import { describe, expect, it } from 'vitest'
import type { Horse } from '../../src/casebook/model.ts'
import { addDays } from '../../src/hoof/dates.ts'
import { feet } from '../../src/hoof/feet.ts'
import { measures } from '../../src/hoof/measures.ts'
import { assess } from '../../src/trend/assess.ts'
import { lessonsOf } from '../../src/trend/model/practice.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'
import { seeded } from './random.ts'

const asOf = '2026-12-31'
const { sd } = measures['toe-angle']

/** Toe angles of all feet at eight visits; each visit by one of two, who read with the given errors. */
function horses(count: number, errors: { readonly ilse: number; readonly tom: number }): readonly Horse[] {
  const random = seeded(4)
  return Array.from({ length: count }, (_, i) => {
    const visits = Array.from({ length: 8 }, (__, k): VisitSketch & { readonly by: keyof typeof errors } => {
      const by = random.even() < 0.5 ? 'ilse' : 'tom'
      const read = () => 48 + 0.4 * sd * random.normal() + errors[by] * sd * random.normal()
      const angles = Object.fromEntries(feet.map((foot) => [foot, read()]))
      return { date: addDays('2026-01-05', 40 * k), after: { 'toe-angle': angles }, by }
    })
    const horse = buildHorse({ id: `horse-${i}`, visits })
    return { ...horse, visits: horse.visits.map((visit, k) => ({ ...visit, by: visits[k]?.by ?? null })) }
  })
}

describe('who took the readings', () => {
  it('is told apart: finer and coarser than the practice in the mean', () => {
    const { hands, learned } = lessonsOf(horses(20, { ilse: 0.7, tom: 1.5 }), asOf)
    // About the practice's own error, the root of the mean of both squares.
    const middle = Math.sqrt((0.7 ** 2 + 1.5 ** 2) / 2)
    expect(hands.ilse?.factor).toBeGreaterThan(0.7 / middle - 0.2)
    expect(hands.ilse?.factor).toBeLessThan(0.7 / middle + 0.2)
    expect(hands.tom?.factor).toBeGreaterThan(1.5 / middle - 0.2)
    expect(hands.tom?.factor).toBeLessThan(1.5 / middle + 0.2)
    expect(Object.keys(learned.people)).toEqual(expect.arrayContaining(['ilse', 'tom']))
  })

  it('is not told from few readings', () => {
    expect(lessonsOf(horses(3, { ilse: 0.5, tom: 2 }), asOf).hands).toEqual({})
  })

  it('makes two who read alike alike', () => {
    const { hands } = lessonsOf(horses(20, { ilse: 1, tom: 1 }), asOf)
    for (const { factor } of Object.values(hands)) expect(Math.abs(factor - 1)).toBeLessThan(0.15)
  })

  it('is in the error of each reading that pages compare', () => {
    const [first] = horses(20, { ilse: 0.5, tom: 2 })
    if (first === undefined) throw new Error('no horse')
    const { learned } = lessonsOf(horses(20, { ilse: 0.5, tom: 2 }), asOf)
    const { readings } = assess(first, practice(), asOf, learned)
    const by = new Map(first.visits.map((visit) => [visit.id, visit.by]))
    const e = (learned.measures['gauge toe-angle']?.e ?? 1) * sd
    for (const { measure, visit, sd: own } of readings)
      if (measure === 'toe-angle') expect(own).toBeCloseTo(e * (learned.people[by.get(visit) ?? ''] ?? 1), 9)
  })

  it('weighs the readings of a course', () => {
    const [first, ...others] = horses(20, { ilse: 0.5, tom: 2 })
    if (first === undefined) throw new Error('no horse')
    const { learned } = lessonsOf([first, ...others], asOf)
    const level = (people: typeof learned.people) =>
      assess(first, practice(), asOf, { ...learned, people }).trends[0]?.fit
    const told = level(learned.people)
    const untold = level({})
    expect(told?.slopePerMonth).not.toBe(untold?.slopePerMonth)
    // The same readings by one hand alone are all worth the same.
    const byOne = { ...first, visits: first.visits.map((visit) => ({ ...visit, by: 'ilse' })) }
    const slope = (people: typeof learned.people) =>
      assess(byOne, practice(), asOf, { ...learned, people }).trends[0]?.fit?.slopeVariance ?? 0
    expect(slope(learned.people)).toBeLessThan(slope({}))
  })
})
