/** The lowest point of a smooth function of a few variables, by damped Newton steps with differences for derivatives. */

export interface Minimum {
  readonly at: readonly number[]
  /** Second derivatives there. */
  readonly curvature: Matrix
}

type Matrix = readonly (readonly number[])[]
type Objective = (at: readonly number[]) => number

/** Width of the differences. The functions here are sums of logarithms in logarithms of scale: smooth at this width. */
const width = 1e-3
const mostSteps = 60
/** No step goes further than this in any variable. */
const furthest = 1

/**
 * @param within a step that moves no variable by more than this ends the search
 * @param known second derivatives near the start, where they are known: they are not worked out again at each step
 */
export function minimise(f: Objective, start: readonly number[], within: number, known?: Matrix): Minimum {
  let at = [...start]
  let value = f(at)
  let curvature = known
  for (let step = 0; step < mostSteps; step++) {
    const slopes = slopesAt(f, at)
    if (known === undefined) curvature = curvatureAt(f, at, value, slopes)
    const move = newtonStep(slopes.gradient, curvature as Matrix)
    if (Math.max(...move.map(Math.abs)) < within) break
    let share = 1
    let next = moved(at, move, share)
    let lower = f(next)
    // Halved until it goes down; near the bottom the arithmetic alone may keep it from that.
    while (lower > value && share > 1e-3) {
      share /= 2
      next = moved(at, move, share)
      lower = f(next)
    }
    if (lower > value) break
    at = next
    value = lower
  }
  return { at, curvature: curvature ?? curvatureAt(f, at, value, slopesAt(f, at)) }
}

/** The second derivatives of a function at a point. */
export const curvatureOf = (f: Objective, at: readonly number[]): Matrix =>
  curvatureAt(f, at, f(at), slopesAt(f, at))

const moved = (at: readonly number[], move: readonly number[], share: number): number[] =>
  at.map((x, i) => x + share * (move[i] ?? 0))

interface Slopes {
  /** Values one width up and down each variable, and the first derivatives. */
  readonly up: readonly number[]
  readonly down: readonly number[]
  readonly gradient: readonly number[]
}

function slopesAt(f: Objective, at: readonly number[]): Slopes {
  const up = at.map((_, i) => f(shifted(at, i, width)))
  const down = at.map((_, i) => f(shifted(at, i, -width)))
  return { up, down, gradient: up.map((value, i) => (value - (down[i] ?? 0)) / (2 * width)) }
}

const shifted = (at: readonly number[], i: number, by: number): number[] =>
  at.map((x, k) => (k === i ? x + by : x))

function curvatureAt(f: Objective, at: readonly number[], value: number, { up, down }: Slopes): Matrix {
  const curvature = at.map(() => at.map(() => 0))
  for (let i = 0; i < at.length; i++)
    for (let k = 0; k <= i; k++) {
      const upI = up[i] ?? 0
      const second =
        i === k
          ? upI - 2 * value + (down[i] ?? 0)
          : f(shifted(shifted(at, i, width), k, width)) - upI - (up[k] ?? 0) + value
      ;(curvature[i] as number[])[k] = second / width ** 2
      ;(curvature[k] as number[])[i] = second / width ** 2
    }
  return curvature
}

/** -H^-1 g, the diagonal raised until H is positive definite; no longer than `furthest` in any variable. */
function newtonStep(
  gradient: readonly number[],
  curvature: readonly (readonly number[])[],
): readonly number[] {
  const largest = Math.max(...curvature.map((row, i) => Math.abs(row[i] ?? 0)), 1e-12)
  for (let raised = 0; ; raised = raised === 0 ? 1e-3 * largest : raised * 4) {
    const move = solvePositive(curvature, raised, gradient)
    if (move === null) continue
    const longest = Math.max(...move.map(Math.abs))
    const share = longest > furthest ? furthest / longest : 1
    return move.map((by) => -by * share)
  }
}

/** (H + raised I)^-1 g by Cholesky's factors; null where that is not positive definite. */
function solvePositive(matrix: Matrix, raised: number, right: readonly number[]): readonly number[] | null {
  const n = right.length
  const factor = matrix.map(() => new Array<number>(n).fill(0))
  const entry = (i: number, k: number): number => factor[i]?.[k] ?? 0
  for (let i = 0; i < n; i++)
    for (let k = 0; k <= i; k++) {
      let sum = (matrix[i]?.[k] ?? 0) + (i === k ? raised : 0)
      for (let j = 0; j < k; j++) sum -= entry(i, j) * entry(k, j)
      if (i === k && !(sum > 0)) return null
      ;(factor[i] as number[])[k] = i === k ? Math.sqrt(sum) : sum / entry(k, k)
    }
  const forward: number[] = []
  for (let i = 0; i < n; i++) {
    let sum = right[i] ?? 0
    for (let j = 0; j < i; j++) sum -= entry(i, j) * (forward[j] ?? 0)
    forward[i] = sum / entry(i, i)
  }
  const solution = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i--) {
    let sum = forward[i] ?? 0
    for (let j = i + 1; j < n; j++) sum -= entry(j, i) * (solution[j] ?? 0)
    solution[i] = sum / entry(i, i)
  }
  return solution
}
