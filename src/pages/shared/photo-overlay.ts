/** Laying the latest picture over the first so that feet are compared and not cameras. */
import type { Photo } from '../../casebook/model.ts'
import { type Pose, poseOf } from '../../hoof/landmarks.ts'

interface Laid {
  readonly photo: Photo
  readonly picture: { readonly width: number; readonly height: number }
}

interface Placed {
  readonly width: number
  readonly height: number
  /** An SVG transform into the pixels of the first picture. */
  readonly transform: string
}

export interface LaidOver {
  /** By landmarks; otherwise the latest picture is only fitted to the width of the first. */
  readonly isAligned: boolean
  readonly placed: { readonly viewBox: string; readonly first: Placed; readonly latest: Placed }
}

/** A similarity: turned, sized, moved and, where the camera stood on the other side, mirrored; nothing is bent. */
export function laidOver(first: Laid, latest: Laid): LaidOver {
  const [a, b] = [poseIn(first), poseIn(latest)]
  const matrix = a && b ? similarity(b, a) : fitted(latest.picture.width, first.picture.width)
  const { width, height } = first.picture
  return {
    isAligned: a !== null && b !== null,
    placed: {
      viewBox: `0 0 ${width} ${height}`,
      first: { width, height, transform: 'matrix(1 0 0 1 0 0)' },
      latest: {
        width: latest.picture.width,
        height: latest.picture.height,
        transform: `matrix(${matrix.map((number) => Number(number.toFixed(5))).join(' ')})`,
      },
    },
  }
}

const poseIn = ({ photo }: Laid): Pose | null =>
  photo.landmarks === null ? null : poseOf(photo.landmarks, photo.view)

type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

const fitted = (from: number, to: number): Matrix => [to / from, 0, 0, to / from, 0, 0]

/** The SVG matrix that takes one pose onto the other: same origin, same directions, same size of a millimetre. */
export function similarity(from: Pose, to: Pose): Matrix {
  const size = from.mmPerPixel / to.mmPerPixel
  // Columns of [to.back to.up] times the transpose of [from.back from.up].
  const part = (row: 0 | 1, column: 0 | 1) =>
    size * (to.back[row] * from.back[column] + to.up[row] * from.up[column])
  const [a, b, c, d] = [part(0, 0), part(1, 0), part(0, 1), part(1, 1)]
  const [x, y] = from.origin
  return [a, b, c, d, to.origin[0] - a * x - c * y, to.origin[1] - b * x - d * y]
}
