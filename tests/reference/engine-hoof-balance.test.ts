/**
 * Hoof-balance criteria of Turner, Objective assessment of hoof balance (AAEP 1992 and later reprints), as the design
 * quotes them; formula of the load index and toe length for weight from memory, its limit and the rest published.
 * Stachurska 2008, Archiv Tierzucht 51: 531: toe to heel about 2 : 1. Dyson 2011 (second hand): sound feet average
 * 52.2 at the toe and 43.5 at the heel.
 */
import { describe, expect, it } from 'vitest'
import { toKilograms } from '../../src/hoof/units.ts'
import { assess } from '../../src/trend/assess.ts'
import type { CheckKind } from '../../src/trend/assessment.ts'
import { toeLengthGuide } from '../../src/trend/checks.ts'
import { loadIndexOf } from '../../src/trend/derived.ts'
import { defaultBands } from '../../src/trend/targets.ts'
import { buildHorse, practice, type VisitSketch } from '../trend/build-horse.ts'

const kinds = (
  after: NonNullable<VisitSketch['after']>,
  weightKg: number | null = null,
): readonly CheckKind[] =>
  assess(
    buildHorse({ weightKg, visits: [{ date: '2026-01-05', after }] }),
    practice(),
    '2026-01-06',
  ).checks.map(({ kind }) => kind)

describe('load index', () => {
  it.each([
    [1000, 14, 64.1],
    [1200, 14, 76.9],
  ])('%d lb at %d in gives %f lb/in2', (pounds, inches, index) =>
    expect(loadIndexOf(inches * 25.4, toKilograms(pounds))).toBeCloseTo(index, 1),
  )

  it('above 78 speaks of small feet, at 76.9 not', () => {
    expect(kinds({ 'coronet-girth': 14 * 25.4 }, toKilograms(1220))).toContain('load index')
    expect(kinds({ 'coronet-girth': 14 * 25.4 }, toKilograms(1200))).not.toContain('load index')
  })

  it('has its limit in both published units: 78 lb/in2 is 5.48 kg/cm2', () =>
    expect((78 * 0.45359237) / 2.54 ** 2).toBeCloseTo(5.48, 2))
})

describe('criteria, met and just not met', () => {
  it.each<[CheckKind, NonNullable<VisitSketch['after']>, NonNullable<VisitSketch['after']>]>([
    ['heel gap', { 'toe-angle': 50, 'heel-angle': 45 }, { 'toe-angle': 50, 'heel-angle': 45.5 }],
    ['sheared heels', { 'heel-medial': 35, 'heel-lateral': 30 }, { 'heel-medial': 34.5, 'heel-lateral': 30 }],
    ['frog ratio', { 'frog-width': 53, 'frog-length': 80 }, { 'frog-width': 54, 'frog-length': 80 }],
    ['pair mismatch', { 'toe-angle': { LF: 50, RF: 45 } }, { 'toe-angle': { LF: 50, RF: 45.5 } }],
    ['broken axis', { 'pastern-angle': 54, 'toe-angle': 50 }, { 'pastern-angle': 53, 'toe-angle': 50 }],
  ])('%s', (kind, met, notMet) => {
    expect(kinds(met)).toContain(kind)
    expect(kinds(notMet)).not.toContain(kind)
  })

  it('a sound foot of Dyson 2011 has a heel gap of 8.7, which is why it is a remark and no caution', () => {
    const horse = buildHorse({
      visits: [{ date: '2026-01-05', after: { 'toe-angle': 52.2, 'heel-angle': 43.5 } }],
    })
    const { readings, cautions } = assess(horse, practice(), '2026-01-06')
    expect(readings.find(({ measure }) => measure === 'heel-gap')?.value).toBeCloseTo(8.7, 10)
    expect(cautions).toEqual([])
  })

  it("a foot of Stachurska's proportions has a toe to heel ratio of 2", () => {
    const horse = buildHorse({
      visits: [{ date: '2026-01-05', after: { 'toe-length': 84, 'heel-medial': 41, 'heel-lateral': 43 } }],
    })
    const { readings } = assess(horse, practice(), '2026-01-06')
    expect(readings.find(({ measure }) => measure === 'toe-to-heel-ratio')?.value).toBe(2)
  })
})

describe('defaults', () => {
  it('are the published limits and the customary 2 mm, and nothing else', () =>
    expect(defaultBands).toEqual({
      'heel-balance': { low: -2, high: 2 },
      'frog-ratio': { low: 0.67, high: null },
      'load-index': { low: null, high: 78 },
    }))

  it('toe length for weight is 3, 3 1/4 and 3 1/2 inches, to half a millimetre', () =>
    expect(toeLengthGuide.map(({ mm }) => Math.round((mm / 25.4) * 4) / 4)).toEqual([3, 3.25, 3.5]))

  it('stands beside the reading where the weight falls in a class', () => {
    expect(kinds({ 'toe-length': 95 }, 450)).toContain('toe length for weight')
    expect(kinds({ 'toe-length': 95 }, 500)).not.toContain('toe length for weight')
  })
})
