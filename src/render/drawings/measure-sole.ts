/** Measures that are taken on the sole. */
import { soleMeasures } from '../../hoof/stand-ins.ts'
import { type Point, type Stroke, through } from './curves.ts'
import { lengthMark, type MeasureView, middling } from './measure-marks.ts'
import { lines, sheetFor } from './pens.ts'
import { soleBase } from './sole.ts'
import { soleShape } from './sole-shape.ts'

const read = soleMeasures(middling)
const { rolled } = read
const shape = soleShape(read, 'fore')
const whole = sheetFor({ left: -84, right: 84, bottom: -20, top: 121 })
/** The toe from nearer, for what is only millimetres wide. */
const near = sheetFor({ left: -27, right: 27, bottom: 76, top: 121 })

const marked =
  (sheet: typeof whole, strong: readonly Stroke[], leading: readonly Stroke[] = []) =>
  (): MeasureView => ({
    sheet,
    content: soleBase(sheet, shape) + lines(sheet, 'mark-hair', ...leading) + lines(sheet, 'mark', ...strong),
  })

const { bearing, frogTip, frogWidth, wall, whiteLine } = shape
const across = (y: number, half: number): Stroke =>
  through([
    [-half, y],
    [half, y],
  ])
const down = (from: number, to: number, x = 0): readonly Stroke[] => lengthMark([x, from], [x, to])
const widest: readonly [Point, Point] = [
  [-0.494 * shape.width, 0.43 * bearing],
  [0.506 * shape.width, 0.43 * bearing],
]

export const bearingLength = marked(whole, down(bearing, 0), [across(0, 60)])
export const width = marked(whole, lengthMark(...widest))
/** The foot rolls over a little behind the very edge of the toe. */
export const breakover = marked(whole, down(bearing - rolled, frogTip[1]), [across(bearing - rolled, 34)])
export const frogLength = marked(whole, down(frogTip[1], -0.035 * bearing))
const frogWide = marked(whole, lengthMark([-frogWidth / 2, 9], [frogWidth / 2, 9]))
export const wallThickness = marked(near, lengthMark([0, bearing], [0, bearing - wall], 1.6))
const whiteLineWide = marked(near, lengthMark([0, bearing - wall], [0, bearing - wall - whiteLine], 1.6))

export { frogWide as frogWidth, whiteLineWide as whiteLine }
