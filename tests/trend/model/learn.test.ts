import { describe, expect, it } from 'vitest'
import type { Course } from '../../../src/trend/model/course.ts'
import { freedomAcross, worthOf } from '../../../src/trend/model/heterogeneity.ts'
import { allFeet, learnScatter, singleFoot } from '../../../src/trend/model/learn.ts'
import {
  learnedKey,
  learnedOf,
  learnedOfKey,
  onGrid,
  roundLearned,
} from '../../../src/trend/model/learned.ts'
import { curvatureOf, minimise } from '../../../src/trend/model/minimise.ts'
import { untaughtPractice } from '../../../src/trend/model/practice.ts'
import { noSeason } from '../../../src/trend/model/season.ts'
import { lowestOn, slopeScale, slopeSpread } from '../../../src/trend/model/slopes.ts'
import { seeded } from '../random.ts'
import { bothStages } from './build-course.ts'

describe('the search for the lowest point', () => {
  it('finds the bottom of a bowl and its curvature', () => {
    const bowl = ([x = 0, y = 0]: readonly number[]) =>
      3 * (x - 1) ** 2 + (x - 1) * (y + 2) + 2 * (y + 2) ** 2
    const { at, curvature } = minimise(bowl, [0, 0], 1e-9)
    expect(at[0]).toBeCloseTo(1, 6)
    expect(at[1]).toBeCloseTo(-2, 6)
    expect(curvature.flat().map((one) => Number(one.toFixed(3)))).toEqual([6, 1, 1, 4])
  })

  it('comes down a curved valley, where Newton alone would go astray', () => {
    // Rosenbrock 1960 (Computer Journal 3: 175; from memory).
    const valley = ([x = 0, y = 0]: readonly number[]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2
    const { at } = minimise(valley, [-1.2, 1], 1e-8)
    expect(at[0]).toBeCloseTo(1, 3)
    expect(at[1]).toBeCloseTo(1, 3)
  })

  it('finds the lowest of several hollows on a stretch, and an end', () => {
    expect(lowestOn((x) => Math.cos(3 * x) + 0.1 * x, 0, 6)).toBeCloseTo(1.036, 2)
    expect(lowestOn((x) => x, 2, 5)).toBeCloseTo(2, 4)
  })

  it('has second derivatives of what is not flat', () =>
    expect(curvatureOf(([x = 0]) => Math.cosh(x), [0])[0]?.[0]).toBeCloseTo(1, 5))
})

/** Courses of eight trims whose errors are given as multiples of the literature's. */
function practiceOf(
  count: number,
  ratios: typeof singleFoot,
  seed: number,
  differing = 0,
): readonly Course[] {
  const random = seeded(seed)
  return Array.from({ length: count }, () => {
    const own = differing === 0 ? 1 : Math.sqrt(differing / random.chiSquared(differing))
    const times = Array.from({ length: 8 }, (_, i) => 1.25 * i)
    const levels = times.map((t) => 85 + 0.3 * t + own * ratios.u * random.normal())
    return bothStages(
      times,
      levels.map((level) => level + own * ratios.e * random.normal()),
      levels.map((level, i) =>
        i === 7
          ? null
          : level + 10 + own * (ratios.w * Math.sqrt(1.25) * random.normal() + ratios.e * random.normal()),
      ),
      { mean: 8.5, variance: 4.41 },
    )
  })
}

describe('what a practice teaches', () => {
  it('is the literature where nothing was read', () => {
    for (const prior of [singleFoot, allFeet]) {
      const learned = learnScatter([], [], prior)
      expect(learned.e).toBeCloseTo(prior.e, 6)
      expect(learned.u).toBeCloseTo(prior.u, 6)
      expect(learned.w).toBeCloseTo(prior.w, 6)
      // 15 degrees of freedom between feet, less for the prior's own: 4 / (1 / 0.3^2 + 2 / 0.5^2).
      expect(learned.worth).toBeCloseTo(worthOf(15, 4 / (1 / 0.3 ** 2 + 2 / 0.5 ** 2)), 3)
    }
  })

  it.each([0.6, 1, 1.6, 2.2])('is how well it reads: errors %f times the literature', (e) => {
    const learned = learnScatter(practiceOf(80, { e, u: 0.4 * e, w: 0.4 * e }, 11), [], singleFoot)
    expect(Math.abs(learned.e / e - 1)).toBeLessThan(0.1)
  })

  it('is little moved by one horse', () => {
    const one = learnScatter(practiceOf(4, { e: 2.2, u: 0.9, w: 0.9 }, 3), [], singleFoot)
    expect(one.e).toBeGreaterThan(1.2)
    expect(one.e).toBeLessThan(2.2)
  })

  it('does not come from courses of fewer than three readings', () => {
    const short = Array.from({ length: 50 }, () => bothStages([0, 1], [90, 120], [null, null]))
    expect(learnScatter(short, [], singleFoot)).toEqual(learnScatter([], [], singleFoot))
  })

  it('is not moved by slips of the pen', () => {
    const courses = practiceOf(40, singleFoot, 5)
    const slipped = courses.map((course, i) => {
      const left = course.left.slice()
      if (i % 4 === 0) left[i % 8] = (left[i % 8] ?? 0) + 25
      return { ...course, left }
    })
    const clean = learnScatter(courses, [], singleFoot)
    expect(Math.abs(learnScatter(slipped, [], singleFoot).e / clean.e - 1)).toBeLessThan(0.05)
  })

  it('takes readings of one foot taken twice as telling of the reading alone', () => {
    const random = seeded(8)
    const repeats = Array.from({ length: 200 }, () => ({
      difference: 0.7 * 2 * Math.SQRT2 * random.normal(),
      sd: 2,
    }))
    const learned = learnScatter([], repeats, singleFoot)
    expect(Math.abs(learned.e / 0.7 - 1)).toBeLessThan(0.1)
    expect(learned.u).toBeCloseTo(0.4, 4)
  })

  it('learns repeatability within 18 % from nine feet read twice: three months of three a month', () => {
    const random = seeded(18)
    const errors = Array.from({ length: 400 }, () => {
      const repeats = Array.from({ length: 9 }, () => ({
        difference: 0.7 * Math.SQRT2 * random.normal(),
        sd: 1,
      }))
      return Math.log(learnScatter([], repeats, singleFoot).e / 0.7)
    })
    const rms = Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length)
    // At the literature's own error it is 15 %, at one and a half times 25 %.
    expect(rms).toBeLessThan(0.19)
  })

  it('is worth more the less feet differ', () => {
    const alike = learnScatter(practiceOf(80, singleFoot, 21), [], singleFoot).worth
    const different = learnScatter(practiceOf(80, singleFoot, 21, 5), [], singleFoot).worth
    expect(alike).toBeGreaterThan(25)
    expect(different).toBeLessThan(10)
  })
})

describe('how much feet differ in scatter', () => {
  const residual = (rss: number, df = 4) => ({ rss, df })

  it('is not told by fewer than eight courses: fifteen', () => {
    expect(freedomAcross([])).toBe(15)
    expect(freedomAcross(Array.from({ length: 7 }, (_, i) => residual(i + 1)))).toBe(15)
    expect(freedomAcross(Array.from({ length: 20 }, (_, i) => residual(i + 1, 1)))).toBe(15)
  })

  it('is at most sixty', () => expect(freedomAcross(Array.from({ length: 20 }, () => residual(4)))).toBe(60))

  it('is small where some scatter ten times as much', () =>
    expect(freedomAcross(Array.from({ length: 20 }, (_, i) => residual(i % 2 === 0 ? 1 : 100)))).toBeLessThan(
      3,
    ))

  it('counts for less while the common variance itself is not sure', () => {
    expect(worthOf(15, 0)).toBeCloseTo(15, 6)
    expect(worthOf(15, 0.2)).toBeLessThan(8)
  })
})

describe('how far slopes spread', () => {
  it('is the prior scale where none was seen, and nears what many sure ones show', () => {
    expect(slopeSpread([])).toBe(slopeScale)
    const random = seeded(6)
    const seen = (spread: number) =>
      Array.from({ length: 300 }, () => ({
        slope: spread * random.normal() + 0.05 * random.normal(),
        error: 0.05,
      }))
    expect(slopeSpread(seen(0.2))).toBeCloseTo(0.2, 1)
    expect(slopeSpread(seen(0))).toBeLessThan(0.03)
  })
})

describe('learned values', () => {
  it('lie on a grid of a tenth, of three figures', () => {
    expect(onGrid(1)).toBe(1)
    expect(onGrid(1.04)).toBe(1)
    expect(onGrid(1.06)).toBe(1.11)
    for (const value of [0.013, 0.4, 1.37, 2.2, 19]) {
      expect(Math.abs(Math.log(onGrid(value) / value))).toBeLessThan(0.0501)
      expect(onGrid(onGrid(value))).toBe(onGrid(value))
      expect(String(onGrid(value)).replace(/^0\.0*|\./g, '').length).toBeLessThanOrEqual(3)
    }
  })

  it('are never worth less than two readings, and slopes never nothing', () => {
    const rounded = roundLearned({ e: 1, u: 0.4, w: 0.4, worth: 0.3, season: noSeason, slopes: 0 })
    expect(rounded.worth).toBe(2)
    expect(rounded.slopes).toBeGreaterThan(0.018)
  })

  it('have keys that say what they are of', () => {
    expect(learnedOfKey(learnedKey('photo', 'toe-angle', 'all'))).toEqual({
      family: 'photo',
      measure: 'toe-angle',
      isAll: true,
    })
    expect(learnedKey('gauge', 'toe-angle', 'LF')).toBe(learnedKey('gauge', 'toe-angle', 'RH'))
  })

  it('are the literature for what nobody read, of single feet and of all', () => {
    const { learned } = untaughtPractice
    expect(learnedOf(learned, 'gauge', 'toe-angle', 'LF')).toMatchObject({ e: 1, worth: 7 })
    expect(learnedOf(learned, 'gauge', 'toe-angle', 'all')).toMatchObject({ e: 0.549, worth: 7 })
  })
})
