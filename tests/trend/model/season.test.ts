/** Growth that follows the season: found again from simulated walls, and taken out. */
import { describe, expect, it } from 'vitest'
import type { Course } from '../../../src/trend/model/course.ts'
import { learnScatter, singleFoot, variancesOf } from '../../../src/trend/model/learn.ts'
import { noSeason, seasonOf, withoutSeason } from '../../../src/trend/model/season.ts'
import { seeded } from '../random.ts'
import { bothStages } from './build-course.ts'

const growth = { mean: 8.5, variance: 4.41 }
const year = (x: number) => (2 * Math.PI * x) / 12

/** Walls of ten trims each, read to 1 mm, that grow 8.5 mm a month and `cos`, `sin` more with the year. */
function walls(count: number, season: { readonly cos: number; readonly sin: number }): readonly Course[] {
  const random = seeded(9)
  return Array.from({ length: count }, () => {
    const origin = 600 + 12 * random.even()
    const times = Array.from({ length: 10 }, (_, i) => 1.3 * i)
    const left = times.map((t) => 80 + 0.2 * t + 0.4 * random.normal() + random.normal())
    const back = times.map((t, i) => {
      if (i === times.length - 1) return null
      // By small steps, as a hoof grows.
      let grown = 0
      for (let k = 0; k < 1000; k++) {
        const at = year(origin + t + (1.3 * (k + 0.5)) / 1000)
        grown += (1.3 / 1000) * (8.5 + season.cos * Math.cos(at) + season.sin * Math.sin(at))
      }
      return 80 + 0.2 * t + grown + 0.4 * random.normal() + random.normal()
    })
    return { ...bothStages(times, left, back, growth), origin }
  })
}

const variances = (course: Course) => variancesOf(singleFoot, course.sd)

describe('the season of a practice', () => {
  it.each([
    { cos: 1.2, sin: 0 },
    { cos: 0, sin: -1 },
    { cos: -0.7, sin: 0.7 },
  ])('is found again: %o', (season) => {
    const found = seasonOf(walls(200, season), variances)
    expect(Math.abs(found.cos - season.cos)).toBeLessThan(0.15)
    expect(Math.abs(found.sin - season.sin)).toBeLessThan(0.15)
  })

  it('is none where there is none, and where no arrival was read', () => {
    const found = seasonOf(walls(200, noSeason), variances)
    expect(Math.hypot(found.cos, found.sin)).toBeLessThan(0.15)
    const afterOnly = walls(20, noSeason).map((course) => ({
      ...course,
      back: course.back.map(() => Number.NaN),
    }))
    expect(seasonOf(afterOnly, variances)).toEqual(noSeason)
    expect(seasonOf([], variances)).toEqual(noSeason)
  })

  it('taken out leaves growth as if every month were alike', () => {
    const season = { cos: 1.2, sin: 0.5 }
    const [one] = walls(1, season)
    if (one === undefined) throw new Error('no wall')
    const even = withoutSeason(one, season)
    const [same] = walls(1, noSeason)
    for (let i = 0; i < 9; i++) expect(even.back[i]).toBeCloseTo(same?.back[i] ?? 0, 4)
    expect(withoutSeason(one, noSeason)).toBe(one)
  })

  it('is learned of walls alone, and no longer counted as scatter', () => {
    const courses = walls(120, { cos: 1.3, sin: 0 })
    const told = learnScatter(courses, [], singleFoot, true)
    expect(told.season.cos).toBeGreaterThan(1.1)
    const untold = learnScatter(courses, [], singleFoot)
    expect(untold.season).toEqual(noSeason)
    expect(told.w).toBeLessThan(untold.w)
  })
})
