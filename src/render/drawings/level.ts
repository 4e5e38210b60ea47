/** Heel balance: the heels seen from behind, and a level that tilts as their hairline does. */
import { sideOf } from '../../hoof/feet.ts'
import type { LevelDrawing } from '../../pages/shared/figures.ts'
import { frame, labelledBy } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element, num, shape } from '../html.ts'
import { ink, inkSoft, latest, paper } from '../ink.ts'
import { hairlineInset, heelsShape } from './heels-shape.ts'
import { path, plainText, svg, text } from './svg.ts'

const width = 320
const height = 290
const ground = 258
const middle = width / 2
/** Half the distance between the heels in the picture, and the height of level heels, in its units. */
const reach = 92
const heelHeight = 82
/** Steepest tilt that is drawn; more is written. */
const steepest = 14
/** Height of the level above the hairline. */
const above = 92

/**
 * Draws levels. A tilt is drawn to the tenth of a degree that is written and has one of at most 281 values, each within
 * the target or not, so that every picture but its words is drawn once.
 */
export function createLevels(words: FigureWords): (drawing: LevelDrawing) => string {
  const drawn = new Map<string, string>()
  const seen = (toRight: number, withinTarget: boolean): string => {
    const tilt = Math.round(Math.max(-steepest, Math.min(steepest, toRight)) * 10) / 10
    const key = `${tilt} ${withinTarget}`
    const picture = drawn.get(key) ?? footAndLevel(tilt, withinTarget)
    drawn.set(key, picture)
    return picture
  }
  return (drawing) => {
    const { id, foot, balance, tilt, balanceLabel, withinTarget } = drawing
    // Without a width the tilt is that over a foot of 120 mm.
    const degrees = tilt ?? (Math.atan2(balance, 120) * 180) / Math.PI
    // From behind, the inner side of a left foot is to the right.
    const innerRight = sideOf(foot) === 'left'
    const [leftName, rightName] = innerRight ? [words.outer, words.inner] : [words.inner, words.outer]
    const picture = svg(
      width,
      height,
      labelledBy(id),
      seen(innerRight ? degrees : -degrees, withinTarget),
      text([middle - reach, ground + 22], leftName, { fill: inkSoft, 'text-anchor': 'middle' }),
      text([middle + reach, ground + 22], rightName, { fill: inkSoft, 'text-anchor': 'middle' }),
      plainText([middle, 20], balanceLabel, { 'text-anchor': 'middle', 'font-weight': 600, 'font-size': 18 }),
    )
    return frame(drawing, picture)
  }
}

/** Foot and level at a tilt, degrees to the right. */
function footAndLevel(tilt: number, withinTarget: boolean): string {
  const arm = reach - hairlineInset
  const rise = Math.tan((tilt * Math.PI) / 180) * arm
  const levelY = ground - heelHeight
  const across = (y: number, margin: number) => `M${margin} ${y}H${width - margin}`
  return (
    heelsShape({ middle, ground, left: levelY + rise, right: levelY - rise, reach }) +
    path(across(ground, 10), { stroke: inkSoft, 'stroke-width': 1.4 }) +
    path(across(levelY, 8), { stroke: inkSoft, 'stroke-width': 1.2, 'stroke-dasharray': '2 5' }) +
    hairline(levelY, -tilt) +
    level(levelY - above, -tilt, tilt, withinTarget)
  )
}

/** The line from hairline to hairline, against the dotted one that is level. */
const hairline = (y: number, turn: number): string =>
  turned(y, turn, path('M-136 0H136', { stroke: latest, 'stroke-width': 2.6 }))

/**
 * A tube with a bubble between two marks, tilted as the heels are; the bubble runs to the high side.
 * It lies between the marks exactly when the heels are within the target.
 */
function level(y: number, turn: number, toRight: number, withinTarget: boolean): string {
  const gap = 22
  const run = withinTarget
    ? Math.max(-6, Math.min(6, toRight * 2))
    : Math.sign(toRight) * Math.min(62, 36 + Math.abs(toRight) * 2.5)
  const tube = shape('rect', {
    x: -88,
    y: -15,
    width: 176,
    height: 30,
    rx: 15,
    fill: 'var(--paper-2, #f4f0e5)',
    stroke: ink,
    'stroke-width': 2.4,
  })
  const bubble = shape('ellipse', {
    cx: run,
    cy: -2,
    rx: 15,
    ry: 10,
    fill: withinTarget ? paper : latest,
    stroke: latest,
    'stroke-width': 2.4,
  })
  const marks = path(`M${-gap} -15V15M${gap} -15V15`, { stroke: ink, 'stroke-width': 2 })
  return turned(y, turn, tube, bubble, marks)
}

const turned = (y: number, turn: number, ...content: readonly string[]): string =>
  element('g', { transform: `translate(${middle},${num(y)}) rotate(${num(turn)})` }, ...content)
