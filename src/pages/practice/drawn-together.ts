/** Several drawings in one place: what was not measured in them is said once for all. */
import type { LevelDrawing, SideDrawing, SoleDrawing, WallDrawing } from '../shared/figures.ts'

export interface DrawnTogether<D> {
  readonly drawings: readonly D[]
  readonly notes: readonly string[]
}

export const drawnTogether = <D extends LevelDrawing | SideDrawing | SoleDrawing | WallDrawing>(
  drawings: readonly D[],
): DrawnTogether<D> => ({
  drawings: drawings.map((drawing) => ({ ...drawing, unread: null })),
  notes: [...new Set(drawings.flatMap(({ unread }) => (unread === null ? [] : [unread])))],
})
