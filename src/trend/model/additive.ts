/** Four feet as one: what is common to all feet at each visit and stage, by least squares of foot + (visit, stage). */

/** Fewest feet that make a common reading. */
const fewestFeet = 2

/**
 * The common readings of columns that hold one value a visit, one column a foot and stage, NaN where not read. Feet
 * that stand apart by a fixed amount do so at both stages; their amounts sum to 0. A common reading wants two feet.
 * Null where feet were never read together, so that their amounts cannot be told.
 * @param stages for each stage the columns of the feet, in one order of feet
 */
export function commonReadings(
  stages: readonly (readonly (Float64Array | null)[])[],
  visits: number,
): readonly Float64Array[] | null {
  const apart = amountsApart(stages, visits)
  if (apart === null) return null
  return stages.map((columns) => {
    const common = new Float64Array(visits).fill(Number.NaN)
    for (let i = 0; i < visits; i++) {
      let sum = 0
      let n = 0
      for (const [foot, column] of columns.entries()) {
        const value = column?.[i] ?? Number.NaN
        if (Number.isNaN(value)) continue
        sum += value - (apart[foot] ?? 0)
        n++
      }
      if (n >= fewestFeet) common[i] = sum / n
    }
    return common
  })
}

/** How far each foot stands from the common level: the normal equations with the common readings profiled out. */
function amountsApart(
  stages: readonly (readonly (Float64Array | null)[])[],
  visits: number,
): readonly number[] | null {
  const feet = stages[0]?.length ?? 0
  const matrix = Array.from({ length: feet }, () => new Array<number>(feet).fill(0))
  const right = new Array<number>(feet).fill(0)
  const seen = new Array<boolean>(feet).fill(false)
  const add = (i: number, k: number, by: number) => {
    const row = matrix[i]
    if (row !== undefined) row[k] = (row[k] ?? 0) + by
  }
  for (const columns of stages)
    for (let visit = 0; visit < visits; visit++) {
      const read = columns.flatMap((column, foot) => {
        const value = column?.[visit] ?? Number.NaN
        return Number.isNaN(value) ? [] : [{ foot, value }]
      })
      if (read.length < fewestFeet) continue
      const mean = read.reduce((sum, { value }) => sum + value, 0) / read.length
      for (const { foot, value } of read) {
        seen[foot] = true
        right[foot] = (right[foot] ?? 0) + value - mean
        for (const other of read) add(foot, other.foot, (foot === other.foot ? 1 : 0) - 1 / read.length)
      }
    }
  // Amounts sum to 0; a foot that was never read with another has none.
  for (let i = 0; i < feet; i++) for (let k = 0; k < feet; k++) if (seen[i] && seen[k]) add(i, k, 1)
  for (let i = 0; i < feet; i++) if (!seen[i]) add(i, i, 1)
  return seen.some(Boolean) ? eliminate(matrix, right) : null
}

/** Gauss's elimination of a symmetric positive definite system; null where it is singular. */
function eliminate(matrix: number[][], right: number[]): readonly number[] | null {
  const n = right.length
  for (let i = 0; i < n; i++) {
    const pivot = matrix[i]?.[i] ?? 0
    if (!(pivot > 1e-9)) return null
    for (let k = i + 1; k < n; k++) {
      const row = matrix[k]
      if (row === undefined) continue
      const factor = (row[i] ?? 0) / pivot
      for (let j = i; j < n; j++) row[j] = (row[j] ?? 0) - factor * (matrix[i]?.[j] ?? 0)
      right[k] = (right[k] ?? 0) - factor * (right[i] ?? 0)
    }
  }
  const solution = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i] ?? 0
    for (let j = i + 1; j < n; j++) sum -= (matrix[i]?.[j] ?? 0) * (solution[j] ?? 0)
    solution[i] = sum / (matrix[i]?.[i] ?? 1)
  }
  return solution
}
