/** A foot from behind: heels up to the hairline, bulbs, the cleft between them, the end of the frog. */
import { ink, inkSoft, paper } from '../ink.ts'
import { curve, type Point, path } from './svg.ts'

/** In units of the drawing; `left` and `right` are the heights (y) of the hairline at the two heels. */
export interface Heels {
  readonly middle: number
  readonly ground: number
  readonly left: number
  readonly right: number
  /** From the middle to the ground edge of a heel. */
  readonly reach: number
}

export function heelsShape(heels: Heels): string {
  const { middle, ground, left, right, reach } = heels
  return (
    pastern(heels) +
    bulb(middle, left, reach, -1) +
    bulb(middle, right, reach, 1) +
    heel(middle, ground, left, reach, -1) +
    heel(middle, ground, right, reach, 1) +
    frogEnd(heels)
  )
}

/** Where the hairline of a heel meets its outer edge. */
export const hairlineInset = 10

/** One heel: wall outside, buttress on the ground, hairline falling towards the cleft. */
function heel(middle: number, ground: number, hairline: number, reach: number, side: 1 | -1): string {
  const at = (x: number, y: number): Point => [middle + side * x, y]
  const outline = curve(
    at(reach + 12, ground),
    [at(reach + 9, ground - 24), at(reach - 4, hairline + 24), at(reach - hairlineInset, hairline)],
    [at(reach * 0.74, hairline + 13), at(reach * 0.44, hairline + 27), at(14, hairline + 31)],
    [at(15, hairline + 42), at(20, ground - 34), at(31, ground - 22)],
    [at(38, ground - 15), at(reach * 0.52, ground - 6), at(reach * 0.56, ground)],
  )
  return path(`${outline}Z`, { stroke: ink, 'stroke-width': 2.6, fill: 'var(--paper-2, #f4f0e5)' })
}

/** A bulb: the soft round of the heel above the hairline, meeting its fellow in the cleft. */
function bulb(middle: number, hairline: number, reach: number, side: 1 | -1): string {
  const at = (x: number, y: number): Point => [middle + side * x, y]
  const outline = curve(
    at(reach - hairlineInset, hairline),
    [at(reach - 4, hairline - 30), at(reach * 0.62, hairline - 46), at(reach * 0.34, hairline - 34)],
    [at(reach * 0.16, hairline - 27), at(3, hairline - 12), at(2, hairline + 14)],
    [at(2, hairline + 24), at(8, hairline + 29), at(14, hairline + 31)],
  )
  return path(outline, { stroke: inkSoft, 'stroke-width': 1.7, fill: paper })
}

/** The frog between the heels, with its middle groove. */
function frogEnd({ middle, ground }: Heels): string {
  const at = (x: number, y: number): Point => [middle + x, ground - y]
  const frog = curve(
    at(-27, 6),
    [at(-24, 20), at(-14, 31), at(-6, 32)],
    [at(-3, 27), at(-1.5, 20), at(0, 15)],
    [at(1.5, 20), at(3, 27), at(6, 32)],
    [at(14, 31), at(24, 20), at(27, 6)],
    [at(16, 2), at(6, 4), at(0, 8)],
    [at(-6, 4), at(-16, 2), at(-27, 6)],
  )
  return path(`${frog}Z`, { stroke: inkSoft, 'stroke-width': 1.6, fill: paper })
}

function pastern({ middle, left, right, reach }: Heels): string {
  const line = (side: 1 | -1, hairline: number) => {
    const at = (x: number, y: number): Point => [middle + side * x, hairline - y]
    return curve(at(reach - hairlineInset, 0), [
      at(reach - 8, 26),
      at(reach * 0.62, 40),
      at(reach * 0.58, 66),
    ])
  }
  return path(line(-1, left) + line(1, right), { stroke: inkSoft, 'stroke-width': 1.5 })
}
