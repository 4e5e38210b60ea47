/** What stands in for readings in drawings. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  behindMeasures,
  drawnFrogWidth,
  heelWidthFor,
  isFrogNarrowed,
  sideMeasures,
  soleMeasures,
  wallMeasures,
} from '../../src/hoof/stand-ins.ts'

describe('a foot of which nothing was read', () => {
  it('has a stand-in for every measure, and names each that shows', () => {
    expect(sideMeasures({}).assumed).toEqual([
      'toe-length',
      'toe-angle',
      'heel-lateral',
      'heel-angle',
      'bearing-length',
    ])
    expect(behindMeasures({}).assumed).toEqual(['width', 'heel-lateral', 'heel-medial'])
    expect(soleMeasures({}).assumed).toEqual(['width', 'bearing-length', 'frog-length', 'frog-width'])
    expect(wallMeasures({}).assumed).toEqual(['toe-length', 'width'])
  })
})

describe('what was read', () => {
  it('is taken as it is, and the other heel stands in for one alone', () => {
    expect(sideMeasures({ 'toe-length': 90, 'toe-angle': 48, 'heel-lateral': 33 })).toMatchObject({
      toeLength: 90,
      toeAngle: 48,
      heel: 33,
      otherHeel: 33,
      assumed: ['heel-angle', 'bearing-length'],
    })
    expect(behindMeasures({ width: 120, 'heel-medial': 41 })).toMatchObject({
      lateral: 41,
      medial: 41,
      assumed: ['heel-lateral'],
    })
  })

  it('tells how far the toe is rolled, where bearing, frog and breakover were all read', () => {
    const read = { width: 124, 'bearing-length': 112, 'frog-length': 76, breakover: 34 }
    // The frog's tip lies 76 less 3.5 % of 112 in front of the heels.
    expect(soleMeasures(read).rolled).toBeCloseTo(112 - (76 - 3.92) - 34, 9)
    expect(soleMeasures({ ...read, breakover: undefined }).rolled).toBe(0)
  })
})

describe('a frog', () => {
  it('fits between the heels, and it is known when it had to be narrowed', () => {
    expect(isFrogNarrowed({ width: 124, 'frog-width': 48 })).toBe(false)
    expect(isFrogNarrowed({ width: 124, 'frog-width': 95 })).toBe(true)
    expect(isFrogNarrowed({ 'frog-width': 95 })).toBe(false)
    fc.assert(
      fc.property(
        fc.double({ min: 70, max: 190, noNaN: true }),
        fc.double({ min: 15, max: 100, noNaN: true }),
        (width, frog) => {
          expect(drawnFrogWidth(width, frog)).toBeLessThanOrEqual(heelWidthFor(width, frog) - 0.16 * width)
        },
      ),
    )
  })
})
