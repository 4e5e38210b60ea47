/** The printed card that stands in the foot's plane: how it is laid out, and its plane in a picture. */
import { after, type Homography, inverseOf, ontoQuad, type Place, type Point, type Quad } from './plane.ts'

/** The card as it is cut out, millimetres; it stands on its long edge. Four markers, one in each corner. */
export const cardWidth = 180
export const cardHeight = 130
/** Side of a marker's black square, and from the card's edge to it. */
export const markerSide = 52
export const markerInset = 9
/** Numbers within the family 36h11, from the upper left over the upper right and lower right to the lower left. */
export const markerIds = [101, 222, 343, 464] as const

/** The black square of each marker on the card: upper left, upper right, lower right, lower left; y up from the ground. */
export function markerCorners(place: 0 | 1 | 2 | 3): Quad {
  const left = place === 0 || place === 3 ? markerInset : cardWidth - markerInset - markerSide
  const low = place < 2 ? cardHeight - markerInset - markerSide : markerInset
  const [right, high] = [left + markerSide, low + markerSide]
  return [
    [left, high],
    [right, high],
    [right, low],
    [left, low],
  ]
}

/** A card that was found in a picture. */
export interface PlacedCard {
  /** The card's own corners in the picture, pixels: lower left, lower right, upper right, upper left. */
  readonly corners: Quad
  /** Between the lower corners, millimetres: as printed, where the printer changed the size. */
  readonly width: number
  /** Where the camera stood before it, millimetres from its lower left corner; null where that is not known. */
  readonly camera: Place | null
  /** How much nearer to the camera it stands than the foot's plane, millimetres; null where nobody said. */
  readonly nearer: number | null
}

/** From pixels to millimetres on the card, x to the right and y up from the edge it stands on. */
export function cardPlane({ corners, width }: Pick<PlacedCard, 'corners' | 'width'>): Homography {
  const height = (width * cardHeight) / cardWidth
  const size: Homography = [width, 0, 0, 0, height, 0, 0, 0, 1]
  return after(size, inverseOf(ontoQuad(corners)))
}

/** Where a camera stands that nobody knows of, millimetres before the card: as in a yard, held low. Common practice. */
export const assumedCamera: Place = [150, 200, 1000]

export const middleOf = (corners: Quad): Point => [
  corners.reduce((sum, [x]) => sum + x, 0) / 4,
  corners.reduce((sum, [, y]) => sum + y, 0) / 4,
]

/** Whether it stands on its long edge as the picture shows it: else its edge is not the ground. */
export function isUpright({
  corners: [lowLeft, lowRight, , highLeft],
}: Pick<PlacedCard, 'corners'>): boolean {
  const [along, up] = [lowRight[0] - lowLeft[0], lowLeft[1] - highLeft[1]]
  return along > Math.abs(lowRight[1] - lowLeft[1]) && up > Math.abs(highLeft[0] - lowLeft[0])
}
