/** Where on the drawn sole each place of the vocabulary lies: what is painted for it, and where its sign stands. */
import type { Place } from '../../hoof/findings.ts'
import type { Sides, SolePart, SoleShape } from './sole-shape.ts'
import { between, closed, direction, type Point, plus, through } from './svg.ts'

export interface Zone {
  /** A part that is drawn anyway and takes the paint, or a path of the zone's own. */
  readonly parts: readonly SolePart[]
  readonly area: string | null
  /** A line that is painted broadly. */
  readonly line: { readonly d: string; readonly width: number } | null
  readonly sign: Point
}

/** Stretches of wall, as shares of the way from the toe to the heel. */
const stretches = { toe: [0, 0.17], sideToe: [0.17, 0.37], quarter: [0.37, 0.72], heel: [0.72, 1] } as const

/** How far outside the wall a sign stands. */
const signDistance = 17

export function soleZones(shape: SoleShape): Readonly<Record<Place, Zone>> {
  const { wall, outside } = shape
  const part = (sign: Point, ...parts: readonly SolePart[]): Zone => ({ parts, area: null, line: null, sign })
  const stretch = (side: keyof Sides<unknown>, name: keyof typeof stretches): Zone => {
    const [from, to] = stretches[name]
    const middle = (from + to) / 2
    const area = closed([...slice(wall[side], from, to), ...slice(shape.inside[side], from, to).reverse()])
    return { parts: [], area, line: null, sign: outward(wall[side], middle) }
  }
  const toe = [0, stretches.toe[1]] as const
  const toeArea = closed([
    ...slice(wall.medial, ...toe).reverse(),
    ...slice(wall.lateral, ...toe).slice(1),
    ...slice(shape.inside.lateral, ...toe).reverse(),
    ...slice(shape.inside.medial, ...toe).slice(1),
  ])
  const around = (from: number, to: number) =>
    through([...slice(outside.medial, from, to).reverse(), ...slice(outside.lateral, from, to).slice(1)])
  return {
    toe: { parts: [], area: toeArea, line: null, sign: [0, -signDistance] },
    'medial toe': stretch('medial', 'sideToe'),
    'lateral toe': stretch('lateral', 'sideToe'),
    'medial quarter': stretch('medial', 'quarter'),
    'lateral quarter': stretch('lateral', 'quarter'),
    'medial heel': stretch('medial', 'heel'),
    'lateral heel': stretch('lateral', 'heel'),
    sole: part([0, 56], 'sole'),
    frog: part([0, 116], 'frog'),
    'central sulcus': part([0, 144], 'sulcus'),
    'medial groove': part([-31, 112], 'medialGroove'),
    'lateral groove': part([31, 112], 'lateralGroove'),
    'medial bar': part([-47, 138], 'medialBar'),
    'lateral bar': part([47, 138], 'lateralBar'),
    bars: part([47, 138], 'medialBar', 'lateralBar'),
    'white line': {
      ...part(at(shape.inside.lateral, 0.3)),
      line: { d: shape.parts.whiteLine, width: 6 },
    },
    coronet: { ...part([-96, 6]), line: { d: around(0.06, 0.45), width: 8 } },
    'heel bulbs': part([26, 234], 'bulbs'),
    pastern: part([0, 266]),
    'whole foot': { ...part([96, 6]), line: { d: around(0, 1), width: 8 } },
  }
}

const index = (points: readonly Point[], share: number) => Math.round(share * (points.length - 1))
const slice = (points: readonly Point[], from: number, to: number): Point[] =>
  points.slice(index(points, from), index(points, to) + 1)
const at = (points: readonly Point[], share: number): Point => points[index(points, share)] ?? [0, 0]

/** A point outside the wall, square to it. */
function outward(points: readonly Point[], share: number): Point {
  const [ux, uy] = direction(at(points, share - 0.05), at(points, share + 0.05))
  const here = at(points, share)
  const side = Math.sign(between([0, 0], here, 1)[0]) || 1
  return plus(here, uy * signDistance * side, -ux * signDistance * side)
}
