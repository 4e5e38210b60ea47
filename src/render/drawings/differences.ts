/** What is worth drawing: a difference that is no greater than its error is not. */
import { type MeasureId, measures } from '../../hoof/measures.ts'
import type { FootMeasures } from '../../hoof/stand-ins.ts'

/** The 95 % limit of the difference of two single readings. */
export const realDifference = (id: MeasureId): number => 1.96 * Math.SQRT2 * measures[id].sd

/** What an outline is made of. */
const outlines = {
  side: ['toe-length', 'toe-angle', 'heel-angle', 'heel-lateral', 'heel-medial', 'bearing-length'],
  sole: ['bearing-length', 'width', 'frog-length'],
} as const satisfies Record<string, readonly MeasureId[]>

/** Whether two outlines differ by more than that, in any measure that both have. */
export const differs = (view: keyof typeof outlines, one: FootMeasures, other: FootMeasures): boolean =>
  outlines[view].some((id) => {
    const [a, b] = [one[id], other[id]]
    return a !== undefined && b !== undefined && Math.abs(a - b) > realDifference(id)
  })
