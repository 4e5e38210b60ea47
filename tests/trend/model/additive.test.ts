import { describe, expect, it } from 'vitest'
import { commonReadings } from '../../../src/trend/model/additive.ts'
import { seeded } from '../random.ts'

const column = (...values: (number | null)[]) => Float64Array.from(values, (value) => value ?? Number.NaN)
const listed = (common: readonly Float64Array[] | null) =>
  common?.map((stage) => [...stage].map((value) => (Number.isNaN(value) ? null : Number(value.toFixed(9)))))

describe('four feet as one', () => {
  it('is their mean where all were read', () => {
    const feet = [column(10, 12), column(20, 22), column(30, 32), column(40, 42)]
    expect(listed(commonReadings([feet], 2))).toEqual([[25, 27]])
  })

  it('does not move because a foot that stands apart was not read', () => {
    // Feet at 10, 20 and 30 about a common level of 20, 21, 22, 23.
    const feet = [column(10, 11, null, 13), column(20, 21, 22, null), column(30, null, 32, 33)]
    expect(listed(commonReadings([feet], 4))).toEqual([[20, 21, 22, 23]])
  })

  it('takes the amounts that feet stand apart from both stages', () => {
    const before = [column(15, null), column(25, 27)]
    const after = [column(null, 12), column(null, 22)]
    expect(listed(commonReadings([before, after], 2))).toEqual([
      [20, null],
      [null, 17],
    ])
  })

  it('wants two feet at a visit, and two that were ever read together', () => {
    expect(listed(commonReadings([[column(10, 10, null), column(12, null, null)]], 3))).toEqual([
      [11, null, null],
    ])
    expect(commonReadings([[column(10, null), column(null, 12)]], 2)).toBeNull()
    expect(commonReadings([[column(10, 11), null]], 2)).toBeNull()
  })

  it('cannot tell pairs apart that were never read with each other', () => {
    const feet = [column(10, null), column(12, null), column(null, 30), column(null, 34)]
    expect(commonReadings([feet], 2)).toBeNull()
  })

  it('leaves residuals that sum to nothing over each foot and each visit: least squares', () => {
    const random = seeded(4)
    const visits = 9
    const feet = Array.from({ length: 4 }, () =>
      Float64Array.from({ length: visits }, () =>
        random.even() < 0.3 ? Number.NaN : 50 + 5 * random.normal(),
      ),
    )
    const [common] = commonReadings([feet], visits) ?? []
    // Amounts apart are what each foot is above the common readings in the mean of the visits that have one.
    const usable = (foot: Float64Array) =>
      [...foot.keys()].filter((i) => !Number.isNaN(foot[i]) && !Number.isNaN(common?.[i]))
    const apart = feet.map((foot) => {
      const places = usable(foot)
      return places.reduce((sum, i) => sum + (foot[i] ?? 0) - (common?.[i] ?? 0), 0) / places.length
    })
    expect(apart.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 9)
    for (let i = 0; i < visits; i++) {
      if (Number.isNaN(common?.[i])) continue
      const residuals = feet.flatMap((foot, k) =>
        Number.isNaN(foot[i]) ? [] : [(foot[i] ?? 0) - (apart[k] ?? 0) - (common?.[i] ?? 0)],
      )
      expect(residuals.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 9)
    }
  })
})
