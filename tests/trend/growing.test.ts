import { describe, expect, it } from 'vitest'
import { addDays, daysPerMonth } from '../../src/hoof/dates.ts'
import { adultPrior, foalPrior } from '../../src/hoof/growth.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Growth } from '../../src/trend/assessment.ts'
import { growthRate, priorFor, wallMeasure } from '../../src/trend/grow-out.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'

const asOf = '2026-12-31'
const toe = (date: string, before: number | null, after: number | null): VisitSketch => ({
  date,
  ...(before === null ? {} : { before: { 'toe-length': before } }),
  ...(after === null ? {} : { after: { 'toe-length': after } }),
})
const growthOf = (visits: readonly VisitSketch[]): Growth | undefined =>
  assess(buildHorse({ visits }), practice(), asOf).growth.find(({ measure }) => measure === 'toe-length')

describe('the saw-tooth', () => {
  const growth = growthOf([toe('2026-01-05', 100, 90), toe('2026-02-04', 98, 89), toe('2026-03-16', 101, 88)])

  it('keeps growth between visits and steps at them apart', () => {
    expect(growth?.phases.map(({ days, gain }) => [days, gain])).toEqual([
      [30, 8],
      [40, 12],
    ])
    expect(growth?.phases[0]?.perMonth).toBeCloseTo((8 / 30) * daysPerMonth, 12)
    expect(growth?.trims.map(({ step }) => step)).toEqual([-10, -9, -13])
  })

  it('has net growth of all gains over all days, with the interval of two readings a phase', () => {
    const half = ((1.959963984540054 * 2 * Math.sqrt(4)) / 70) * daysPerMonth
    expect(growth?.days).toBe(70)
    expect(growth?.ratePerMonth).toBeCloseTo((20 / 70) * daysPerMonth, 12)
    expect(growth?.low).toBeCloseTo((20 / 70) * daysPerMonth - half, 12)
    expect(growth?.high).toBeCloseTo((20 / 70) * daysPerMonth + half, 12)
  })

  it('takes a visit with an arrival reading alone as one at which nothing was trimmed', () => {
    const grown = growthOf([
      toe('2026-01-05', 100, 90),
      toe('2026-02-04', 98, null),
      toe('2026-03-06', 106, 95),
    ])
    expect(grown?.phases.map(({ gain }) => gain)).toEqual([8, 8])
    expect(grown?.trims).toHaveLength(2)
    // The middle reading ends one phase and begins the next: only two readings carry error.
    const half = ((1.959963984540054 * 2 * Math.SQRT2) / 60) * daysPerMonth
    expect((grown?.high ?? 0) - (grown?.ratePerMonth ?? 0)).toBeCloseTo(half, 12)
  })

  it('uses the reading after the trim where the arrival was not read, and says so', () => {
    const grown = growthOf([toe('2026-01-05', 100, 90), toe('2026-02-04', null, 91)])
    expect(grown?.phases).toMatchObject([{ gain: 1, arrivalRead: false }])
  })

  it('has no phase across a visit that did not read the length, nor within a day', () => {
    expect(
      growthOf([toe('2026-01-05', 100, 90), toe('2026-02-04', null, null), toe('2026-03-06', 106, 95)])
        ?.phases,
    ).toEqual([])
    const sameDay = growthOf([
      toe('2026-01-05', 100, 90),
      { ...toe('2026-01-05', 91, 89), id: '2026-01-05-b' },
    ])
    expect(sameDay).toMatchObject({ phases: [], ratePerMonth: null, low: null, high: null, days: 0 })
  })

  it('is kept for every length and foot, and for no angle', () => {
    const sheet = { 'toe-length': { LF: 90, RH: 85 }, 'toe-angle': { LF: 50 }, 'heel-medial': { LF: 30 } }
    const { growth: all } = assess(
      buildHorse({
        visits: [
          { date: '2026-01-05', before: sheet },
          { date: '2026-02-05', before: sheet },
        ],
      }),
      practice(),
      asOf,
    )
    expect(all.map(({ foot, measure }) => `${foot} ${measure}`)).toEqual([
      'LF toe-length',
      'LF heel-medial',
      'RH toe-length',
    ])
  })
})

describe('a followed feature', () => {
  const follow = (
    growOut: readonly (readonly [string, string])[],
    after: VisitSketch['after'] = { 'toe-length': 85, 'quarter-medial': 60, 'heel-lateral': 35 },
    day = '2026-06-01',
  ) =>
    assess(
      buildHorse({ visits: growOut.map(([date, line]) => ({ date, growOut: [line], after: after ?? {} })) }),
      practice(),
      day,
    ).growOut

  it('with one sighting grows as the prior says', () => {
    const [nails] = follow([['2026-05-01', 'LF nail holes, toe, 42']])
    expect(nails).toMatchObject({ rateFrom: 'prior', ratePerMonth: 8.5, distance: 42, wallLength: 85 })
    expect(nails?.rateLow).toBeCloseTo(8.5 - 1.959963984540054 * 2.1, 12)
    expect(nails?.date).toBe(addDays('2026-05-01', Math.floor(((85 - 42) / 8.5) * daysPerMonth)))
    expect(nails?.earliest).toBe(
      addDays('2026-05-01', Math.floor(((85 - 42) / (8.5 + 1.959963984540054 * 2.1)) * daysPerMonth)),
    )
    expect(nails?.expectedNow).toBeCloseTo(42 + (8.5 * 31) / daysPerMonth, 12)
  })

  it('with more has the precision-weighted mean of prior and slope', () => {
    const sightings = [
      { visit: 'a', date: '2026-01-01', distance: 20 },
      { visit: 'b', date: '2026-02-05', distance: 29 },
      { visit: 'c', date: '2026-03-12', distance: 40 },
    ]
    const months = [0, 35 / daysPerMonth, 70 / daysPerMonth]
    const mean = (months[0] ?? 0) / 3 + (months[1] ?? 0) / 3 + (months[2] ?? 0) / 3
    const sxx = months.reduce((sum, t) => sum + (t - mean) ** 2, 0)
    const slope = months.reduce((sum, t, i) => sum + (t - mean) * (sightings[i]?.distance ?? 0), 0) / sxx
    const precision = 1 / 2.1 ** 2 + sxx / 1.5 ** 2
    const rate = growthRate(sightings, adultPrior)
    expect(rate.perMonth).toBeCloseTo((8.5 / 2.1 ** 2 + (slope * sxx) / 1.5 ** 2) / precision, 9)
    expect(rate.high - rate.perMonth).toBeCloseTo(1.959963984540054 / Math.sqrt(precision), 9)
    expect(rate.from).toBe('measured')
  })

  it('never grows upward', () => {
    const rate = growthRate(
      [
        { visit: 'a', date: '2026-01-01', distance: 60 },
        { visit: 'b', date: '2026-12-01', distance: 5 },
      ],
      adultPrior,
    )
    expect(rate).toMatchObject({ perMonth: 0, low: 0 })
    expect(rate.high).toBeGreaterThanOrEqual(0)
  })

  it('belongs to the wall of its place, side by side', () => {
    const found = follow([
      ['2026-05-01', 'LF ring, medial quarter, 10'],
      ['2026-05-08', 'LF ring, lateral heel, 10'],
      ['2026-05-15', 'LF ring, medial heel, 10'],
    ])
    expect(found.map(({ place, wallLength, state }) => [place, wallLength, state])).toEqual([
      ['medial quarter', 60, 'growing down'],
      ['lateral heel', 35, 'growing down'],
      ['medial heel', null, 'wall length unknown'],
    ])
    expect(found[2]).toMatchObject({ date: null, earliest: null, latest: null })
    expect(wallMeasure('white line')).toBe('toe-length')
    expect(wallMeasure('lateral toe')).toBe('toe-length')
    expect(wallMeasure('coronet')).toBeNull()
    expect(wallMeasure('frog')).toBeNull()
  })

  it('uses the latest length after a trim, not a later one on arrival', () => {
    const { growOut } = assess(
      buildHorse({
        visits: [
          { date: '2026-01-05', after: { 'toe-length': 88 }, growOut: ['LF ring, toe, 10'] },
          { date: '2026-02-05', before: { 'toe-length': 97 } },
        ],
      }),
      practice(),
      '2026-02-06',
    )
    expect(growOut[0]?.wallLength).toBe(88)
  })

  it('is grown out once its day has passed, and stays listed', () => {
    const [early] = follow([['2026-01-01', 'LF ring, toe, 60']], undefined, '2026-02-01')
    const [late] = follow([['2026-01-01', 'LF ring, toe, 60']], undefined, '2026-08-01')
    expect(early?.state).toBe('growing down')
    expect(late).toMatchObject({ state: 'grown out', date: early?.date, expectedNow: 85 })
  })

  it('seen at the ground is out on that day', () => {
    const [out] = follow([['2026-05-01', 'LF ring, toe, 88']])
    expect(out).toMatchObject({
      state: 'grown out',
      date: '2026-05-01',
      earliest: '2026-05-01',
      latest: '2026-05-01',
    })
  })
})

describe('the prior of a horse', () => {
  const born = (year: string | null) => priorFor(buildHorse({ born: year, visits: [] }), '2026-06-01')

  it('is that of foals under one year, counted from 1 January where only the year is known', () => {
    expect(born('2026')).toBe(foalPrior)
    expect(born('2025-06-20')).toBe(foalPrior)
    expect(born('2025-05-20')).toBe(adultPrior)
    expect(born('2025')).toBe(adultPrior)
    expect(born(null)).toBe(adultPrior)
  })
})

describe('the capsule and the new strip', () => {
  const visits: readonly VisitSketch[] = [
    {
      date: '2026-01-05',
      after: {
        'toe-length': 85,
        'toe-angle': 46,
        'heel-medial': 30,
        'heel-lateral': 32,
        'new-angle': 53,
        'new-length': 12,
      },
    },
    { date: '2026-03-16', after: { 'new-length': 32, 'new-angle': 53.5 } },
  ]
  const result = assess(buildHorse({ visits }), practice(), '2026-03-20')

  it('renew from the first visit on, the longer heel last', () => {
    expect(result.capsules.map(({ place, wallLength }) => [place, wallLength])).toEqual([
      ['toe', 85],
      ['heel', 32],
    ])
    expect(result.capsules[0]).toMatchObject({ since: '2026-01-05', ratePerMonth: 8.5 })
    expect(result.capsules[0]?.date).toBe(addDays('2026-01-05', Math.floor((85 / 8.5) * daysPerMonth)))
    expect(result.capsules[0]?.renewalDays).toBeCloseTo(10 * daysPerMonth, 10)
  })

  it('give the day on which the whole wall can stand at the new angle', () => {
    const [strip] = result.newGrowth
    const rate = growthRate(
      [
        { visit: 'a', date: '2026-01-05', distance: 12 },
        { visit: 'b', date: '2026-03-16', distance: 32 },
      ],
      adultPrior,
    )
    expect(strip).toMatchObject({
      visit: '2026-03-16',
      newAngle: 53.5,
      newLength: 32,
      toeAngle: 46,
      toeLength: 85,
    })
    expect(strip?.date).toBe(addDays('2026-03-16', Math.floor(((85 - 32) / rate.perMonth) * daysPerMonth)))
  })
})
