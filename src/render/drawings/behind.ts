/** A foot from behind: heels and their bulbs, frog and grooves, and how level the heels stand. */
import { type Foot, sideOf } from '../../hoof/feet.ts'
import { behindMeasures, type FootMeasures } from '../../hoof/stand-ins.ts'
import { type BehindShape, behindShape, type Flares, type HeelHalf, levelLines } from './behind-shape.ts'
import { endOf, joined, type Point, part, pointAt, reversed, type Stroke, stroke, through } from './curves.ts'
import { realDifference } from './differences.ts'
import { area, groundLine, lines, type PictureName, picture, type Sheet, sheetFor, words } from './pens.ts'

export interface BehindFigure {
  readonly foot: Foot
  readonly now: FootMeasures
  /** The difference of the heels as written, `8 mm`; stands at the higher one. */
  readonly label: string
  readonly sides: { readonly medial: string; readonly lateral: string }
  readonly flares?: Flares | undefined
}

/** The SVG of a foot from behind; a left foot has its outer side on the left. */
export function behindView({ foot, now, label, sides, flares }: BehindFigure, name: PictureName): string {
  const read = behindMeasures(now)
  const hasBoth = !read.assumed.includes('heel-medial') && !read.assumed.includes('heel-lateral')
  const difference = read.medial - read.lateral
  // A difference within its error is drawn level.
  const isReal = hasBoth && Math.abs(difference) > realDifference('heel-medial')
  const mean = (read.medial + read.lateral) / 2
  const shape = behindShape(isReal ? read : { ...read, medial: mean, lateral: mean }, flares)
  const { width } = shape
  const sheet = sheetFor(
    {
      left: -0.74 * width - (flares?.lateral ?? 0),
      right: 0.74 * width + (flares?.medial ?? 0),
      bottom: -0.13 * width,
      top: shape.height,
    },
    sideOf(foot) === 'right',
  )
  return picture(
    sheet,
    name,
    behindBase(sheet, shape, read.assumed.includes('width')),
    hasBoth ? level(sheet, shape, isReal, label) : '',
    names(sheet, shape, sides),
  )
}

const both = (shape: BehindShape, of: (half: HeelHalf) => Stroke): Stroke[] => [
  of(shape.lateral),
  of(shape.medial),
]

export function behindBase(sheet: Sheet, shape: BehindShape, isWidthAssumed = false): string {
  const { lateral, medial } = shape
  const limb = joined(
    reversed(lateral.limb),
    reversed(lateral.wall),
    through([lateral.wall.start, medial.wall.start]),
    medial.wall,
    medial.limb,
    reversed(topOf(shape)),
  )
  const outline = isWidthAssumed ? 'outline unread' : 'outline'
  return (
    area(sheet, 'skin', limb) +
    area(sheet, 'side', ...both(shape, quarterArea)) +
    area(sheet, 'wall', ...both(shape, heelArea)) +
    area(sheet, 'bulb', ...both(shape, bulbArea)) +
    area(sheet, 'frog', ...both(shape, frogArea)) +
    area(sheet, 'groove', ...both(shape, grooveArea)) +
    (shape.deep > 0.15 ? area(sheet, 'deep', shape.sulcus) : '') +
    groundLine(sheet) +
    lines(sheet, 'fine', ...hairs(shape)) +
    lines(
      sheet,
      'hair',
      ...both(shape, ({ turn }) => turn),
      ...both(shape, ({ bulbSide }) => bulbSide),
      ...both(shape, ({ hollow }) => hollow),
      topOf(shape),
      shape.sulcus,
    ) +
    lines(
      sheet,
      'inner',
      ...both(shape, ({ limb }) => limb),
      ...both(shape, ({ bulbEdge }) => bulbEdge),
      lateral.cleft,
      ...both(shape, ({ hairline }) => joined(...hairline)),
      ...both(shape, ({ groove }) => joined(...groove)),
    ) +
    lines(sheet, outline, ...both(shape, (half) => joined(reversed(half.bearing), half.wall)))
  )
}

const quarterArea = ({ wall, hairline, turn, bearing }: HeelHalf): Stroke =>
  joined(wall, hairline[0], turn, through([endOf(turn), bearing.start]))

const heelArea = ({ turn, groove, bulbEdge }: HeelHalf): Stroke => joined(turn, groove[0], reversed(bulbEdge))

/** Horn of the bulb, from its hairline down to heel, groove and frog. */
const bulbArea = ({ hairline, groove, bulbEdge }: HeelHalf): Stroke =>
  joined(
    hairline[1],
    through([endOf(hairline[1]), endOf(groove[1])]),
    reversed(groove[1]),
    reversed(bulbEdge),
  )

/** The frog runs into the bulb without an edge: its tint ends in a bow. */
const frogArea = ({ groove, cleft }: HeelHalf): Stroke => {
  const [from, to] = [groove[1].start, endOf(cleft)]
  return joined(
    groove[1],
    through([endOf(groove[1]), to]),
    stroke(to, [[0.35 * from[0], 0.62 * to[1]], [0.75 * from[0], 0.7 * from[1]], from]),
  )
}

const grooveArea = ({ groove, grooveFloor }: HeelHalf): Stroke =>
  joined(groove[0], part(groove[1], 0, 0.4), grooveFloor)

/** The cut edge of the limb, sagging as a round limb does. */
function topOf({ lateral, medial }: BehindShape): Stroke {
  const [a, b] = [endOf(lateral.limb), endOf(medial.limb)]
  const third = (b[0] - a[0]) / 3
  const sag = 0.07 * (b[0] - a[0])
  return stroke(a, [[a[0] + third, a[1] - sag], [b[0] - third, b[1] - sag], b])
}

/** Growth lines on the quarters, hair over the bulbs, the feather's parting. */
function hairs(shape: BehindShape): Stroke[] {
  const { width } = shape
  return [-1, 1].flatMap((s) => {
    const half = s < 0 ? shape.lateral : shape.medial
    const { turn, wall } = half
    const rings = [0.3, 0.62].map((depth) => {
      const outer = part(wall, 1 - depth, 1).start
      const inner = part(turn, depth, 1).start
      return stroke(outer, [
        [outer[0] - 0.03 * s * width, outer[1] - 0.035 * width],
        [inner[0] + 0.05 * s * width, inner[1] + 0.004 * width],
        inner,
      ])
    })
    const coat = [0.15, 0.32, 0.49, 0.66, 0.83].map((share, i) => {
      const [x, y] = pointAt(half.hairline[1], share)
      return through([
        [x, y + 0.014 * width],
        [x + 0.004 * s * width, y + (0.034 + 0.007 * ((i * 3) % 4)) * width],
      ])
    })
    return [...rings.map((ring) => part(ring, 0, 0.72)), ...coat]
  })
}

function level(sheet: Sheet, shape: BehindShape, isReal: boolean, label: string): string {
  const { through: line, level: flat } = levelLines(shape)
  const { lateral, medial, width } = shape
  const dots = [lateral.heel, medial.heel].map((heel) => stroke(heel, [heel]))
  const isMedialHigher = shape.drawnDifference > 0
  const at: Point = isMedialHigher ? [0.73 * width, medial.heel[1]] : [-0.73 * width, lateral.heel[1]]
  const isRight = isMedialHigher !== sheet.isMirrored
  return (
    (isReal ? lines(sheet, 'mark-hair unread', flat) : '') +
    lines(sheet, 'mark', ...line) +
    lines(sheet, 'point', ...dots) +
    lines(sheet, 'point hole', ...dots) +
    (isReal ? words(sheet, [at[0], at[1] + 0.085 * width], label, isRight ? 'end' : 'start', 'figure') : '')
  )
}

const names = (sheet: Sheet, { width }: BehindShape, sides: BehindFigure['sides']): string =>
  words(sheet, [-0.44 * width, -0.11 * width], sides.lateral) +
  words(sheet, [0.44 * width, -0.11 * width], sides.medial)
