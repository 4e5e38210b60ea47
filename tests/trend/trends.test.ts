import { describe, expect, it } from 'vitest'
import type { Band } from '../../src/hoof/bands.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Trend } from '../../src/trend/assessment.ts'
import { buildHorse, courseOf, practice, type VisitSketch } from './build-horse.ts'

const asOf = '2027-12-31'

function trendsOf(visits: readonly VisitSketch[], target: Band | null = null): readonly Trend[] {
  const targets = target === null ? {} : { 'toe-angle': { LF: target } }
  return assess(buildHorse({ visits, targets }), practice(), asOf).trends
}
const only = (visits: readonly VisitSketch[], target: Band | null = null): Trend => {
  const [trend] = trendsOf(visits, target)
  if (trend === undefined) throw new Error('no trend')
  return trend
}
const angles = (values: readonly number[], every = 35) => courseOf('toe-angle', values, { every })

describe('which readings make a trend', () => {
  it('takes `after` from two readings on', () => {
    const visits: VisitSketch[] = [
      { date: '2026-01-05', before: { 'toe-angle': 44 }, after: { 'toe-angle': 46 } },
      { date: '2026-02-09', before: { 'toe-angle': 45 }, after: { 'toe-angle': 47 } },
      { date: '2026-03-16', before: { 'toe-angle': 46 } },
    ]
    const trend = only(visits)
    expect(trend.stage).toBe('after')
    expect(trend.points.map(({ value }) => value)).toEqual([46, 47])
  })

  it('takes `before` where there is one reading after, and never mixes the two', () => {
    const visits: VisitSketch[] = [
      { date: '2026-01-05', before: { 'toe-angle': 44 } },
      { date: '2026-02-09', before: { 'toe-angle': 45 }, after: { 'toe-angle': 47 } },
    ]
    const trend = only(visits)
    expect(trend.stage).toBe('before')
    expect(trend.points.map(({ day, value }) => [day, value])).toEqual([
      [0, 44],
      [35, 45],
    ])
  })

  it('leaves out visits after the day it speaks of', () => {
    const horse = buildHorse({ visits: angles([44, 45, 46]) })
    const { trends, visits } = assess(horse, practice(), '2026-02-10')
    expect(visits).toEqual(['2026-01-05', '2026-02-09'])
    expect(trends[0]?.n).toBe(2)
  })

  it('counts a second visit of a day as its own, on the same day', () => {
    const visits: VisitSketch[] = [
      { date: '2026-01-05', after: { 'toe-angle': 44 } },
      { date: '2026-01-05', id: '2026-01-05-b', after: { 'toe-angle': 46 } },
    ]
    const trend = only(visits)
    expect(trend.n).toBe(2)
    expect(trend.fit).toBeNull()
    expect(trend.verdict).toBe('too early to tell')
  })

  it('says of one reading that it is too early', () => {
    const trend = only(angles([44]))
    expect(trend).toMatchObject({ n: 1, first: 44, last: 44, fit: null, verdict: 'too early to tell' })
    expect(trend.wouldSettle).toMatchObject({ readings: 1 })
  })
})

describe('verdict', () => {
  const band = { low: 50, high: 54 }

  it.each<[string, readonly number[], Band | null]>([
    ['on target', [45, 47, 49, 51, 53], band],
    ['improving', [40, 42, 44, 46, 48], band],
    ['worsening', [48, 46, 44, 42, 40], band],
    ['worsening', [56, 58, 60, 62, 64], band],
    ['improving', [64, 62, 60, 58, 56], band],
    ['rising', [40, 42, 44, 46, 48], null],
    ['falling', [48, 46, 44, 42, 40], null],
    ['too early to tell', [45, 46], band],
    ['too early to tell', [45, 46], null],
    ['rising', [40, 42, 44, 46, 48], { low: null, high: null }],
  ])('%s: %j', (verdict, values, target) => expect(only(angles(values), target).verdict).toBe(verdict))

  it('steady only when every change that matters is excluded over the span', () => {
    const still = Array.from({ length: 14 }, (_, i) => 45 + (i % 2) * 0.2)
    expect(only(angles(still), band).verdict).toBe('steady')
    expect(only(angles(still)).verdict).toBe('steady')
    expect(only(angles(still.slice(0, 4))).verdict).toBe('too early to tell')
  })

  it('counts a level on the very edge as in the band, whatever the unit it was written in', () => {
    const inches = [2 * 25.4, 2 * 25.4, 2 * 25.4]
    const visits = courseOf('toe-length', inches)
    const horse = buildHorse({ visits, targets: { 'toe-length': { LF: { low: null, high: 50.8 } } } })
    expect(assess(horse, practice(), asOf).trends[0]?.verdict).toBe('on target')
  })

  it('uses the default bands where the practitioner gives none, and the target where there is one', () => {
    const visits = [0, 35, 70].map((day, i) => ({
      date: ['2026-01-05', '2026-02-09', '2026-03-16'][i] ?? '',
      after: { 'heel-medial': 33, 'heel-lateral': 30 + day / 35 },
    }))
    const balance = (targets: object) =>
      assess(buildHorse({ visits, targets }), practice(), asOf).trends.find(
        (one) => one.measure === 'heel-balance',
      )
    expect(balance({})).toMatchObject({
      target: { low: -2, high: 2 },
      targetFrom: 'default',
      verdict: 'on target',
    })
    expect(balance({ 'heel-balance': { LF: { low: -0.5, high: 0.5 } } })).toMatchObject({
      target: { low: -0.5, high: 0.5 },
      targetFrom: 'practitioner',
      verdict: 'too early to tell',
    })
  })

  it('says how many further visits would settle it', () => {
    const { wouldSettle } = only(angles([45, 46, 47]), { low: 50, high: 54 })
    expect(wouldSettle?.readings).toBe(3)
    expect(wouldSettle?.furtherVisits).toBeGreaterThan(0)
    expect(wouldSettle?.furtherVisits).toBeLessThan(4)
    // With the readings that it assumes the verdict is settled indeed, and not one visit earlier.
    const more = (n: number) =>
      angles([45, 46, 47, ...Array.from({ length: n }, (_, i) => 48 + i)].slice(0, 3 + n))
    const further = wouldSettle?.furtherVisits ?? 0
    const asked = assess(buildHorse({ visits: angles([45, 46, 47]) }), practice(), '2026-03-16').trends[0]
      ?.wouldSettle
    expect(asked?.furtherVisits).toBe(further > 0 ? asked?.furtherVisits : 0)
    const settled = asked?.furtherVisits ?? 0
    expect(only(more(settled)).verdict).toBe('rising')
    expect(only(more(settled - 1)).verdict).toBe('too early to tell')
    expect(asked?.date).toBe(more(settled).at(-1)?.date)
  })
})

describe('change', () => {
  it('is real from the smallest real change on', () => {
    expect(only(angles([44, 48.3])).changeIsReal).toBe(false)
    expect(only(angles([44, 48.5])).changeIsReal).toBe(true)
    expect(only(angles([44, 48.5])).smallestRealChange).toBeCloseTo(2.228138851964938 * Math.SQRT2 * 1.4, 9)
  })
})

describe('forecast', () => {
  const band = { low: 50, high: 54 }

  it('gives the day the line enters the band at its nearest edge', () => {
    const { forecast } = only(angles([40, 42, 44, 46, 48]), band)
    expect(forecast).toMatchObject({ kind: 'date', edge: 50, date: '2026-06-29' })
  })

  it('says no date yet, more than 18 months, and moving away', () => {
    expect(only(angles([45, 46]), band).forecast).toEqual({ kind: 'no date yet', edge: 50 })
    const slow = Array.from({ length: 20 }, (_, i) => 41 + i * 0.2)
    expect(only(angles(slow), { low: 50, high: null }).forecast).toEqual({
      kind: 'more than 18 months',
      edge: 50,
    })
    expect(only(angles([48, 46, 44, 42, 40]), band).forecast).toEqual({ kind: 'moving away', edge: 50 })
  })

  it('leaves the late end open past 18 months from the last reading', () => {
    const { forecast } = only(angles([41, 42.1, 42.8, 44.2, 44.8]), band)
    expect(forecast).toMatchObject({ kind: 'date', latest: null })
  })

  it('gives none on target or without a band', () => {
    expect(only(angles([48, 50, 52]), band).forecast).toBeNull()
    expect(only(angles([40, 44, 48])).forecast).toBeNull()
  })
})

describe('changed pace', () => {
  const bend = only(angles([34, 39, 44, 49, 51, 51, 51, 51], 70), { low: 52, high: 56 })

  it('is said, with both paces and since when', () => {
    expect(bend.pace?.sinceVisit).toBe(bend.points[4]?.visit)
    expect(bend.pace?.recentPerMonth).toBeCloseTo(0, 9)
    expect(bend.pace?.wholePerMonth).toBeGreaterThan(1)
  })

  it('rules verdict and forecast, and leaves the whole line beside it', () => {
    expect(bend.verdict).toBe('too early to tell')
    expect(bend.forecast).toEqual({ kind: 'no date yet', edge: 52 })
    expect(bend.fit?.n).toBe(4)
    expect(bend.fit?.fromDay).toBe(bend.points[4]?.day)
    expect(bend.whole?.n).toBe(8)
  })
})

describe('derived measures', () => {
  const visits = [0, 1, 2].map((i) => ({
    date: ['2026-01-05', '2026-02-09', '2026-03-16'][i] ?? '',
    body: { weightKg: 500 },
    after: {
      'toe-angle': { LF: 50 + i, RF: 46 },
      'pastern-angle': 54,
      'heel-angle': 42,
      'heel-medial': 33,
      'heel-lateral': 30 - i,
      width: 125,
      'toe-length': 85,
      'frog-width': 50 + i,
      'frog-length': 84,
      breakover: 40,
      'bearing-length': 130,
      'coronet-girth': 360,
    },
  }))
  const { readings, trends } = assess(buildHorse({ visits }), practice(), asOf)
  const value = (measure: string) => readings.find((one) => one.measure === measure && one.foot === 'LF')

  it.each([
    ['axis-deviation', 4],
    ['heel-gap', 8],
    ['heel-balance', 3],
    ['heel-tilt', (Math.atan(3 / 125) * 180) / Math.PI],
    ['toe-to-heel-ratio', 85 / 31.5],
    ['frog-ratio', 50 / 84],
    ['pair-mismatch', 4],
    ['toe-share', 40 / 130],
    ['load-index', ((500 / 0.45359237) * 12.56) / (360 / 25.4) ** 2],
  ])('%s follows from its parts', (measure, expected) => {
    expect(value(measure)?.value).toBeCloseTo(expected, 12)
    expect(value(measure)?.source).toBe('derived')
  })

  it.each([
    ['heel-balance', Math.hypot(1.5, 1.5)],
    ['axis-deviation', Math.hypot(2, 1.4)],
    ['pair-mismatch', Math.hypot(1.4, 1.4)],
    ['frog-ratio', Math.hypot(2 / 84, (50 * 2) / 84 ** 2)],
    ['toe-share', Math.hypot(2 / 130, (40 * 2) / 130 ** 2)],
    ['toe-to-heel-ratio', Math.hypot(2 / 31.5, (85 * Math.hypot(1.5, 1.5)) / (2 * 31.5 ** 2))],
  ])('%s has the repeatability that its parts give it', (measure, sd) =>
    expect(value(measure)?.sd).toBeCloseTo(sd, 12),
  )

  it('propagates as a small change of each part does', () => {
    // Heel tilt and load index against differences of a thousandth.
    const tilt = (m: number, l: number, w: number) => (Math.atan((m - l) / w) * 180) / Math.PI
    const step = 1e-3
    const tiltSd = Math.hypot(
      (1.5 * (tilt(33 + step, 30, 125) - tilt(33, 30, 125))) / step,
      (1.5 * (tilt(33, 30 + step, 125) - tilt(33, 30, 125))) / step,
      (2 * (tilt(33, 30, 125 + step) - tilt(33, 30, 125))) / step,
    )
    expect(value('heel-tilt')?.sd).toBeCloseTo(tiltSd, 5)
    const index = (girth: number) => ((500 / 0.45359237) * 12.56) / (girth / 25.4) ** 2
    expect(value('load-index')?.sd).toBeCloseTo((2 * (index(360) - index(360 + step))) / step, 4)
  })

  it('of a pair are carried by its left foot', () => {
    const mismatch = readings.filter(({ measure }) => measure === 'pair-mismatch')
    expect(new Set(mismatch.map(({ foot }) => foot))).toEqual(new Set(['LF']))
  })

  it('have trends of their own, with 2.1 mm as the repeatability of heel balance', () => {
    const balance = trends.find(({ measure, foot }) => measure === 'heel-balance' && foot === 'LF')
    expect(balance?.n).toBe(3)
    // All three on one line: s^2 = 10 s0^2 / 11.
    expect((balance?.fit?.s ?? 0) * Math.sqrt(11 / 10)).toBeCloseTo(2.1213, 4)
  })

  it('are left out where a part was not read at that stage, or no weight is known', () => {
    const horse = buildHorse({
      visits: [
        {
          date: '2026-01-05',
          before: { 'pastern-angle': 54 },
          after: { 'toe-angle': 50, 'coronet-girth': 360 },
        },
      ],
    })
    const derived = assess(horse, practice(), asOf).readings.filter(({ source }) => source === 'derived')
    expect(derived).toEqual([])
  })
})
