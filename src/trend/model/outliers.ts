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

interface Misfit extends Place {
  readonly errors: number
}

/**
 * The reading with the largest |(V^-1 (y - X beta))_i| / sqrt(P_ii), P = V^-1 - V^-1 X K^-1 X' V^-1; null with fewer
 * than two degrees of freedom.
 */
function worstOf(course: Course, variances: Variances): Misfit | null {
  const products = sumUp(course, variances, noProducts())
  if (!tellsSlope(products) || products.n < 4) return null
  const { level, slope, growth } = solve(products)
  const inverse = inverseOf(products)
  let worst: Misfit | null = null
  const consider = (trim: number, stage: Place['stage'], weighted: number, ownWeight: number, row: Row) => {
    const spent =
      row[0] * (inverse.i00 * row[0] + 2 * inverse.i01 * row[1] + 2 * inverse.i02 * row[2]) +
      row[1] * (inverse.i11 * row[1] + 2 * inverse.i12 * row[2]) +
      inverse.i22 * row[2] ** 2
    const left = ownWeight - spent
    // A reading that the line goes through whatever it is can not be judged.
    if (left <= 1e-9 * ownWeight) return
    const errors = Math.abs(weighted) / Math.sqrt(left)
    if (worst === null || errors > worst.errors * (1 + alike)) worst = { trim, stage, errors }
  }
  for (let i = 0; i < course.left.length; i++) {
    const t = course.times[i] ?? 0
    const d = course.gaps[i] ?? 0
    const line = products.origin + level + slope * t
    const offA = (course.left[i] ?? Number.NaN) - line
    const offB = (course.back[i] ?? Number.NaN) - line - growth * d
    const p = variances.e * (course.leftShare[i] ?? 1) + variances.u
    const s = variances.e * (course.backShare[i] ?? 1) + variances.u + variances.w * d
    if (Number.isNaN(offA) && Number.isNaN(offB)) continue
    if (Number.isNaN(offB)) consider(i, 'left', offA / p, 1 / p, [1 / p, t / p, 0])
    else if (Number.isNaN(offA)) consider(i, 'back', offB / s, 1 / s, [1 / s, t / s, d / s])
    else {
      const det = p * s - variances.u ** 2
      const i11 = s / det
      const i12 = -variances.u / det
      const i22 = p / det
      consider(i, 'left', i11 * offA + i12 * offB, i11, [i11 + i12, t * (i11 + i12), i12 * d])
      consider(i, 'back', i12 * offA + i22 * offB, i22, [i12 + i22, t * (i12 + i22), i22 * d])
    }
  }
  return worst
}

/** A row of V^-1 X. */
type Row = readonly [number, number, number]
