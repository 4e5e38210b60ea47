/** What glyphs of findings are made from: lines and arcs in the coordinates of a patch. */
import { type Point, type Stroke, smooth, stroke, through } from './curves.ts'
import type { Patch } from './sole-places.ts'

/** What one finding leaves on the sheet, in the order of painting. */
export type Glyph = (patch: Patch, grade: 1 | 2 | 3) => readonly Marks[]

export interface Marks {
  /** A class of the stylesheet. */
  readonly look: string
  readonly strokes: readonly Stroke[]
  readonly isArea?: boolean
}

export const by = <T>(grade: 1 | 2 | 3, ...values: readonly [T, T, T]): T => values[(grade - 1) as 0 | 1 | 2]

export const line = (patch: Patch, ...places: readonly Point[]): Stroke =>
  through(places.map(([s, d]) => patch.at(s, d)))

export const bow = (patch: Patch, from: number, to: number, d: (share: number) => number): Stroke =>
  smooth(Array.from({ length: 5 }, (_, i) => patch.at(from + ((to - from) * i) / 4, d(i / 4))))

export const arrow = (from: Point, to: Point, head: number): Stroke => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy) || 1
  const [ux, uy] = [(dx / length) * head, (dy / length) * head]
  const wing = (side: 1 | -1): Point => [to[0] - ux - side * 0.6 * uy, to[1] - uy + side * 0.6 * ux]
  return stroke(from, [to], [wing(1)], [to], [wing(-1)])
}

export const circle = ([x, y]: Point, r: number): Stroke => {
  const k = 0.552 * r
  return stroke(
    [x + r, y],
    [
      [x + r, y + k],
      [x + k, y + r],
      [x, y + r],
    ],
    [
      [x - k, y + r],
      [x - r, y + k],
      [x - r, y],
    ],
    [
      [x - r, y - k],
      [x - k, y - r],
      [x, y - r],
    ],
    [
      [x + k, y - r],
      [x + r, y - k],
      [x + r, y],
    ],
  )
}
