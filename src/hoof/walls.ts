/** The hoof wall by the stretches that are measured, hairline to ground. */
import type { MeasureId } from './measures.ts'

/** Of two sides both are a measure of the stretch. */
export const walls = [
  { place: 'toe', measures: ['toe-length'] },
  { place: 'quarter', measures: ['quarter-medial', 'quarter-lateral'] },
  { place: 'heel', measures: ['heel-medial', 'heel-lateral'] },
] as const satisfies readonly { readonly place: string; readonly measures: readonly MeasureId[] }[]

/** Every length of wall: what growth and wear change. */
export const wallLengths: ReadonlySet<string> = new Set(walls.flatMap(({ measures }) => measures))
