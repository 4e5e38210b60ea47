import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Horse } from '../../src/casebook/model.ts'
import { addDays, daysBetween } from '../../src/hoof/dates.ts'
import type { Foot, PerFoot } from '../../src/hoof/feet.ts'
import { parseLength } from '../../src/hoof/units.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Assessment } from '../../src/trend/assessment.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'

const first = '2024-01-05'

/** Visits with toe length and angle, heels and widths of the fore pair, on rising days. */
const visits = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 1, max: 60 }),
      length: fc.array(fc.integer({ min: 60 * 16, max: 120 * 16 }), { minLength: 2, maxLength: 2 }),
      angle: fc.array(fc.integer({ min: 70, max: 120 }), { minLength: 2, maxLength: 2 }),
      heel: fc.array(fc.integer({ min: 40, max: 90 }), { minLength: 4, maxLength: 4 }),
    }),
    { minLength: 1, maxLength: 9 },
  )
  .map((rows) => {
    let day = 0
    return rows.map(({ gap, length, angle, heel }) => {
      day += gap
      return { day, length, angle, heel }
    })
  })
type Row = Readonly<{ day: number; length: number[]; angle: number[]; heel: number[] }>

const [LF, RF]: readonly Foot[] = ['LF', 'RF']
const sheet = ({ day, length, angle, heel }: Row): VisitSketch => ({
  date: addDays(first, day),
  after: {
    'toe-length': { LF: (length[0] ?? 0) / 16, RF: (length[1] ?? 0) / 16 },
    'toe-angle': { LF: (angle[0] ?? 0) / 2, RF: (angle[1] ?? 0) / 2 },
    'heel-medial': { LF: (heel[0] ?? 0) / 2, RF: (heel[1] ?? 0) / 2 },
    'heel-lateral': { LF: (heel[2] ?? 0) / 2, RF: (heel[3] ?? 0) / 2 },
  },
})
const both = <T>(band: T) => ({ LF: band, RF: band })
const targets = {
  'toe-length': both({ low: null, high: 88.9 }),
  'toe-angle': both({ low: 50, high: 54 }),
}
const horseOf = (
  rows: readonly Row[],
  change: (visit: VisitSketch) => VisitSketch = (visit) => visit,
): Horse => buildHorse({ targets, visits: rows.map((row) => change(sheet(row))) })
const asOf = addDays(first, 2000)
const judged = (horse: Horse, day = asOf): Assessment => assess(horse, practice(), day)

describe('properties', () => {
  it('the unit that lengths were written in never changes a verdict', () => {
    const rewritten = (unit: 'cm' | 'in') => (visit: VisitSketch) => ({
      ...visit,
      after: Object.fromEntries(
        Object.entries(visit.after ?? {}).map(([measure, values]) => [
          measure,
          measure === 'toe-angle'
            ? values
            : Object.fromEntries(
                Object.entries(values).map(([foot, mm]) => [
                  foot,
                  parseLength(`${unit === 'cm' ? mm / 10 : mm / 25.4} ${unit}`, 'mm')?.mm ?? Number.NaN,
                ]),
              ),
        ]),
      ),
    })
    fc.assert(
      fc.property(visits, fc.constantFrom('cm' as const, 'in' as const), (rows, unit) => {
        const plain = judged(horseOf(rows)).trends
        const other = judged(horseOf(rows, rewritten(unit))).trends
        expect(other.map(({ verdict }) => verdict)).toEqual(plain.map(({ verdict }) => verdict))
      }),
      { numRuns: 150, seed: 1 },
    )
  })

  it('shifting all dates shifts forecasts by as much, and changes nothing else', () => {
    fc.assert(
      fc.property(visits, fc.integer({ min: -3000, max: 3000 }), (rows, shift) => {
        const plain = judged(horseOf(rows))
        const moved = judged(
          horseOf(rows, (visit) => ({ ...visit, date: addDays(visit.date, shift) })),
          addDays(asOf, shift),
        )
        for (const [i, trend] of plain.trends.entries()) {
          const other = moved.trends[i]
          expect(other?.verdict).toBe(trend.verdict)
          expect(other?.fit?.slope).toBe(trend.fit?.slope)
          expect(other?.forecast?.kind).toBe(trend.forecast?.kind)
          if (trend.forecast?.kind === 'date' && other?.forecast?.kind === 'date') {
            expect(daysBetween(trend.forecast.date, other.forecast.date)).toBe(shift)
            expect(daysBetween(trend.forecast.earliest, other.forecast.earliest)).toBe(shift)
            if (trend.forecast.latest !== null)
              expect(daysBetween(trend.forecast.latest, other.forecast.latest ?? '')).toBe(shift)
          }
        }
        expect(moved.backtest.held).toBe(plain.backtest.held)
      }),
      { numRuns: 150, seed: 2 },
    )
  })

  it('mirroring left and right mirrors everything', () => {
    const swap = (values: PerFoot<number>): PerFoot<number> => ({
      ...(values.RF === undefined ? {} : { LF: values.RF }),
      ...(values.LF === undefined ? {} : { RF: values.LF }),
    })
    const mirrored = (visit: VisitSketch): VisitSketch => ({
      ...visit,
      after: Object.fromEntries(
        Object.entries(visit.after ?? {}).map(([measure, values]) => [
          measure,
          typeof values === 'number' ? values : swap(values),
        ]),
      ),
    })
    fc.assert(
      fc.property(visits, (rows) => {
        const plain = judged(horseOf(rows))
        const other = judged(horseOf(rows, mirrored))
        const of = ({ trends }: Assessment, foot: Foot | undefined) =>
          trends
            .filter((one) => one.foot === foot && one.measure !== 'pair-mismatch')
            .map((one) => ({ ...one, foot: '' }))
        expect(of(other, LF)).toEqual(of(plain, RF))
        expect(of(other, RF)).toEqual(of(plain, LF))
        const mismatch = ({ trends }: Assessment) => trends.find(({ measure }) => measure === 'pair-mismatch')
        expect(mismatch(other)?.last).toBe(0 - (mismatch(plain)?.last ?? 0) || 0)
        expect(other.pairs.map(({ difference }) => difference)).toEqual(
          plain.pairs.map(({ difference }) => 0 - difference || 0),
        )
        expect(other.plans.map(({ foot, trims }) => [foot === 'LF' ? 'RF' : 'LF', trims]).toSorted()).toEqual(
          plain.plans.map(({ foot, trims }) => [foot, trims]).toSorted(),
        )
      }),
      { numRuns: 150, seed: 3 },
    )
  })

  it('a series that is a straight line is recovered, slope, level and crossing', () => {
    const gaps = fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 1, maxLength: 20 })
    fc.assert(
      fc.property(
        gaps,
        fc.double({ min: 38, max: 47, noNaN: true }),
        fc.double({ min: -0.2, max: 0.2, noNaN: true }),
        (steps, level, slope) => {
          let day = 0
          const days = [0, ...steps.map((gap) => (day += gap))]
          const horse = buildHorse({
            targets: { 'toe-angle': { LF: { low: 50, high: null } } },
            visits: days.map((at) => ({
              date: addDays(first, at),
              after: { 'toe-angle': level + slope * at },
            })),
          })
          const [trend] = judged(horse).trends
          expect(trend?.whole?.slope).toBeCloseTo(slope, 9)
          expect(trend?.whole?.level).toBeCloseTo(level, 7)
          expect((trend?.whole?.theilSenPerMonth ?? 0) / 30.4375).toBeCloseTo(slope, 9)
          expect(trend?.secondOpinion).toBeNull()
          expect(trend?.pace).toBeNull()
          if (trend?.forecast?.kind === 'date') {
            const crossing = daysBetween(first, trend.forecast.date)
            expect(Math.abs(crossing - (50 - level) / slope)).toBeLessThanOrEqual(1)
          }
        },
      ),
      { numRuns: 300, seed: 4 },
    )
  })

  it('nothing that it says is NaN or infinite', () => {
    const clean = (value: unknown): boolean =>
      typeof value === 'number'
        ? Number.isFinite(value)
        : value !== null && typeof value === 'object'
          ? Object.values(value).every(clean)
          : true
    fc.assert(
      fc.property(visits, (rows) => {
        expect(clean(judged(horseOf(rows)))).toBe(true)
      }),
      { numRuns: 100, seed: 5 },
    )
  })
})
