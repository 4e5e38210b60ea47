/** Marks of a measure: a length between its ends, an angle at its corner. A middling foot to draw them on. */
import type { FootMeasures } from '../../hoof/stand-ins.ts'
import { along, type Point, type Stroke, stroke, through, towards, unit } from './curves.ts'
import type { Sheet } from './pens.ts'

/** What a measure is drawn on, and the whole drawing on it. */
export interface MeasureView {
  readonly sheet: Sheet
  readonly content: string
}

/** An invented foot. */
export const middling: FootMeasures = {
  'toe-length': 86,
  'toe-angle': 51,
  'heel-angle': 46,
  'heel-medial': 38,
  'heel-lateral': 38,
  'bearing-length': 114,
  width: 122,
  breakover: 34,
  'frog-length': 76,
  'frog-width': 48,
  'sulcus-depth': 5,
}

/** A line with an upright end at both points, as lengths are marked on a plan. */
export function lengthMark(a: Point, b: Point, end = 3.5): readonly Stroke[] {
  const [ux, uy] = unit(a, b)
  const across: Point = [-uy, ux]
  const cap = (at: Point) => through([along(at, -end, across), along(at, end, across)])
  return [through([a, b]), cap(a), cap(b)]
}

/** The same beside the line that is measured. */
export function besideMark(a: Point, b: Point, by: number): readonly Stroke[] {
  const [ux, uy] = unit(a, b)
  const across: Point = [-uy, ux]
  return lengthMark(along(a, by, across), along(b, by, across))
}

/** The arc of an angle at a corner, between two directions in degrees. */
export function angleMark(corner: Point, radius: number, from: number, to: number): Stroke {
  const reach = (4 / 3) * Math.tan((((to - from) / 4) * Math.PI) / 180) * radius
  const at = (degrees: number): Point => along(corner, radius, towards(degrees))
  const turned = (degrees: number): Point => towards(degrees + 90)
  return stroke(at(from), [along(at(from), reach, turned(from)), along(at(to), -reach, turned(to)), at(to)])
}
