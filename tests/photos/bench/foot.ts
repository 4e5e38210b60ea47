/** A foot of known geometry in space, and where a camera sees what a person marks on it. Toe to the left. */
import type { LandmarkPoint, Landmarks, Point } from '../../../src/hoof/landmarks.ts'
import type { AnyMeasureId } from '../../../src/hoof/measures.ts'
import type { Camera, Place } from './camera.ts'
import type { Chance } from './chance.ts'

export interface Foot {
  readonly toeAngle: number
  readonly toeLength: number
  readonly heelAngle: number
  readonly heelLength: number
  readonly bearingLength: number
  readonly pasternAngle: number
  readonly width: number
}

export type Truth = Partial<Record<AnyMeasureId, number>>

const radians = Math.PI / 180

/** A foot such as horses have. */
export const anyFoot = (draw: Chance): Foot => ({
  toeAngle: draw.between(42, 58),
  toeLength: draw.between(75, 105),
  heelAngle: draw.between(32, 52),
  heelLength: draw.between(28, 46),
  bearingLength: draw.between(105, 135),
  pasternAngle: draw.between(44, 60),
  width: draw.between(105, 140),
})

/** How far the heel's buttress lies out of the plane of the midline, and how far the hairline there leans in again. */
const heelOut = ({ width }: Foot) => 0.31 * width
const heelLean = 3

/** Where the foot is, by what is marked on it; toe wall and hairline are curves, of which the midline is the truth. */
export function sideTruth(foot: Foot): Truth {
  const [a, b] = [foot.toeAngle * radians, foot.heelAngle * radians]
  const [rise, run] = [
    foot.toeLength * Math.sin(a) - foot.heelLength * Math.sin(b),
    foot.bearingLength + foot.heelLength * Math.cos(b) - foot.toeLength * Math.cos(a),
  ]
  return {
    'toe-angle': foot.toeAngle,
    'toe-length': foot.toeLength,
    'heel-angle': foot.heelAngle,
    'pastern-angle': foot.pasternAngle,
    'coronet-angle': Math.atan2(rise, run) / radians,
    'bearing-length': foot.bearingLength,
    'heel-lateral': Math.hypot(foot.heelLength, heelLean),
  }
}

export interface Seen {
  readonly points: Readonly<Record<string, Point>>
  readonly pastern: readonly [Point, Point]
}

/** The edge of the toe that is seen: of a rounded wall the part that stands out furthest, not always the midline. */
export function sideSeen(foot: Foot, { project }: Camera): Seen {
  const [a, b] = [foot.toeAngle * radians, foot.heelAngle * radians]
  const half = foot.width / 2
  const hair: Place = [foot.toeLength * Math.cos(a), foot.toeLength * Math.sin(a), 0]
  const fall = Math.tan((sideTruth(foot)['coronet-angle'] ?? 0) * radians)
  const around =
    (from: Place, deep: number, wide: number, falls: number) =>
    (t: number): Place => {
      const back = deep * (1 - Math.cos(t))
      return [from[0] + back, from[1] - falls * back, wide * Math.sin(t)]
    }
  const [low, high] = [project([0, 0, 0]), project(hair)]
  // Square to the wall in the picture, away from the foot.
  const out: Point = [high[1] - low[1], low[0] - high[0]]
  const side = out[0] > 0 ? -1 : 1
  const furthest = (curve: (t: number) => Place): Point => {
    let best: Point = project(curve(0))
    for (let t = -1; t <= 1; t += 0.01) {
      const at = project(curve(t))
      if (side * (at[0] * out[0] + at[1] * out[1]) > side * (best[0] * out[0] + best[1] * out[1])) best = at
    }
    return best
  }
  const z = heelOut(foot)
  const heel: Place = [foot.bearingLength, 0, z]
  const heelHair: Place = [
    foot.bearingLength + foot.heelLength * Math.cos(b),
    foot.heelLength * Math.sin(b),
    z - heelLean,
  ]
  const p = foot.pasternAngle * radians
  const onPastern = (t: number) => project([hair[0] + t * Math.cos(p), hair[1] + t * Math.sin(p), 0])
  return {
    points: {
      'toe-at-ground': furthest(around([0, 0, 0], half, half, 0)),
      'toe-at-hairline': furthest(around(hair, 0.85 * half, 0.85 * half, fall)),
      'heel-at-ground': project(heel),
      'heel-at-hairline': project(heelHair),
    },
    pastern: [onPastern(8), onPastern(80)],
  }
}

/** The sole, held up to the camera, lengths as a ruler along it gives them: in the plane but for the frog, which lies deeper. y runs from the heels to the toe. */
export function soleSeen(
  foot: Foot,
  { project }: Camera,
): { readonly points: Landmarks['points']; readonly truth: Truth } {
  const { bearingLength: b, width } = foot
  const [tip, frog, breakover] = [0.32 * b, 0.62 * b, 0.24 * b]
  const places: Partial<Record<LandmarkPoint, Place>> = {
    toe: [0, b, 0],
    'frog-tip': [0, b - tip, -9],
    'frog-base': [0, b - tip - frog, -4],
    breakover: [0, b - tip + breakover, -2],
    'widest-medial': [-width / 2, b / 2, 0],
    'widest-lateral': [width / 2, b / 2, 0],
    'heel-medial': [-heelOut(foot), 0, 0],
    'heel-lateral': [heelOut(foot), 0, 0],
  }
  return {
    points: Object.fromEntries(Object.entries(places).map(([name, place]) => [name, project(place)])),
    truth: {
      'frog-length': frog,
      width,
      'bearing-length': b,
      breakover,
      'toe-share': tip / b,
    },
  }
}
