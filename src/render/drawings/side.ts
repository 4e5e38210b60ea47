/** A foot from the side: as it stands, over what it was, and what a trim would leave. */
import { type Foot, sideOf } from '../../hoof/feet.ts'
import { type FootMeasures, type SideMeasures, sideMeasures, soleMeasures } from '../../hoof/stand-ins.ts'
import { add, mix, type Point, pointAt, type Stroke, sampled, through } from './curves.ts'
import { differs, realDifference } from './differences.ts'
import { area, boxOf, groundLine, lines, type PictureName, picture, type Sheet, sheetFor } from './pens.ts'
import {
  capsuleOutline,
  coronetHairs,
  growthLines,
  laidAt,
  limbOutline,
  type SideShape,
  sideShape,
} from './side-shape.ts'

export interface SideFigure {
  readonly foot: Foot
  readonly now: FootMeasures
  /** What it was: drawn broken over what is, where the two differ by more than their error. */
  readonly first?: FootMeasures | null | undefined
  /** Millimetres that a trim would take along the wall at toe and heel. */
  readonly trim?: { readonly toe: number; readonly heel: number } | null | undefined
  /** Depth of the dish in the front of the wall, millimetres. */
  readonly dish?: number | undefined
}

/** The SVG of a foot from its outer side; a left foot looks to the left, a right foot to the right. */
export function sideView(figure: SideFigure, name: PictureName): string {
  const { foot, now, first, trim } = figure
  const read = sideMeasures(now)
  const shape = sideShape(worthDrawing(read), {
    rolled: soleMeasures(now).rolled,
    dish: figure.dish ?? 0,
  })
  const old = first && differs('side', first, now) ? sideShape(sideMeasures(first)) : null
  const laid = old === null ? [] : earlier(old, shape)
  const points = [
    ...[
      capsuleOutline(shape),
      limbOutline(shape),
      ...laid,
      ...(shape.otherBulb ? [shape.otherBulb] : []),
    ].flatMap((one) => sampled(one, 6)),
    shape.toeGround,
  ]
  const sheet = sheetFor(boxOf(points, { left: 7, right: 7, bottom: 3, top: 3 }), sideOf(foot) === 'right')
  return picture(
    sheet,
    name,
    sideBase(sheet, shape, unreadOf(read, shape)),
    !trim ? '' : trimmed(sheet, shape, trim, read),
    lines(sheet, 'was', ...laid),
  )
}

/** A heel that differs from its fellow by no more than their error stands where that one does. */
const worthDrawing = (of: SideMeasures): SideMeasures =>
  Math.abs(of.otherHeel - of.heel) > realDifference('heel-medial') ? of : { ...of, otherHeel: of.heel }

/** Which edges stand in for readings: the heel with the ground, the whole capsule, or none. */
type Unread = 'none' | 'heel' | 'all'

function unreadOf({ assumed }: SideMeasures, { closes }: SideShape): Unread {
  if (assumed.includes('toe-length') || assumed.includes('toe-angle')) return 'all'
  return assumed.length > 0 || !closes ? 'heel' : 'none'
}

/** The foot itself, in the order in which it is painted. */
export function sideBase(sheet: Sheet, shape: SideShape, unread: Unread = 'none'): string {
  const { limb, hairline, band, otherBulb } = shape
  const pen = (isRead: boolean) => (isRead ? 'outline' : 'outline unread')
  return (
    area(sheet, 'skin', limbOutline(shape)) +
    area(sheet, 'wall', capsuleOutline(shape)) +
    groundLine(sheet) +
    lines(sheet, 'fine', ...growthLines(shape), ...coronetHairs(shape, 22)) +
    lines(sheet, 'hair', limb.top, ...limb.folds, band) +
    lines(sheet, 'inner', limb.front, limb.bulb, limb.back, hairline) +
    (otherBulb === null ? '' : lines(sheet, 'hair unread', otherBulb)) +
    lines(sheet, pen(unread !== 'all'), shape.toe) +
    lines(sheet, pen(unread === 'none'), shape.bearing, shape.heel)
  )
}

/** The old capsule, moved so that both hairlines begin at one point. */
function earlier(old: SideShape, now: SideShape): Stroke[] {
  const move = laidAt(old, now)
  return [old.toe, old.hairline, old.bearing, old.heel].map(move)
}

/** The horn that would go, hatched below a broken line. */
function trimmed(
  sheet: Sheet,
  shape: SideShape,
  { toe, heel }: { readonly toe: number; readonly heel: number },
  { toeLength, heel: heelLength }: { readonly toeLength: number; readonly heel: number },
): string {
  const cut = shape.cutAt(Math.min(0.9, toe / toeLength), Math.min(0.9, heel / heelLength))
  const count = 16
  const hatch = Array.from({ length: count }, (_, i) => {
    const above = pointAt(cut, (i + 0.8) / count)
    const foot = mix(shape.toeGround, shape.heelGround, (i + 0.5) / count)
    return through([foot, above])
  })
  const beyond = (point: Point, to: number): Point => add(point, to, 0)
  return (
    lines(sheet, 'mark-hair', ...hatch) +
    lines(
      sheet,
      'mark cut',
      through([beyond(cut.start, -5), cut.start]),
      cut,
      through([pointAt(cut, 1), beyond(pointAt(cut, 1), 6)]),
    )
  )
}
