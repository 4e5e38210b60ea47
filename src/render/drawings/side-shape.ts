/**
 * A foot from the side, toe to the left, seen from its outer side: a left foot. Origin where the line of the toe meets
 * the ground, x toward the heel. The capsule is measured; bulb and pastern are anatomy, sized by the coronet.
 */
import type { SideMeasures } from '../../hoof/stand-ins.ts'
import {
  add,
  along,
  blended,
  clamp,
  distance,
  endOf,
  joined,
  mapped,
  mix,
  type Point,
  part,
  pointAt,
  reversed,
  type Step,
  type Stroke,
  stroke,
  through,
  towards,
  unit,
} from './curves.ts'

export interface SideShape {
  /** Ends of the walls. */
  readonly toeGround: Point
  readonly toeHairline: Point
  /** Where new growth ends; the hairline where there is none. */
  readonly bend: Point
  readonly heelGround: Point
  readonly heelHairline: Point
  readonly hairline: Stroke
  /** The lower edge of the coronary band. */
  readonly band: Stroke
  /** From the ground behind the toe over the toe to the front of the hairline. */
  readonly toe: Stroke
  /** Bearing edge from the rolled toe back to the heel, and up the heel to the hairline. */
  readonly bearing: Stroke
  readonly heel: Stroke
  /** Where the other heel's bulb stands, when its wall is longer or shorter. */
  readonly otherBulb: Stroke | null
  readonly limb: {
    readonly front: Stroke
    readonly bulb: Stroke
    readonly back: Stroke
    /** The edge of the paper's foot, where the limb is cut away. */
    readonly top: Stroke
    /** The roll of a bulb, and a tendon's edge. */
    readonly folds: readonly Stroke[]
  }
  /** False where the readings cannot close: the drawing then bends the heel to fit. */
  readonly closes: boolean
  /** A line across the wall at a share of the way from hairline to ground, as horn grows. */
  readonly ringAt: (share: number) => Stroke
  /** Across the wall at a share of each wall's length from the ground, where a trim would cut. */
  readonly cutAt: (toe: number, heel: number) => Stroke
}

/** How much of the ground the toe rolls over, millimetres, and how far its middle is dished. */
export interface ToeForm {
  readonly rolled: number
  readonly dish: number
}

export function sideShape(of: SideMeasures, { rolled, dish }: ToeForm = { rolled: 0, dish: 0 }): SideShape {
  const { toeLength: length } = of
  const lower = towards(of.toeAngle)
  // New growth may be steeper: the wall then bends where it ends.
  const strip = of.strip === null ? 0 : clamp(of.strip.length, 0, 0.8 * length)
  const u = of.strip === null ? lower : towards(of.strip.angle)
  const inward: Point = [u[1], -u[0]]
  const bend = along([0, 0], length - strip, lower)
  const toeHairline = along(bend, strip, u)
  const { heelGround, heelHairline, v, closes } = heelOf(of, toeHairline)
  const q = distance(toeHairline, heelHairline)
  const e = unit(toeHairline, heelHairline)
  const m: Point = [-e[1], e[0]]
  const on = (share: number, lift: number): Point => along(along(toeHairline, share * q, e), lift * q, m)
  const hairline = stroke(toeHairline, [on(0.3, 0.048), on(0.7, 0.078), heelHairline])
  const ground = stroke([0, 0], [mix([0, 0], heelGround, 0.3), mix([0, 0], heelGround, 0.7), heelGround])
  const frontAt = (share: number): Point =>
    strip === 0
      ? mix(toeHairline, [0, 0], share)
      : share * length < strip
        ? mix(toeHairline, bend, (share * length) / strip)
        : mix(bend, [0, 0], (share * length - strip) / (length - strip))
  const ringAt = (share: number): Stroke => {
    const ring = { ...blended(hairline, ground, share), start: frontAt(share) }
    // Old horn keeps a bow: only the bearing edge itself is straight.
    const bow = 0.055 * q * share * (1 - share) * 4
    const [step] = ring.steps
    if (step === undefined || step.length === 1) return ring
    return stroke(ring.start, [along(step[0], bow * 0.7, m), along(step[1], bow, m), step[2]])
  }
  const band = ringAt(0.085)
  const r = clamp(0.55 * rolled, 1.5, 0.3 * length)
  const o = clamp(rolled, 1.5, 0.3 * heelGround[0])
  const start = along([0, 0], r, lower)
  const bandFront = band.start
  const lip = along(toeHairline, -0.01 * length, inward)
  const rise = distance(start, bandFront)
  const wall: readonly Step[] =
    strip > 0.085 * length
      ? [[bend], [bandFront]]
      : [
          [
            along(mix(start, bandFront, 0.36), dish, inward),
            along(mix(start, bandFront, 0.36 + (0.31 * length) / rise), 0.5 * dish, inward),
            bandFront,
          ],
        ]
  const toe = stroke([o, 0], [[0.35 * o, 0], along([0, 0], 0.35 * r, lower), start], ...wall, [
    along(along(bandFront, 0.022 * length, u), -0.012 * length, inward),
    along(along(toeHairline, -0.026 * length, u), -0.019 * length, inward),
    lip,
  ])
  const turned = along(heelGround, 2, v)
  const heel = stroke(add(heelGround, -2, 0), [heelGround, heelGround, turned], [heelHairline])
  const other = of.otherHeel - of.heel
  return {
    toeGround: [0, 0],
    bend,
    toeHairline,
    heelGround,
    heelHairline,
    hairline,
    band,
    toe,
    bearing: through([[o, 0], add(heelGround, -2, 0)]),
    heel,
    otherBulb: other === 0 ? null : otherBulb(along(heelHairline, clamp(other, -20, 20), v), q),
    limb: limbOf({ q, length, lip, toeHairline, heelHairline, pastern: of.pasternAngle, heel: of.heelAngle }),
    closes,
    ringAt,
    cutAt: (toeShare, heelShare) =>
      through([along([0, 0], toeShare * length, lower), mix(heelGround, heelHairline, heelShare)]),
  }
}

/**
 * The heel as read, or moved to where a foot could have it: behind the toe's hairline by a third of the toe's length,
 * and lower than it.
 */
function heelOf(of: SideMeasures, toeHairline: Point) {
  const v = towards(of.heelAngle)
  const heel = Math.min(of.heel, (0.82 * toeHairline[1]) / v[1])
  const least = toeHairline[0] + 0.55 * of.toeLength - heel * v[0]
  const heelGround: Point = [Math.max(of.bearing, least, 0.5 * of.toeLength), 0]
  return {
    v,
    heelGround,
    heelHairline: along(heelGround, heel, v),
    closes: heel === of.heel && heelGround[0] === of.bearing,
  }
}

interface Coronet {
  readonly q: number
  readonly length: number
  readonly lip: Point
  readonly toeHairline: Point
  readonly heelHairline: Point
  readonly pastern: number
  readonly heel: number
}

/** Bulb, pastern and fetlock, left open above. */
function limbOf({ q, lip, toeHairline, heelHairline, pastern, heel }: Coronet): SideShape['limb'] {
  const p = 0.74 * q
  // A pastern that lies flatter or stands steeper than these would leave the paper.
  const u = towards(clamp(pastern, 40, 68))
  const inward: Point = [u[1], -u[0]]
  const C = toeHairline
  const K = heelHairline
  // Low heels leave the bulb hanging behind and below them.
  const low = clamp((45 - heel) / 30, 0, 1)
  const R: Point = add(K, (0.06 + 0.05 * low) * q, (0.17 + 0.03 * low) * q)
  const reach = (R[0] - C[0]) * u[0] + (R[1] - C[1]) * u[1]
  const H = along(along(C, clamp(reach + 0.22 * p, 0.62 * p, 1.02 * p), u), 0.66 * q, inward)
  const F = along(along(C, 1.18 * p, u), 0.31 * q, inward)
  const E = add(F, 0.345 * q, -0.01 * q)
  const D = add(F, -0.33 * q, 0.07 * q)
  const top = F[1] + 0.3 * q
  const bulb = stroke(
    K,
    [add(K, (0.045 + 0.04 * low) * q, (0.004 - 0.03 * low) * q), add(R, 0.016 * q, -0.1 * q), R],
    [add(R, -0.012 * q, 0.085 * q), along(add(H, 0.004 * q, 0), -0.24 * p, u), H],
  )
  const back = stroke(
    H,
    [along(H, 0.13 * p, u), add(E, -0.015 * q, -0.12 * q), E],
    [add(E, 0.018 * q, 0.12 * q), [F[0] + 0.285 * q, top - 0.12 * q], [F[0] + 0.262 * q, top]],
  )
  const front = stroke(
    lip,
    [along(along(lip, 0.26 * p, u), 0.012 * q, inward), along(along(D, -0.46 * p, u), 0.05 * q, inward), D],
    [along(D, 0.17 * p, u), [F[0] - 0.245 * q, top - 0.12 * q], [F[0] - 0.235 * q, top + 0.03 * q]],
  )
  const [left, right] = [endOf(front), endOf(back)]
  return {
    front,
    bulb,
    back,
    top: stroke(left, [add(left, 0.12 * q, -0.055 * q), add(right, -0.16 * q, -0.055 * q), right]),
    folds: [
      // The bulb's own roundness, in front of its outer edge.
      stroke(add(R, -0.1 * q, -0.09 * q), [
        add(R, -0.13 * q, -0.035 * q),
        add(R, -0.125 * q, 0.02 * q),
        add(R, -0.1 * q, 0.065 * q),
      ]),
      // The edge of the tendons behind the pastern.
      stroke(along(along(H, 0.1 * p, u), -0.13 * q, inward), [
        along(along(H, 0.3 * p, u), -0.12 * q, inward),
        along(along(E, -0.1 * p, u), -0.17 * q, inward),
        along(along(E, 0.12 * p, u), -0.15 * q, inward),
      ]),
    ],
  }
}

function otherBulb(K: Point, q: number): Stroke {
  const R = add(K, 0.06 * q, 0.17 * q)
  return stroke(K, [add(K, 0.045 * q, 0.004 * q), add(R, 0.016 * q, -0.1 * q), R])
}

/** The capsule all round: toe, hairline, heel, bearing edge. */
export const capsuleOutline = (of: SideShape): Stroke =>
  joined(of.toe, of.hairline, reversed(of.heel), reversed(of.bearing))

/** All of the limb above the hairline. */
export const limbOutline = ({ limb, hairline }: SideShape): Stroke =>
  joined(limb.front, limb.top, reversed(limb.back), reversed(limb.bulb), reversed(hairline))

/** Where two feet are laid over each other: the toe's hairlines together, on one ground. */
export const laidAt = (of: SideShape, on: SideShape): ((stroke: Stroke) => Stroke) => {
  const dx = on.toeHairline[0] - of.toeHairline[0]
  return (one) => mapped(one, (point) => add(point, dx, 0))
}

/** Short hairs over the coronet, pointing down the limb. */
export function coronetHairs({ hairline, toeHairline, heelHairline }: SideShape, count: number): Stroke[] {
  const q = distance(toeHairline, heelHairline)
  return Array.from({ length: count }, (_, i) => {
    const at = pointAt(hairline, (i + 0.6) / count)
    const length = (0.03 + 0.012 * ((i * 7) % 4)) * q
    return through([add(at, 0.004 * q, 0.018 * q), add(at, 0.55 * length, 0.018 * q + length)])
  })
}

/** Growth lines of the wall: uneven and broken, each over a stretch of a ring. */
export const growthLines = ({ ringAt }: SideShape): Stroke[] =>
  (
    [
      [0.2, 0.06, 0.62],
      [0.3, 0.38, 0.93],
      [0.44, 0.04, 0.5],
      [0.53, 0.3, 0.78],
      [0.66, 0.1, 0.4],
      [0.72, 0.52, 0.95],
    ] as const
  ).map(([depth, from, to]) => part(ringAt(depth), from, to))
