/**
 * The weighted sums of a course under given variances: K = X'V^-1X + prior, r = X'V^-1y + prior, y'V^-1y + prior and
 * log|V|, with the columns of X level, slope and growth. V is a block of two for a trim of which both readings are
 * there, else diagonal, so the sums are closed formulas over the trims.
 */
import type { Course, Variances } from './course.ts'

export interface Products {
  /** Readings taken in. */
  n: number
  /** The first value: y counts from it, so that little is lost to cancellation. */
  origin: number
  k00: number
  k01: number
  k02: number
  k11: number
  k12: number
  k22: number
  r0: number
  r1: number
  r2: number
  yy: number
  logV: number
  /** Earliest and latest trim time told of. */
  from: number
  to: number
}

export const noProducts = (): Products => ({
  n: 0,
  origin: Number.NaN,
  k00: 0,
  k01: 0,
  k02: 0,
  k11: 0,
  k12: 0,
  k22: 0,
  r0: 0,
  r1: 0,
  r2: 0,
  yy: 0,
  logV: 0,
  from: Number.POSITIVE_INFINITY,
  to: Number.NEGATIVE_INFINITY,
})

/** Fills `into` with the sums of a course. */
export function sumUp(course: Course, { e, u, w }: Variances, into: Products): Products {
  const { times, gaps, left, back, leftShare, backShare, growth } = course
  let n = 0
  let origin = Number.NaN
  let k00 = 0
  let k01 = 0
  let k02 = 0
  let k11 = 0
  let k12 = 0
  let k22 = 1 / growth.variance
  let r0 = 0
  let r1 = 0
  let r2 = growth.mean / growth.variance
  let yy = growth.mean ** 2 / growth.variance
  let logV = 0
  /** |V| of the last few trims: one logarithm for several is cheaper. */
  let volume = 1
  let from = Number.POSITIVE_INFINITY
  let to = Number.NEGATIVE_INFINITY
  for (let i = 0; i < left.length; i++) {
    const a = left[i] as number
    const b = back[i] as number
    const hasA = !Number.isNaN(a)
    const hasB = !Number.isNaN(b)
    if (!hasA && !hasB) continue
    const t = times[i] as number
    const d = gaps[i] as number
    if (volume > 1e100 || volume < 1e-100) {
      logV += Math.log(volume)
      volume = 1
    }
    if (Number.isNaN(origin)) origin = hasA ? a : b
    if (t < from) from = t
    if (t > to) to = t
    const p = e * (leftShare[i] as number) + u
    const s = e * (backShare[i] as number) + u + w * d
    if (hasA && hasB) {
      const ya = a - origin
      const yb = b - origin
      const det = p * s - u * u
      const per = 1 / det
      const i11 = s * per
      const i12 = -u * per
      const i22 = p * per
      const ofA = i11 + i12
      const ofB = i12 + i22
      const whole = ofA + ofB
      k00 += whole
      k01 += t * whole
      k11 += t * t * whole
      k02 += d * ofB
      k12 += t * d * ofB
      k22 += d * d * i22
      const y = ofA * ya + ofB * yb
      r0 += y
      r1 += t * y
      r2 += d * (i12 * ya + i22 * yb)
      yy += i11 * ya * ya + 2 * i12 * ya * yb + i22 * yb * yb
      volume *= det
      n += 2
    } else {
      // A reading after the trim has nothing grown on it.
      const grown = hasA ? 0 : d
      const variance = hasA ? p : s
      const y = (hasA ? a : b) - origin
      const weight = 1 / variance
      k00 += weight
      k01 += t * weight
      k11 += t * t * weight
      k02 += grown * weight
      k12 += t * grown * weight
      k22 += grown * grown * weight
      r0 += weight * y
      r1 += t * weight * y
      r2 += grown * weight * y
      yy += weight * y * y
      volume *= variance
      n++
    }
  }
  into.n = n
  into.origin = origin
  into.k00 = k00
  into.k01 = k01
  into.k02 = k02
  into.k11 = k11
  into.k12 = k12
  into.k22 = k22
  into.r0 = r0
  into.r1 = r1
  into.r2 = r2
  into.yy = yy
  into.logV = logV + Math.log(volume)
  into.from = from
  into.to = to
  return into
}

/** log|K|, the solution beta = K^-1 r (level from the origin), and the residual sum y'V^-1y + prior - r'beta. */
export interface Solution {
  readonly logK: number
  readonly level: number
  readonly slope: number
  readonly growth: number
  readonly rss: number
}

/** log|K| + RSS alone: this is asked for many times while a practice's scatter is looked for. */
export function logKAndRss(of: Products): number {
  const { k00, k01, k02, r0 } = of
  const d0 = k00
  const c10 = k01 / d0
  const c20 = k02 / d0
  const d1 = of.k11 - c10 * k01
  const rest = of.k12 - c20 * k01
  const c21 = rest / d1
  const d2 = of.k22 - c20 * k02 - c21 * rest
  const z1 = of.r1 - c10 * r0
  const z2 = of.r2 - c20 * r0 - c21 * z1
  const rss = of.yy - (r0 * r0) / d0 - (z1 * z1) / d1 - (z2 * z2) / d2
  return Math.log(d0 * d1 * d2) + Math.max(0, rss)
}

/** Whether the sums tell of two times at the least: else no slope can be fitted. */
export const tellsSlope = ({ n, from, to }: Products): boolean => n >= 2 && to > from

/** By Cholesky's factors of the 3 x 3 matrix. */
export function solve(of: Products): Solution {
  const l00 = Math.sqrt(of.k00)
  const l10 = of.k01 / l00
  const l20 = of.k02 / l00
  const l11 = Math.sqrt(of.k11 - l10 * l10)
  const l21 = (of.k12 - l20 * l10) / l11
  const l22 = Math.sqrt(of.k22 - l20 * l20 - l21 * l21)
  const z0 = of.r0 / l00
  const z1 = (of.r1 - l10 * z0) / l11
  const z2 = (of.r2 - l20 * z0 - l21 * z1) / l22
  const growth = z2 / l22
  const slope = (z1 - l21 * growth) / l11
  const level = (z0 - l10 * slope - l20 * growth) / l00
  const rss = Math.max(0, of.yy - z0 * z0 - z1 * z1 - z2 * z2)
  return { logK: 2 * Math.log(l00 * l11 * l22), level, slope, growth, rss }
}

/** K^-1, the upper half: level, slope, growth. */
export interface Inverse {
  readonly i00: number
  readonly i01: number
  readonly i02: number
  readonly i11: number
  readonly i12: number
  readonly i22: number
}

export function inverseOf({ k00, k01, k02, k11, k12, k22 }: Products): Inverse {
  const c00 = k11 * k22 - k12 * k12
  const c01 = k02 * k12 - k01 * k22
  const c02 = k01 * k12 - k02 * k11
  const det = k00 * c00 + k01 * c01 + k02 * c02
  return {
    i00: c00 / det,
    i01: c01 / det,
    i02: c02 / det,
    i11: (k00 * k22 - k02 * k02) / det,
    i12: (k01 * k02 - k00 * k12) / det,
    i22: (k00 * k11 - k01 * k01) / det,
  }
}
