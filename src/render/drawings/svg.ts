/** Pieces that all drawings share: the outer `<svg>`, paths from points, texts, arrows, dimensions. */
import { type Attributes, element, escapeHtml, num, shape } from '../html.ts'
import { ink, paper } from '../ink.ts'

/** A place in a drawing, x to the right, y down. */
export type Point = readonly [x: number, y: number]

/** Size of text in a drawing; drawings are about 300 to 400 wide. */
const textSize = 15

export const svg = (width: number, height: number, name: Attributes, ...content: readonly string[]): string =>
  element(
    'svg',
    {
      viewBox: `0 0 ${num(width)} ${num(height)}`,
      width: '100%',
      role: 'img',
      ...name,
      'font-family': 'inherit',
      'font-size': textSize,
      fill: 'none',
      'stroke-linecap': 'round',
      'stroke-linejoin': 'round',
    },
    ...content,
  )

const pair = ([x, y]: Point) => `${num(x)} ${num(y)}`

/** `M a L b L c`: straight from point to point. */
export const through = (points: readonly Point[]): string => `M${points.map(pair).join('L')}`
export const closed = (points: readonly Point[]): string => `${through(points)}Z`

export const path = (d: string, attributes: Attributes): string => shape('path', { d, ...attributes })

export const text = ([x, y]: Point, content: string, attributes: Attributes = {}): string =>
  element('text', { x, y, fill: ink, ...attributes }, escapeHtml(content))

/** Text with a rim of paper, legible over lines. */
export const plainText = (at: Point, content: string, attributes: Attributes = {}): string =>
  text(at, content, {
    stroke: paper,
    'stroke-width': 4,
    'paint-order': 'stroke',
    ...attributes,
  })

export const plus = ([x, y]: Point, dx: number, dy: number): Point => [x + dx, y + dy]
export const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
]

/** The unit vector from one point to another. */
export function direction(from: Point, to: Point): Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy) || 1
  return [dx / length, dy / length]
}

/** A line with an upright end at both points, as lengths are marked on a plan. */
export function dimension(a: Point, b: Point, attributes: Attributes, end = 6): string {
  const [ux, uy] = direction(a, b)
  const cap = (at: Point) => through([plus(at, -uy * end, ux * end), plus(at, uy * end, -ux * end)])
  return path(through([a, b]) + cap(a) + cap(b), attributes)
}

/** The arc of an angle at a corner, from one direction to another, degrees counted against the clock from the right. */
export function arc(corner: Point, radius: number, from: number, to: number, attributes: Attributes): string {
  const at = (degrees: number): Point =>
    plus(corner, radius * Math.cos(radians(degrees)), -radius * Math.sin(radians(degrees)))
  const sweep = to > from ? 0 : 1
  return path(`M${pair(at(from))}A${num(radius)} ${num(radius)} 0 0 ${sweep} ${pair(at(to))}`, attributes)
}

export const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** Curves: `M a C ...` from points in threes. */
export const curve = (start: Point, ...rest: readonly (readonly [Point, Point, Point])[]): string =>
  `M${pair(start)}${rest.map(([a, b, c]) => `C${pair(a)} ${pair(b)} ${pair(c)}`).join('')}`
