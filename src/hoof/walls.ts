/** The hoof wall by the stretches that are measured, hairline to ground. */
import type { AnyMeasureId, MeasureId } from './measures.ts'

/** Of two sides both are a measure of the stretch. */
export const walls = [
  { place: 'toe', measures: ['toe-length'] },
  { place: 'quarter', measures: ['quarter-medial', 'quarter-lateral'] },
  { place: 'heel', measures: ['heel-medial', 'heel-lateral'] },
] as const satisfies readonly { readonly place: string; readonly measures: readonly MeasureId[] }[]

/** Every length of wall: it grows from the hairline and is shortened by wear and the trim. */
export const wallLengths: readonly MeasureId[] = walls.flatMap(({ measures }) => measures)

export const isWallLength = (id: AnyMeasureId): boolean => (wallLengths as readonly string[]).includes(id)
