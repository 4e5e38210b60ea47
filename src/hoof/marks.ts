/** Points that a person marks on a picture, under one name each, and the directions that they give. */
import { cardPlane, type PlacedCard } from './card.ts'
import { inverseOf, type Point, through } from './plane.ts'
import type { Camera } from './stance.ts'

export const photoViews = ['lateral', 'medial', 'front', 'behind', 'solar', 'other'] as const
export type PhotoView = (typeof photoViews)[number]

/** Points a person marked on a picture. Names as in the case file, hyphenated; a line is two points. */
export interface Landmarks {
  /** Two points and the true length between them, millimetres. */
  readonly scale: Scale | null
  /** The printed card, where it was found. */
  readonly card?: PlacedCard
  /** What was told of a card that has still to be found: how it stands, or that it is not to be used. */
  readonly cardTold?: 'none' | { readonly nearer: number }
  /** How the camera stood; as in a yard where nothing is told. */
  readonly camera?: Camera
  readonly lines: Partial<Record<LandmarkLine, readonly [Point, Point]>>
  readonly points: Partial<Record<LandmarkPoint, Point>>
}

export interface Scale {
  readonly from: Point
  readonly to: Point
  readonly length: number
  /** How much nearer to the camera than the foot's plane it lies, millimetres, where that was told. */
  readonly nearer?: number
}

/** In the order in which case files are given them. */
export const landmarkLines = ['ground', 'pastern'] as const
export type LandmarkLine = (typeof landmarkLines)[number]
export const landmarkPoints = [
  'toe-at-ground',
  'toe-at-hairline',
  'new-growth-ends',
  'heel-at-ground',
  'heel-at-hairline',
  'toe',
  'frog-tip',
  'frog-base',
  'breakover',
  'heel-medial',
  'heel-lateral',
  'widest-medial',
  'widest-lateral',
] as const
export type LandmarkPoint = (typeof landmarkPoints)[number]

/** Every marked point under one name each; the ends of lines and of the scale as well. */
export type Marks = Pick<ReadonlyMap<string, Point>, 'get' | 'has'>
const nowhere: Point = [Number.NaN, Number.NaN]
export const at = (marks: Marks, name: string): Point => marks.get(name) ?? nowhere
export const between = (a: Point, b: Point): Point => [b[0] - a[0], b[1] - a[1]]
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1]

export function marksOf({ scale, lines, points, card }: Landmarks): ReadonlyMap<string, Point> {
  const marks = new Map<string, Point>(Object.entries(points))
  for (const [name, line] of Object.entries(lines)) {
    marks.set(`${name} from`, line[0])
    marks.set(`${name} to`, line[1])
  }
  if (scale !== null) marks.set('scale from', scale.from).set('scale to', scale.to)
  for (const [i, corner] of card?.corners.entries() ?? []) marks.set(`card ${i}`, corner)
  return marks
}

/** Directions of a picture, each one pixel long: along the ground toward the heel, and up from the ground. */
export interface Frame {
  readonly back: Point
  readonly up: Point
}

/**
 * The ground line, or toe to heel at the ground where no line is marked. Toward the heel is where the heel is marked,
 * else the way the toe wall or the pastern leans; right where nothing tells.
 */
export function frameOf(marks: Marks): Frame {
  const toe = at(marks, 'toe-at-ground')
  const line = marks.has('ground from')
    ? between(at(marks, 'ground from'), at(marks, 'ground to'))
    : between(toe, at(marks, 'heel-at-ground'))
  const length = Math.hypot(...line)
  const along: Point = [line[0] / length, line[1] / length]
  const up: Point = along[0] > 0 ? [along[1], -along[0]] : [-along[1], along[0]]
  const pastern = between(at(marks, 'pastern from'), at(marks, 'pastern to'))
  const towardHeel = [
    between(toe, at(marks, 'heel-at-ground')),
    between(toe, at(marks, 'heel-at-hairline')),
    between(toe, at(marks, 'toe-at-hairline')),
    dot(pastern, up) < 0 ? between(pastern, [0, 0]) : pastern,
  ].find((way) => Number.isFinite(way[0]))
  const back: Point = towardHeel && dot(towardHeel, along) < 0 ? [0 - along[0], 0 - along[1]] : along
  return { back, up }
}

/** Millimetres that a pixel stands for; NaN without a scale. */
export const mmPerPixel = (marks: Marks, scaleLength: number | null): number =>
  (scaleLength ?? Number.NaN) / Math.hypot(...between(at(marks, 'scale from'), at(marks, 'scale to')))

export const isSide = (view: PhotoView): view is 'lateral' | 'medial' =>
  view === 'lateral' || view === 'medial'

/** The line that a view is seen against: the card's edge, the ground line, or toe to heel at the ground; null without. */
export function groundLine({ card, lines, points }: Landmarks): readonly [Point, Point] | null {
  const { 'toe-at-ground': toe, 'heel-at-ground': heel } = points
  if (card) {
    const plane = cardPlane(card)
    const along = [toe, heel].flatMap((point) => (point ? [through(plane, point)[0]] : []))
    const [from, to] = [Math.min(0, ...along) - 30, Math.max(card.width, ...along) + 30]
    const picture = inverseOf(plane)
    return [through(picture, [from, 0]), through(picture, [to, 0])]
  }
  return lines.ground ?? (toe && heel ? [toe, heel] : null)
}
