/**
 * Least squares against certified values of the NIST Statistical Reference Datasets, linear regression. With one stage
 * of readings, errors of variance 1 and a prior worth nothing the engine's fit is ordinary least squares.
 */
import { describe, expect, it } from 'vitest'
import { fitCourse, levelSd, slopeSd } from '../../src/trend/model/fit.ts'
import { afterTrims, ordinary } from '../trend/model/build-course.ts'

/** Digits in which two figures agree: -log10 of the relative difference. */
const digits = (got: number, certified: number): number =>
  got === certified ? 16 : -Math.log10(Math.abs((got - certified) / certified))

/** Norris, n = 36, y:x. */
const norris =
  `0.1:0.2 338.8:337.4 118.1:118.2 888.0:884.6 9.2:10.1 228.1:226.5 668.5:666.3 998.5:996.3 449.1:448.6
  778.9:777.0 559.2:558.2 0.3:0.4 0.1:0.6 778.1:775.5 668.8:666.9 339.3:338.0 448.9:447.5 10.8:11.6 557.7:556.0
  228.3:228.1 998.0:995.8 888.8:887.6 119.6:120.2 0.3:0.3 0.6:0.3 557.6:556.8 339.3:339.1 888.0:887.2 998.5:999.0
  778.9:779.0 10.2:11.1 117.6:118.3 228.9:229.2 668.4:669.1 449.2:448.9 0.2:0.5`
    .trim()
    .split(/\s+/)
    .map((pair) => pair.split(':').map(Number))

describe('NIST StRD Norris', () => {
  const fit = fitCourse(
    afterTrims(
      norris.map(([, x = 0]) => x),
      norris.map(([y = 0]) => y),
    ),
    ordinary,
  )

  it('has its 36 pairs', () => expect(fit).toMatchObject({ n: 36, nu: 34 }))

  it.each([
    ['intercept', () => fit?.level, -0.262323073774029],
    ['standard deviation of the intercept', () => fit && levelSd(fit, 0), 0.232818234301152],
    ['slope', () => fit?.slope, 1.00211681802045],
    ['standard deviation of the slope', () => fit && slopeSd(fit), 0.000429796848199937],
    ['residual standard deviation', () => fit && Math.sqrt(fit.s2), 0.884796396144373],
  ])('gives the certified %s to at least 9 figures', (_, got, certified) =>
    expect(digits(got() ?? Number.NaN, certified)).toBeGreaterThan(9),
  )
})

/**
 * NoInt1 and NoInt2 of the same collection are lines through the origin (figures from memory; they follow from the data
 * by hand: NoInt2's slope is 56 / 77). Our lines have an intercept, so each point is entered with its mirror image
 * through the origin: that forces the intercept to 0, keeps the slope, doubles the residual sum and, with 2 n - 2
 * degrees of freedom in place of n - 1, keeps the residual standard deviation; the slope's error shrinks by sqrt(2).
 */
describe.each([
  {
    set: 'NoInt1',
    x: Array.from({ length: 11 }, (_, i) => 60 + i),
    y: Array.from({ length: 11 }, (_, i) => 130 + i),
    slope: 2.07438016528926,
    slopeError: 0.0165289256198347,
    residualSd: 3.56753034006338,
  },
  {
    set: 'NoInt2',
    x: [4, 5, 6],
    y: [3, 4, 4],
    slope: 0.727272727272727,
    slopeError: 0.0420827318078432,
    residualSd: 0.369274472937998,
  },
])('NIST StRD $set', ({ x, y, slope, slopeError, residualSd }) => {
  const mirrored = (values: readonly number[]) => [...values, ...values.map((value) => -value)]
  const fit = fitCourse(afterTrims(mirrored(x), mirrored(y)), ordinary)

  it('gives the certified figures to at least 9 figures', () => {
    expect(fit?.level).toBeCloseTo(0, 12)
    expect(digits(fit?.slope ?? Number.NaN, slope)).toBeGreaterThan(9)
    expect(digits(Math.sqrt(fit?.s2 ?? Number.NaN), residualSd)).toBeGreaterThan(9)
    expect(digits((fit ? slopeSd(fit) : Number.NaN) * Math.SQRT2, slopeError)).toBeGreaterThan(9)
  })
})
