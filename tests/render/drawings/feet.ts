/** Feet for the tests of drawings: any that could be read, and one in the middle. */
import fc from 'fast-check'
import { type MeasureId, measureIds, measures } from '../../../src/hoof/measures.ts'
import type { FootMeasures } from '../../../src/hoof/stand-ins.ts'

export const middling: FootMeasures = {
  'toe-length': 85,
  'toe-angle': 50,
  'heel-angle': 47,
  'heel-medial': 38,
  'heel-lateral': 38,
  'bearing-length': 112,
  width: 124,
  breakover: 34,
  'frog-length': 76,
  'frog-width': 48,
  'sulcus-depth': 5,
}

const within = (id: MeasureId) => {
  const [min, max] = measures[id].likely
  return fc.double({ min, max, noNaN: true })
}

/** Each measure anywhere in its likely range, with no regard to the others, or not read. */
export const anyFoot: fc.Arbitrary<FootMeasures> = fc.record(
  Object.fromEntries(measureIds.map((id) => [id, within(id)])) as Record<MeasureId, fc.Arbitrary<number>>,
  { requiredKeys: [] },
)

export const anyFlares = fc.record({
  medial: fc.double({ min: 0, max: 20, noNaN: true }),
  lateral: fc.double({ min: 0, max: 20, noNaN: true }),
})
