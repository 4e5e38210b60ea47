/**
 * A foot from behind, standing: a left foot, so that the outer side is on the left. Origin on the ground below the
 * middle of the foot. Width, heels, frog and groove are measured; all else follows from them.
 */
import { type BehindMeasures, drawnFrogWidth, heelWidthFor } from '../../hoof/stand-ins.ts'
import { clamp, mapped, type Point, type Stroke, stroke, through, towards } from './curves.ts'

export interface HeelHalf {
  /** Where the hairline stands at the heel: the point at which the level is read. */
  readonly heel: Point
  /** The wall of the quarter, from the ground up. */
  readonly wall: Stroke
  /** From the quarter down to the heel, and on over the bulb to the cleft. */
  readonly hairline: readonly [quarter: Stroke, bulb: Stroke]
  /** Where the wall turns from the quarter to the heel. */
  readonly turn: Stroke
  /** The bearing edge from the quarter to the inner edge of the heel. */
  readonly bearing: Stroke
  /** The inner side of the heel up into the groove, and down from it along the frog to the middle. */
  readonly groove: readonly [heel: Stroke, frog: Stroke]
  readonly grooveFloor: Stroke
  /** The lower edge of the bulb's horn, from the heel's hairline to the groove. */
  readonly bulbEdge: Stroke
  readonly bulbSide: Stroke
  /** From the hairline down between the bulbs to the sulcus, and up into the hollow of the pastern. */
  readonly cleft: Stroke
  readonly hollow: Stroke
  readonly limb: Stroke
}

export interface BehindShape {
  /** In the order of the viewer of a left foot. */
  readonly lateral: HeelHalf
  readonly medial: HeelHalf
  readonly width: number
  readonly height: number
  /** 0 shallow to 1 deep. */
  readonly deep: number
  readonly sulcus: Stroke
  /** Inner heel less the outer as drawn, millimetres. */
  readonly drawnDifference: number
}

/** Taller differences are drawn as this one, and written. */
const greatestDifference = 20

/** Flares in millimetres at the ground. */
export interface Flares {
  readonly medial: number
  readonly lateral: number
}

export function behindShape(of: BehindMeasures, flares: Flares = { medial: 0, lateral: 0 }): BehindShape {
  const { width: W } = of
  const rise = towards(of.heelAngle)[1]
  const mean = clamp((rise * (of.lateral + of.medial)) / 2, 0.09 * W, 0.6 * W)
  const difference = clamp(
    rise * (of.medial - of.lateral),
    -Math.min(greatestDifference, 1.4 * mean),
    Math.min(greatestDifference, 1.4 * mean),
  )
  const heelWidth = heelWidthFor(W, of.frogWidth)
  const frog = drawnFrogWidth(W, of.frogWidth)
  const deep = clamp((of.sulcus - 6) / 14, 0, 1)
  const half = (h: number, flare: number, spread: number) =>
    halfOf({ W, h: Math.max(0.045 * W, h), mean, heelWidth, frog, flare, spread, deep })
  const [low, high] = [0.2 * mean, (0.8 - 0.2 * deep) * mean - 0.03 * W + 0.14 * deep * W]
  const wide = (0.012 + 0.02 * deep) * W
  return {
    lateral: flip(half(mean - difference / 2, flares.lateral, 0.5075)),
    medial: half(mean + difference / 2, flares.medial, 0.4925),
    width: W,
    height: mean + 0.59 * W,
    deep,
    sulcus: stroke(
      [0, low],
      [
        [wide * 0.9, low + 0.2 * (high - low)],
        [wide, low + 0.55 * (high - low)],
        [0, high],
      ],
      [
        [-wide, low + 0.6 * (high - low)],
        [-wide * 0.8, low + 0.22 * (high - low)],
        [0, low],
      ],
    ),
    drawnDifference: difference,
  }
}

interface Half {
  readonly W: number
  readonly h: number
  readonly mean: number
  readonly heelWidth: number
  readonly frog: number
  readonly flare: number
  readonly spread: number
  readonly deep: number
}

/** The half on the viewer's right. */
function halfOf({ W, h, mean, heelWidth, frog, flare, spread, deep }: Half): HeelHalf {
  const at = (x: number, y: number): Point => [x * W, y]
  const o = heelWidth / W / 2
  const i = Math.min(frog / W / 2 + 0.055, o - 0.07)
  const f = Math.min(0.4 * (frog / W), i - 0.055)
  const g = 0.5 * f + 0.5 * i
  // A bulb is no deeper under tall heels: the groove grows with them.
  const k = Math.max(0.62, 1 - (0.13 * W) / h)
  const P = at(g, k * h)
  const fl = flare / W
  const notch = Math.min(0.16 * mean, 0.04 * W)
  const Qg = at(spread + fl, 0.028 * W)
  const Qc = at(spread - 0.068, h + 0.115 * W)
  const K = at(o, h)
  const cleftFoot = at(0, mean - Math.min(0.045 * W, 0.25 * h))
  const bulge = Math.min(0.07, 0.8 * (o - g))
  return {
    heel: K,
    wall: stroke(Qg, [at(spread - 0.018 + 0.35 * fl, 0.12 * W), at(spread - 0.052, h + 0.045 * W), Qc]),
    hairline: [
      stroke(Qc, [at(spread - 0.072, h + 0.075 * W), at(o + 0.055, h + 0.02 * W), K]),
      stroke(
        K,
        [
          at(o - 0.06, h + 0.016 * W),
          at(0.5 * o, 0.6 * h + 0.4 * mean + 0.026 * W),
          at(0.3 * o, mean + 0.012 * W),
        ],
        [at(0.16 * o, mean + 0.002 * W), at(0.03, mean - 0.012 * W), cleftFoot],
      ),
    ],
    turn: stroke(K, [at(o + 0.026, 0.72 * h), at(o + 0.03, 0.3 * h), at(o + 0.018, 0)]),
    bearing: stroke(
      Qg,
      [at(spread + fl - 0.05, 0.012 * W), at(o + 0.07, 0), at(o - 0.012, 0)],
      [at(i + 0.012, 0)],
      [at(i + 0.002, 0), at(i - 0.003, 0.006 * W), at(i - 0.005, 0.014 * W)],
    ),
    groove: [
      stroke(at(i - 0.005, 0.014 * W), [at(i - 0.022, 0.32 * h), at(g + 0.018, k * h), P]),
      stroke(
        P,
        [at(g - 0.02, k * h), at(f + 0.02, 0.62 * k * h), at(f + 0.008, 0.24 * h)],
        [at(f + 0.002, 0.06 * h), at(0.86 * f, 0.004 * W), at(0.6 * f, 0.004 * W)],
        [at(0.3 * f, 0.004 * W), at(0.13 * f, 0.3 * notch), [0, notch]],
      ),
    ],
    grooveFloor: stroke(at(f + 0.004, 0.12 * h), [
      at(f + 0.25 * (i - f), 0.03 * h),
      at(i - 0.3 * (i - f), 0.02 * h),
      at(i - 0.005, 0.014 * W),
    ]),
    bulbEdge: stroke(K, [at(o + 0.004, h - 0.8 * (1 - k) * h), at(g + bulge, (k - 0.03) * h - 0.02 * W), P]),
    bulbSide: stroke(at(o + 0.034, h + 0.06 * W), [
      at(o + 0.05, h + 0.12 * W),
      at(o + 0.034, h + 0.18 * W),
      at(o - 0.012, h + 0.235 * W),
    ]),
    cleft: stroke(cleftFoot, [at(0.002, mean - 0.08 * W), at(0.002, 1.02 * k * mean), [0, 0.87 * k * mean]]),
    hollow: stroke(
      cleftFoot,
      [at(0.002, mean + 0.02 * W), at(0.003, mean + 0.03 * W), at(0.009, mean + (0.06 + 0.05 * deep) * W)],
      [at(0.022, mean + 0.13 * W), at(0.06, mean + 0.2 * W), at(0.1, mean + 0.245 * W)],
    ),
    limb: stroke(
      Qc,
      [
        at(spread - 0.058, h + 0.16 * W),
        at(0.405, h + 0.225 * W),
        at(0.365, 0.4 * h + 0.6 * mean + 0.31 * W),
      ],
      [at(0.32, mean + 0.41 * W), at(0.292, mean + 0.48 * W), at(0.29, mean + 0.57 * W)],
    ),
  }
}

function flip(of: HeelHalf): HeelHalf {
  const m = (one: Stroke) => mapped(one, ([x, y]) => [-x, y])
  return {
    heel: [-of.heel[0], of.heel[1]],
    wall: m(of.wall),
    hairline: [m(of.hairline[0]), m(of.hairline[1])],
    turn: m(of.turn),
    bearing: m(of.bearing),
    groove: [m(of.groove[0]), m(of.groove[1])],
    grooveFloor: m(of.grooveFloor),
    bulbEdge: m(of.bulbEdge),
    bulbSide: m(of.bulbSide),
    cleft: m(of.cleft),
    hollow: m(of.hollow),
    limb: m(of.limb),
  }
}

/** The line of the level beyond both heels, and the horizontal at the lower one. */
export function levelLines({ lateral, medial, width }: BehindShape): {
  readonly through: readonly [Stroke, Stroke]
  readonly level: Stroke
} {
  const [a, b] = [lateral.heel, medial.heel]
  const slope = (b[1] - a[1]) / (b[0] - a[0])
  const on = (x: number): Point => [x, a[1] + slope * (x - a[0])]
  const reach = 0.66 * width
  const gap = 0.032 * width
  const low = Math.min(a[1], b[1])
  return {
    through: [through([on(-reach), on(a[0] - gap)]), through([on(b[0] + gap), on(reach)])],
    level: through([
      [-reach, low],
      [reach, low],
    ]),
  }
}
