/** The wall from the front, with what grows down it: where it is, and where it will be at the next visits. */
import { type Foot, sideOf } from '../../hoof/feet.ts'
import { type FootMeasures, wallMeasures } from '../../hoof/stand-ins.ts'
import type { Flares } from './behind-shape.ts'
import { add, endOf, part, pointAt, type Stroke, through } from './curves.ts'
import { type MarginSign, marginSigns } from './margin.ts'
import { area, groundLine, lines, type PictureName, picture, type Sheet, sheetFor, words } from './pens.ts'
import {
  crackOf,
  nailHoles,
  slitOf,
  stretchOf,
  type WallShape,
  wallLimb,
  wallOutline,
  wallShape,
} from './wall-shape.ts'

export interface GrowingFeature {
  /** `nail holes`, `crack`, `old abscess`; anything else is a line. */
  readonly what: string
  readonly place: string
  /** Millimetres from the hairline now, and at the next visits. */
  readonly at: number
  readonly ahead: readonly number[]
  /** Length of the wall there; null where it was not read. */
  readonly wallLength: number | null
  readonly sign: string
}

export interface WallFigure {
  readonly foot: Foot
  readonly now: FootMeasures
  readonly features: readonly GrowingFeature[]
  readonly sides: { readonly medial: string; readonly lateral: string }
  readonly flares?: Flares | undefined
}

/** The SVG of a wall from the front; a left foot has its outer side on the right. */
export function wallView({ foot, now, features, sides, flares }: WallFigure, name: PictureName): string {
  const read = wallMeasures(now)
  const shape = wallShape(read, flares)
  const { width, length } = shape
  const half = 0.62 * width
  const box = {
    left: -half - (flares?.medial ?? 0),
    right: half + (flares?.lateral ?? 0),
    bottom: -0.13 * width,
    top: length + 0.32 * width,
  }
  const sheet = sheetFor(box, sideOf(foot) === 'right')
  return picture(
    sheet,
    name,
    wallBase(sheet, shape, {
      isLengthRead: !read.assumed.includes('toe-length'),
      isWidthRead: !read.assumed.includes('width'),
    }),
    ...features.map((feature) => growing(sheet, shape, feature)),
    marginSigns(
      sheet,
      features.map((feature) => signOf(shape, feature)),
      length,
    ),
    words(sheet, [-0.44 * width, -0.11 * width], sides.medial),
    words(sheet, [0.44 * width, -0.11 * width], sides.lateral),
  )
}

/** What was read of a wall: its sides stand on the width, its ground edge on the length. */
const allRead = { isLengthRead: true, isWidthRead: true }

export function wallBase(sheet: Sheet, shape: WallShape, { isLengthRead, isWidthRead } = allRead): string {
  const { limb, sides, hairline, ground } = shape
  return (
    area(sheet, 'skin', wallLimb(shape)) +
    area(sheet, 'wall', wallOutline(shape)) +
    groundLine(sheet) +
    lines(sheet, 'fine', ...tubes(shape), ...hairs(shape)) +
    lines(sheet, 'hair', limb.top, shape.band) +
    lines(sheet, 'inner', limb.medial, limb.lateral, hairline) +
    lines(sheet, isWidthRead ? 'outline' : 'outline unread', sides.medial, sides.lateral) +
    lines(sheet, isLengthRead ? 'outline' : 'outline unread', ground)
  )
}

/** Horn tubes, seen where the wall is worn, and at the hairline. */
function tubes({ downAt }: WallShape): Stroke[] {
  return Array.from({ length: 17 }, (_, i) => {
    const across = (i + 1) / 18
    const uneven = 0.03 * ((i * 5) % 4)
    return through([downAt(across, 0.86 + uneven * 0.6), downAt(across, 0.97)])
  })
}

function hairs({ hairline, width }: WallShape): Stroke[] {
  return Array.from({ length: 24 }, (_, i) => {
    const at = add(pointAt(hairline, (i + 0.5) / 24), 0, 0.012 * width)
    return through([
      at,
      add(at, (0.5 - (i + 0.5) / 24) * -0.02 * width, (0.034 + 0.006 * ((i * 7) % 4)) * width),
    ])
  })
}

/** A distance from the hairline as a share of the toe's length, such that horn of a shorter wall reaches the ground. */
const shareOf = (shape: WallShape, { wallLength, place }: GrowingFeature, at: number): number => {
  const [from, to] = stretchOf(place)
  const isAtSide = to <= 0.22 || from >= 0.78
  const drawn = isAtSide ? sideLength(shape) : shape.length
  return Math.min(1, ((at / (wallLength ?? drawn)) * drawn) / shape.length)
}

const sideLength = ({ sides }: WallShape): number =>
  Math.hypot(
    endOf(sides.lateral)[0] - sides.lateral.start[0],
    endOf(sides.lateral)[1] - sides.lateral.start[1],
  )

function growing(sheet: Sheet, shape: WallShape, feature: GrowingFeature): string {
  const stretch = stretchOf(feature.place)
  const share = shareOf(shape, feature, feature.at)
  const line = (at: number) => part(shape.ringAt(at), ...stretch)
  const ahead = feature.ahead.map((at) => line(shareOf(shape, feature, at)))
  return lines(sheet, 'mark unread', ...ahead) + mark(sheet, shape, feature, share, stretch, line)
}

function mark(
  sheet: Sheet,
  shape: WallShape,
  { what }: GrowingFeature,
  share: number,
  stretch: readonly [number, number],
  line: (at: number) => Stroke,
): string {
  const middle = (stretch[0] + stretch[1]) / 2
  if (/crack|split/i.test(what)) return area(sheet, 'finding', crackOf(shape, middle, share, 1))
  if (/nail/i.test(what)) return area(sheet, 'finding', ...nailHoles(shape, stretch, share))
  if (/abscess|exit|track|hole/i.test(what)) return area(sheet, 'finding', slitOf(shape, stretch, share))
  const below = Math.min(1, share + 0.03)
  const [from, to] = stretch
  const inset = 0.08 * (to - from)
  return (
    lines(sheet, 'mark bold', line(share)) +
    (below < 1 ? lines(sheet, 'mark-hair', part(shape.ringAt(below), from + inset, to - inset)) : '')
  )
}

/** The sign of a feature leads to its middle; that of a line right across the wall, to its end. */
function signOf(shape: WallShape, feature: GrowingFeature): MarginSign {
  const [from, to] = stretchOf(feature.place)
  const ring = shape.ringAt(shareOf(shape, feature, feature.at))
  return {
    sign: feature.sign,
    at: pointAt(ring, to - from > 0.5 ? to : (from + to) / 2),
    side: from + to < 1 ? 'left' : 'right',
  }
}
