/** Measures of the wall at the heels, seen from behind, and at the quarters, seen from the front: a left foot. */
import type { FigureWords } from '../figure-words.ts'
import { element } from '../html.ts'
import { ink, inkSoft, latest } from '../ink.ts'
import { hairlineInset, heelsShape } from './heels-shape.ts'
import { curve, dimension, type Point, path, text } from './svg.ts'

const ground = 140
const middle = 110
const strong = { stroke: latest, 'stroke-width': 3 }
const groundLine = path(`M6 ${ground}H214`, { stroke: inkSoft, 'stroke-width': 1.2 })

/** Names of the sides under the foot; the inner side is to the right from behind, to the left from the front. */
const sides = (left: string, right: string): string => {
  const style = { fill: inkSoft, 'text-anchor': 'middle', 'font-size': 18 }
  return text([44, ground + 20], left, style) + text([176, ground + 20], right, style)
}

export function fromBehind(which: 'inner' | 'outer', words: FigureWords): string {
  const heels = { middle: 0, ground: 0, left: -74, right: -74, reach: 92 }
  const scale = 0.86
  const x = (away: number) => middle + (which === 'inner' ? away : -away) * scale
  return (
    element('g', { transform: `translate(${middle},${ground}) scale(${scale})` }, heelsShape(heels)) +
    groundLine +
    dimension(
      [x(heels.reach + 22), ground],
      [x(heels.reach - hairlineInset + 12), ground - 74 * scale],
      strong,
    ) +
    sides(words.outer, words.inner)
  )
}

export function fromFront(which: 'inner' | 'outer', words: FigureWords): string {
  const x = (away: number) => middle + (which === 'inner' ? -away : away)
  return (
    front() +
    groundLine +
    dimension([x(86), ground], [x(63), ground - 62], strong) +
    sides(words.inner, words.outer)
  )
}

/** A foot from the front: wall spreading to the ground, hairline bowed up, the pastern above. */
function front(): string {
  const at = (x: number, y: number): Point => [middle + x, ground - y]
  const hairline = curve(
    at(-52, 66),
    [at(-44, 80), at(-20, 92), at(0, 92)],
    [at(20, 92), at(44, 80), at(52, 66)],
  )
  const toe = curve(at(76, 0), [at(50, -5), at(-50, -5), at(-76, 0)]).replace('M', 'L')
  const skin = (s: 1 | -1) =>
    curve(
      at(s * 52, 66),
      [at(s * 56, 76), at(s * 50, 84), at(s * 42, 90)],
      [at(s * 34, 98), at(s * 32, 110), at(s * 33, 128)],
    )
  return (
    path(skin(-1) + skin(1), { stroke: inkSoft, 'stroke-width': 1.4 }) +
    path(`${hairline}${toe}Z`, { stroke: ink, 'stroke-width': 1.8, fill: 'var(--paper-2, #f4f0e5)' })
  )
}
