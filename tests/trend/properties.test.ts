import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Horse } from '../../src/casebook/model.ts'
import { addDays, daysBetween, daysPerMonth } from '../../src/hoof/dates.ts'
import type { Foot, PerFoot } from '../../src/hoof/feet.ts'
import { parseLength } from '../../src/hoof/units.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Assessment } from '../../src/trend/assessment.ts'
import { lessonsOf } from '../../src/trend/model/practice.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'

const first = '2024-01-05'

type Numbers = readonly number[]
interface Row {
  readonly day: number
  readonly before: readonly [lengths: Numbers, angles: Numbers]
  readonly after: readonly [lengths: Numbers, angles: Numbers, heels: Numbers]
  /** Which of the sheets were filled in at all. */
  readonly isRead: readonly [boolean, boolean]
  readonly ring: number
}

/** Visits with both stages of the fore pair, a ring that is followed and sheets left empty, on rising days. */
const visits: fc.Arbitrary<readonly Row[]> = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 1, max: 60 }),
      lengths: fc.array(fc.integer({ min: 60 * 16, max: 120 * 16 }), { minLength: 4, maxLength: 4 }),
      angles: fc.array(fc.integer({ min: 70, max: 120 }), { minLength: 4, maxLength: 4 }),
      heels: fc.array(fc.integer({ min: 40, max: 90 }), { minLength: 4, maxLength: 4 }),
      isRead: fc.tuple(fc.boolean(), fc.integer({ min: 0, max: 5 }).map(Boolean)),
      ring: fc.integer({ min: 5, max: 60 }),
    }),
    { minLength: 1, maxLength: 9 },
  )
  .map((rows) => {
    let day = 0
    return rows.map(({ gap, lengths, angles, heels, isRead, ring }): Row => {
      day += gap
      return {
        day,
        before: [lengths.slice(0, 2), angles.slice(0, 2)],
        after: [lengths.slice(2), angles.slice(2), heels],
        isRead,
        ring,
      }
    })
  })

const fore = ([left, right]: Numbers, by: number) => ({ LF: (left ?? 0) / by, RF: (right ?? 0) / by })
const sheet = ({ day, before, after, isRead, ring }: Row): VisitSketch => ({
  date: addDays(first, day),
  ...(isRead[0] ? { before: { 'toe-length': fore(before[0], 16), 'toe-angle': fore(before[1], 2) } } : {}),
  ...(isRead[1]
    ? {
        after: {
          'toe-length': fore(after[0], 16),
          'toe-angle': fore(after[1], 2),
          'heel-medial': fore(after[2], 2),
          'heel-lateral': fore(after[2].slice(2), 2),
        },
      }
    : {}),
  growOut: [`LF ring, toe, ${ring}`, `RF ring, toe, ${ring + 3}`],
})
const both = <T>(band: T) => ({ LF: band, RF: band })
const targets = {
  'toe-length': both({ low: null, high: 88.9 }),
  'toe-angle': both({ low: 50, high: 54 }),
}
const unchanged = (visit: VisitSketch): VisitSketch => visit
const horseOf = (rows: readonly Row[], change = unchanged, id = 'horse'): Horse =>
  buildHorse({ id, targets, visits: rows.map((row) => change(sheet(row))) })
const asOf = addDays(first, 700)
const judged = (horse: Horse, day = asOf): Assessment => assess(horse, practice(), day)

/** Every value of every sheet made anew. */
const changed =
  (make: (measure: string, values: PerFoot<number>) => PerFoot<number>) =>
  (visit: VisitSketch): VisitSketch => {
    const of = (stage: VisitSketch['after']) =>
      Object.fromEntries(
        Object.entries(stage ?? {}).map(([measure, values]) => [
          measure,
          make(measure, values as PerFoot<number>),
        ]),
      )
    return {
      ...visit,
      ...(visit.before === undefined ? {} : { before: of(visit.before) }),
      ...(visit.after === undefined ? {} : { after: of(visit.after) }),
    }
  }

describe('properties', () => {
  it('the unit that lengths were written in never changes a verdict, a position or what clearly moves', () => {
    const rewritten = (unit: 'cm' | 'in') =>
      changed((measure, values) =>
        measure === 'toe-angle'
          ? values
          : Object.fromEntries(
              Object.entries(values).map(([foot, mm]) => [
                foot,
                parseLength(`${unit === 'cm' ? mm / 10 : mm / 25.4} ${unit}`, 'mm')?.mm ?? Number.NaN,
              ]),
            ),
      )
    const said = ({ trends, together }: Assessment) =>
      [...trends, ...together].map(({ verdict, position, isClear, forecast }) => [
        verdict,
        position,
        isClear,
        forecast?.kind,
      ])
    fc.assert(
      fc.property(visits, fc.constantFrom('cm' as const, 'in' as const), (rows, unit) => {
        expect(said(judged(horseOf(rows, rewritten(unit))))).toEqual(said(judged(horseOf(rows))))
      }),
      { numRuns: 120, seed: 1 },
    )
  })

  it('shifting all dates shifts forecasts and dates by as much, and changes nothing else', () => {
    fc.assert(
      // By whole months of one length nothing else could be: a month that may be named begins with the calendar's.
      fc.property(visits, fc.integer({ min: -3000, max: 3000 }), (rows, shift) => {
        const plain = judged(horseOf(rows))
        const moved = judged(
          horseOf(rows, (visit) => ({ ...visit, date: addDays(visit.date, shift) })),
          addDays(asOf, shift),
        )
        for (const [i, trend] of plain.trends.entries()) {
          const other = moved.trends[i]
          expect(other?.verdict).toBe(trend.verdict)
          expect(other?.position).toBe(trend.position)
          expect(other?.fit?.slopePerMonth).toBe(trend.fit?.slopePerMonth)
          expect(other?.forecast?.kind === 'date').toBe(trend.forecast?.kind === 'date')
          if (trend.forecast?.kind === 'date' && other?.forecast?.kind === 'date') {
            expect(daysBetween(trend.forecast.date, other.forecast.date)).toBe(shift)
            expect(daysBetween(trend.forecast.earliest, other.forecast.earliest)).toBe(shift)
            if (trend.forecast.latest !== null)
              expect(daysBetween(trend.forecast.latest, other.forecast.latest ?? '')).toBe(shift)
            expect(other.forecast.isDue).toBe(trend.forecast.isDue)
          }
        }
        for (const [i, ring] of plain.growOut.entries()) {
          const other = moved.growOut[i]
          expect(other?.state).toBe(ring.state)
          if (ring.date !== null) expect(daysBetween(ring.date, other?.date ?? '')).toBe(shift)
        }
        expect(moved.backtest.held).toBe(plain.backtest.held)
      }),
      { numRuns: 120, seed: 2 },
    )
  })

  it('mirroring left and right mirrors everything', () => {
    const swap = (values: PerFoot<number>): PerFoot<number> => ({
      ...(values.RF === undefined ? {} : { LF: values.RF }),
      ...(values.LF === undefined ? {} : { RF: values.LF }),
    })
    const swapped = (line: string) => (line.startsWith('LF') ? `RF${line.slice(2)}` : `LF${line.slice(2)}`)
    const mirrored = (visit: VisitSketch): VisitSketch => ({
      ...changed((_, values) => swap(values))(visit),
      growOut: (visit.growOut ?? []).map(swapped),
    })
    fc.assert(
      fc.property(visits, (rows) => {
        const plain = judged(horseOf(rows))
        const other = judged(horseOf(rows, mirrored))
        const of = ({ trends }: Assessment, foot: Foot) =>
          trends
            .filter((one) => one.foot === foot && one.measure !== 'pair-mismatch')
            .map(({ isClear: _, ...one }) => ({ ...one, foot: '' }))
        expect(of(other, 'LF')).toEqual(of(plain, 'RF'))
        expect(of(other, 'RF')).toEqual(of(plain, 'LF'))
        const mismatch = ({ trends }: Assessment) => trends.find(({ measure }) => measure === 'pair-mismatch')
        expect(mismatch(other)?.last.value).toBe(
          mismatch(plain) === undefined ? undefined : 0 - (mismatch(plain)?.last.value ?? 0) || 0,
        )
        // What is common to both is the same, but for the order of a sum.
        for (const [i, { fit }] of plain.together.entries())
          expect(other.together[i]?.fit?.slopePerMonth ?? 0).toBeCloseTo(fit?.slopePerMonth ?? 0, 9)
        expect(other.pairs.map(({ difference }) => difference)).toEqual(
          plain.pairs.map(({ difference }) => 0 - difference || 0),
        )
        const rings = ({ growOut }: Assessment, foot: Foot) =>
          growOut.filter((one) => one.foot === foot).map((one) => ({ ...one, foot: '' }))
        expect(rings(other, 'LF')).toEqual(rings(plain, 'RF'))
        expect(other.plans.map(({ foot, trims }) => [foot === 'LF' ? 'RF' : 'LF', trims]).toSorted()).toEqual(
          plain.plans.map(({ foot, trims }) => [foot, trims]).toSorted(),
        )
      }),
      { numRuns: 120, seed: 3 },
    )
  })

  it('a series that is a straight line is recovered, slope, level and crossing', () => {
    const gaps = fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 1, maxLength: 20 })
    fc.assert(
      fc.property(
        gaps,
        fc.double({ min: 38, max: 47, noNaN: true }),
        fc.double({ min: -0.2, max: 0.2, noNaN: true }),
        fc.boolean(),
        (steps, level, slope, isReadOnArrival) => {
          let day = 0
          const days = [0, ...steps.map((gap) => (day += gap))]
          const horse = buildHorse({
            targets: { 'toe-angle': { LF: { low: 50, high: null } } },
            visits: days.map((at, i) => ({
              date: addDays(first, at),
              // On arrival it stands as the trim before left it: no growth of an angle, as is believed of it.
              ...(isReadOnArrival && i > 0
                ? { before: { 'toe-angle': level + slope * (days[i - 1] ?? 0) } }
                : {}),
              after: { 'toe-angle': level + slope * at },
            })),
          })
          const [trend] = judged(horse, addDays(first, at(days))).trends
          expect((trend?.fit?.slopePerMonth ?? 0) / daysPerMonth).toBeCloseTo(slope, 8)
          expect(trend?.fit?.level).toBeCloseTo(level, 6)
          expect(trend?.leftOut).toEqual([])
          expect(trend?.pace).toBeNull()
        },
      ),
      { numRuns: 300, seed: 4 },
    )
  })

  it('the order of horses does not change what is learned, nor does asking twice', () => {
    fc.assert(
      fc.property(fc.array(visits, { minLength: 1, maxLength: 5 }), (rowsOfAll) => {
        const horses = rowsOfAll.map((rows, i) => horseOf(rows, unchanged, `h${i}`))
        const one = lessonsOf(horses, asOf)
        expect(lessonsOf(horses, asOf)).toEqual(one)
        expect(lessonsOf(horses.toReversed(), asOf).learned).toEqual(one.learned)
      }),
      { numRuns: 25, seed: 6 },
    )
  })

  it('the same record gives the same to the last byte', () => {
    fc.assert(
      fc.property(visits, (rows) => {
        const [one, other] = [judged(horseOf(rows)), judged(horseOf(rows))]
        expect(JSON.stringify(other)).toBe(JSON.stringify(one))
      }),
      { numRuns: 40, seed: 7 },
    )
  })

  it('no date of what is to come lies before the last reading, and no range is the wrong way round', () => {
    fc.assert(
      fc.property(visits, fc.integer({ min: 0, max: 700 }), (rows, later) => {
        const last = addDays(first, rows.at(-1)?.day ?? 0)
        const { trends, growOut } = judged(horseOf(rows), addDays(last, later))
        for (const { forecast, last: reading } of trends) {
          if (forecast?.kind === 'not before') expect(forecast.month > addDays(last, later)).toBe(true)
          if (forecast?.kind !== 'date') continue
          expect(forecast.earliest >= reading.date).toBe(true)
          expect(forecast.earliest <= forecast.date).toBe(true)
          expect(forecast.latest === null || forecast.date <= forecast.latest).toBe(true)
        }
        for (const { date, earliest, latest, sightings } of growOut) {
          if (date === null) continue
          expect((earliest ?? '') >= (sightings.at(-1)?.date ?? '')).toBe(true)
          expect((earliest ?? '') <= date).toBe(true)
          expect(latest === null || date <= latest).toBe(true)
        }
      }),
      { numRuns: 150, seed: 8 },
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

const at = (days: readonly number[]): number => (days.at(-1) ?? 0) + 1
