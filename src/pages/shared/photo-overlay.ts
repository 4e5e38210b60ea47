/** Laying the latest picture over the first so that feet are compared and not cameras. */
import type { Photo } from '../../casebook/model.ts'
import { type Affine, hasSureScale, laying, type Pose, poseOf } from '../../hoof/pose.ts'

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
  /** Whether both are at one scale for sure. */
  readonly isOneScale: boolean
  readonly placed: { readonly viewBox: string; readonly first: Placed; readonly latest: Placed }
}

/** Turned, sized, moved and, where the camera stood on the other side, mirrored; straightened where there is a card. */
export function laidOver(first: Laid, latest: Laid): LaidOver {
  const [a, b] = [poseIn(first), poseIn(latest)]
  const matrix = a && b ? laying(b, a, first.photo.view) : fitted(latest.picture.width, first.picture.width)
  const { width, height } = first.picture
  return {
    isAligned: a !== null && b !== null,
    isOneScale: [first, latest].every(
      ({ photo }) => photo.landmarks !== null && hasSureScale(photo.landmarks),
    ),
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

const fitted = (from: number, to: number): Affine => [to / from, 0, 0, to / from, 0, 0]
