import { afterAll, describe, expect, it, vi } from 'vitest'
import type { Photo } from '../../src/casebook/model.ts'
import { addDays } from '../../src/hoof/dates.ts'
import { capsuleSide, coronetAngleSd } from '../../src/hoof/geometry.ts'
import type { Check, CheckKind } from '../../src/trend/assessment.ts'
import { learnedOf } from '../../src/trend/model/learned.ts'
import { untaughtPractice } from '../../src/trend/model/practice.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'
import { seeded } from './random.ts'

// What marked points give is tested with the points; here each picture carries its readings in its caption's place.
// Test files share what is loaded: the engine is loaded anew for this one, and for those after it.
const landmarks = '../../src/hoof/landmarks.ts'
vi.resetModules()
vi.doMock(landmarks, () => ({
  measureLandmarks: (marked: { readonly readings: unknown }) => marked.readings,
}))
const { assess } = await import('../../src/trend/assess.ts')
afterAll(() => {
  vi.doUnmock(landmarks)
  vi.resetModules()
})

const asOf = '2026-12-31'
const photo = (readings: readonly object[], more: Partial<Photo> = {}): Photo => ({
  file: 'photos/a.jpg',
  foot: 'LF',
  view: 'lateral',
  stage: 'after',
  caption: null,
  landmarks: { readings } as unknown as Photo['landmarks'],
  ...more,
})
const result = (visits: readonly VisitSketch[]) => assess(buildHorse({ visits }), practice(), asOf)
const checksOf = <Kind extends CheckKind>(visits: readonly VisitSketch[], kind: Kind) =>
  result(visits).checks.filter((check): check is Extract<Check, { kind: Kind }> => check.kind === kind)

describe('photo readings', () => {
  const angle = (value: number, sd = 0.5) => ({ measure: 'toe-angle', value, sd })

  it('never enter a trend with entered ones: entered from two on, else photos', () => {
    const entered: VisitSketch[] = [
      { date: '2026-01-05', after: { 'toe-angle': 45 }, photos: [photo([angle(47)])] },
      { date: '2026-02-09', photos: [photo([angle(48)])] },
    ]
    expect(result(entered).trends).toMatchObject([{ family: 'photo', n: 2, first: { value: 47 } }])
    const both = [...entered, { date: '2026-03-16', after: { 'toe-angle': 46 } }]
    expect(result(both).trends).toMatchObject([
      { family: 'gauge', n: 2, first: { value: 45 }, last: { value: 46 } },
    ])
  })

  it('keep their own uncertainty as readings, and are never surer than a gauge in a trend', () => {
    const visits = ['2026-01-05', '2026-02-09'].map((date) => ({ date, photos: [photo([angle(47, 0.4)])] }))
    const { readings, trends } = result(visits)
    const { e, u } = learnedOf(untaughtPractice.learned, 'photo', 'toe-angle', 'LF')
    expect(readings).toMatchObject([
      { source: 'photo', sd: 0.4 * e },
      { source: 'photo', sd: 0.4 * e },
    ])
    // Two readings on their line: s2 = worth / worth, and of the trend's own variances e and u.
    expect(trends[0]?.fit?.sd).toBeCloseTo(1.4 * Math.hypot(e, u), 12)
    const unsure = visits.map(({ date }) => ({ date, photos: [photo([angle(47, 3)])] }))
    expect(result(unsure).trends[0]?.fit?.sd).toBeCloseTo(3 * Math.hypot(e, u), 12)
  })

  it('are of the arrival where the picture does not say, and the surer of two pictures counts', () => {
    const photos = [photo([angle(47, 0.9)], { stage: null }), photo([angle(49, 0.4)], { stage: null })]
    expect(result([{ date: '2026-01-05', photos }]).readings).toMatchObject([{ stage: 'before', value: 49 }])
  })

  it('give derived measures among themselves, still of source photo', () => {
    const photos = [photo([angle(50), { measure: 'heel-angle', value: 42, sd: 0.8 }])]
    const { readings } = result([{ date: '2026-01-05', after: { 'heel-angle': 30 }, photos }])
    const gap = readings.filter(({ measure }) => measure === 'heel-gap')
    expect(gap).toMatchObject([{ value: 8, source: 'photo' }])
    expect(gap[0]?.sd).toBeCloseTo(Math.hypot(0.5, 0.8), 12)
  })

  it('of a derived measure that a picture shows outright stay as they are', () => {
    const photos = [photo([{ measure: 'toe-share', value: 0.3, sd: 0.01 }], { view: 'solar' })]
    const visits = ['2026-01-05', '2026-02-09'].map((date) => ({ date, photos }))
    const { trends, readings } = result(visits)
    expect(readings[0]).toMatchObject({ measure: 'toe-share', value: 0.3, sd: 0.01, source: 'photo' })
    expect(trends[0]?.fit?.sd).toBeGreaterThan(0.01)
  })

  it('are compared with what was entered, and the entered one counts', () => {
    const visit = { date: '2026-01-05', after: { 'toe-angle': 45 }, photos: [photo([angle(48)])] }
    const [check] = checksOf([visit], 'entered against photo')
    expect(check).toMatchObject({ foot: 'LF', date: '2026-01-05' })
    expect(check?.facts).toMatchObject({ entered: 45, photo: 48, difference: -3, explained: false })
    expect(check?.facts.within).toBeCloseTo(1.959963984540054 * Math.hypot(1.4, 0.5), 12)
    const near = { ...visit, photos: [photo([angle(46)])] }
    expect(checksOf([near], 'entered against photo')[0]?.facts.explained).toBe(true)
    expect(result([visit]).trends).toMatchObject([{ family: 'gauge', first: { value: 45 } }])
  })

  it('of no foot, or without marked points, say nothing', () => {
    const photos = [photo([angle(48)], { foot: null }), photo([], { landmarks: null })]
    expect(result([{ date: '2026-01-05', photos }]).readings).toEqual([])
  })
})

describe('the side view', () => {
  const closing = {
    'toe-angle': 50,
    'toe-length': 85,
    'heel-angle': 43,
    'heel-medial': 34,
    'heel-lateral': 36,
    'bearing-length': 130,
  }
  const of = { toeAngle: 50, toeLength: 85, heelAngle: 43, heelLength: 35, bearingLength: 130 }

  it('has its points where the design puts them', () => {
    const rad = Math.PI / 180
    const [foot] = result([{ date: '2026-01-05', after: closing }]).geometry
    const view = foot?.latest
    expect(view?.toeHairline).toEqual([85 * Math.cos(50 * rad), 85 * Math.sin(50 * rad)])
    expect(view?.heelGround).toEqual([130, 0])
    expect(view?.heelHairline).toEqual([130 + 35 * Math.cos(43 * rad), 35 * Math.sin(43 * rad)])
    const rise = (view?.toeHairline[1] ?? 0) - (view?.heelHairline[1] ?? 0)
    const run = (view?.heelHairline[0] ?? 0) - (view?.toeHairline[0] ?? 0)
    expect(view?.coronetAngle).toBeCloseTo(Math.atan(rise / run) / rad, 12)
    expect(view?.assumed).toEqual([])
    expect(view?.closes).toBeNull()
  })

  it('says what a millimetre at the toe or the heel would do', () => {
    const [foot] = result([{ date: '2026-01-05', after: closing }]).geometry
    const degree = (Math.atan(1 / 130) * 180) / Math.PI
    expect(foot?.perMillimetre.toe.angle).toBeCloseTo(degree, 12)
    expect(foot?.perMillimetre.heel.angle).toBeCloseTo(-degree, 12)
    expect(foot?.perMillimetre.toe.length).toBeLessThan(-1)
    expect(foot?.perMillimetre.heel.length).toBeLessThan(-1)
  })

  it('carries the errors of its readings into the coronet angle, as a simulation does', () => {
    const sds = { toeAngle: 1.4, toeLength: 2, heelAngle: 2, heelLength: 1.06, bearingLength: 2 }
    const random = seeded(11)
    const angles = Array.from({ length: 20000 }, () => {
      const shaken = Object.fromEntries(
        Object.entries(of).map(([key, value]) => [
          key,
          value + sds[key as keyof typeof sds] * random.normal(),
        ]),
      )
      return capsuleSide(shaken as unknown as typeof of).coronetAngle
    })
    const mean = angles.reduce((sum, one) => sum + one, 0) / angles.length
    const sd = Math.sqrt(angles.reduce((sum, one) => sum + (one - mean) ** 2, 0) / angles.length)
    expect(coronetAngleSd(of, sds) / sd).toBeGreaterThan(0.97)
    expect(coronetAngleSd(of, sds) / sd).toBeLessThan(1.03)
  })

  it('reports readings that do not close, and keeps quiet about those that do', () => {
    const coronet = capsuleSide(of).coronetAngle
    const visit = (measured: number) => [
      { date: '2026-01-05', after: { ...closing, 'coronet-angle': measured } },
    ]
    const within = result(visit(coronet)).geometry[0]?.latest.closesWithin ?? Number.NaN
    expect(result(visit(coronet + within - 0.01)).geometry[0]?.latest.closes).toBe(true)
    expect(checksOf(visit(coronet + within - 0.01), 'readings do not close')).toEqual([])
    const [check] = checksOf(visit(coronet + within + 0.01), 'readings do not close')
    expect((check?.facts.measured ?? 0) - (check?.facts.computed ?? 0)).toBeCloseTo(within + 0.01, 9)
  })

  it('draws stand-ins for what was not read, names them, and compares nothing with them', () => {
    const after = { 'toe-angle': 50, 'toe-length': 88.3, 'coronet-angle': 40 }
    const view = result([{ date: '2026-01-05', after }]).geometry[0]?.latest
    expect(view?.assumed).toEqual(['heel-angle', 'heel-medial', 'heel-lateral', 'bearing-length'])
    expect(view?.bearingLength).toBeCloseTo(136.9, 9)
    expect(view?.closes).toBeNull()
  })

  it('takes first and latest at one stage', () => {
    const [foot] = result([
      {
        date: '2026-01-05',
        before: { 'toe-angle': 44, 'toe-length': 95 },
        after: { 'toe-angle': 46, 'toe-length': 88 },
      },
      {
        date: '2026-02-09',
        before: { 'toe-angle': 45, 'toe-length': 96 },
        after: { 'toe-angle': 47, 'toe-length': 87 },
      },
      { date: '2026-03-16', before: { 'toe-angle': 46, 'toe-length': 95 } },
    ]).geometry
    expect([foot?.first.toeAngle, foot?.latest.toeAngle]).toEqual([46, 47])
  })
})

describe('pairs', () => {
  it('compare left with right at each visit and stage, with the smallest real difference', () => {
    const { pairs } = result([
      {
        date: '2026-01-05',
        before: { 'toe-angle': { LF: 50, RF: 45 }, 'toe-length': { LF: 90 } },
        after: { width: { LH: 120, RH: 124 } },
      },
    ])
    expect(
      pairs.map(({ stage, pair, measure, difference, isReal }) => [stage, pair, measure, difference, isReal]),
    ).toEqual([
      ['before', 'fore', 'toe-angle', 5, true],
      ['after', 'hind', 'width', -4, false],
    ])
    // With nothing learned yet: one reading repeats to 1.4 degrees, worth seven degrees of freedom.
    expect(pairs[0]?.smallestRealDifference).toBeCloseTo(2.364624251592784 * Math.SQRT2 * 1.4, 9)
  })
})

describe('checks', () => {
  it('name a reading that no error explains and that is left out', () => {
    const values = [44, 44.2, 44.4, 44.6, 65, 45, 45.2, 45.4]
    const visits = values.map((value, i) => ({ date: `2026-0${i + 1}-05`, after: { 'toe-angle': value } }))
    expect(checksOf(visits, 'left out')).toMatchObject([
      { foot: 'LF', date: '2026-05-05', facts: { measure: 'toe-angle', stage: 'after', value: 65 } },
    ])
    const [trend] = result(visits).trends
    expect(trend).toMatchObject({ n: 7, leftOut: [{ date: '2026-05-05', stage: 'after', value: 65 }] })
    expect(trend?.points.map(({ value }) => value)).not.toContain(65)
  })

  it('name a changed pace from the first visit of the later half on', () => {
    const values = [38, 43, 48, 53, 58, 58, 58, 58, 58, 58]
    const visits = values.map((value, i) => ({
      date: addDays('2025-01-05', 60 * i),
      after: { 'toe-angle': value },
    }))
    expect(checksOf(visits, 'pace has changed')).toMatchObject([
      { foot: 'LF', date: addDays('2025-01-05', 300), facts: { measure: 'toe-angle' } },
    ])
  })

  it('say that net growth lies outside the published range, only when all of its interval does', () => {
    const grown = (gain: number): readonly VisitSketch[] =>
      ['2026-01-05', '2026-04-05', '2026-07-05'].map((date) => ({
        date,
        before: { 'toe-length': 85 + gain },
        after: { 'toe-length': 85 },
      }))
    expect(checksOf(grown(60), 'growth out of range')).toHaveLength(1)
    expect(checksOf(grown(25), 'growth out of range')).toEqual([])
    expect(checksOf(grown(0), 'growth out of range')).toHaveLength(1)
  })

  it('say nothing of growth where arrivals were not read', () => {
    const visits = ['2026-01-05', '2026-04-05', '2026-07-05'].map((date) => ({
      date,
      after: { 'toe-length': 85 },
    }))
    expect(checksOf(visits, 'growth out of range')).toEqual([])
  })
})

describe('the next visit', () => {
  const horse = (nextVisit?: string) =>
    buildHorse({ visits: [{ date: '2026-01-05', ...(nextVisit === undefined ? {} : { nextVisit }) }] })

  it('is what the last visit said, else one trim cycle on', () => {
    expect(assess(horse('2026-02-02'), practice(), '2026-02-01').nextVisit).toEqual({
      last: '2026-01-05',
      due: '2026-02-02',
      from: 'visit',
      overdueDays: -1,
    })
    expect(assess(horse(), practice({ trimCycleDays: 42 }), '2026-02-20').nextVisit).toEqual({
      last: '2026-01-05',
      due: '2026-02-16',
      from: 'trim cycle',
      overdueDays: 4,
    })
  })

  it('is not known without a visit', () => {
    expect(assess(buildHorse({ visits: [] }), practice(), asOf).nextVisit).toEqual({
      last: null,
      due: null,
      from: null,
      overdueDays: null,
    })
  })
})
