/** Growth by the season: faster in one half of the year than in the other, by as much as a practice's walls show. */
import type { Course, Variances } from './course.ts'
import { inverseOf, noProducts, solve, sumUp, tellsSlope } from './products.ts'

/** Growth beyond its mean: cos x cosine + sin x sine of the calendar year, a month. */
export interface Season {
  readonly cos: number
  readonly sin: number
}

export const noSeason: Season = { cos: 0, sin: 0 }

const yearMonths = 12
const turn = (2 * Math.PI) / yearMonths

/** The integrals of cosine and sine of the year over the growth after a trim. */
function yearOver({ origin, times, gaps }: Course, trim: number): readonly [number, number] {
  const from = turn * (origin + (times[trim] ?? 0))
  const to = from + turn * (gaps[trim] ?? 0)
  return [(Math.sin(to) - Math.sin(from)) / turn, (Math.cos(from) - Math.cos(to)) / turn]
}

/** The course as it would have been without the season. */
export function withoutSeason<C extends Course>(course: C, { cos, sin }: Season): C {
  if (cos === 0 && sin === 0) return course
  const back = Float64Array.from(course.back, (value, trim) => {
    const [ofCos, ofSin] = yearOver(course, trim)
    return value - cos * ofCos - sin * ofSin
  })
  return { ...course, back }
}

/** Standard deviation of the season before anything was seen, as a share of growth. Common practice, no source. */
const share = 0.15
/** Growth by which that is reckoned, mm a month at the least. */
const leastGrowth = 2

/**
 * (sum Z'PZ + I / (0.15 G)^2)^-1 sum Z'V^-1 (y - X beta), with the integrals of the year over each growth as Z, P as for
 * outliers, and G the mean growth of the courses.
 * @param variances of each course
 */
export function seasonOf(courses: readonly Course[], variances: (course: Course) => Variances): Season {
  const products = noProducts()
  let [cc, cs, ss, rc, rs] = [0, 0, 0, 0, 0]
  let [grown, n] = [0, 0]
  for (const course of courses) {
    const of = variances(course)
    sumUp(course, of, products)
    if (!tellsSlope(products)) continue
    const { level, slope, growth } = solve(products)
    const i = inverseOf(products)
    // Of X'V^-1Z, a row each for level, slope and growth.
    const [c, s] = [
      [0, 0, 0],
      [0, 0, 0],
    ] as [Triple, Triple]
    let told = 0
    for (let trim = 0; trim < course.back.length; trim++) {
      const b = course.back[trim] ?? Number.NaN
      if (Number.isNaN(b)) continue
      told++
      const a = course.left[trim] ?? Number.NaN
      const t = course.times[trim] ?? 0
      const d = course.gaps[trim] ?? 0
      const [zc, zs] = yearOver(course, trim)
      const p = of.e * (course.leftShare[trim] ?? 1) + of.u
      const q = of.e * (course.backShare[trim] ?? 1) + of.u + of.w * d
      const line = products.origin + level + slope * t
      const offB = b - line - growth * d
      // The weights of B's column in V^-1: on A where it was read, and on B.
      const det = p * q - of.u ** 2
      const [onA, onB] = Number.isNaN(a) ? [0, 1 / q] : [-of.u / det, p / det]
      const residual = (onA === 0 ? 0 : onA * (a - line)) + onB * offB
      rc += zc * residual
      rs += zs * residual
      cc += onB * zc * zc
      cs += onB * zc * zs
      ss += onB * zs * zs
      const x: Triple = [onA + onB, t * (onA + onB), d * onB]
      for (const k of [0, 1, 2] as const) {
        c[k] += x[k] * zc
        s[k] += x[k] * zs
      }
    }
    if (told === 0) continue
    grown += growth
    n++
    const through = (left: Triple, right: Triple) =>
      left[0] * (i.i00 * right[0] + i.i01 * right[1] + i.i02 * right[2]) +
      left[1] * (i.i01 * right[0] + i.i11 * right[1] + i.i12 * right[2]) +
      left[2] * (i.i02 * right[0] + i.i12 * right[1] + i.i22 * right[2])
    cc -= through(c, c)
    cs -= through(c, s)
    ss -= through(s, s)
  }
  if (n === 0) return noSeason
  const belief = 1 / (share * Math.max(leastGrowth, grown / n)) ** 2
  const det = (cc + belief) * (ss + belief) - cs ** 2
  return { cos: ((ss + belief) * rc - cs * rs) / det, sin: ((cc + belief) * rs - cs * rc) / det }
}

type Triple = [number, number, number]
