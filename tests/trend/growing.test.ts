import { describe, expect, it } from 'vitest'
import { addDays, dayOf, daysPerMonth } from '../../src/hoof/dates.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Growth } from '../../src/trend/assessment.ts'
import { learnedOf } from '../../src/trend/model/learned.ts'
import { untaughtPractice } from '../../src/trend/model/practice.ts'
import { z975 } from '../../src/trend/student.ts'
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

  it('has growth as the fit has it: between what was seen and what was believed', () => {
    expect(growth?.days).toBe(70)
    expect(growth?.hidden).toBeNull()
    const seen = (20 / 70) * daysPerMonth
    expect(growth?.ratePerMonth).toBeGreaterThan(Math.min(seen, 8.5))
    expect(growth?.ratePerMonth).toBeLessThan(Math.max(seen, 8.5))
    expect((growth?.high ?? 0) - (growth?.ratePerMonth ?? 0)).toBeCloseTo(
      (growth?.ratePerMonth ?? 0) - (growth?.low ?? 0),
      12,
    )
  })

  it('is the surer the longer it was watched', () => {
    const width = (visits: number) => {
      const grown = growthOf(
        Array.from({ length: visits }, (_, i) => toe(addDays('2025-01-05', 35 * i), 97, 88)),
      )
      return (grown?.high ?? 0) - (grown?.low ?? 0)
    }
    expect(width(12)).toBeLessThan(width(6))
    expect(width(6)).toBeLessThan(width(2))
  })

  it('takes a visit with an arrival reading alone as one at which nothing was trimmed, phase by phase', () => {
    const grown = growthOf([
      toe('2026-01-05', 100, 90),
      toe('2026-02-04', 98, null),
      toe('2026-03-06', 106, 95),
    ])
    expect(grown?.phases.map(({ gain }) => gain)).toEqual([8, 8])
    expect(grown?.trims).toHaveLength(2)
  })

  it('is hidden where a wall is read at one stage alone, and says so: null, never 0', () => {
    const none = { ratePerMonth: null, low: null, high: null, days: 0 }
    expect(growthOf([toe('2026-01-05', null, 90), toe('2026-02-04', null, 91)])).toMatchObject({
      ...none,
      hidden: 'not read on arrival',
    })
    expect(growthOf([toe('2026-01-05', 90, null), toe('2026-02-04', 91, null)])).toMatchObject({
      ...none,
      hidden: 'not read after the trim',
    })
    expect(growthOf([toe('2026-01-05', 99, 90)])).toMatchObject({ ...none, hidden: 'too few readings' })
    expect(growthOf([toe('2026-01-05', null, 90)])).toBeUndefined()
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
    expect(sameDay?.hidden).toBe('too few readings')
  })

  it('is kept for every wall and foot, and for nothing else', () => {
    const sheet = {
      'toe-length': { LF: 90, RH: 85 },
      'toe-angle': { LF: 50 },
      'heel-medial': { LF: 30 },
      width: 120,
    }
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

  const { growOut: untaught } = untaughtPractice.learned
  const rateSd = Math.hypot(untaught.meanSd, untaught.spread)

  it('with one sighting grows as the practice says', () => {
    const [nails] = follow([['2026-05-01', 'LF nail holes, toe, 42']])
    expect(nails).toMatchObject({ rateFrom: 'practice', ratePerMonth: 8.5, distance: 42, wallLength: 85 })
    expect(nails?.rateLow).toBeCloseTo(8.5 - z975 * rateSd, 12)
    expect(nails?.date).toBe(addDays('2026-05-01', Math.floor(((85 - 42) / 8.5) * daysPerMonth)))
    expect(nails?.expectedNow).toBeCloseTo(42 + (8.5 * 31) / daysPerMonth, 9)
  })

  it('has limits that carry the errors of rate, distance, wall and season, to the day', () => {
    // A practice that knows its rates well, so that the other errors count.
    const growOut = { mean: 8.5, meanSd: 0.3, spread: 0.4, distanceSd: 1.5 }
    const visits = [{ date: '2026-05-01', growOut: ['LF ring, toe, 42'], after: { 'toe-length': 85 } }]
    const learned = { ...untaughtPractice.learned, growOut }
    const [ring] = assess(buildHorse({ visits }), practice(), '2026-05-02', learned).growOut
    const { e, u } = learnedOf(learned, 'gauge', 'toe-length', 'LF')
    const gap = 85 - 42
    const months = gap / 8.5
    const season = ((8.5 * 0.15 * 12) / (2 * Math.PI)) ** 2 * (1 - Math.cos((2 * Math.PI * months) / 12))
    const still = 1.5 ** 2 + (e ** 2 + u ** 2) * 2 ** 2 + season
    const moving = 0.3 ** 2 + 0.4 ** 2
    // (gap - rate x)^2 = 1.96^2 (still + moving x^2)
    const a = 8.5 ** 2 - z975 ** 2 * moving
    const root = Math.sqrt((gap * 8.5) ** 2 - a * (gap ** 2 - z975 ** 2 * still))
    const daysTo = (day: string | null | undefined) => dayOf(day ?? '') - dayOf('2026-05-01')
    expect(daysTo(ring?.earliest)).toBe(Math.floor(((gap * 8.5 - root) / a) * daysPerMonth))
    expect(daysTo(ring?.date)).toBe(Math.floor(months * daysPerMonth))
    expect(daysTo(ring?.latest)).toBe(Math.floor(((gap * 8.5 + root) / a) * daysPerMonth))
  })

  it('lends all features of one wall one rate, from all that they show', () => {
    const line = (what: string, first: number, every: number, i: number) =>
      `LF ${what}, toe, ${first + every * i}`
    const dates = [0, 1, 2, 3].map((i) => addDays('2026-01-05', 35 * i))
    const visits = dates.map((date, i) => ({
      date,
      growOut: [line('ring', 10, 8, i), line('nail holes', 40, 11, i)],
      after: { 'toe-length': 90, 'new-angle': 53, 'new-length': 10 + 8 * i },
    }))
    const { growOut, newGrowth, capsules } = assess(buildHorse({ visits }), practice(), '2026-05-01')
    const [ring, nails] = growOut
    expect(ring?.ratePerMonth).toBe(nails?.ratePerMonth)
    expect(capsules.find(({ place }) => place === 'toe')?.ratePerMonth).toBe(ring?.ratePerMonth)
    // The strip ends where the ring is: one horn, one date.
    expect(newGrowth[0]).toMatchObject({ date: ring?.date, earliest: ring?.earliest, latest: ring?.latest })
    const each = (35 * 8) / daysPerMonth
    expect(ring?.ratePerMonth).toBeGreaterThan(8 / (35 / daysPerMonth))
    expect(ring?.ratePerMonth).toBeLessThan(each)
  })

  it('is surer with every sighting', () => {
    const width = (sightings: number) => {
      const lines = Array.from({ length: sightings }, (_, i): readonly [string, string] => [
        addDays('2026-01-05', 35 * i),
        `LF ring, toe, ${10 + 10 * i}`,
      ])
      const [ring] = follow(lines)
      return dayOf(ring?.latest ?? '') - dayOf(ring?.earliest ?? '')
    }
    const widths = [1, 2, 3, 5, 7].map(width)
    expect(widths).toEqual(widths.toSorted((a, b) => b - a))
  })

  it('never grows upward, and then has no date', () => {
    const [ring] = follow([
      ['2024-01-01', 'LF ring, toe, 80'],
      ['2024-12-01', 'LF ring, toe, 40'],
      ['2026-03-01', 'LF ring, toe, 5'],
    ])
    expect(ring).toMatchObject({ ratePerMonth: 0, rateLow: 0, date: null, earliest: null, latest: null })
    expect(ring?.rateHigh).toBeGreaterThanOrEqual(0)
    expect(ring?.state).toBe('growing down')
  })

  it('is open at the end where the horn may hardly grow at all', () => {
    const [ring] = follow([
      ['2026-01-01', 'LF ring, toe, 20'],
      ['2026-02-01', 'LF ring, toe, 17'],
      ['2026-03-01', 'LF ring, toe, 16'],
    ])
    expect(ring?.earliest).not.toBeNull()
    expect(ring).toMatchObject({ rateLow: 0, latest: null, state: 'growing down' })
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
    const wallsOf = (place: string) => follow([['2026-05-01', `LF ring, ${place}, 10`]])[0]?.wallLength
    expect(['white line', 'whole foot', 'lateral toe', 'toe'].map(wallsOf)).toEqual([85, 85, 85, 85])
    expect(['coronet', 'frog', 'sole'].map(wallsOf)).toEqual([null, null, null])
  })

  it('grows toward the length after trims, not a later one on arrival', () => {
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

  it('grows toward the mean of the last three lengths after a trim', () => {
    const lengths = [99, 90, 87, 84]
    const visits = lengths.map((length, i) => ({
      date: addDays('2026-01-05', 35 * i),
      after: { 'toe-length': length },
      ...(i === 0 ? { growOut: ['LF ring, toe, 10'] } : {}),
    }))
    expect(assess(buildHorse({ visits }), practice(), '2026-06-01').growOut[0]?.wallLength).toBe(87)
  })

  it('is due from its day on, and grown out only when the whole range is past', () => {
    const on = (day: string) => follow([['2026-01-01', 'LF ring, toe, 60']], undefined, day)[0]
    const ring = on('2026-02-01')
    const [date, latest] = [ring?.date ?? '', ring?.latest ?? '']
    expect(ring?.state).toBe('growing down')
    expect(on(addDays(date, -1))?.state).toBe('growing down')
    expect(on(date)?.state).toBe('due')
    expect(on(addDays(latest, -1))?.state).toBe('due')
    expect(on(latest)).toMatchObject({ state: 'grown out', date, latest, expectedNow: 85 })
  })

  it('seen at the ground has all of its range on no day before that', () => {
    const [out] = follow([['2026-05-01', 'LF ring, toe, 88']])
    expect(out?.date).toBe('2026-05-01')
    expect(out?.earliest).toBe('2026-05-01')
    expect(out?.latest).not.toBeNull()
    expect((out?.latest ?? '') >= '2026-05-01').toBe(true)
    const [far] = follow([['2026-05-01', 'LF ring, toe, 120']])
    expect(far).toMatchObject({ state: 'grown out', date: '2026-05-01', latest: '2026-05-01' })
  })

  it('never has a range that starts before it was last seen', () => {
    const [late] = follow([
      ['2026-01-01', 'LF ring, toe, 60'],
      ['2026-05-20', 'LF ring, toe, 61'],
    ])
    for (const day of [late?.date, late?.earliest]) expect((day ?? '9') >= '2026-05-20').toBe(true)
  })
})

describe('what is believed of a horse', () => {
  const rateOf = (born: string | null) => {
    const visits = [{ date: '2026-05-01', after: { 'toe-length': 60 }, growOut: ['LF ring, toe, 10'] }]
    return assess(buildHorse({ born, visits }), practice(), '2026-06-01').growOut[0]?.ratePerMonth
  }

  it("passes from a foal's growth at six months to a grown horse's at eighteen, from 1 January where only the year is known", () => {
    expect(rateOf(null)).toBe(8.5)
    expect(rateOf('2010')).toBe(8.5)
    expect(rateOf('2026')).toBeCloseTo(11.7, 12)
    expect(rateOf('2025-06-01')).toBeCloseTo((11.7 + 8.5) / 2, 1)
    expect(rateOf('2025')).toBeLessThan(rateOf('2025-06-01') ?? 0)
    expect(rateOf('2024-12-01')).toBeCloseTo(8.5, 1)
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
    // The toe by what its strip shows, the heel by what is published.
    const [wall, heel] = result.capsules
    expect(heel).toMatchObject({ since: '2026-01-05', ratePerMonth: 8.5 })
    expect(heel?.date).toBe(addDays('2026-01-05', Math.floor((32 / 8.5) * daysPerMonth)))
    expect(heel?.renewalDays).toBeCloseTo((32 / 8.5) * daysPerMonth, 10)
    expect(wall?.renewalDays).toBeCloseTo((85 / (wall?.ratePerMonth ?? 0)) * daysPerMonth, 10)
  })

  it('give the day on which the whole wall can stand at the new angle', () => {
    const [strip] = result.newGrowth
    expect(strip).toMatchObject({
      visit: '2026-03-16',
      newAngle: 53.5,
      newLength: 32,
      toeAngle: 46,
      toeLength: 85,
    })
    const sightings = [12, 32]
    const mean = (sightings[0] ?? 0) / 2 + (sightings[1] ?? 0) / 2
    const rate = result.capsules[0]?.ratePerMonth ?? Number.NaN
    expect(strip?.date).toBe(addDays('2026-02-09', Math.floor(((85 - mean) / rate) * daysPerMonth)))
  })
})
