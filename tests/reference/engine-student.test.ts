/** Student's t, two-sided 95 %. */
import jstat from 'jstat'
import { describe, expect, it } from 'vitest'
import { t975, z975 } from '../../src/trend/student.ts'

/** As printed in handbooks of statistics, to three decimals (design table). */
const table: readonly (readonly [number, number])[] = [
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [6, 2.447],
  [7, 2.365],
  [8, 2.306],
  [9, 2.262],
  [10, 2.228],
  [20, 2.086],
  [30, 2.042],
  [60, 2.0],
]

describe("Student's t", () => {
  it.each(table)('with %d degrees of freedom is %f, as in the printed table', (nu, t) =>
    expect(Math.abs(t975(nu) - t)).toBeLessThanOrEqual(0.0005),
  )

  it('agrees with a second library (jstat) from 1 to 300 degrees of freedom', () => {
    for (let nu = 1; nu <= 300; nu++) {
      const witness = jstat.studentt.inv(0.975, nu)
      expect(Math.abs(t975(nu) / witness - 1)).toBeLessThan(1e-7)
    }
  })

  it('nears the normal quantile, which agrees with the second library too', () => {
    expect(Math.abs(t975(1e7) - z975)).toBeLessThan(1e-6)
    expect(z975).toBeCloseTo(jstat.normal.inv(0.975, 0, 1), 8)
  })
})
