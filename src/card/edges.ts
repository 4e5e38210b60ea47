/** Corners of a black square on white to a fraction of a pixel, as crossings of straight lines along its edges. */
import type { Point, Quad } from '../hoof/plane.ts'
import { type Grey, shadeAt } from './grey.ts'

interface Line {
  readonly through: Point
  /** One pixel long. */
  readonly along: Point
}

/** Points along an edge at which it is looked for; the ends are left out, since corners are rounded by the lens. */
const places = Array.from({ length: 25 }, (_, i) => 0.08 + (0.84 * i) / 24)

/** Null where an edge is not to be seen, as of a square that is partly hidden. */
export function refinedCorners(picture: Grey, corners: Quad, reach: number): Quad | null {
  const lines = corners.map((from, i) => edgeLine(picture, from, corners[(i + 1) % 4] ?? from, reach))
  const refined = lines.map((line, i) => {
    const before = lines[(i + 3) % 4]
    return line && before ? crossing(before, line) : null
  })
  const [a, b, c, d] = refined
  return a && b && c && d ? [a, b, c, d] : null
}

/** The edge runs from corner to corner with black to its right hand (clockwise, y down). */
function edgeLine(picture: Grey, from: Point, to: Point, reach: number): Line | null {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const inward: Point = [-along[1], along[0]]
  const found: Point[] = []
  for (const place of places) {
    const [x, y] = [from[0] + place * (to[0] - from[0]), from[1] + place * (to[1] - from[1])]
    const off = edgeOffset((t) => shadeAt(picture, x + t * inward[0], y + t * inward[1]), reach)
    if (off !== null) found.push([x + off * inward[0], y + off * inward[1]])
  }
  if (found.length < 12) return null
  const first = straightThrough(found)
  const near = found.filter((point) => Math.abs(distance(point, first)) < 0.6)
  return near.length < 12 ? null : straightThrough(near)
}

/** Where the light falls off most, as the middle of the fall; null where it does not. */
function edgeOffset(shade: (t: number) => number, reach: number): number | null {
  const step = 0.5
  let [sum, weighted, steepest, at] = [0, 0, 0, 0]
  const falls: (readonly [number, number])[] = []
  for (let t = -reach; t < reach; t += step) {
    const fall = shade(t) - shade(t + step)
    falls.push([t + step / 2, fall])
    if (fall > steepest) [steepest, at] = [fall, t + step / 2]
  }
  if (steepest < 6) return null
  for (const [t, fall] of falls) {
    if (fall <= 0 || Math.abs(t - at) > 1.6) continue
    sum += fall
    weighted += fall * t
  }
  return weighted / sum
}

function straightThrough(points: readonly Point[]): Line {
  const mean = (i: 0 | 1) => points.reduce((sum, point) => sum + point[i], 0) / points.length
  const [mx, my] = [mean(0), mean(1)]
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of points) {
    xx += (x - mx) ** 2
    xy += (x - mx) * (y - my)
    yy += (y - my) ** 2
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy)
  return { through: [mx, my], along: [Math.cos(angle), Math.sin(angle)] }
}

const distance = ([x, y]: Point, { through, along }: Line): number =>
  (x - through[0]) * along[1] - (y - through[1]) * along[0]

function crossing(one: Line, other: Line): Point | null {
  const det = one.along[0] * other.along[1] - one.along[1] * other.along[0]
  if (Math.abs(det) < 0.1) return null
  const [dx, dy] = [other.through[0] - one.through[0], other.through[1] - one.through[1]]
  const t = (dx * other.along[1] - dy * other.along[0]) / det
  return [one.through[0] + t * one.along[0], one.through[1] + t * one.along[1]]
}
