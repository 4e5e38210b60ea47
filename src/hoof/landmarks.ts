/**
 * Points marked on a picture, and what they measure. Pixels run right and down from the upper left corner of the
 * upright picture. Angles are taken against the ground line, lengths by the scale; where the printed card stands in the
 * foot's plane it is both, and the view is straightened by it.
 *
 * A picture is a flat view: whatever leans toward the camera or away from it looks shorter, and a scale that lies nearer
 * than the foot makes it small. That cannot be seen in the points; `sd` includes it as it is told or assumed
 * (stance.ts). Photo readings never share a trend with gauge readings all the same.
 */
import { certain, doubtsOf, flattened, type Picture, pictureOf, signed } from './foreshortening.ts'
import { between, type Landmarks, marksOf, mmPerPixel, type PhotoView } from './marks.ts'
import type { AnyMeasureId } from './measures.ts'
import { canBe, formulas } from './photo-formulas.ts'
import type { Point } from './plane.ts'

export {
  groundLine,
  type LandmarkLine,
  type LandmarkPoint,
  type Landmarks,
  landmarkLines,
  landmarkPoints,
  type PhotoView,
  photoViews,
} from './marks.ts'
export type { Point } from './plane.ts'

export interface PhotoReading {
  readonly measure: AnyMeasureId
  readonly value: number
  /** Standard deviation, from the marked points and from how the camera stood, as far as that is known. */
  readonly sd: number
}

/** Half of the range that is shown with a reading: the true value lies in it nineteen times of twenty. */
export const shownHalf = (sd: number): number => 1.96 * sd

/** How exactly a point is set on the screen: standard deviation of each coordinate, pixels. Common practice, no source. */
export const tapSd = 2
/** How exactly the edge of horn or hair can be told on the foot: the same, millimetres. Common practice, no source. */
export const edgeSd = 0.4
/** How exactly a corner of the card is found: measured on rendered pictures (tests/photos), pixels. */
export const cornerSd = 0.3

/**
 * Every measure that the marked points of one picture allow: degrees, millimetres, toe share as a ratio. Points that
 * cannot be give no reading; reading the case file reports them.
 * `sd` is first-order propagation of `tapSd` at every point, of `edgeSd` at every point of the foot where the scale is
 * known, of the card's corners, and of what the stance leaves open. The true length of the scale is taken as exact.
 */
export function measureLandmarks(landmarks: Landmarks, view: PhotoView): readonly PhotoReading[] {
  const shown = formulas[view]
  if (shown.length === 0) return []
  const picture = pictureOf(landmarks, view)
  const marks = marksOf(landmarks)
  const values = valuesOf(picture, marks)
  if (!shown.some(([measure], i) => canBe(measure, values[i] ?? Number.NaN))) return []
  const sds = spread(picture, marks, values)
  return shown.flatMap(([measure], i) => {
    const [value, sd] = [values[i] ?? Number.NaN, sds[i] ?? Number.NaN]
    return canBe(measure, value) ? [{ measure, value, sd }] : []
  })
}

function valuesOf(picture: Picture, marks: ReadonlyMap<string, Point>, doubts = certain): readonly number[] {
  const [flat, scaleLength] = flattened(picture, marks, doubts)
  return formulas[picture.view].map(([, formula]) => formula(flat, scaleLength))
}

/** Half the step of a central difference, pixels: far below a tap, far above rounding. */
const step = 0.01

/** Standard deviation of each value. */
function spread(
  picture: Picture,
  marks: ReadonlyMap<string, Point>,
  values: readonly number[],
): readonly number[] {
  const variances = values.map(() => 0)
  const add = (differences: readonly number[], by: number) => {
    for (const [i, difference] of differences.entries())
      variances[i] = (variances[i] ?? 0) + (difference * by) ** 2
  }
  const { landmarks } = picture
  const mm = landmarks.card
    ? landmarks.card.width / Math.hypot(...between(landmarks.card.corners[0], landmarks.card.corners[1]))
    : mmPerPixel(marks, landmarks.scale?.length ?? null)
  const footSd = Number.isFinite(mm) ? Math.hypot(tapSd, edgeSd / mm) : tapSd
  const moved = new Map(marks)
  for (const [name, [x, y]] of marks) {
    const sd = name.startsWith('card ') ? cornerSd : name.startsWith('scale ') ? tapSd : footSd
    for (const [dx, dy] of [
      [step, 0],
      [0, step],
    ] as const) {
      const more = valuesOf(picture, moved.set(name, [x + dx, y + dy]))
      const less = valuesOf(picture, moved.set(name, [x - dx, y - dy]))
      add(
        more.map((value, i) => (value - (less[i] ?? 0)) / (2 * step)),
        sd,
      )
    }
    moved.set(name, [x, y])
  }
  for (const doubt of doubtsOf(picture)) {
    for (const sign of [1, -1]) {
      add(
        valuesOf(picture, marks, signed(doubt, sign)).map((value, i) => value - (values[i] ?? 0)),
        Math.SQRT1_2,
      )
    }
  }
  return variances.map(Math.sqrt)
}
