/** How a foot lies in its picture, and how one picture is laid over another. */
import { assumedCamera, cardPlane } from './card.ts'
import { certain, pictureOf, scaleLengthOf } from './foreshortening.ts'
import {
  at,
  between,
  dot,
  type Frame,
  frameOf,
  isSide,
  type Landmarks,
  type Marks,
  marksOf,
  mmPerPixel,
  type PhotoView,
} from './marks.ts'
import { inverseOf, type Point, through } from './plane.ts'

/** How a foot lies in its picture: millimetres behind and above its origin, and back to pixels. */
export interface Pose {
  /** From the side the toe at the ground, on the sole the toe, from behind the middle of the heels. */
  readonly origin: Point
  /** From the toe toward the heel (from behind, along the ground), one pixel long, at the origin. */
  readonly back: Point
  readonly toFoot: (pixel: Point) => Point
  readonly toPixel: (place: Point) => Point
}

/** Null where scale, ground line (on the sole the line of the heels) or origin are not marked, and no card is there. */
export function poseOf(landmarks: Landmarks, view: PhotoView): Pose | null {
  const { card } = landmarks
  const marks = marksOf(landmarks)
  const plane = card ? cardPlane(card) : null
  // With a card everything is in its millimetres, y down; without one in pixels.
  const flatten = (pixel: Point): Point => {
    if (plane === null) return pixel
    const [x, y] = through(plane, pixel)
    return [x, -y]
  }
  const flat = new Map([...marks].map(([name, at]) => [name, flatten(at)] as const))
  if (card && view !== 'solar') flat.set('ground from', [0, 0]).set('ground to', [1, 0])
  const { origin, back, up } = directionsOf(flat, view)
  const nearer = card ? (card.nearer ?? 0) / (card.camera ?? assumedCamera)[2] : 0
  const size = card ? 1 + nearer : mmPerPixel(marks, scaleLengthOf(pictureOf(landmarks, view), certain))
  if (![...origin, ...back, size].every(Number.isFinite)) return null
  const toFoot = (pixel: Point): Point => {
    const from = between(origin, flatten(pixel))
    return [dot(from, back) * size, dot(from, up) * size]
  }
  const picturing = plane && inverseOf(plane)
  const toPixel = ([x, y]: Point): Point => {
    const [s, t] = [x / size, y / size]
    const at: Point = [origin[0] + s * back[0] + t * up[0], origin[1] + s * back[1] + t * up[1]]
    return picturing ? through(picturing, [at[0], -at[1]]) : at
  }
  const [from, to] = [toPixel([0, 0]), toPixel([1, 0])]
  const way = between(from, to)
  const length = Math.hypot(...way)
  return { origin: from, back: [way[0] / length, way[1] / length], toFoot, toPixel }
}

/** `matrix(a b c d e f)` of SVG. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

/** About the middle of a foot from its origin, millimetres behind and above. */
const middles: Readonly<Partial<Record<PhotoView, Point>>> = {
  lateral: [60, 35],
  medial: [60, 35],
  solar: [60, 0],
}

/**
 * What lays one picture over another so that the feet lie on each other. Where cards take the perspective out it is that
 * of the middle of the foot, which leaves a hundredth at its ends.
 */
export function laying(from: Pose, to: Pose, view: PhotoView): Affine {
  const [x, y] = from.toPixel(middles[view] ?? [0, 0])
  const laid = (pixel: Point) => to.toPixel(from.toFoot(pixel))
  const [at, right, low] = [laid([x, y]), laid([x + 1, y]), laid([x, y + 1])]
  const [a, b] = between(at, right)
  const [c, d] = between(at, low)
  return [a, b, c, d, at[0] - a * x - c * y, at[1] - b * x - d * y]
}

/** Whether lengths of a picture are sure: by the card, on a block, or with the depth of the scale told. */
export const hasSureScale = ({ card, camera, scale }: Landmarks): boolean =>
  card !== undefined || camera === 'block' || camera === 'flat' || scale?.nearer !== undefined

function directionsOf(marks: Marks, view: PhotoView): Frame & { readonly origin: Point } {
  if (isSide(view)) return { origin: at(marks, 'toe-at-ground'), ...frameOf(marks) }
  const [medial, lateral] = [at(marks, 'heel-medial'), at(marks, 'heel-lateral')]
  const middle: Point = [(medial[0] + lateral[0]) / 2, (medial[1] + lateral[1]) / 2]
  if (view === 'behind') return { origin: middle, ...frameOf(marks) }
  const toe: Point = view === 'solar' ? at(marks, 'toe') : [Number.NaN, Number.NaN]
  const axis = between(toe, middle)
  const length = Math.hypot(...axis)
  const back: Point = [axis[0] / length, axis[1] / length]
  const across: Point = [back[1], -back[0]]
  return {
    origin: toe,
    back,
    up: dot(between(lateral, medial), across) < 0 ? [-across[0], -across[1]] : across,
  }
}
