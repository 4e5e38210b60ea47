/**
 * Worked examples. Sen 1968, Journal of the American Statistical Association 63: 1379-1389; Fieller's limits on the
 * same data were computed two ways for the design. Graybill & Iyer's crystal data: the data are from memory.
 */
import { describe, expect, it } from 'vitest'
import { crossingOf } from '../../src/trend/crossing.ts'
import { fitLine, levelAt, levelInterval, slopeError } from '../../src/trend/fit.ts'
import { theilSen } from '../../src/trend/theil-sen.ts'

const ordinary = { sd: 0, worth: 0 }
const pointsOf = (x: readonly number[], y: readonly number[]) =>
  x.map((day, i) => ({ day, value: y[i] ?? Number.NaN }))

const sen = pointsOf([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78])
const crystals = pointsOf(
  Array.from({ length: 14 }, (_, i) => 2 * (i + 1)),
  [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04],
)

describe('Sen 1968', () => {
  const fit = fitLine(sen, ordinary)

  it('has the median slope 4 of its 21 pairs', () => expect(theilSen(sen)).toBe(4))

  it('has the least-squares line that the paper compares it with', () => {
    expect(fit?.slope).toBeCloseTo(4.0213523, 7)
    expect(fit?.level).toBeCloseTo(5.7046263, 7)
    expect(fit && slopeError(fit)).toBeCloseTo(0.0852262, 7)
  })

  it("reaches 60 at 13.501770, Fieller's limits 13.048305 and 13.993094", () => {
    const crossing = fit && crossingOf(fit, 60)
    expect(crossing?.day).toBeCloseTo(13.50177, 6)
    expect(crossing?.low).toBeCloseTo(13.048305, 6)
    expect(crossing?.high).toBeCloseTo(13.993094, 6)
  })
})

describe('Graybill & Iyer, crystal weights (data from memory)', () => {
  const fit = fitLine(crystals, ordinary)

  it("reach 8 at 15.888195, Fieller's limits 14.658959 and 17.159632", () => {
    const crossing = fit && crossingOf(fit, 8)
    expect(crossing?.day).toBeCloseTo(15.888195, 6)
    expect(crossing?.low).toBeCloseTo(14.658959, 6)
    expect(crossing?.high).toBeCloseTo(17.159632, 6)
  })

  it("has Fieller's limits where the edge of the level's interval meets 8", () => {
    // The second way: the limits are the days at which the 95 % interval of the level just touches the target.
    if (fit === null) throw new Error('no fit')
    const crossing = crossingOf(fit, 8)
    expect(levelInterval(fit, crossing?.low ?? Number.NaN).high).toBeCloseTo(8, 9)
    expect(levelInterval(fit, crossing?.high ?? Number.NaN).low).toBeCloseTo(8, 9)
    expect(levelAt(fit, crossing?.day ?? Number.NaN)).toBeCloseTo(8, 12)
  })
})
