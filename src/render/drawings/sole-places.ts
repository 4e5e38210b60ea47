/**
 * Where on the sole each place of the vocabulary lies. A place is one patch or two, with coordinates of its own: `s`
 * along it and `d` across it, each from 0 to 1. What is found is drawn in these, so that it follows the foot.
 */
import type { Place } from '../../hoof/findings.ts'
import {
  along,
  clamp,
  distance,
  heightAt,
  mix,
  type Point,
  pointAt,
  type Stroke,
  sampled,
  unit,
} from './curves.ts'
import type { SoleHalf, SoleShape } from './sole-shape.ts'

export type Grade = 0 | 1 | 2 | 3

export interface Patch {
  readonly at: (s: number, d: number) => Point
  /** Millimetres along and across. */
  readonly length: number
  readonly depth: number
}

/** Stretches of wall: shares of the way from toe to heel, below 0 on the inner side. */
const stretches = { toe: [0.13, 0.34], quarter: [0.36, 0.68], heel: [0.7, 0.97] } as const

/** The patches of a shape, each worked out when it is first asked for. */
export function solePatches(shape: SoleShape): (place: string) => readonly Patch[] {
  const known = new Map<string, readonly Patch[]>()
  const wall = wallPatch(shape)
  const make = makers(shape, wall)
  return (place) => {
    const name = place in make ? (place as Place) : 'whole foot'
    const patches = known.get(name) ?? make[name]()
    known.set(name, patches)
    return patches
  }
}

type WallPatch = (from: number, to: number, outside?: number) => Patch

function makers(shape: SoleShape, wall: WallPatch): Readonly<Record<Place, () => readonly Patch[]>> {
  const stretch = (name: keyof typeof stretches, side: 1 | -1) => () => {
    const [from, to] = stretches[name]
    return [wall(side * from, side * to)]
  }
  return {
    toe: () => [wall(-0.15, 0.15)],
    'medial toe': stretch('toe', -1),
    'lateral toe': stretch('toe', 1),
    'medial quarter': stretch('quarter', -1),
    'lateral quarter': stretch('quarter', 1),
    'medial heel': stretch('heel', -1),
    'lateral heel': stretch('heel', 1),
    sole: () => [solePatch(shape)],
    frog: () => [frogPatch(shape)],
    'central sulcus': () => [sulcusPatch(shape)],
    'medial groove': () => [groovePatch(shape.medial, shape, -1)],
    'lateral groove': () => [groovePatch(shape.lateral, shape, 1)],
    'medial bar': () => [barPatch(shape.medial)],
    'lateral bar': () => [barPatch(shape.lateral)],
    bars: () => [barPatch(shape.medial), barPatch(shape.lateral)],
    'white line': () => [wall(-0.02, -0.72), wall(0.02, 0.72)],
    coronet: () => [wall(0.14, 0.42, 0.35)],
    'heel bulbs': () => [bulbPatch(shape)],
    pastern: () => [],
    'whole foot': () => [wall(-0.94, 0.94, 0.3)],
  }
}

/** A stretch of wall with its white line, from the outer edge inwards; or of the ground outside it. */
function wallPatch(shape: SoleShape): WallPatch {
  const halves = [shape.medial, shape.lateral].map(({ outer }) => evenly(sampled(outer, 24), 64))
  const depthAt = (share: number) => shape.wall * (1 - 0.3 * Math.min(1, share / 0.6)) + shape.whiteLine
  const place = (signed: number, d: number): Point => {
    const side = signed < 0 ? 0 : 1
    const points = halves[side] ?? []
    const share = Math.abs(signed)
    const i = clamp(share, 0, 1) * (points.length - 1)
    const [low, high] = [Math.floor(i), Math.min(points.length - 1, Math.floor(i) + 1)]
    const here = mix(points[low] ?? [0, 0], points[high] ?? [0, 0], i - low)
    const [ux, uy] = unit(
      points[Math.max(0, low - 1)] ?? here,
      points[Math.min(points.length - 1, low + 2)] ?? here,
    )
    const inward: Point = share < 1 / 64 ? [0, -1] : side === 0 ? [-uy, ux] : [uy, -ux]
    return along(here, d * depthAt(share), inward)
  }
  const half = lengthOf(halves[1] ?? [])
  return (from, to, outside) => ({
    at: (s, d) => place(from + s * (to - from), outside === undefined ? d : -outside - d * 0.5),
    length: Math.abs(to - from) * half,
    depth: (outside === undefined ? 1 : 0.5) * depthAt(Math.abs(from + to) / 2),
  })
}

const lengthOf = (points: readonly Point[]): number =>
  points.reduce((sum, point, i) => sum + distance(points[i - 1] ?? point, point), 0)

/** As many points at even distances along a line. */
function evenly(points: readonly Point[], count: number): readonly Point[] {
  const step = lengthOf(points) / count
  const even: Point[] = []
  let [passed, next] = [0, 0]
  points.forEach((point, i) => {
    const from = points[i - 1] ?? point
    const length = distance(from, point)
    while (even.length <= count && next <= passed + length + 1e-9) {
      even.push(length === 0 ? point : mix(from, point, (next - passed) / length))
      next += step
    }
    passed += length
  })
  return even
}

/** In front of the frog: `s` from the inner side to the outer, `d` from the toe back. */
function solePatch({ frogTip, bearing, width, wall, whiteLine }: SoleShape): Patch {
  const top = bearing - wall - whiteLine - 0.03 * bearing
  const deep = top - frogTip[1] - 0.06 * bearing
  const half = 0.27 * width
  return {
    at: (s, d) => {
      const x = (s - 0.5) * 2
      return [x * half, top - d * deep - 0.12 * bearing * x * x]
    },
    length: 2 * half,
    depth: deep,
  }
}

function frogPatch({ frogTip, frogLength, frogWidth }: SoleShape): Patch {
  return {
    at: (s, d) => {
      const y = frogTip[1] - (0.16 + 0.66 * d) * frogLength
      return [(s - 0.5) * 0.86 * frogWidth * ((frogTip[1] - y) / frogLength), y]
    },
    length: 0.5 * frogWidth,
    depth: 0.66 * frogLength,
  }
}

/** From its front back, across it. */
function sulcusPatch({ sulcus, frogWidth }: SoleShape): Patch {
  const [top, end] = [sulcus.start, pointAt(sulcus, 0.5)]
  return {
    at: (s, d) => [(d - 0.5) * 0.2 * frogWidth, top[1] + s * (end[1] - top[1])],
    length: top[1] - end[1],
    depth: 0.2 * frogWidth,
  }
}

/** From the frog's tip back to the heel, from the frog to the bar. */
function groovePatch(half: SoleHalf, { frogTip, bearing }: SoleShape, side: 1 | -1): Patch {
  const upright = (of: Stroke): readonly Point[] => sampled(of, 10).map(([x, y]): Point => [y, x])
  const frog = upright(half.frog)
  const bar = upright(half.barInner)
  const tip = upright(half.grooveTip)
  const [from, to] = [frogTip[1] - 0.02 * bearing, 0.045 * bearing]
  const edge = half.grooveTip.start[1]
  return {
    at: (s, d) => {
      const y = from + s * (to - from)
      const inner = heightAt(frog, y)
      const outer = heightAt(y > edge ? tip : bar, y)
      return [side * mix([Math.abs(inner), 0], [Math.abs(outer), 0], d)[0], y]
    },
    length: from - to,
    depth: 0.06 * bearing,
  }
}

/** From the heel to the bar's end, from the groove to the sole. */
function barPatch({ barInner, barOuter }: SoleHalf): Patch {
  return {
    at: (s, d) => mix(pointAt(barInner, s), pointAt(barOuter, 0.5 * (1 - s)), d),
    length: distance(barInner.start, barOuter.start),
    depth: 8,
  }
}

function bulbPatch({ lateral, bearing }: SoleShape): Patch {
  const half = 0.8 * lateral.bulb.start[0]
  return {
    at: (s, d) => [(s - 0.5) * 2 * half, -0.03 * bearing - d * 0.075 * bearing],
    length: 2 * half,
    depth: 0.075 * bearing,
  }
}
