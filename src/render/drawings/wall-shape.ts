/**
 * The wall from the front, unrolled upright: a left foot, so that the outer side is on the right. Origin on the ground
 * below the toe. The toe is as long as it was read; horn grows down alike all round, so that a line that left the
 * hairline stays as far from it at the quarters as at the toe.
 */
import type { WallMeasures } from '../../hoof/stand-ins.ts'
import type { Flares } from './behind-shape.ts'
import {
  add,
  clamp,
  distance,
  endOf,
  joined,
  mix,
  type Point,
  part,
  pointAt,
  reversed,
  type Stroke,
  stroke,
} from './curves.ts'

export interface WallShape {
  readonly width: number
  readonly length: number
  /** From the inner side to the outer. */
  readonly hairline: Stroke
  readonly ground: Stroke
  readonly band: Stroke
  /** From the hairline down. */
  readonly sides: { readonly medial: Stroke; readonly lateral: Stroke }
  readonly limb: { readonly medial: Stroke; readonly lateral: Stroke; readonly top: Stroke }
  /** A line across the wall as far from the hairline everywhere, at a share of the toe's length. */
  readonly ringAt: (share: number) => Stroke
  /** Down the horn at a share of the way from the inner side to the outer, as its tubes run. */
  readonly downAt: (across: number, share: number) => Point
}

export function wallShape(of: WallMeasures, flares: Flares = { medial: 0, lateral: 0 }): WallShape {
  const { toeLength: L, width: read } = of
  // A wall much longer than wide, or wider than long, is no foot: the paper would not hold it.
  const W = clamp(read, 0.75 * L, 2.4 * L)
  const [x, drop] = [0.375 * W, Math.min(0.12 * W, 0.35 * L)]
  const rise = Math.min(0.042 * W, 0.3 * drop + 0.02 * W)
  const hairline = stroke(
    [-x, L - drop],
    [
      [-0.6 * x, L + rise],
      [0.6 * x, L + rise],
      [x, L - drop],
    ],
  )
  const [inner, outer] = [0.455 * W + flares.medial, 0.465 * W + flares.lateral]
  const foot = 0.04 * W
  const ground = stroke(
    [-inner, foot],
    [
      [-0.62 * inner, -0.014 * W],
      [0.62 * outer, -0.014 * W],
      [outer, foot],
    ],
  )
  const side = (from: Point, to: Point, flare: number, s: 1 | -1): Stroke =>
    stroke(from, [
      add(mix(from, to, 0.34), -s * 0.45 * flare + s * 0.006 * W, 0),
      add(mix(from, to, 0.68), -s * 0.4 * flare + s * 0.002 * W, 0),
      to,
    ])
  const sides = {
    medial: side(hairline.start, ground.start, flares.medial, -1),
    lateral: side(endOf(hairline), endOf(ground), flares.lateral, 1),
  }
  const short = distance(endOf(hairline), endOf(ground))
  const ringAt = (share: number): Stroke => {
    const down = clamp((share * L) / short, 0, 1)
    const [left, right] = [pointAt(sides.medial, down), pointAt(sides.lateral, down)]
    const [top] = hairline.steps
    const [low] = ground.steps
    if (top?.length !== 3 || low?.length !== 3) return hairline
    // A cubic's middle lies three quarters of the way from its ends to its controls.
    const middle = middleOf(hairline) - share * (middleOf(hairline) - middleOf(ground))
    const y = (middle - 0.125 * (left[1] + right[1])) / 0.75
    return stroke(left, [[mix(top[0], low[0], share)[0], y], [mix(top[1], low[1], share)[0], y], right])
  }
  const limbTop = L + 0.3 * W
  const limb = (s: 1 | -1, from: Point): Stroke =>
    stroke(
      add(from, s * 0.004 * W, 0.004 * W),
      [add(from, s * 0.016 * W, 0.035 * W), [s * 0.352 * W, L], [s * 0.33 * W, L + 0.07 * W]],
      [
        [s * 0.305 * W, L + 0.14 * W],
        [s * 0.287 * W, L + 0.21 * W],
        [s * 0.282 * W, limbTop],
      ],
    )
  const [left, right] = [limb(-1, hairline.start), limb(1, endOf(hairline))]
  return {
    width: W,
    length: L,
    hairline,
    ground,
    band: ringAt(0.085),
    sides,
    limb: {
      medial: left,
      lateral: right,
      top: stroke(endOf(left), [
        add(endOf(left), 0.17 * W, -0.035 * W),
        add(endOf(right), -0.17 * W, -0.035 * W),
        endOf(right),
      ]),
    },
    ringAt,
    downAt: (across, share) => mix(pointAt(hairline, across), pointAt(ground, across), share),
  }
}

const middleOf = (of: Stroke): number => pointAt(of, 0.5)[1]

export const wallOutline = ({ hairline, ground, sides }: WallShape): Stroke =>
  joined(hairline, sides.lateral, reversed(ground), reversed(sides.medial))

export const wallLimb = ({ limb, hairline }: WallShape): Stroke =>
  joined(limb.medial, limb.top, reversed(limb.lateral), reversed(hairline))

/** Where a place lies along the hairline, from the inner side to the outer. */
const stretches: Readonly<Record<string, readonly [number, number]>> = {
  toe: [0.4, 0.6],
  'medial toe': [0.24, 0.4],
  'lateral toe': [0.6, 0.76],
  'medial quarter': [0.06, 0.22],
  'lateral quarter': [0.78, 0.94],
  'medial heel': [0, 0.07],
  'lateral heel': [0.93, 1],
}

export const stretchOf = (place: string): readonly [number, number] => stretches[place] ?? [0, 1]

/** A split that begins at a depth and opens towards the ground, uneven as torn horn is. */
export function crackOf(shape: WallShape, across: number, from: number, to: number): Stroke {
  const aside = [0, 0.35, -0.25, 0.3, -0.35, 0.15, 0.4, -0.1]
  const half = 0.0125 * shape.width
  const edge = (side: 1 | -1): Point[] =>
    aside.map((offset, i) => {
      const t = i / (aside.length - 1)
      const at = shape.downAt(across, from + (to - from) * t)
      return add(at, half * (offset + side * (0.12 + 0.95 * t)), 0)
    })
  const [left, right] = [edge(-1), edge(1)]
  const [first = [0, 0] as const, ...rest] = [...left, ...right.reverse()]
  return stroke(first, ...rest.map((point) => [point] as const))
}

/** The square holes of nails, turned with the ring on which they lie. */
export function nailHoles(shape: WallShape, [from, to]: readonly [number, number], share: number): Stroke[] {
  const ring = shape.ringAt(share)
  const [w, h] = [0.0085 * shape.width, 0.014 * shape.width]
  const count = to - from > 0.5 ? 6 : 3
  return Array.from({ length: count }, (_, i) => {
    const t = from + ((to - from) * (i + 0.5)) / count
    const [a, b] = [pointAt(ring, Math.max(0, t - 0.01)), pointAt(ring, Math.min(1, t + 0.01))]
    const at = mix(a, b, 0.5)
    const length = distance(a, b) || 1
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
    const corner = (p: number, q: number): Point => [
      at[0] + p * w * ux - q * h * uy,
      at[1] + p * w * uy + q * h * ux,
    ]
    return stroke(corner(-1, -1), [corner(1, -0.9)], [corner(0.85, 1)], [corner(-1, 0.9)])
  })
}

/** The slit that an abscess leaves where it broke out at the hairline, grown down. */
export function slitOf(shape: WallShape, [from, to]: readonly [number, number], share: number): Stroke {
  const gap = 0.011 * shape.width
  const upper = part(shape.ringAt(share), from, to)
  const lower = reversed(upper)
  const bent = (of: Stroke, by: number): Stroke => ({
    start: of.start,
    steps: of.steps.map((step) =>
      step.length === 1 ? step : ([add(step[0], 0, by), add(step[1], 0, by), step[2]] as const),
    ),
  })
  return joined(bent(upper, gap), bent(lower, -1.5 * gap))
}
