import { describe, expect, it } from 'vitest'
import type { Band } from '../../src/hoof/bands.ts'
import { addDays, daysPerMonth } from '../../src/hoof/dates.ts'
import { feet } from '../../src/hoof/feet.ts'
import type { MeasureId } from '../../src/hoof/measures.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Trend } from '../../src/trend/assessment.ts'
import { learnedOf } from '../../src/trend/model/learned.ts'
import { untaughtPractice } from '../../src/trend/model/practice.ts'
import { t975 } from '../../src/trend/student.ts'
import { lineOn } from '../../src/trend/trends.ts'
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
  it('takes `after` from two readings on, and arrivals beside them but for the first', () => {
    const visits: VisitSketch[] = [
      { date: '2026-01-05', before: { 'toe-angle': 44 }, after: { 'toe-angle': 46 } },
      { date: '2026-02-09', before: { 'toe-angle': 45 }, after: { 'toe-angle': 47 } },
      { date: '2026-03-16', before: { 'toe-angle': 46 } },
    ]
    const trend = only(visits)
    expect(trend).toMatchObject({ stage: 'after', n: 4, change: 1 })
    expect(trend.points.map(({ date, stage, value }) => [date, stage, value])).toEqual([
      ['2026-01-05', 'after', 46],
      ['2026-02-09', 'after', 47],
    ])
  })

  it('takes `before` where there is one reading after, and never mixes the two', () => {
    const visits: VisitSketch[] = [
      { date: '2026-01-05', before: { 'toe-angle': 44 } },
      { date: '2026-02-09', before: { 'toe-angle': 45 }, after: { 'toe-angle': 47 } },
    ]
    const trend = only(visits)
    expect(trend).toMatchObject({ stage: 'before', n: 2 })
    expect(trend.points.map(({ visit, value }) => [visit, value])).toEqual([
      ['2026-01-05', 44],
      ['2026-02-09', 45],
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
    const trend = only(visits, { low: 50, high: 54 })
    expect(trend).toMatchObject({ n: 2, fit: null, verdict: 'too early to tell', chance: 1, isClear: false })
    expect(trend).toMatchObject({ forecast: null, pace: null, position: 'off target' })
  })

  it('says of one reading that it is too early, and where it stands', () => {
    const trend = only(angles([44]), { low: 50, high: 54 })
    expect(trend).toMatchObject({ n: 1, change: 0, fit: null, verdict: 'too early to tell', leftOut: [] })
    expect(trend).toMatchObject({ first: { value: 44 }, last: { value: 44 }, position: 'off target' })
    expect(only(angles([52]), { low: 46, high: 58 }).position).toBe('on target')
    expect(only(angles([50]), { low: 50, high: 60 }).position).toBe('near target')
  })

  it('is none of a horse without readings', () => {
    expect(trendsOf([])).toEqual([])
    expect(trendsOf([{ date: '2026-01-05' }])).toEqual([])
  })
})

describe('verdict and position', () => {
  const band = { low: 50, high: 54 }

  it.each<[string, string, readonly number[], Band | null]>([
    ['rising', 'on target', [36, 40, 44, 48, 52], { low: 46, high: 60 }],
    ['improving', 'off target', [40, 42, 44, 46, 48].map((x) => x - 4), band],
    ['worsening', 'off target', [48, 46, 44, 42, 40], band],
    ['worsening', 'off target', [56, 58, 60, 62, 64], band],
    ['improving', 'off target', [68, 66, 64, 62, 60], band],
    ['rising', 'no target', [40, 42, 44, 46, 48], null],
    ['falling', 'no target', [48, 46, 44, 42, 40], null],
    ['too early to tell', 'off target', [40, 41], band],
    ['too early to tell', 'no target', [45, 46], null],
    ['rising', 'no target', [40, 42, 44, 46, 48], { low: null, high: null }],
  ])('%s, %s: %j', (verdict, position, values, target) =>
    expect(only(angles(values), target)).toMatchObject({ verdict, position }),
  )

  it('is steady only when every change that matters is excluded', () => {
    const still = Array.from({ length: 9 }, (_, i) => 45 + (i % 2) * 0.2)
    expect(only(angles(still), band).verdict).toBe('steady')
    expect(only(angles(still)).verdict).toBe('steady')
    expect(only(angles(still.slice(0, 4))).verdict).toBe('too early to tell')
  })

  it('waits for two and a half months', () => {
    const steep = [40, 50, 60]
    expect(only(angles(steep, 38)).verdict).toBe('too early to tell')
    expect(only(angles(steep, 39)).verdict).toBe('rising')
  })

  it('counts a level on the very edge as in the band, whatever the unit it was written in', () => {
    const inches = [2 * 25.4, 2 * 25.4, 2 * 25.4]
    const visits = courseOf('toe-length', inches)
    const horse = buildHorse({ visits, targets: { 'toe-length': { LF: { low: null, high: 50.8 } } } })
    expect(assess(horse, practice(), asOf).trends[0]?.forecast).toBeNull()
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
    expect(balance({})).toMatchObject({ target: { low: -2, high: 2 }, targetFrom: 'default' })
    expect(balance({ 'heel-balance': { LF: { low: -0.5, high: 0.5 } } })).toMatchObject({
      target: { low: -0.5, high: 0.5 },
      targetFrom: 'practitioner',
    })
  })

  it('has the smallest real change of two readings after a trim: t sqrt(2) of trim and reading', () => {
    const one = only(angles([44]))
    const { e, u, worth } = learnedOf(untaughtPractice.learned, 'gauge', 'toe-angle', 'LF')
    expect(one.smallestRealChange).toBeCloseTo(t975(worth) * Math.SQRT2 * Math.hypot(e, u) * 1.4, 12)
    const some = only(angles([44, 46, 43, 47]))
    expect(some.smallestRealChange).toBeCloseTo((some.fit?.t ?? 0) * Math.SQRT2 * (some.fit?.sd ?? 0), 12)
  })
})

describe('the fit of a trend', () => {
  it('has the level and its interval at the last reading, and the line on any day', () => {
    const { fit } = only(angles([40, 42, 44, 46, 48]))
    if (fit === null) throw new Error('no fit')
    expect(fit.slopePerMonth).toBeCloseTo((2 / 35) * daysPerMonth, 9)
    const { value, low, high } = lineOn(fit, addDays('2026-01-05', 140))
    expect(value).toBeCloseTo(48, 9)
    expect(value).toBeCloseTo(fit.levelAtLast, 9)
    expect(low).toBeCloseTo(fit.levelAtLastInterval.low, 9)
    expect(high).toBeCloseTo(fit.levelAtLastInterval.high, 9)
    const later = lineOn(fit, addDays('2026-01-05', 300))
    expect(later.high - later.low).toBeGreaterThan(high - low)
    expect(fit.slopeHigh - fit.slopePerMonth).toBeCloseTo(fit.slopePerMonth - fit.slopeLow, 12)
  })
})

describe('forecast', () => {
  const band = { low: 50, high: 54 }
  /** As of the day after the last visit. */
  const forecast = (values: readonly number[], target: Band | null, every = 35) => {
    const visits = angles(values, every)
    const targets = target === null ? {} : { 'toe-angle': { LF: target } }
    return assess(buildHorse({ visits, targets }), practice(), addDays(visits.at(-1)?.date ?? '', 1))
      .trends[0]?.forecast
  }

  it('is a day, or not before a month, or none yet, or too far, or moving away', () => {
    expect(forecast([34, 36.2, 37.9, 40.1, 42, 43.8, 46], band)).toMatchObject({ kind: 'date', edge: 50 })
    expect(forecast([45, 45, 45.5, 45, 45.5, 45], { low: 52, high: null })?.kind).toBe('not before')
    expect(forecast([45, 46], band)).toEqual({ kind: 'no date yet', edge: 50 })
    const slow = Array.from({ length: 20 }, (_, i) => 30 + i * 0.2)
    expect(forecast(slow, { low: 50, high: null })).toEqual({ kind: 'more than 18 months', edge: 50 })
    expect(forecast([48, 46, 44, 42, 40, 38, 36], band)).toEqual({ kind: 'moving away', edge: 50 })
  })

  it('is none on target or without a band', () => {
    expect(forecast([48, 50, 53], band)).toBeNull()
    expect(forecast([40, 44, 48], null)).toBeNull()
  })

  it('that has come is due, and no longer ahead', () => {
    const visits = angles([34, 36.2, 37.9, 40.1, 42, 43.8, 46])
    const horse = buildHorse({ visits, targets: { 'toe-angle': { LF: band } } })
    const on = (day: string) => assess(horse, practice(), day).trends[0]?.forecast
    const soon = on('2026-08-05')
    if (soon?.kind !== 'date') throw new Error('expected a date')
    expect(soon.isDue).toBe(false)
    expect(on(soon.date)).toMatchObject({ kind: 'date', date: soon.date, isDue: true })
  })
})

describe('what clearly moves', () => {
  const moving = (slope: number) =>
    Object.fromEntries(feet.map((foot, k) => [foot, Array.from({ length: 8 }, (_, i) => 45 + k + slope * i)]))
  const visitsOf = (...courses: readonly (readonly [MeasureId, Record<string, number[]>])[]): VisitSketch[] =>
    Array.from({ length: 8 }, (_, i) => ({
      date: addDays('2026-01-05', 35 * i),
      after: Object.fromEntries(
        courses.map(([measure, byFoot]) => [
          measure,
          Object.fromEntries(feet.map((foot) => [foot, byFoot[foot]?.[i] ?? Number.NaN])),
        ]),
      ),
    }))

  it('is told of each foot and of all together', () => {
    const { trends, together } = assess(
      buildHorse({ visits: visitsOf(['toe-angle', moving(0.7)]) }),
      practice(),
      asOf,
    )
    const toes = trends.filter(({ measure }) => measure === 'toe-angle')
    expect(toes.map(({ isClear }) => isClear)).toEqual([true, true, true, true])
    expect(together.find(({ measure }) => measure === 'toe-angle')).toMatchObject({
      foot: 'all',
      n: 8,
      verdict: 'rising',
      isClear: true,
    })
  })

  it('is sooner sure of all four than of one', () => {
    const { trends, together } = assess(
      buildHorse({ visits: visitsOf(['toe-angle', moving(0.22)]) }),
      practice(),
      asOf,
    )
    expect(trends.filter(({ measure, isClear }) => measure === 'toe-angle' && isClear)).toEqual([])
    const all = together.find(({ measure }) => measure === 'toe-angle')
    const one = trends.find(({ measure }) => measure === 'toe-angle')
    expect(all?.chance).toBeLessThan(one?.chance ?? 0)
  })

  it('is a small enough chance among as many as there are', () => {
    const { trends, together } = assess(
      buildHorse({
        visits: visitsOf(['toe-angle', moving(0.55)], ['width', moving(0.02)], ['breakover', moving(0)]),
      }),
      practice(),
      asOf,
    )
    const tested = [...trends, ...together].filter(({ chance }) => chance < 1)
    const clear = tested.filter(({ isClear }) => isClear)
    expect(clear.length).toBeGreaterThan(0)
    expect(clear.length).toBeLessThan(tested.length)
    expect(Math.max(...clear.map(({ chance }) => chance))).toBeLessThanOrEqual(
      (clear.length / tested.length) * 0.1,
    )
  })

  it('is nothing before two and a half months', () => {
    const { trends } = assess(buildHorse({ visits: angles([40, 60]) }), practice(), asOf)
    expect(trends[0]).toMatchObject({ chance: 1, isClear: false })
  })

  it('of all feet has a target where every foot has the same, and is held while one foot is', () => {
    const targets = (LF: Band) => ({
      'toe-angle': { ...Object.fromEntries(feet.map((foot) => [foot, { low: 40, high: 60 }])), LF },
    })
    const visits = visitsOf(['toe-angle', moving(0.05)])
    const all = (LF: Band, more: Partial<VisitSketch> = {}) =>
      assess(
        buildHorse({
          visits: visits.map((visit, i) => (i === 7 ? { ...visit, ...more } : visit)),
          targets: targets(LF),
        }),
        practice(),
        visits.at(-1)?.date ?? asOf,
      ).together.find(({ measure }) => measure === 'toe-angle')
    expect(all({ low: 40, high: 60 })).toMatchObject({ target: { low: 40, high: 60 }, position: 'on target' })
    expect(all({ low: 41, high: 60 })).toMatchObject({ target: null, position: 'no target' })
    expect(all({ low: 40, high: 60 }, { findings: ['RH drainage, toe, 2'] })?.position).toBe('held')
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
    // Heel tilt and load index against differences of a thousandth; a weight told by a tape is off by 5 kg.
    const tilt = (m: number, l: number, w: number) => (Math.atan((m - l) / w) * 180) / Math.PI
    const step = 1e-3
    const tiltSd = Math.hypot(
      (1.5 * (tilt(33 + step, 30, 125) - tilt(33, 30, 125))) / step,
      (1.5 * (tilt(33, 30 + step, 125) - tilt(33, 30, 125))) / step,
      (2 * (tilt(33, 30, 125 + step) - tilt(33, 30, 125))) / step,
    )
    expect(value('heel-tilt')?.sd).toBeCloseTo(tiltSd, 5)
    const index = (girth: number, kg: number) => ((kg / 0.45359237) * 12.56) / (girth / 25.4) ** 2
    const indexSd = Math.hypot(
      (2 * (index(360, 500) - index(360 + step, 500))) / step,
      (5 * (index(360, 500 + step) - index(360, 500))) / step,
    )
    expect(value('load-index')?.sd).toBeCloseTo(indexSd, 4)
  })

  it('of a pair are carried by its left foot', () => {
    const mismatch = readings.filter(({ measure }) => measure === 'pair-mismatch')
    expect(new Set(mismatch.map(({ foot }) => foot))).toEqual(new Set(['LF']))
  })

  it('have trends of their own, with 2.1 mm as the repeatability of heel balance', () => {
    const balance = trends.find(({ measure, foot }) => measure === 'heel-balance' && foot === 'LF')
    expect(balance?.n).toBe(3)
    const { e, u, worth } = learnedOf(untaughtPractice.learned, 'gauge', 'heel-balance', 'LF')
    // All three on one line: s2 = worth / (worth + 1).
    expect(balance?.fit?.sd).toBeCloseTo(Math.hypot(e, u) * 2.1213 * Math.sqrt(worth / (worth + 1)), 4)
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
