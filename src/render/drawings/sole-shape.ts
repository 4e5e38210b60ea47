/**
 * The sole seen from below, toe up: a left foot, so that the inner side lies to the left. A right foot is its
 * mirror. Fore feet are round and wide, hind feet narrower and more pointed; the inner wall is a little steeper.
 * Our own drawing of the parts that the trade names, in units of about half a millimetre.
 */
import { closed, curve, type Point, through } from './svg.ts'

export interface SoleShape {
  /** Ground edge of the wall from the toe back to the heel, evenly in parts; inner side, outer side. */
  readonly wall: Sides<readonly Point[]>
  /** Inner edge of the wall's zone, point for point against `wall`. */
  readonly inside: Sides<readonly Point[]>
  /** A line round the foot, a little outside the wall. */
  readonly outside: Sides<readonly Point[]>
  readonly parts: Readonly<Record<SolePart, string>>
}

export interface Sides<T> {
  readonly medial: T
  readonly lateral: T
}

export type SolePart =
  | 'ground'
  | 'wallEdge'
  | 'whiteLine'
  | 'sole'
  | 'frog'
  | 'sulcus'
  | 'medialGroove'
  | 'lateralGroove'
  | 'medialBar'
  | 'lateralBar'
  | 'bulbs'

/** Measures of one half: half width, where it is widest, how blunt the toe, where the heel stands. */
interface Half {
  readonly width: number
  readonly blunt: number
  readonly widest: number
  readonly heel: Point
}

const halves = {
  fore: {
    medial: { width: 107, blunt: 60, widest: 104, heel: [70, 206] },
    lateral: { width: 113, blunt: 64, widest: 108, heel: [74, 206] },
  },
  hind: {
    medial: { width: 95, blunt: 40, widest: 116, heel: [62, 208] },
    lateral: { width: 101, blunt: 44, widest: 118, heel: [66, 208] },
  },
} as const satisfies Record<'fore' | 'hind', Sides<Half>>

const steps = 24

/** The point of a cubic curve at `t`. */
function cubic(a: Point, b: Point, c: Point, d: Point, t: number): Point {
  const u = 1 - t
  const mix = (i: 0 | 1) => u ** 3 * a[i] + 3 * u * u * t * b[i] + 3 * u * t * t * c[i] + t ** 3 * d[i]
  return [mix(0), mix(1)]
}

/** Half an outline drawn in by `depth`: round from the toe to the widest part, then back to the heel. */
function halfOutline({ width, blunt, widest, heel }: Half, side: 1 | -1, depth: number): readonly Point[] {
  const w = width - depth
  const toe: Point = [0, depth]
  const wide: Point = [w, widest]
  const back: Point = [heel[0] - depth * 0.75, heel[1] - depth * 0.35]
  const points = Array.from({ length: steps + 1 }, (_, i): Point => {
    const t = (i / steps) * 2
    return t <= 1
      ? cubic(toe, [blunt - depth * 0.4, depth], [w - 1, widest - 58], wide, t)
      : cubic(wide, [w + 1, widest + 42], [back[0] + 17, back[1] - 30], back, t - 1)
  })
  return points.map(([x, y]) => [x * side, y])
}

/** The edge of the wall with the buttresses, where it turns in at the heels and runs on as the bars. */
function wallEdge(around: readonly Point[], medial: Half, lateral: Half, base: number): string {
  const turn = (s: 1 | -1, { heel }: Half) =>
    curve(
      [s * heel[0], heel[1]],
      [
        [s * (heel[0] - 3), heel[1] + 6],
        [s * (base + 14), heel[1] + 5],
        [s * (base + 9), 198],
      ],
    )
  return through(around) + turn(-1, medial) + turn(1, lateral)
}

const reversed = (points: readonly Point[]) => [...points].reverse()

/** The sole of a fore or hind foot. */
export function soleShape(pair: 'fore' | 'hind'): SoleShape {
  const { medial, lateral } = halves[pair]
  const ring = (depth: number): Sides<readonly Point[]> => ({
    medial: halfOutline(medial, -1, depth),
    lateral: halfOutline(lateral, 1, depth),
  })
  const wall = ring(0)
  const inside = ring(19)
  const around = ({ medial, lateral }: Sides<readonly Point[]>) => [...reversed(medial), ...lateral.slice(1)]
  // The frog: its tip lies a little in front of the middle, its base between the heels.
  const tip: Point = [0, 88]
  const base = pair === 'fore' ? 41 : 37
  const frogSide = (s: 1 | -1): readonly [Point, Point, Point] => [
    [s * 11, 100],
    [s * (base - 14), 168],
    [s * base, 204],
  ]
  const frog = `${curve(
    tip,
    frogSide(1),
    [
      [base + 2, 212],
      [base - 4, 220],
      [16, 221],
    ],
    [
      [9, 221],
      [5, 214],
      [0, 212],
    ],
    [
      [-5, 214],
      [-9, 221],
      [-16, 221],
    ],
    [
      [-(base - 4), 220],
      [-(base + 2), 212],
      [-base, 204],
    ],
    [[-(base - 14), 168], [-11, 100], tip],
  )}Z`
  const groove = (s: 1 | -1) =>
    `${curve(
      [s * 4, 90],
      [
        [s * 16, 102],
        [s * (base - 8), 168],
        [s * (base + 2), 203],
      ],
      [
        [s * (base + 6), 206],
        [s * (base + 8), 204],
        [s * (base + 8), 199],
      ],
      [
        [s * (base - 1), 164],
        [s * 22, 106],
        [s * 4, 90],
      ],
    )}Z`
  const bar = (s: 1 | -1, { heel }: Half) =>
    `${curve(
      [s * (heel[0] - 2), heel[1] - 1],
      [
        [s * (heel[0] - 8), heel[1] + 2],
        [s * (base + 14), heel[1] + 1],
        [s * (base + 9), 197],
      ],
      [
        [s * (base + 2), 172],
        [s * 34, 146],
        [s * 27, 128],
      ],
      [
        [s * 38, 142],
        [s * (base + 9), 162],
        [s * (heel[0] - 15), heel[1] - 16],
      ],
    )}Z`
  const bulbs = `${curve(
    [-(medial.heel[0] + 3), 211],
    [
      [-(medial.heel[0] + 2), 236],
      [-46, 252],
      [-22, 249],
    ],
    [
      [-10, 247],
      [-3, 238],
      [0, 228],
    ],
    [
      [3, 238],
      [10, 247],
      [22, 249],
    ],
    [
      [46, 252],
      [lateral.heel[0] + 2, 236],
      [lateral.heel[0] + 3, 211],
    ],
  )}`
  return {
    wall,
    inside,
    outside: ring(-8),
    parts: {
      ground: closed(around(wall)),
      wallEdge: wallEdge(around(wall), medial, lateral, base),
      whiteLine: through(around(ring(13))) + through(around(ring(18))),
      sole: closed(around(ring(18))),
      frog,
      sulcus: `${curve(
        [0, 158],
        [
          [5, 172],
          [5, 200],
          [0, 214],
        ],
        [
          [-5, 200],
          [-5, 172],
          [0, 158],
        ],
      )}Z`,
      medialGroove: groove(-1),
      lateralGroove: groove(1),
      medialBar: bar(-1, medial),
      lateralBar: bar(1, lateral),
      bulbs,
    },
  }
}
