import { describe, expect, it } from 'vitest'
import type { Horse } from '../../../src/casebook/model.ts'
import { addDays } from '../../../src/hoof/dates.ts'
import { feet } from '../../../src/hoof/feet.ts'
import { adultPrior } from '../../../src/hoof/growth.ts'
import { learnGrowOut, rateOfWall } from '../../../src/trend/model/grow-out-rates.ts'
import { learnPractice, lessonsOf, untaughtPractice } from '../../../src/trend/model/practice.ts'
import {
  coursesOf,
  taughtUntil,
  teachingFrom,
  teachingOf,
  teachingText,
} from '../../../src/trend/model/teaching.ts'
import { buildHorse, type VisitSketch } from '../build-horse.ts'
import { type Random, seeded } from '../random.ts'

/** A horse of all four feet, with rings that grow. */
function horseOf(random: Random, id: string, visits = 6): Horse {
  const starts = feet.map(() => 85 + 4 * random.normal())
  return buildHorse({
    id,
    visits: Array.from({ length: visits }, (_, i): VisitSketch => {
      const read = (more: number) =>
        Object.fromEntries(feet.map((foot, k) => [foot, (starts[k] ?? 0) + more + 2 * random.normal()]))
      return {
        date: addDays('2026-01-05', 35 * i),
        before: { 'toe-length': read(9), 'heel-medial': read(-40), 'heel-lateral': read(-41) },
        after: { 'toe-length': read(0), 'toe-angle': read(-35) },
        growOut: feet.map((foot) => `${foot} ring, toe, ${(8 + 9.5 * i + random.normal()).toFixed(1)}`),
      }
    }),
  })
}
const horses = (seed: number, count: number) => {
  const random = seeded(seed)
  return Array.from({ length: count }, (_, i) => horseOf(random, `h${i}`))
}
const asOf = '2026-09-15'

describe('what teaches', () => {
  it('are the visits up to the end of the last whole month', () => {
    expect(taughtUntil('2026-09-15')).toBe('2026-08-31')
    expect(taughtUntil('2026-09-01')).toBe('2026-08-31')
    expect(taughtUntil('2026-01-31')).toBe('2025-12-31')
    expect(taughtUntil('2024-03-10')).toBe('2024-02-29')
  })

  it('is not changed by a visit of this month, and is by the month turning', () => {
    const [horse] = horses(1, 1)
    if (horse === undefined) throw new Error('no horse')
    const visited = (date: string): Horse => ({
      ...horse,
      visits: [...horse.visits, ...buildHorse({ visits: [{ date, after: { 'toe-length': 60 } }] }).visits],
    })
    expect(teachingOf(visited('2026-09-01'), asOf)).toEqual(teachingOf(horse, asOf))
    expect(teachingOf(visited('2026-08-31'), asOf)).not.toEqual(teachingOf(horse, asOf))
    expect(teachingOf(visited('2026-09-01'), '2026-10-01')).not.toEqual(teachingOf(horse, '2026-10-01'))
  })

  it('is kept as text, and teaches the same', () => {
    const teachings = horses(2, 4).map((horse) => teachingOf(horse, asOf))
    const kept = teachings.map((teaching) => teachingFrom(teachingText(teaching)))
    expect(kept).toEqual(teachings)
    expect(learnPractice(kept)).toEqual(learnPractice(teachings))
  })

  it('holds courses of single feet and of all, with readings of three at the least', () => {
    const [horse] = horses(3, 1)
    if (horse === undefined) throw new Error('no horse')
    const teaching = teachingOf(horse, asOf)
    expect(Object.keys(teaching.courses)).toEqual(
      expect.arrayContaining(['gauge toe-length', 'gauge toe-length all', 'gauge heel-balance']),
    )
    expect(coursesOf(teaching, 'gauge toe-length')).toHaveLength(4)
    expect(coursesOf(teaching, 'gauge toe-length all')).toHaveLength(1)
    const two = teachingOf({ ...horse, visits: horse.visits.slice(0, 1) }, asOf)
    expect(two).toMatchObject({ courses: {}, times: [], gaps: [] })
  })

  it('takes a foot read twice as two of its readings apart', () => {
    const [horse] = horses(3, 1)
    if (horse === undefined) throw new Error('no horse')
    const twice: Horse = {
      ...horse,
      visits: horse.visits.map((visit) => ({
        ...visit,
        readings: visit.readings.map((reading) =>
          reading.foot === 'LF' && reading.measure === 'toe-angle'
            ? { ...reading, twice: [reading.value + 0.5, reading.value - 0.5] as const }
            : reading,
        ),
      })),
    }
    expect(teachingOf(twice, asOf).repeats['gauge toe-angle']).toEqual(
      Array.from({ length: 6 }, () => ({ difference: -1, sd: 1.4 })),
    )
  })
})

describe('a practice', () => {
  it('learns the same in whatever order its horses come', () => {
    const all = horses(4, 12)
    const random = seeded(99)
    const learned = lessonsOf(all, asOf)
    for (let run = 0; run < 5; run++) {
      const shuffled = all
        .map((horse) => ({ horse, at: random.even() }))
        .toSorted((a, b) => a.at - b.at)
        .map(({ horse }) => horse)
      const other = lessonsOf(shuffled, asOf)
      expect(other.learned).toEqual(learned.learned)
      expect(other.lessons['gauge toe-length']?.readings).toBe(learned.lessons['gauge toe-length']?.readings)
    }
  })

  it('says how many readings each lesson rests on', () => {
    // Six after the trim and five on arrival at each of four feet: the first arrival was another hand's.
    const { lessons } = lessonsOf(horses(5, 3), asOf)
    expect(lessons['gauge toe-length']?.readings).toBe(3 * 4 * 11)
    expect(lessons['gauge toe-length all']?.readings).toBe(3 * 11)
  })

  it('of no horse has learned nothing', () => {
    expect(lessonsOf([], asOf)).toEqual(untaughtPractice)
    expect(untaughtPractice.lessons).toEqual({})
  })

  it('learns gauge and photograph, and each measure, by themselves', () => {
    const all = horses(6, 5)
    const others = all.map((horse) => ({
      ...horse,
      visits: horse.visits.map((visit) => ({
        ...visit,
        readings: visit.readings.map((reading) =>
          reading.measure === 'toe-angle' ? { ...reading, value: reading.value * 1.3 - 10 } : reading,
        ),
      })),
    }))
    const [one, other] = [lessonsOf(all, asOf), lessonsOf(others, asOf)]
    expect(other.lessons['gauge toe-length']).toEqual(one.lessons['gauge toe-length'])
    expect(other.lessons['gauge toe-angle']?.e).not.toBe(one.lessons['gauge toe-angle']?.e)
  })
})

describe('rates of growing down', () => {
  const wall = (rate: number, sxx: number, noise = 0, ahead = 0) => ({
    sxx,
    sxy: rate * sxx,
    syy: rate ** 2 * sxx + noise,
    df: 4,
    ahead,
  })

  it('are the literature where nothing was followed, with a spread between walls besides', () => {
    const learned = learnGrowOut([])
    expect(learned.mean).toBeCloseTo(adultPrior.mean, 12)
    expect(learned.meanSd).toBeCloseTo(adultPrior.sd, 12)
    expect(learned.distanceSd).toBe(1.5)
    // Half-normal of scale 1.6: its mean square is 1.6^2, but for the steps and the end at 5.
    expect(learned.spread).toBeCloseTo(1.6, 1)
  })

  it('near what many walls show, and are surer of it', () => {
    const random = seeded(12)
    const learned = learnGrowOut(Array.from({ length: 60 }, () => wall(6.5 + 0.8 * random.normal(), 8, 6.75)))
    expect(learned.mean).toBeCloseTo(6.5, 0)
    expect(Math.abs(learned.mean - 6.5)).toBeLessThan(0.35)
    expect(learned.meanSd).toBeLessThan(0.2)
    expect(learned.spread).toBeGreaterThan(0.5)
    expect(learned.spread).toBeLessThan(1.1)
  })

  it('of one wall lie between what it shows and what the practice shows, each by how sure it is', () => {
    const learned = { mean: 8.5, meanSd: 0.5, spread: 1.5, distanceSd: 1.5 }
    const none = rateOfWall({ sxx: 0, sxy: 0, syy: 0, df: 0, ahead: 0 }, learned)
    expect(none).toMatchObject({ mean: 8.5, from: 'practice' })
    expect(none.variance).toBeCloseTo(1.5 ** 2 + 0.5 ** 2, 12)
    const some = rateOfWall(wall(11, 1), learned)
    expect(some).toMatchObject({ from: 'measured' })
    expect(some.mean).toBeCloseTo((8.5 + 11) / 2, 12)
    const sure = rateOfWall(wall(11, 1000), learned)
    expect(sure.mean).toBeCloseTo(11, 2)
    expect(sure.variance).toBeCloseTo(1.5 ** 2 / 1000, 4)
    expect(some.variance).toBeLessThan(none.variance)
  })

  it("of a foal begin by what foals' horn grows faster", () => {
    const learned = learnGrowOut([])
    expect(rateOfWall({ sxx: 0, sxy: 0, syy: 0, df: 0, ahead: 3.2 }, learned).mean).toBeCloseTo(11.7, 9)
    // And what a foal shows is set against the grown horse's by as much.
    expect(learnGrowOut([wall(11.7, 50, 0, 3.2)]).mean).toBeCloseTo(8.5, 6)
  })

  it('learn the error of a distance, each wall about its own rate', () => {
    const quiet = learnGrowOut([wall(8, 5, 0), wall(10, 5, 0)])
    expect(quiet.distanceSd).toBeCloseTo(Math.sqrt((7 * 1.5 ** 2) / (7 + 6)), 12)
    const noisy = learnGrowOut([wall(8, 5, 100)])
    expect(noisy.distanceSd).toBeCloseTo(Math.sqrt((7 * 1.5 ** 2 + 100) / 10), 12)
  })
})
