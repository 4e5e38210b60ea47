/** Readings that no error explains: a slip of the pen, another foot, centimetres for inches. */
import { type Course, type Place, type Variances, without } from './course.ts'
import { inverseOf, noProducts, solve, sumUp, tellsSlope } from './products.ts'

/** Standard errors beyond which a reading is left out, and how many of one course at the most. */
const beyond = 3.5
const most = 2

/** Two that contradict each other may be out by the same: the earlier is taken, and not what the arithmetic parts by. */
const alike = 1e-9

/** The readings to be left out, the worst first; each is looked for again without those before it. */
export function outliersOf(course: Course, variances: Variances): readonly Place[] {
  const found: Place[] = []
  while (found.length < most) {
    const worst = worstOf(without(course, found), variances)
    if (worst === null || worst.errors <= beyond) break
    found.push(worst)
  }
  return found
}

export interface Misfit extends Place {
  /** Off the line in standard errors, whichever side. */
  readonly errors: number
  /** Share of the reading's own error in the variance about the line. */
  readonly ownShare: number
}

function worstOf(course: Course, variances: Variances): Misfit | null {
  let worst: Misfit | null = null
  for (const misfit of misfitsOf(course, variances))
    if (worst === null || misfit.errors > worst.errors * (1 + alike)) worst = misfit
  return worst
}

/**
 * |(V^-1 (y - X beta))_i| / sqrt(P_ii) of each reading, P = V^-1 - V^-1 X K^-1 X' V^-1; none with fewer than two degrees
 * of freedom, and none of a reading that the line goes through whatever it is.
 */
export function misfitsOf(course: Course, variances: Variances): readonly Misfit[] {
  const products = sumUp(course, variances, noProducts())
  if (!tellsSlope(products) || products.n < 4) return []
  const { level, slope, growth } = solve(products)
  const inverse = inverseOf(products)
  const found: Misfit[] = []
  const consider = (
    trim: number,
    stage: Place['stage'],
    weighted: number,
    ownWeight: number,
    row: Row,
    ownShare: number,
  ) => {
    const spent =
      row[0] * (inverse.i00 * row[0] + 2 * inverse.i01 * row[1] + 2 * inverse.i02 * row[2]) +
      row[1] * (inverse.i11 * row[1] + 2 * inverse.i12 * row[2]) +
      inverse.i22 * row[2] ** 2
    const left = ownWeight - spent
    if (left <= 1e-9 * ownWeight) return
    found.push({ trim, stage, errors: Math.abs(weighted) / Math.sqrt(left), ownShare })
  }
  for (let i = 0; i < course.left.length; i++) {
    const t = course.times[i] ?? 0
    const d = course.gaps[i] ?? 0
    const line = products.origin + level + slope * t
    const offA = (course.left[i] ?? Number.NaN) - line
    const offB = (course.back[i] ?? Number.NaN) - line - growth * d
    const ofA = variances.e * (course.leftShare[i] ?? 1)
    const ofB = variances.e * (course.backShare[i] ?? 1)
    const p = ofA + variances.u
    const s = ofB + variances.u + variances.w * d
    if (Number.isNaN(offA) && Number.isNaN(offB)) continue
    if (Number.isNaN(offB)) consider(i, 'left', offA / p, 1 / p, [1 / p, t / p, 0], ofA / p)
    else if (Number.isNaN(offA)) consider(i, 'back', offB / s, 1 / s, [1 / s, t / s, d / s], ofB / s)
    else {
      const det = p * s - variances.u ** 2
      const i11 = s / det
      const i12 = -variances.u / det
      const i22 = p / det
      consider(i, 'left', i11 * offA + i12 * offB, i11, [i11 + i12, t * (i11 + i12), i12 * d], ofA / p)
      consider(i, 'back', i12 * offA + i22 * offB, i22, [i12 + i22, t * (i12 + i22), i22 * d], ofB / s)
    }
  }
  return found
}

/** A row of V^-1 X. */
type Row = readonly [number, number, number]
