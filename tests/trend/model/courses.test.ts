import { describe, expect, it } from 'vitest'
import type { Horse } from '../../../src/casebook/model.ts'
import { daysPerMonth } from '../../../src/hoof/dates.ts'
import type { feet } from '../../../src/hoof/feet.ts'
import { columnsOf } from '../../../src/trend/columns.ts'
import { between, firstVisit, lastVisit, readingsIn, without } from '../../../src/trend/model/course.ts'
import { courseOfAllFeet, courseOfFoot } from '../../../src/trend/model/courses.ts'
import { buildHorse, type HorseSketch, type VisitSketch } from '../build-horse.ts'
import { bothStages } from './build-course.ts'

const visit = (date: string, before: number | null, after: number | null): VisitSketch => ({
  date,
  ...(before === null ? {} : { before: { 'toe-length': before } }),
  ...(after === null ? {} : { after: { 'toe-length': after } }),
})
const dates = ['2026-01-05', '2026-02-09', '2026-03-16', '2026-04-20'] as const
type Pair = readonly [before: number | null, after: number | null]
const toes = (...pairs: readonly Pair[]) =>
  pairs.map(([before, after], i) => visit(dates[i] ?? '', before, after))
const of = (sketch: HorseSketch, measure: 'toe-length' | 'heel-balance' | 'toe-angle' = 'toe-length') => {
  const horse: Horse = buildHorse(sketch)
  return courseOfFoot(horse, columnsOf(horse, horse.visits), 'gauge', 'LF', measure)
}
const listed = (values: Float64Array | undefined) =>
  [...(values ?? [])].map((value) => (Number.isNaN(value) ? null : value))

describe('the course of a foot', () => {
  it('has what each trim left, and beside it what the next arrival found; the first arrival is left out', () => {
    const course = of({ visits: toes([99, 90], [98, 89], [97, 88]) })
    expect(course?.stage).toBe('after')
    expect(listed(course?.left)).toEqual([90, 89, 88])
    expect(listed(course?.back)).toEqual([98, 97, null])
    expect(listed(course?.gaps)).toEqual([35 / daysPerMonth, 35 / daysPerMonth, 0])
    expect(course && readingsIn(course)).toBe(5)
  })

  it.each<readonly [string, readonly Pair[], 'before' | 'after', (number | null)[], number]>([
    ['one reading', [[null, 90]], 'after', [90], 1],
    ['one on arrival', [[90, null]], 'before', [90], 1],
    [
      'arrivals alone',
      [
        [90, null],
        [91, null],
      ],
      'before',
      [90, 91],
      2,
    ],
    [
      'trims alone',
      [
        [null, 90],
        [null, 91],
      ],
      'after',
      [90, 91],
      2,
    ],
    [
      'fewer than two after the trim',
      [
        [90, 85],
        [91, null],
      ],
      'before',
      [90, 91],
      2,
    ],
    ['one of each stage', [[90, 85]], 'before', [90], 1],
    ['more after than before, of one', [[null, 85]], 'after', [85], 1],
    [
      'two after the trim beside many arrivals',
      [
        [95, 85],
        [96, null],
        [97, null],
        [98, 86],
      ],
      'after',
      [85, null, null, 86],
      5,
    ],
  ])('of %s', (_, pairs, stage, left, n) => {
    const course = of({ visits: toes(...pairs) })
    expect(course?.stage).toBe(stage)
    expect(listed(course?.left)).toEqual(left)
    expect(course && readingsIn(course)).toBe(n)
  })

  it('is none where nothing was read', () => {
    expect(of({ visits: [{ date: '2026-01-05' }] })).toBeNull()
    expect(of({ visits: [] })).toBeNull()
  })

  it('keeps two visits of one day apart, with no time between them', () => {
    const course = of({
      visits: [visit('2026-01-05', null, 90), { ...visit('2026-01-05', 91, 89), id: '2026-01-05-b' }],
    })
    expect(listed(course?.times)).toEqual([0, 0])
    expect(listed(course?.back)).toEqual([91, null])
  })

  it('gives a foot read twice half the variance of one reading', () => {
    const horse = buildHorse({ visits: toes([null, 90], [98, 89]) })
    const twice: Horse = {
      ...horse,
      visits: horse.visits.map((one, i) => ({
        ...one,
        readings: one.readings.map((reading) =>
          i === 1 ? { ...reading, twice: [reading.value - 1, reading.value + 1] as const } : reading,
        ),
      })),
    }
    const course = courseOfFoot(twice, columnsOf(twice, twice.visits), 'gauge', 'LF', 'toe-length')
    expect(course?.leftShare[0]).toBe(1)
    expect(course?.leftShare[1]).toBeCloseTo(0.5, 12)
    expect(course?.backShare[0]).toBeCloseTo(0.5, 12)
  })

  it('believes of growth what is published: walls, foals faster, heel balance little, all else nothing much', () => {
    const visits = [
      {
        date: '2026-01-05',
        after: { 'toe-length': 90, 'toe-angle': 50, 'heel-medial': 30, 'heel-lateral': 30 },
      },
    ]
    const grown = of({ visits })?.growth
    expect(grown?.mean).toBe(8.5)
    expect(grown?.variance).toBeCloseTo(2.1 ** 2, 12)
    expect(of({ visits, born: '2025-07-05' })?.growth.mean).toBeCloseTo(11.7, 1)
    expect(of({ visits, born: '2025-01-05' })?.growth.mean).toBeCloseTo((11.7 + 8.5) / 2, 1)
    expect(of({ visits }, 'heel-balance')?.growth).toEqual({ mean: 0, variance: 1 })
    expect(of({ visits }, 'toe-angle')?.growth).toEqual({ mean: 0, variance: 4 })
  })

  it('of a derived measure has the repeatability that its parts give it', () => {
    const visits = [{ date: '2026-01-05', after: { 'heel-medial': 30, 'heel-lateral': 30 } }]
    const course = of({ visits }, 'heel-balance')
    expect(course?.sd).toBeCloseTo(Math.hypot(1.5, 1.5), 12)
    expect(course?.matters).toBeCloseTo(Math.hypot(2, 2), 12)
  })
})

describe('the course of all feet', () => {
  const all = (sheets: readonly Partial<Record<(typeof feet)[number], number>>[]) => {
    const horse = buildHorse({
      visits: sheets.map((sheet, i) => ({ date: dates[i] ?? '', after: { 'toe-length': sheet } })),
    })
    return courseOfAllFeet(horse, columnsOf(horse, horse.visits), 'gauge', 'toe-length')
  }

  it('is the common level of the feet, whichever were read', () => {
    const course = all([
      { LF: 90, RF: 92, LH: 80, RH: 82 },
      { LF: 89, RF: 91 },
      { LH: 78, RH: 80 },
    ])
    expect(course).toMatchObject({ foot: 'all', stage: 'after', sd: 2, matters: 5 })
    expect(listed(course?.left).map((value) => value?.toFixed(6))).toEqual([
      '86.000000',
      '85.000000',
      '84.000000',
    ])
  })

  it('is none of one foot, nor of the difference of a pair', () => {
    expect(all([{ LF: 90 }, { LF: 91 }])).toBeNull()
    const horse = buildHorse({
      visits: [{ date: '2026-01-05', after: { 'toe-angle': { LF: 50, RF: 49, LH: 52, RH: 53 } } }],
    })
    expect(courseOfAllFeet(horse, columnsOf(horse, horse.visits), 'gauge', 'pair-mismatch')).toBeNull()
  })
})

describe('parts of a course', () => {
  const course = bothStages([0, 1, 2.5, 4], [90, null, 88, 87], [98, 97, null, null])

  it('share nothing where they are cut', () => {
    expect(listed(between(course, 0, 2).left)).toEqual([90, null])
    expect(listed(between(course, 2, 4).left)).toEqual([null, null, 88, 87])
    expect(readingsIn(between(course, 0, 2)) + readingsIn(between(course, 2, 4))).toBe(readingsIn(course))
  })

  it('leave out what is named, and leave the course as it was', () => {
    const left = without(course, [
      { trim: 0, stage: 'left' },
      { trim: 1, stage: 'back' },
    ])
    expect(listed(left.left)).toEqual([null, null, 88, 87])
    expect(listed(left.back)).toEqual([98, null, null, null])
    expect(course.left[0]).toBe(90)
  })

  it('know the visits of their first and last readings: an arrival belongs to the visit after its trim', () => {
    expect(firstVisit(course)).toBe(0)
    expect(lastVisit(course)).toBe(3)
    const arrivals = bothStages([0, 1, 2], [null, null, null], [98, 97, null])
    expect(firstVisit(arrivals)).toBe(1)
    expect(lastVisit(arrivals)).toBe(2)
  })
})
