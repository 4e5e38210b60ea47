/**
 * Fieller's limits of the time at which a line reaches a level. Worked examples: the data of Sen 1968, Journal of the
 * American Statistical Association 63: 1379-1389, whose limits were computed two ways for the design; Graybill & Iyer's
 * crystal data, from memory.
 */
import { describe, expect, it } from 'vitest'
import { lineLimit, lineOf, reach } from '../../src/trend/line.ts'
import { fitCourse, slopeSd } from '../../src/trend/model/fit.ts'
import { t975 } from '../../src/trend/student.ts'
import { afterTrims, ordinary } from '../trend/model/build-course.ts'

function fitted(x: readonly number[], y: readonly number[]) {
  const fit = fitCourse(afterTrims(x, y), ordinary)
  if (fit === null) throw new Error('no fit')
  return { fit, line: lineOf(fit), t: t975(fit.nu) }
}

describe('Sen 1968', () => {
  const { fit, line, t } = fitted([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78])

  it('has the least-squares line that the paper compares its own with', () => {
    expect(fit.slope).toBeCloseTo(4.0213523, 7)
    expect(fit.level).toBeCloseTo(5.7046263, 7)
    expect(slopeSd(fit)).toBeCloseTo(0.0852262, 7)
  })

  it("reaches 60 at 13.501770, Fieller's limits 13.048305 and 13.993094", () => {
    const reached = reach(line, 60, t)
    expect(reached?.at).toBeCloseTo(13.50177, 6)
    expect(reached?.low).toBeCloseTo(13.048305, 6)
    expect(reached?.high).toBeCloseTo(13.993094, 6)
  })
})

describe('Graybill & Iyer, crystal weights (data from memory)', () => {
  const { fit, line, t } = fitted(
    Array.from({ length: 14 }, (_, i) => 2 * (i + 1)),
    [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04],
  )
  const reached = reach(line, 8, t)

  it("reach 8 at 15.888195, Fieller's limits 14.658959 and 17.159632", () => {
    expect(reached?.at).toBeCloseTo(15.888195, 6)
    expect(reached?.low).toBeCloseTo(14.658959, 6)
    expect(reached?.high).toBeCloseTo(17.159632, 6)
  })

  it("has Fieller's limits where the edge of the level's interval meets 8", () => {
    // The second way: the limits are the times at which the 95 % interval of the level just touches the target.
    expect(lineLimit(line, reached?.low ?? Number.NaN, t)).toBeCloseTo(8, 9)
    expect(lineLimit(line, reached?.high ?? Number.NaN, -t)).toBeCloseTo(8, 9)
    expect(fit.level + fit.slope * (reached?.at ?? Number.NaN)).toBeCloseTo(8, 12)
  })
})
