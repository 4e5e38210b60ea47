import { median } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { crossingOf } from '../../src/trend/crossing.ts'
import {
  addTo,
  fitLine,
  fitOfSums,
  levelAt,
  levelInterval,
  noSums,
  type Observation,
  readingInterval,
  slopeInterval,
  smallestRealChange,
} from '../../src/trend/fit.ts'
import { recentFit } from '../../src/trend/pace.ts'
import { disagree, pullsMost } from '../../src/trend/second-opinion.ts'
import { theilSen } from '../../src/trend/theil-sen.ts'
import { seeded } from './random.ts'

const at = (days: readonly number[], values: readonly number[]): readonly Observation[] =>
  days.map((day, i) => ({ day, value: values[i] ?? Number.NaN }))
const prior = { sd: 1.4, worth: 10 }

describe('fitLine', () => {
  it('pools the repeatability with the residuals: s^2 = (10 s0^2 + RSS) / (10 + n - 2)', () => {
    const points = at([0, 30, 65, 100], [44, 46, 45, 48])
    const fit = fitLine(points, prior)
    const rss = points.reduce((sum, { day, value }) => sum + (value - levelAt(fit ?? never(), day)) ** 2, 0)
    expect(fit?.nu).toBe(12)
    expect(fit?.t).toBeCloseTo(2.178812829667229, 12)
    expect(fit?.s).toBeCloseTo(Math.sqrt((10 * 1.4 ** 2 + rss) / 12), 12)
  })

  it('with two readings has nothing but the repeatability to go by', () => {
    const fit = fitLine(at([0, 35], [44, 46]), prior)
    expect(fit?.s).toBeCloseTo(1.4, 12)
    expect(fit?.nu).toBe(10)
    expect(fit && smallestRealChange(fit)).toBeCloseTo(2.228138851964938 * Math.SQRT2 * 1.4, 9)
  })

  it('gives nothing for one reading, for several on one day, or where nothing tells the scatter', () => {
    expect(fitLine(at([0], [44]), prior)).toBeNull()
    expect(fitLine([], prior)).toBeNull()
    expect(fitLine(at([7, 7, 7], [44, 45, 46]), prior)).toBeNull()
    expect(fitLine(at([0, 35], [44, 46]), { sd: 0, worth: 0 })).toBeNull()
  })

  it('widens from slope to level to a further reading as the formulas say', () => {
    const fit = fitLine(at([0, 30, 65, 100], [44, 46, 45, 48]), prior) ?? never()
    const { s, t, sxx, n, meanDay } = fit
    expect(slopeInterval(fit).high - fit.slope).toBeCloseTo((t * s) / Math.sqrt(sxx), 12)
    expect(levelInterval(fit, 120).high - levelAt(fit, 120)).toBeCloseTo(
      t * s * Math.sqrt(1 / n + (120 - meanDay) ** 2 / sxx),
      12,
    )
    expect(readingInterval(fit, 120).high - levelAt(fit, 120)).toBeCloseTo(
      t * s * Math.sqrt(1 + 1 / n + (120 - meanDay) ** 2 / sxx),
      12,
    )
  })

  it('comes out the same from sums that grew one reading at a time', () => {
    const random = seeded(3)
    let day = 0
    const sums = noSums()
    const points: Observation[] = []
    for (let i = 0; i < 200; i++) {
      const point = { day, value: 50 + 0.01 * day + random.normal() }
      points.push(point)
      addTo(sums, point.day, point.value)
      day += 20 + Math.floor(random.even() * 30)
    }
    const whole = fitLine(points, prior)
    const grown = fitOfSums(sums, prior)
    for (const key of ['slope', 'level', 's', 'sxx', 'rss'] as const)
      expect((grown?.[key] ?? 0) / (whole?.[key] ?? 0)).toBeCloseTo(1, 10)
  })
})

describe('theilSen', () => {
  const bruteForce = (points: readonly Observation[]): number =>
    median(
      points.flatMap((from, i) =>
        points
          .slice(i + 1)
          .filter((to) => to.day !== from.day)
          .map((to) => (to.value - from.value) / (to.day - from.day)),
      ),
    )

  it.each([3, 8, 30, 60, 150])('is the median of all pairs to the last digit, n = %d', (n) => {
    const random = seeded(n)
    for (let run = 0; run < 12; run++) {
      // Even and uneven dates, several visits on one day, whole and fine readings.
      const points = Array.from({ length: n }, (_, i) => {
        const value = 50 + 0.02 * i + 1.5 * random.normal()
        return {
          day: run % 2 === 0 ? 35 * i : Math.floor(random.even() * n * 8),
          value: run % 3 === 0 ? Math.round(value) : value,
        }
      }).toSorted((a, b) => a.day - b.day)
      expect(theilSen(points)).toBe(bruteForce(points))
    }
  })

  it('is so too for series of every kind', () => {
    const random = seeded(1968)
    for (let run = 0; run < 100; run++) {
      const n = 2 + Math.floor(random.even() * 60)
      const scatter = [0, 0.2, 1.5, 20][run % 4] ?? 0
      // As written down: to the half millimetre, to the millimetre, to five, or as fine as can be.
      const grain = [0.5, 1, 5, 0][Math.floor(run / 4) % 4] ?? 0
      let day = 0
      const points = Array.from({ length: n }, (_, i) => {
        if (i > 0) day += random.even() < 0.15 ? 0 : 1 + Math.floor(random.even() * 60)
        const fine = 50 + 0.3 * i + scatter * random.normal() + (run % 3 === 0 && i % 10 === 9 ? 300 : 0)
        return { day, value: grain === 0 ? fine : Math.round(fine / grain) * grain }
      })
      expect(theilSen(points) ?? Number.NaN).toBe(day === 0 ? Number.NaN : bruteForce(points))
    }
  })

  it('holds for a long straight line, where all slopes are one', () => {
    const points = Array.from({ length: 180 }, (_, i) => ({ day: 35 * i, value: 40 + 0.5 * i }))
    expect(theilSen(points)).toBeCloseTo(0.5 / 35, 12)
  })

  it('gives nothing for readings of one day', () => {
    expect(theilSen(at([5, 5], [44, 46]))).toBeNull()
    expect(theilSen(at([5], [44]))).toBeNull()
  })
})

describe('crossingOf', () => {
  it('is unbounded where the slope may be flat', () => {
    const fit = fitLine(at([0, 35], [44, 44.5]), prior) ?? never()
    expect(crossingOf(fit, 50)).toBeNull()
  })

  it('solves (level - target)^2 = t^2 Var(level) at both ends', () => {
    const fit = fitLine(at([0, 35, 70, 105, 140], [40, 42, 45, 46, 49]), prior) ?? never()
    const crossing = crossingOf(fit, 54) ?? never()
    for (const end of [crossing.low, crossing.high]) {
      const gap = levelAt(fit, end) - 54
      const reach = levelInterval(fit, end).high - levelAt(fit, end)
      expect(Math.abs(gap)).toBeCloseTo(reach, 9)
    }
    expect(crossing.low).toBeLessThan(crossing.day)
    expect(crossing.high).toBeGreaterThan(crossing.day)
  })
})

describe('recentFit', () => {
  const recentOf = (days: readonly number[], values: readonly number[], scatter = prior) =>
    recentFit(
      fitLine(at(days, values), scatter) ?? never(),
      Float64Array.from(days),
      Float64Array.from(values),
      scatter,
    )
  const bend = {
    days: [0, 70, 140, 210, 280, 350, 420, 490],
    values: [38, 43, 48, 53, 55, 55, 55, 55],
  }

  it('finds that the last four move at another pace', () => {
    const recent = recentOf(bend.days, bend.values)
    expect(recent?.slope).toBeCloseTo(0, 12)
    expect(recent?.n).toBe(4)
  })

  it('does not look at readings past the end of the whole series', () => {
    const whole = fitLine(at(bend.days, bend.values), prior) ?? never()
    const days = Float64Array.of(...bend.days, 560, 630)
    const values = Float64Array.of(...bend.values, 80, 90)
    expect(recentFit(whole, days, values, prior)).toEqual(recentOf(bend.days, bend.values))
  })

  it('does not look before there are six readings, and finds nothing on a straight line', () => {
    expect(recentOf(bend.days.slice(0, 5), bend.values.slice(0, 5))).toBeNull()
    expect(recentOf([0, 35, 70, 105, 140, 175], [40, 41, 42, 43, 44, 45])).toBeNull()
  })

  it('finds the curve of Meier 2021 (medians 2, 2, 0, 0, 0 on days 0, 4, 9, 14, 25) too short to split', () => {
    expect(recentOf([0, 4, 9, 14, 25], [2, 2, 0, 0, 0], { sd: 0.5, worth: 10 })).toBeNull()
  })
})

describe('second opinion', () => {
  const days = [0, 35, 70, 105, 140, 175, 210, 245]

  it('names the last visit when one wild reading there pulls the line', () => {
    const points = at(days, [44, 44.2, 44.4, 44.6, 44.8, 45, 45.2, 65])
    const fit = fitLine(points, prior) ?? never()
    expect(disagree(fit, theilSen(points) ?? never(), 245, 2)).toBe(true)
    expect(pullsMost(fit, points)).toBe(7)
  })

  it('is silent where both agree, and on a line without scatter', () => {
    const points = at(days, [44, 45.1, 45.9, 47.2, 47.8, 49.1, 50.2, 50.9])
    expect(disagree(fitLine(points, prior) ?? never(), theilSen(points) ?? never(), 245, 2)).toBe(false)
    const straight = at(
      days,
      days.map((day) => day / 35),
    )
    const exact = fitLine(straight, { sd: 0, worth: 10 }) ?? never()
    expect(disagree(exact, theilSen(straight) ?? never(), 245, 2)).toBe(false)
  })
})

function never(): never {
  throw new Error('expected a value')
}
