import { describe, expect, it } from 'vitest'
import { fitCourse, levelAt, levelSd, readingSd, slopeSd } from '../../../src/trend/model/fit.ts'
import { outliersOf } from '../../../src/trend/model/outliers.ts'
import { bothStages, ordinary } from './build-course.ts'

const variances = { e: 4, u: 0.64, w: 0.64 }
const scatter = { variances, worth: 10 }
const times = [0, 1.2, 2.1, 3.4, 4.5, 5.8]
const growing = { mean: 8.5, variance: 4.41 }
const none = times.map(() => null)

describe('the fit of a course', () => {
  it('recovers a straight line with its growth, from both stages, from either, and with gaps', () => {
    const left = times.map((t) => 90 - 0.7 * t)
    const back = times.map((t, i) => {
      const next = times[i + 1]
      return next === undefined ? null : 90 - 0.7 * t + 8.5 * (next - t)
    })
    const some = <T>(values: readonly T[], of: (i: number) => boolean) =>
      values.map((value, i) => (of(i) ? value : null))
    for (const course of [
      bothStages(times, left, back, growing),
      bothStages(times, left, none, growing),
      bothStages(times, none, back, growing),
      bothStages(
        times,
        some(left, (i) => i !== 2),
        some(back, (i) => i % 2 === 1),
        growing,
      ),
    ]) {
      const fit = fitCourse(course, scatter)
      expect(fit?.slope).toBeCloseTo(-0.7, 9)
      expect(fit?.level).toBeCloseTo(90, 9)
      expect(fit?.growth).toBeCloseTo(8.5, 9)
      expect(fit?.s2).toBeCloseTo(10 / (10 + (fit?.n ?? 0) - 2), 9)
    }
  })

  it('gives nothing where the readings do not tell of two times', () => {
    expect(fitCourse(bothStages([], [], []), scatter)).toBeNull()
    expect(fitCourse(bothStages([0], [90], [null]), scatter)).toBeNull()
    expect(fitCourse(bothStages([0, 1], [90, null], [98, null]), scatter)).toBeNull()
    expect(fitCourse(bothStages([0, 0], [90, 91], [null, null]), scatter)).toBeNull()
    expect(fitCourse(bothStages([0, 1], [90, 91], [null, null]), scatter)).toMatchObject({ n: 2, nu: 10 })
  })

  it('with two readings has nothing but what the practice teaches to go by', () => {
    const fit = fitCourse(bothStages([0, 2], [44, 46], [null, null]), scatter) ?? never()
    expect(fit.s2).toBeCloseTo(1, 12)
    expect(readingSd(fit)).toBeCloseTo(Math.sqrt(4.64), 12)
    expect(slopeSd(fit)).toBeCloseTo(Math.sqrt(2 * 4.64) / 2, 12)
  })

  it('does not let growth be seen where only trims were read: it stays what was believed', () => {
    const fit = fitCourse(bothStages(times, [90, 89, 91, 88, 89, 87], none, growing), scatter) ?? never()
    expect(fit.growth).toBeCloseTo(8.5, 12)
    expect(fit.inverse.i22).toBeCloseTo(growing.variance, 12)
    // And costs no residual: the same as a line through six readings.
    const plain = fitCourse(bothStages(times, [90, 89, 91, 88, 89, 87], none), ordinary) ?? never()
    expect(fit.slope).toBeCloseTo(plain.slope, 12)
    expect(fit.s2 * fit.nu - 10).toBeCloseTo((plain.s2 * plain.nu) / 4.64, 9)
  })

  it('weighs a reading taken twice as two readings of one trim', () => {
    const once = bothStages([0, 1, 2], [90, 92, 91], [null, null, null])
    const twice = { ...once, leftShare: Float64Array.of(1, 0.5, 1) }
    const weights = [1 / 4.64, 1 / 2.64, 1 / 4.64]
    const total = weights.reduce((sum, weight) => sum + weight, 0)
    const mean = (of: readonly number[]) =>
      of.reduce((sum, value, i) => sum + value * (weights[i] ?? 0), 0) / total
    const fit = fitCourse(twice, scatter) ?? never()
    // At the weighted mean time the level is the weighted mean.
    expect(levelAt(fit, mean([0, 1, 2]))).toBeCloseTo(mean([90, 92, 91]), 12)
    expect(fit.level).not.toBeCloseTo(fitCourse(once, scatter)?.level ?? Number.NaN, 3)
  })

  it('is surer of the slope with arrivals than without, and of the level the nearer to the readings', () => {
    const left = [90, 89.4, 89.1, 88, 87.2, 87]
    const back = [98, 97, 97, 96.5, 97.5, null]
    const both = fitCourse(bothStages(times, left, back, growing), scatter) ?? never()
    const trims = fitCourse(bothStages(times, left, none, growing), scatter) ?? never()
    expect(both.inverse.i11).toBeLessThan(trims.inverse.i11)
    expect(levelSd(both, 3)).toBeLessThan(levelSd(both, 8))
  })

  it('does not depend on where time begins, nor on the level, to the last digits that count', () => {
    const left = [90, 89.4, 89.1, 88, 87.2, 87]
    const fit = fitCourse(bothStages(times, left, none), scatter) ?? never()
    const later = fitCourse(
      bothStages(
        times.map((t) => t + 240),
        left.map((value) => value + 1000),
        none,
      ),
      scatter,
    )
    expect(later?.slope).toBeCloseTo(fit.slope, 8)
    expect(later && slopeSd(later)).toBeCloseTo(slopeSd(fit), 8)
    expect(later && levelAt(later, 240)).toBeCloseTo(fit.level + 1000, 6)
  })
})

describe('outliers', () => {
  const left = [90, 89.4, 89.1, 88, 87.2, 87]
  const back = [98, 97, 97, 96.5, 97.5, null]

  it('are none among readings that scatter as they should', () =>
    expect(outliersOf(bothStages(times, left, back, growing), variances)).toEqual([]))

  it('are slips of either stage, at most two, the worst first', () => {
    const slipped = [...left]
    slipped[1] = 125
    const arrivals = [...back]
    arrivals[3] = 70
    const found = outliersOf(bothStages(times, slipped, arrivals, growing), variances)
    expect(found.map(({ trim, stage }) => `${trim} ${stage}`)).toEqual(['1 left', '3 back'])
    slipped[4] = 60
    expect(outliersOf(bothStages(times, slipped, arrivals, growing), variances)).toHaveLength(2)
  })

  it('are not looked for with fewer than two degrees of freedom', () => {
    expect(outliersOf(bothStages([0, 1, 2], [90, 190, 90], [null, null, null]), variances)).toEqual([])
    expect(
      outliersOf(
        bothStages([0, 1, 2, 3, 4], [90, 90, 190, 90, 90], [null, null, null, null, null]),
        variances,
      ),
    ).toHaveLength(1)
  })

  it('of two readings that contradict each other alike are the earlier, in millimetres and in inches', () => {
    const inInches = 25.4
    for (const scale of [1, inInches]) {
      const course = bothStages([0, 0.03, 0.06], [60, 60, null], [60, 87.56, null], growing)
      const scaled = {
        ...course,
        growth: { mean: growing.mean / scale, variance: growing.variance / scale ** 2 },
        left: course.left.map((value) => value / scale),
        back: course.back.map((value) => value / scale),
      }
      const of = { e: variances.e / scale ** 2, u: variances.u / scale ** 2, w: variances.w / scale ** 2 }
      expect(outliersOf(scaled, of)).toMatchObject([{ trim: 1, stage: 'left' }])
    }
  })

  it('never name a reading that the line goes through whatever it is', () => {
    // The last trim alone tells of the slope: nothing speaks against it.
    const found = outliersOf(
      bothStages([0, 0, 0, 5], [90, 90.5, 89.5, 300], [null, null, null, null]),
      variances,
    )
    expect(found.map(({ trim }) => trim)).not.toContain(3)
  })
})

function never(): never {
  throw new Error('expected a value')
}
