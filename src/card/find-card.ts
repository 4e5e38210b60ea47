/**
 * Finds the printed card in a picture. The markers are found and told apart by js-aruco2, the one maintained detector
 * without a binary that runs in Node and in a browser alike, at a quarter of the size; its corners, whole pixels of that,
 * are then brought to the edges as they are in the picture. All corners must agree with one flat card.
 */
import { AR, type Marker } from 'js-aruco2'
import { cardHeight, cardWidth, markerCorners, markerIds, middleOf, type PlacedCard } from '../hoof/card.ts'
import {
  cameraBefore,
  fitted,
  focalPixels,
  type Homography,
  type Point,
  type Quad,
  through,
  usualFocal,
} from '../hoof/plane.ts'
import { refinedCorners } from './edges.ts'
import { type Grey, halved, rgbaOf, shadeAt } from './grey.ts'
import { markerFamily } from './markers.ts'
import { hasGrid } from './screen.ts'

/** Longest side of the picture that the card is looked for in, pixels. */
export const searchedSide = 2048

/** `none`: there is no card. All else: there is something of one, which is not used, and why. */
export type CardRefusal =
  | 'none'
  | 'other markers'
  | 'two cards'
  | 'half a card'
  | 'corners disagree'
  | 'screen'

export type CardSearch =
  | { readonly card: PlacedCard; readonly worst: number; readonly refusal: null }
  | { readonly card: null; readonly refusal: CardRefusal }

/** How far a corner may lie from where the others say it is: pixels of the searched picture, and millimetres. */
const mostPixels = 0.7
const mostMillimetres = 0.45

/** The upright picture that corners are wanted in. */
export interface FullPicture {
  readonly width: number
  readonly height: number
  /** As it would be on film of 35 mm, millimetres, where the camera noted it. */
  readonly focalLength?: number | null
}

export function findCard(picture: Grey, full: FullPicture): CardSearch {
  const markers = markersIn(picture)
  const ours = markers.filter(({ id }) => placeOfMarker(id) >= 0)
  const refused = (refusal: CardRefusal): CardSearch => ({ card: null, refusal })
  if (ours.length === 0) return refused(markers.length === 0 ? 'none' : 'other markers')
  if (new Set(ours.map(({ id }) => id)).size < ours.length) return refused('two cards')
  if (ours.length < 3) return refused('half a card')
  const pairs = ours.flatMap(({ id, corners }) => {
    const place = placeOfMarker(id)
    const printed = markerCorners(place as 0 | 1 | 2 | 3)
    return printed.map((from, i): readonly [Point, Point] => [from, corners[i] ?? from])
  })
  const plane = fitted(pairs)
  if (plane === null) return refused('corners disagree')
  const pixel = Math.hypot(...minus(through(plane, [cardWidth, 0]), through(plane, [0, 0]))) / cardWidth
  const worst = Math.max(...pairs.map(([from, to]) => Math.hypot(...minus(through(plane, from), to))))
  if (!(worst <= Math.max(mostPixels, mostMillimetres * pixel))) return refused('corners disagree')
  if (hasGrid((at) => shadeAt(picture, ...through(plane, at)), pixel)) return refused('screen')
  return { card: placed(plane, picture, full), worst, refusal: null }
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]]
const placeOfMarker = (id: number): number => (markerIds as readonly number[]).indexOf(id)

interface FoundMarker {
  readonly id: number
  readonly corners: Quad
}

function markersIn(picture: Grey): readonly FoundMarker[] {
  const small = halved(picture)
  // Of 36 bits eleven differ between any two markers: three wrong ones are still beyond doubt.
  const detector = new AR.Detector({ dictionaryName: markerFamily, maxHammingDistance: 4 })
  const found = detector.detectImage(small.width, small.height, rgbaOf(small)).flatMap((marker) => {
    const rough = quadOf(marker)
    const side = Math.hypot(...minus(rough[0], rough[1]))
    // A marker's cells are an eighth of it: the first look stays within one.
    const once = refinedCorners(picture, rough, Math.min(5, side / 9))
    const corners = once && refinedCorners(picture, once, Math.min(2.5, side / 9))
    return corners ? [{ id: marker.id, corners }] : []
  })
  // The inner and the outer side of one rim are found as two.
  return found.filter(
    (one, i) => !found.slice(0, i).some((other) => other.id === one.id && liesOn(one.corners, other.corners)),
  )
}

const liesOn = (one: Quad, other: Quad): boolean =>
  Math.hypot(...minus(middleOf(one), middleOf(other))) < Math.hypot(...minus(one[0], one[1])) / 2

/** In pixels of the searched picture, whose middles lie at halves. */
function quadOf({ corners }: Marker): Quad {
  const at = (i: number): Point => [2 * (corners[i]?.x ?? 0) + 1, 2 * (corners[i]?.y ?? 0) + 1]
  return [at(0), at(1), at(2), at(3)]
}

function placed(plane: Homography, picture: Grey, full: FullPicture): PlacedCard {
  const corner = (x: number, y: number): Point => {
    const [u, v] = through(plane, [x, y])
    return [(u * full.width) / picture.width, (v * full.height) / picture.height]
  }
  const { width, height } = picture
  return {
    corners: [corner(0, 0), corner(cardWidth, 0), corner(cardWidth, cardHeight), corner(0, cardHeight)],
    width: cardWidth,
    camera: cameraBefore(
      plane,
      [width / 2, height / 2],
      focalPixels(width, height, full.focalLength ?? usualFocal),
    ),
    nearer: null,
  }
}
