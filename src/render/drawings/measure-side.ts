/** Measures that are taken from the side. */
import { sideMeasures } from '../../hoof/stand-ins.ts'
import { add, along, mix, type Point, pointAt, type Stroke, stroke, through, towards } from './curves.ts'
import { angleMark, besideMark, lengthMark, type MeasureView, middling } from './measure-marks.ts'
import { area, lines, sheetFor } from './pens.ts'
import { sideBase } from './side.ts'
import { type SideShape, sideShape } from './side-shape.ts'

const angles = { toe: 51, heel: 46, newGrowth: 61 }
const foot = sideShape(sideMeasures(middling))
const grown = sideShape(
  sideMeasures({
    ...middling,
    'toe-angle': 46,
    'toe-length': 92,
    'new-angle': angles.newGrowth,
    'new-length': 30,
  }),
)
const sheet = sheetFor({ left: -16, right: 172, bottom: -8, top: 150 })

/** The measure itself, and thin lines that lead to it. */
const marked =
  (shape: SideShape, strong: readonly Stroke[], leading: readonly Stroke[] = [], under = '') =>
  (): MeasureView => ({
    sheet,
    content:
      sideBase(sheet, shape) +
      under +
      lines(sheet, 'mark-hair', ...leading) +
      lines(sheet, 'mark', ...strong),
  })

const { toeGround, toeHairline, heelGround, heelHairline } = foot
/** Where a line meets the ground. */
const atGround = ([x, y]: Point, degrees: number): Point => [x - y / Math.tan((degrees * Math.PI) / 180), 0]

export const toeLength = marked(foot, besideMark(toeGround, toeHairline, 6))
export const toeAngle = marked(foot, [
  through([toeHairline, toeGround, [46, 0]]),
  angleMark(toeGround, 30, 0, angles.toe),
])
export const heelAngle = marked(foot, [
  through([heelHairline, heelGround, add(heelGround, 34, 0)]),
  angleMark(heelGround, 20, 0, angles.heel),
])

/** The angle to the ground of a line that does not reach it: led down to where it would. */
function angleAbove(shape: SideShape, low: Point, high: Point, degrees: number, radius: number) {
  const corner = atGround(low, degrees)
  return marked(
    shape,
    [through([low, high]), through([corner, add(corner, 40, 0)]), angleMark(corner, radius, 0, degrees)],
    [through([corner, low])],
  )
}

export const newAngle = angleAbove(grown, grown.bend, grown.toeHairline, angles.newGrowth, 26)
export const newLength = marked(grown, besideMark(grown.bend, grown.toeHairline, 6))

const onPastern = (distance: number): Point => along(toeHairline, distance, towards(angles.toe))
export const pasternAngle = angleAbove(foot, onPastern(14), onPastern(56), angles.toe, 30)

const fall = (Math.atan2(toeHairline[1] - heelHairline[1], heelHairline[0] - toeHairline[0]) * 180) / Math.PI
export const coronetAngle = marked(
  foot,
  [through([heelHairline, toeHairline]), angleMark(heelHairline, 46, 180, 180 - fall)],
  [through([heelHairline, add(heelHairline, -78, 0)])],
)

/** A tape round the hairline, before the foot and behind it. */
const tape = foot.hairline
const behindTape = stroke(toeHairline, [
  add(mix(toeHairline, heelHairline, 0.3), 6, 17),
  add(mix(toeHairline, heelHairline, 0.75), 10, 18),
  heelHairline,
])
const notches = Array.from({ length: 12 }, (_, i) => {
  const at = pointAt(tape, (i + 0.5) / 12)
  return through([at, add(at, 0.8, 2.4)])
})
export const coronetGirth = marked(foot, [tape, ...notches], [behindTape])

/** As on a radiograph: the coffin bone within the foot, and the sole beneath its tip. */
const tip: Point = [26, 17]
const bone = stroke(
  tip,
  [add(tip, 10, 15), add(tip, 23, 34), add(tip, 32, 45)],
  [add(tip, 37, 46), add(tip, 40, 33), add(tip, 48, 30)],
  [add(tip, 58, 28), add(tip, 63, 19), add(tip, 61, 10)],
  [add(tip, 42, 7), add(tip, 21, 2), tip],
)
export const soleDepth = marked(
  foot,
  lengthMark(tip, [tip[0], 0]),
  [],
  area(sheet, 'groove', bone) + lines(sheet, 'inner', bone),
)
