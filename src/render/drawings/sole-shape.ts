/**
 * The sole, toe up: a left foot seen from below, so that the outer side is on the right. Origin midway between the heels
 * on the line of their buttresses. Width, bearing length, frog, sulcus, wall and white line are measured.
 */
import type { Pair } from '../../hoof/feet.ts'
import { drawnFrogWidth, frogTipAt, heelWidthFor, type SoleMeasures } from '../../hoof/stand-ins.ts'
import type { Flares } from './behind-shape.ts'
import { add, clamp, joined, mirrored, type Point, part, reversed, type Stroke, stroke } from './curves.ts'

export interface SoleHalf {
  /** Ground edge of the wall, from the middle of the toe over the widest part to the heel. */
  readonly outer: Stroke
  /** The heel's end: from the wall round the buttress to the corner where the bar begins. */
  readonly buttress: Stroke
  /** From that corner along the inner side of the bar, into the groove, to the bar's end. */
  readonly barInner: Stroke
  /** Back along its outer side to the angle between bar and wall. */
  readonly barOuter: Stroke
  /** Inner edge of the wall from that angle to the middle of the toe, and of the white line inside it. */
  readonly inner: Stroke
  readonly whiteLine: Stroke
  /** From the frog's tip back to its corner at the heel. */
  readonly frog: Stroke
  /** From the bar's end round the frog's tip to the middle. */
  readonly grooveTip: Stroke
  /** The heel bulb from the buttress round to the middle. */
  readonly bulb: Stroke
  readonly bulbFold: Stroke
  /** The edge of the sole's hollow, from the heel to the middle of the toe. */
  readonly hollow: Stroke
  /** Contour lines of that hollow. */
  readonly contours: readonly Stroke[]
  readonly frogFold: Stroke
}

export interface SoleShape {
  readonly medial: SoleHalf
  readonly lateral: SoleHalf
  readonly width: number
  readonly bearing: number
  readonly frogTip: Point
  readonly frogWidth: number
  readonly frogLength: number
  readonly sulcus: Stroke
  readonly deep: number
  /** Thickness of wall and white line at the toe, as drawn. */
  readonly wall: number
  readonly whiteLine: number
  readonly bulbsEnd: number
  /** Where the toe is rolled, across the foot; null where it cannot be told. */
  readonly rollover: Stroke | null
}

/** Where the foot is widest, how blunt its toe, how full its shoulder. */
const forms = {
  fore: { widest: 0.43, blunt: 0.56, full: 0.315 },
  hind: { widest: 0.38, blunt: 0.4, full: 0.335 },
} as const satisfies Record<Pair, object>

export function soleShape(
  of: SoleMeasures,
  pair: Pair,
  flares: Flares = { medial: 0, lateral: 0 },
  isBarFolded = false,
): SoleShape {
  const { width: W, bearing: B } = of
  const frogLength = clamp(of.frogLength, 0.35 * B, 0.86 * B)
  const heelWidth = heelWidthFor(W, of.frogWidth)
  const frogWidth = Math.max(0.1 * W, drawnFrogWidth(W, of.frogWidth))
  const common = {
    W,
    B,
    H: heelWidth / 2,
    FL: frogLength,
    FW: frogWidth,
    wall: clamp(of.wall, 0.035 * B, 0.15 * B),
    white: clamp(of.whiteLine, 0.012 * W, 0.09 * W),
    folded: isBarFolded ? 0.05 * W : 0,
    ...forms[pair],
  }
  const tip: Point = [0, frogTipAt(B, frogLength)]
  const deep = clamp((of.sulcus - 6) / 14, 0, 1)
  const rolled = of.rolled > 0 ? B - of.rolled : null
  return {
    medial: flip(halfOf({ ...common, w: 0.494 * W, flare: flares.medial })),
    lateral: halfOf({ ...common, w: 0.506 * W, flare: flares.lateral }),
    width: W,
    bearing: B,
    frogTip: tip,
    frogWidth,
    frogLength,
    sulcus: sulcusOf(tip[1], frogLength, frogWidth, B, deep),
    deep,
    wall: common.wall,
    whiteLine: common.white,
    bulbsEnd: -0.135 * B,
    rollover: rolled === null ? null : stroke([-0.2 * W, rolled], [[0.2 * W, rolled]]),
  }
}

interface Half {
  readonly W: number
  readonly B: number
  readonly H: number
  readonly FL: number
  readonly FW: number
  readonly wall: number
  readonly white: number
  readonly folded: number
  readonly widest: number
  readonly blunt: number
  readonly full: number
  readonly w: number
  readonly flare: number
}

function halfOf(half: Half): SoleHalf {
  const { W, B, H, FL, FW, wall, white, folded: d, widest: v, blunt: k, full: c, w, flare } = half
  const z = w + flare
  const lift = flare > 0 ? 0.02 : 0
  const A = frogTipAt(B, FL)
  const I: Point = [Math.min(Math.max(FW / 2 + 0.045 * W, H - 0.12 * W), H - 0.07 * W), 0.05 * B]
  const t = (H + I[0]) / 2
  const Y = 0.54 * FL - 0.035 * B
  const X = 0.055 * W + ((FW / 2) * (A - Y)) / (0.93 * FL)
  const E: Point = [X, Y]
  const side = (0.066 / 0.085) * wall
  const inner = (depth: number): Stroke => {
    const n = w - side - depth
    const top = B - wall - depth
    // As full as the outer edge, over what height is left to it.
    const shoulder = (1.09 * c * B * (top - v * B)) / (B - v * B)
    return stroke(
      [H + 0.02 * W - 0.3 * depth, 0.105 * B + 0.7 * depth],
      [
        [H + 0.62 * (n - H), 0.19 * B + 0.5 * depth],
        [n, (v - 0.17) * B],
        [n, v * B],
      ],
      [
        [n, v * B + shoulder],
        [k * n, top],
        [0, top],
      ],
    )
  }
  const wallInner = inner(0)
  const tipTop = A + 0.03 * B
  return {
    outer: stroke(
      [0, B],
      [
        [k * w + flare / 5, B],
        [z, (v + c + lift) * B],
        [z, v * B],
      ],
      [
        [z, (v - 0.2) * B],
        [H + 0.5 * (w - H), 0.09 * B],
        [H, 0.022 * B],
      ],
    ),
    buttress: stroke(
      [H, 0.022 * B],
      [
        [H - 0.01 * W, 0.003 * B],
        [t + 0.012 * W, -0.008 * B],
        [t, -0.004 * B],
      ],
      [[t - 0.02 * W, 0], [I[0] + 0.003 * W, 0.022 * B], I],
    ),
    barInner: stroke(I, [[I[0] - 0.012 * W, 0.15 * B], [X + 0.028 * W, Y - 0.16 * B], E]),
    barOuter: stroke(
      E,
      [
        [X + 0.04 * W + d, Y - 0.11 * B],
        [I[0] + 0.018 * W + 1.1 * d, 0.2 * B],
        [I[0] + 0.05 * W, 0.12 * B],
      ],
      [[I[0] + 0.058 * W, 0.095 * B], [H - 0.004 * W, 0.085 * B], wallInner.start],
    ),
    inner: wallInner,
    whiteLine: inner(white),
    frog: stroke(
      [0, A],
      [
        [0.085 * FW, A],
        [0.155 * FW, A - 0.16 * FL],
        [0.275 * FW, A - 0.46 * FL],
      ],
      [
        [0.355 * FW, A - 0.68 * FL],
        [0.475 * FW, A - 0.78 * FL],
        [0.5 * FW, A - 0.9 * FL],
      ],
      [
        [0.5 * FW + 0.012 * W, A - 0.965 * FL],
        [t - 0.02 * W, -0.022 * B],
        [t + 0.01 * W, -0.024 * B],
      ],
    ),
    grooveTip: stroke(E, [
      [X * 0.72, Y + 0.42 * (A - Y)],
      [0.02 * W + 0.12 * FW, A + 0.024 * B],
      [0, tipTop],
    ]),
    bulb: stroke(
      [H + 0.012 * W, 0.03 * B],
      [
        [H + 0.03 * W, -0.005 * B],
        [H + 0.022 * W, -0.06 * B],
        [0.82 * H, -0.1 * B],
      ],
      [
        [0.64 * H, -0.138 * B],
        [0.34 * H, -0.142 * B],
        [0.05 * W, -0.112 * B],
      ],
      [
        [0.02 * W, -0.104 * B],
        [0.006 * W, -0.095 * B],
        [0, -0.083 * B],
      ],
    ),
    bulbFold: stroke(
      [t - 0.02 * W, -0.04 * B],
      [
        [t - 0.09 * W, -0.075 * B],
        [0.3 * H, -0.088 * B],
        [0.045 * W, -0.066 * B],
      ],
    ),
    hollow: hollowFrom(E, mapContour(wallInner, 0.76, A, B), W),
    contours: [
      part(mapContour(wallInner, 0.88, A, B), 0.5, 0.93),
      part(mapContour(wallInner, 0.76, A, B), 0.56, 0.86),
    ],
    frogFold: stroke(
      [0.1 * FW, A - 0.28 * FL],
      [
        [0.16 * FW, A - 0.45 * FL],
        [0.21 * FW, A - 0.62 * FL],
        [0.27 * FW, A - 0.76 * FL],
      ],
    ),
  }
}

/** The edge of the sole drawn in towards the frog's tip. */
const mapContour = (edge: Stroke, share: number, A: number, B: number): Stroke => {
  const middle: Point = [0, A - 0.02 * B]
  const to = ([x, y]: Point): Point => [
    middle[0] + share * (x - middle[0]),
    middle[1] + share * (y - middle[1]),
  ]
  return {
    start: to(edge.start),
    steps: edge.steps.map((step) =>
      step.length === 1 ? ([to(step[0])] as const) : ([to(step[0]), to(step[1]), to(step[2])] as const),
    ),
  }
}

/** The contour, begun at the bar's end. */
const hollowFrom = (E: Point, { steps }: Stroke, W: number): Stroke => {
  const [first, ...rest] = steps
  if (first === undefined || first.length === 1) return stroke(E)
  return stroke(E, [add(E, 0.1 * W, -0.1 * W), add(first[1], 0, -0.06 * W), first[2]], ...rest)
}

/** Of uneven edges, wider behind; a deep one runs on between the bulbs. */
function sulcusOf(A: number, FL: number, FW: number, B: number, deep: number): Stroke {
  const [top, end] = [A - 0.58 * FL, -0.02 * B - 0.062 * B * deep]
  const wide = (0.085 - 0.03 * deep) * FW
  const y = (share: number) => top + share * (end - top)
  return stroke(
    [0, top],
    [
      [0.3 * wide, y(0.2)],
      [1.15 * wide, y(0.34)],
      [1.02 * wide, y(0.58)],
    ],
    [
      [0.95 * wide, y(0.76)],
      [0.35 * wide, y(0.86)],
      [0.02 * wide, end],
    ],
    [
      [-0.45 * wide, y(0.88)],
      [-1.1 * wide, y(0.8)],
      [-0.98 * wide, y(0.55)],
    ],
    [
      [-0.9 * wide, y(0.36)],
      [-0.42 * wide, y(0.24)],
      [0, top],
    ],
  )
}

function flip(of: SoleHalf): SoleHalf {
  return {
    outer: mirrored(of.outer),
    buttress: mirrored(of.buttress),
    barInner: mirrored(of.barInner),
    barOuter: mirrored(of.barOuter),
    inner: mirrored(of.inner),
    whiteLine: mirrored(of.whiteLine),
    frog: mirrored(of.frog),
    grooveTip: mirrored(of.grooveTip),
    bulb: mirrored(of.bulb),
    bulbFold: mirrored(of.bulbFold),
    hollow: mirrored(of.hollow),
    contours: of.contours.map(mirrored),
    frogFold: mirrored(of.frogFold),
  }
}

/** Two halves, each from the middle of the toe backwards, as one stroke from the inner to the outer. */
export const around = ({ medial, lateral }: SoleShape, of: (half: SoleHalf) => Stroke): Stroke =>
  joined(reversed(of(medial)), of(lateral))

/** The ground surface: wall, buttresses, bars. */
export const groundOutline = (shape: SoleShape): Stroke =>
  around(shape, ({ outer, buttress }) => joined(outer, buttress))

export const soleEdge = (shape: SoleShape): Stroke => around(shape, ({ inner }) => reversed(inner))

/** Wall and bars as one shape, open towards the heels as a horseshoe is. */
export const wallArea = (shape: SoleShape): Stroke => {
  const { medial, lateral } = shape
  const { barInner, barOuter, inner } = medial
  return joined(
    groundOutline(shape),
    lateral.barInner,
    lateral.barOuter,
    lateral.inner,
    reversed(inner),
    reversed(barOuter),
    reversed(barInner),
  )
}

/** The white line between the edge of the wall and its own inner edge. */
export const whiteLineArea = (shape: SoleShape): Stroke =>
  joined(soleEdge(shape), reversed(around(shape, ({ whiteLine }) => reversed(whiteLine))))

export const frogOutline = (shape: SoleShape): Stroke => {
  const dip: Point = add([0, 0], 0, -0.052 * shape.bearing)
  const edge = around(shape, ({ frog }) => frog)
  const [right, left] = [frogCorner(shape.lateral), frogCorner(shape.medial)]
  return joined(
    edge,
    stroke(right, [
      [0.6 * right[0], right[1] - 0.045 * shape.bearing],
      [0.25 * right[0], right[1] - 0.05 * shape.bearing],
      dip,
    ]),
    stroke(dip, [
      [0.25 * left[0], left[1] - 0.05 * shape.bearing],
      [0.6 * left[0], left[1] - 0.045 * shape.bearing],
      left,
    ]),
  )
}

const frogCorner = ({ frog }: SoleHalf): Point => {
  const last = frog.steps.at(-1)
  return last?.[2] ?? frog.start
}

/** Both grooves, joined round the frog's tip; the frog lies over their middle. */
export const groovesArea = (shape: SoleShape): Stroke =>
  around(shape, (half) =>
    joined(reversed(half.grooveTip), reversed(half.barInner), { start: frogCorner(half), steps: [] }),
  )
