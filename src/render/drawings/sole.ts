/** The sole from below, with what was found on it, in its place. */
import { type Foot, pairOf, sideOf } from '../../hoof/feet.ts'
import { type FootMeasures, soleMeasures } from '../../hoof/stand-ins.ts'
import type { Flares } from './behind-shape.ts'
import {
  along,
  joined,
  mapped,
  type Point,
  pointAt,
  reversed,
  type Stroke,
  sampled,
  through,
  unit,
} from './curves.ts'
import { differs } from './differences.ts'
import { type MarginSign, marginSigns } from './margin.ts'
import {
  area,
  type Box,
  boxOf,
  lines,
  type PictureName,
  picture,
  type Sheet,
  sheetFor,
  words,
} from './pens.ts'
import { findingMarks } from './sole-findings.ts'
import { type Grade, type Patch, solePatches } from './sole-places.ts'
import {
  around,
  frogOutline,
  groovesArea,
  groundOutline,
  type SoleHalf,
  type SoleShape,
  soleEdge,
  soleShape,
  wallArea,
  whiteLineArea,
} from './sole-shape.ts'

export interface SoleFinding {
  /** `thrush`; what is not known by name is hatched. */
  readonly what: string
  /** A place of the vocabulary; any other concerns the whole foot. */
  readonly place: string
  readonly grade: Grade
  /** Stands in the margin, joined to its place by a hair; explained beside the figure. */
  readonly sign: string
}

export interface SoleFigure {
  readonly foot: Foot
  readonly now: FootMeasures
  readonly findings: readonly SoleFinding[]
  readonly sides: { readonly medial: string; readonly lateral: string }
  readonly first?: FootMeasures | null | undefined
  readonly flares?: Flares | undefined
  /** Shown so small that its texture would not be seen: it is left out. */
  readonly isSmall?: boolean
}

/** The SVG of a sole, toe up; a left foot has its outer side on the right. */
export function soleView(figure: SoleFigure, name: PictureName): string {
  const { foot, now, first, findings, sides } = figure
  const read = soleMeasures(now)
  const shape = soleShape(
    read,
    pairOf(foot),
    figure.flares,
    findings.some(({ what }) => what === 'bar laid over'),
  )
  const old = first && differs('sole', first, now) ? soleShape(soleMeasures(first), pairOf(foot)) : null
  const was = old === null ? null : laidOver(old, shape)
  // What is drawn outside the wall reaches nearly as far as wall and white line are thick.
  const reach = findings.length > 0 ? 0.9 * (shape.wall + shape.whiteLine) : 0
  const margin = Math.max(0.13 * shape.width, reach)
  const points = [groundOutline(shape), ...(was ? [was] : [])].flatMap((one) => sampled(one, 8))
  const box = boxOf([...points, [0, shape.bulbsEnd]], {
    left: margin,
    right: margin,
    bottom: 0.05 * shape.width,
    top: Math.max(0.07 * shape.width, reach),
  })
  const sheet = sheetFor(box, sideOf(foot) === 'right')
  const patches = solePatches(shape)
  const isAssumed = read.assumed.includes('width') || read.assumed.includes('bearing-length')
  const isFrogAssumed = read.assumed.includes('frog-length') || read.assumed.includes('frog-width')
  return picture(
    sheet,
    name,
    soleBase(sheet, shape, { isAssumed, isFrogAssumed, isSmall: figure.isSmall === true }),
    shape.rollover === null ? '' : lines(sheet, 'mark-hair unread', shape.rollover),
    findingMarks(sheet, patches, findings),
    was === null ? '' : lines(sheet, 'was', was),
    marginSigns(sheet, signsOf(findings, patches, box), box.top - 130 / sheet.scale),
    words(sheet, [box.left, box.top - 60 / sheet.scale], sides.medial, sheet.isMirrored ? 'end' : 'start'),
    words(sheet, [box.right, box.top - 60 / sheet.scale], sides.lateral, sheet.isMirrored ? 'start' : 'end'),
  )
}

/** Each finding's sign on its own side; what lies in the middle goes to the emptier one. */
function signsOf(
  findings: readonly SoleFinding[],
  patchesOf: (place: string) => readonly Patch[],
  box: Box,
): readonly MarginSign[] {
  const signs: MarginSign[] = []
  const count = (side: MarginSign['side']) => signs.filter((one) => one.side === side).length
  for (const { sign, place } of findings) {
    // The pastern is not in sight: its sign leads to where it would be.
    const at = patchesOf(place).at(-1)?.at(0.5, 0.5) ?? ([0, box.bottom + 4] as const)
    const isCentral = Math.abs(at[0]) < 0.08 * (box.right - box.left)
    const isLeft = isCentral ? count('left') < count('right') : at[0] < 0
    signs.push({ sign, at, side: isLeft ? 'left' : 'right' })
  }
  return signs
}

/** The old outline, moved so that the tips of the frogs coincide. */
const laidOver = (old: SoleShape, now: SoleShape): Stroke =>
  mapped(
    around(old, ({ outer }) => outer),
    ([x, y]) => [x, y + now.frogTip[1] - old.frogTip[1]],
  )

const halves = (shape: SoleShape, of: (half: SoleHalf) => Stroke): Stroke[] => [
  of(shape.medial),
  of(shape.lateral),
]

interface SoleLook {
  readonly isAssumed: boolean
  readonly isFrogAssumed: boolean
  readonly isSmall: boolean
}

const plainLook: SoleLook = { isAssumed: false, isFrogAssumed: false, isSmall: false }

export function soleBase(sheet: Sheet, shape: SoleShape, look = plainLook): string {
  const { isAssumed, isFrogAssumed, isSmall } = look
  const frog = frogOutline(shape)
  const bulbs = around(shape, ({ bulb }) => reversed(bulb))
  return (
    area(sheet, 'bulb inner', bulbs) +
    area(sheet, 'sole', soleEdge(shape)) +
    area(
      sheet,
      'hollow',
      around(shape, ({ hollow }) => reversed(hollow)),
    ) +
    area(sheet, 'groove', groovesArea(shape)) +
    area(sheet, 'white-line', whiteLineArea(shape)) +
    // An edge that was not read has no line of its own under its dots.
    area(sheet, isAssumed ? 'wall' : 'wall inner', wallArea(shape)) +
    area(sheet, 'frog', frog) +
    (isSmall
      ? ''
      : lines(sheet, 'fine', ...grain(shape), ...shape.medial.contours, ...shape.lateral.contours)) +
    lines(
      sheet,
      'hair',
      ...halves(shape, ({ grooveTip }) => grooveTip),
      ...halves(shape, ({ frogFold }) => frogFold),
      ...halves(shape, ({ bulbFold }) => bulbFold),
    ) +
    area(sheet, shape.deep > 0.15 ? 'deep hair' : 'groove hair', shape.sulcus) +
    lines(
      sheet,
      isFrogAssumed ? 'hair' : 'inner',
      around(shape, ({ frog: edge }) => edge),
    ) +
    (isAssumed
      ? lines(sheet, 'hair', ...halves(shape, bare)) + lines(sheet, 'outline unread', groundOutline(shape))
      : lines(sheet, 'outline', groundOutline(shape)))
  )
}

/** The inner edges of one half: bar and wall. */
const bare = ({ barInner, barOuter, inner }: SoleHalf): Stroke => joined(barInner, barOuter, inner)

/** Short lines across the wall, as its horn tubes show. */
function grain(shape: SoleShape): Stroke[] {
  return [shape.medial, shape.lateral].flatMap(({ outer }, side) =>
    [0.08, 0.2, 0.33, 0.47, 0.61, 0.75].map((share, i) => {
      const [here, next] = [pointAt(outer, share), pointAt(outer, share + 0.01)]
      const [ux, uy] = unit(here, next)
      const inward: Point = side === 0 ? [-uy, ux] : [uy, -ux]
      const depth = shape.wall * (1 - 0.35 * share)
      const from = 0.35 + 0.1 * ((i * 3) % 4)
      return through([along(here, from * depth, inward), along(here, (from + 0.33) * depth, inward)])
    }),
  )
}
