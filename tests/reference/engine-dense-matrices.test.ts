/**
 * The closed formulas of the fit against the same written out in full with matrices (ml-matrix): V, X, K, P, the
 * residual sum of squares, the covariance, the likelihood and the outlier statistics of random courses with readings
 * missing and readings taken twice.
 */
import { determinant, inverse, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { type Course, type Place, without } from '../../src/trend/model/course.ts'
import { fitCourse, levelSd, slopeSd } from '../../src/trend/model/fit.ts'
import { objective } from '../../src/trend/model/learn.ts'
import { outliersOf } from '../../src/trend/model/outliers.ts'
import { noProducts, solve, sumUp } from '../../src/trend/model/products.ts'
import { bothStages } from '../trend/model/build-course.ts'
import { type Random, seeded } from '../trend/random.ts'

function randomCourse(random: Random): Course {
  const n = 3 + Math.floor(random.even() * 10)
  let time = 3 * random.even()
  const times = Array.from({ length: n }, () => (time += 0.2 + 2 * random.even()))
  const read = () => (random.even() < 0.25 ? null : 85 + 4 * random.normal())
  const share = () => Float64Array.from(times, () => (random.even() < 0.2 ? 0.5 : 1))
  return {
    ...bothStages(
      times,
      times.map(read),
      times.map((_, i) => (i === n - 1 ? null : read())),
      { mean: 8.5, variance: 4.41 },
    ),
    leftShare: share(),
    backShare: share(),
  }
}

const variances = (random: Random) => ({ e: 0.5 + 4 * random.even(), u: random.even(), w: 2 * random.even() })
type Variances = ReturnType<typeof variances>

function inFull(course: Course, { e, u, w }: Variances) {
  const places = [...course.times.keys()].flatMap((trim): Place[] => [
    ...(Number.isNaN(course.left[trim]) ? [] : [{ trim, stage: 'left' as const }]),
    ...(Number.isNaN(course.back[trim]) ? [] : [{ trim, stage: 'back' as const }]),
  ])
  const at = (values: Float64Array, { trim }: Place) => values[trim] ?? Number.NaN
  const V = new Matrix(
    places.map((a) =>
      places.map((b) => {
        if (a.trim !== b.trim) return 0
        if (a.stage !== b.stage) return u
        return a.stage === 'left'
          ? u + e * at(course.leftShare, a)
          : u + e * at(course.backShare, a) + w * at(course.gaps, a)
      }),
    ),
  )
  const X = new Matrix(
    places.map((place) => [1, at(course.times, place), place.stage === 'left' ? 0 : at(course.gaps, place)]),
  )
  const y = Matrix.columnVector(places.map((place) => at(course[place.stage], place)))
  const { mean, variance } = course.growth
  const W = inverse(V)
  const XtW = X.transpose().mmul(W)
  const K = Matrix.add(XtW.mmul(X), Matrix.diag([0, 0, 1 / variance]))
  const r = Matrix.add(XtW.mmul(y), Matrix.columnVector([0, 0, mean / variance]))
  const beta = inverse(K).mmul(r)
  const residual = Matrix.sub(y, X.mmul(beta))
  // The residual sum as a sum of squares, not as a difference of large ones.
  const rss = residual.transpose().mmul(W).mmul(residual).get(0, 0) + (beta.get(2, 0) - mean) ** 2 / variance
  const P = Matrix.sub(W, W.mmul(X).mmul(inverse(K)).mmul(X.transpose()).mmul(W))
  const weighted = W.mmul(residual)
  const errors = places.map((_, i) => Math.abs(weighted.get(i, 0)) / Math.sqrt(P.get(i, i)))
  return { places, V, K, beta, rss, errors }
}

/** Against 1 where the witness is nearly nothing: a residual sum of two readings is 0 but for the arithmetic. */
const close = (got: number | undefined, witness: number, within = 1e-9) =>
  expect(Math.abs((got ?? Number.NaN) - witness) / Math.max(1, Math.abs(witness))).toBeLessThan(within)

const cases = Array.from({ length: 200 }, (_, i) => {
  const random = seeded(7000 + i)
  return { course: randomCourse(random), of: variances(random) }
}).filter(({ course, of }) => {
  const { places } = inFull(course, of)
  return new Set(places.map(({ trim }) => trim)).size > 1
})

describe('the fit, written out in full', () => {
  it('is asked of enough random courses', () => expect(cases.length).toBeGreaterThan(180))

  it('has the same solution, residual sum, covariance and likelihood', () => {
    for (const { course, of } of cases) {
      const { places, V, K, beta, rss } = inFull(course, of)
      const products = sumUp(course, of, noProducts())
      const solved = solve(products)
      close(products.logV, Math.log(determinant(V)), 1e-8)
      close(solved.logK, Math.log(determinant(K)), 1e-8)
      close(solved.rss, rss, 1e-7)
      close(products.origin + solved.level, beta.get(0, 0))
      expect(solved.slope).toBeCloseTo(beta.get(1, 0), 8)
      close(solved.growth, beta.get(2, 0), 1e-8)
      const worth = 7
      const fit = fitCourse(course, { variances: of, worth })
      const s2 = (worth + rss) / (worth + places.length - 2)
      const Cov = Matrix.mul(inverse(K), s2)
      expect(fit?.nu).toBe(worth + places.length - 2)
      close(fit?.s2, s2, 1e-8)
      close(fit === null ? undefined : slopeSd(fit), Math.sqrt(Cov.get(1, 1)), 1e-8)
      const x = Matrix.columnVector([1, 4, 0])
      close(
        fit === null ? undefined : levelSd(fit, 4),
        Math.sqrt(x.transpose().mmul(Cov).mmul(x).get(0, 0)),
        1e-7,
      )
      close(
        objective([course], [], { e: Math.sqrt(of.e), u: Math.sqrt(of.u), w: Math.sqrt(of.w) }),
        (Math.log(determinant(V)) + Math.log(determinant(K)) + rss) / 2,
        1e-7,
      )
    }
  })

  it('leaves out the same readings as outliers, at most two, the worst first', () => {
    let found = 0
    for (const [i, { course, of }] of cases.entries()) {
      // A slip of the pen now and then, and a third that must stay.
      const random = seeded(i)
      const slipped: Course = { ...course, left: course.left.slice() }
      for (let k = 0; k < i % 4; k++) {
        const trim = Math.floor(random.even() * course.left.length)
        slipped.left[trim] = (slipped.left[trim] ?? 0) + 25
      }
      const out = outliersOf(slipped, of).map(({ trim, stage }) => ({ trim, stage }))
      // Two readings may be the worst alike, so the engine's choice is followed.
      for (let taken = 0; taken <= out.length && taken < 2; taken++) {
        const { places, errors } = inFull(without(slipped, out.slice(0, taken)), of)
        const worst = places.length < 4 ? 0 : Math.max(...errors.filter((error) => !Number.isNaN(error)))
        expect(worst > 3.5).toBe(taken < out.length)
        const next = out[taken]
        if (next === undefined) continue
        const place = places.findIndex(({ trim, stage }) => trim === next.trim && stage === next.stage)
        close(errors[place], worst, 1e-6)
      }
      found += out.length
    }
    expect(found).toBeGreaterThan(60)
  })
})
