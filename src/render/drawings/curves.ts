/** Geometry that every view is built from: points and strokes of lines and cubic curves, millimetres, y up. */

export type Point = readonly [x: number, y: number]

/** To a point: straight, or as a cubic curve with two controls. */
export type Step = readonly [Point] | readonly [control1: Point, control2: Point, to: Point]

/** A line that is drawn without lifting the pen. */
export interface Stroke {
  readonly start: Point
  readonly steps: readonly Step[]
}

export const stroke = (start: Point, ...steps: readonly Step[]): Stroke => ({ start, steps })

export const add = (p: Point, dx: number, dy: number): Point => [p[0] + dx, p[1] + dy]
/** From `p` along a direction of length one. */
export const along = (p: Point, by: number, [x, y]: Point): Point => [p[0] + by * x, p[1] + by * y]
export const mix = (p: Point, q: Point, t: number): Point => [
  p[0] + t * (q[0] - p[0]),
  p[1] + t * (q[1] - p[1]),
]
export const distance = (p: Point, q: Point): number => Math.hypot(q[0] - p[0], q[1] - p[1])
export const unit = (p: Point, q: Point): Point => {
  const length = distance(p, q) || 1
  return [(q[0] - p[0]) / length, (q[1] - p[1]) / length]
}
export const clamp = (value: number, low: number, high: number): number =>
  Math.max(low, Math.min(high, value))

/** A direction by its angle to the ground, degrees. */
export const towards = (degrees: number): Point => [
  Math.cos((degrees * Math.PI) / 180),
  Math.sin((degrees * Math.PI) / 180),
]

const target = (step: Step): Point => (step.length === 1 ? step[0] : step[2])

export const endOf = ({ start, steps }: Stroke): Point => {
  const last = steps.at(-1)
  return last === undefined ? start : target(last)
}

export const mapped = ({ start, steps }: Stroke, to: (point: Point) => Point): Stroke => ({
  start: to(start),
  steps: steps.map((step) =>
    step.length === 1 ? ([to(step[0])] as const) : ([to(step[0]), to(step[1]), to(step[2])] as const),
  ),
})

export const mirrored = (of: Stroke): Stroke => mapped(of, ([x, y]) => [-x, y])

export function reversed({ start, steps }: Stroke): Stroke {
  const points = [start, ...steps.map(target)]
  const back = steps.map((step, i): Step => {
    const from = points[i] ?? start
    return step.length === 1 ? [from] : [step[1], step[0], from]
  })
  return { start: target(steps.at(-1) ?? [start]), steps: back.reverse() }
}

/** One stroke through all; where one does not begin at the end of the last, a straight line leads there. */
export function joined(first: Stroke, ...rest: readonly Stroke[]): Stroke {
  const steps = [...first.steps]
  let at = endOf(first)
  for (const next of rest) {
    if (distance(at, next.start) > 1e-6) steps.push([next.start])
    steps.push(...next.steps)
    at = endOf(next)
  }
  return { start: first.start, steps }
}

/** Between two strokes of the same steps, point by point. */
export const blended = (a: Stroke, b: Stroke, t: number): Stroke => ({
  start: mix(a.start, b.start, t),
  steps: a.steps.map((step, i): Step => {
    const other = b.steps[i] ?? step
    if (step.length === 1 || other.length === 1) return [mix(target(step), target(other), t)]
    return [mix(step[0], other[0], t), mix(step[1], other[1], t), mix(step[2], other[2], t)]
  }),
})

/** The part of one step between two shares of it, by de Casteljau's construction. */
function partOfStep(from: Point, step: Step, a: number, b: number): Stroke {
  if (step.length === 1) return stroke(mix(from, step[0], a), [mix(from, step[0], b)])
  const [p, q, r] = step
  const blossom = (t: number, u: number, v: number): Point => {
    const one = [mix(from, p, t), mix(p, q, t), mix(q, r, t)] as const
    const two = [mix(one[0], one[1], u), mix(one[1], one[2], u)] as const
    return mix(two[0], two[1], v)
  }
  return stroke(blossom(a, a, a), [blossom(a, a, b), blossom(a, b, b), blossom(b, b, b)])
}

/** The part between two shares, each step counting alike. */
export function part({ start, steps }: Stroke, from: number, to: number): Stroke {
  const [first, last] = [from * steps.length, to * steps.length]
  let at = start
  let cut: Stroke | null = null
  steps.forEach((step, i) => {
    const [a, b] = [clamp(first - i, 0, 1), clamp(last - i, 0, 1)]
    if (b > a) {
      const piece = partOfStep(at, step, a, b)
      cut = cut === null ? piece : joined(cut, piece)
    }
    at = target(step)
  })
  return cut ?? stroke(start)
}

/** The point at a share of the way, each step counting alike. */
export const pointAt = (of: Stroke, share: number): Point =>
  share >= 1 ? endOf(of) : part(of, share, share + 1e-6).start

/** Points along a stroke, `each` a step, with both ends. */
export function sampled(of: Stroke, each: number): readonly Point[] {
  const points: Point[] = [of.start]
  let at = of.start
  for (const step of of.steps) {
    const to = target(step)
    if (step.length === 1) points.push(to)
    else {
      for (let i = 1; i <= each; i++) {
        const t = i / each
        const u = 1 - t
        const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t]
        points.push([
          a * at[0] + b * step[0][0] + c * step[1][0] + d * to[0],
          a * at[1] + b * step[0][1] + c * step[1][1] + d * to[1],
        ])
      }
    }
    at = to
  }
  return points
}

/** Straight from point to point. */
export const through = ([first, ...rest]: readonly Point[]): Stroke =>
  stroke(first ?? [0, 0], ...rest.map((point) => [point] as const))

/** Where the stroke reaches an x, for strokes that run across; its nearer end beyond them. */
export function heightAt(points: readonly Point[], x: number): number {
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]]
    if (a === undefined || b === undefined) continue
    if ((a[0] - x) * (b[0] - x) <= 0 && a[0] !== b[0])
      return a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])
  }
  const [first, last] = [points[0] ?? [0, 0], points.at(-1) ?? [0, 0]]
  return Math.abs(first[0] - x) < Math.abs(last[0] - x) ? first[1] : last[1]
}

/** A smooth stroke through points (Catmull and Rom's). */
export function smooth(points: readonly Point[]): Stroke {
  const [first = [0, 0], ...rest] = points
  const steps = rest.map((to, i): Step => {
    const from = points[i] ?? first
    const before = points[i - 1] ?? from
    const after = points[i + 2] ?? to
    return [
      [from[0] + (to[0] - before[0]) / 6, from[1] + (to[1] - before[1]) / 6],
      [to[0] - (after[0] - from[0]) / 6, to[1] - (after[1] - from[1]) / 6],
      to,
    ]
  })
  return { start: first, steps }
}
