/** Pictures of feet as they are taken: on a block as the guide says, or by hand in a yard; with a stick or a card. */

import { cardWidth } from '../../../src/hoof/card.ts'
import type { Landmarks, PhotoView, Point } from '../../../src/hoof/landmarks.ts'
import { type Camera, cameraHeld, type Place } from './camera.ts'
import type { Chance } from './chance.ts'
import { anyFoot, type Foot, sideSeen, sideTruth, soleSeen, type Truth } from './foot.ts'

export type Way = 'block' | 'yard'

/** How exactly a point is set: pixels of each coordinate on the screen, millimetres of the edge on the foot. */
export const tap = 2
export const edge = 0.4

export interface Shot {
  readonly view: PhotoView
  readonly foot: Foot
  readonly camera: Camera
  /** Without scale and ground. */
  readonly marked: Landmarks
  readonly truth: Truth
  readonly way: Way
}

const none: Landmarks = { scale: null, lines: {}, points: {} }

function camera(way: Way, draw: Chance, side: number, aim: Place): Camera {
  const blunt = way === 'block' ? 0.02 : 0.08
  const distance = way === 'block' ? draw.between(500, 700) : draw.between(600, 1400)
  return cameraHeld({
    height: way === 'block' ? draw.between(50, 120) : draw.between(80, 320),
    distance,
    yaw: draw.normal(way === 'block' ? 3 : 4),
    roll: draw.normal(3),
    aim: [aim[0] + draw.normal(blunt * distance), aim[1] + draw.normal(blunt * distance), 0],
    k1: draw.normal(0.01),
    side,
  })
}

/** Tapped: where the person's finger came to lie. */
const tapper = (seenBy: Camera, draw: Chance) => {
  const mm = Math.hypot(...minus(seenBy.project([0, 0, 0]), seenBy.project([1, 0, 0])))
  const foot = Math.hypot(tap, edge * mm)
  return {
    onFoot: ([x, y]: Point): Point => [x + draw.normal(foot), y + draw.normal(foot)],
    onLine: ([x, y]: Point): Point => [x + draw.normal(tap), y + draw.normal(tap)],
  }
}
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]]

export function sideShot(way: Way, draw: Chance, side = 4032): Shot {
  const foot = anyFoot(draw)
  const seenBy = camera(way, draw, side, [60, 60, 0])
  const seen = sideSeen(foot, seenBy)
  const { onFoot } = tapper(seenBy, draw)
  const points = Object.fromEntries(Object.entries(seen.points).map(([name, at]) => [name, onFoot(at)]))
  const marked: Landmarks = {
    ...none,
    lines: { pastern: [onFoot(seen.pastern[0]), onFoot(seen.pastern[1])] },
    points,
  }
  return { view: 'lateral', foot, camera: seenBy, marked, truth: sideTruth(foot), way }
}

export function soleShot(way: Way, draw: Chance, side = 4032): Shot {
  const foot = anyFoot(draw)
  const seenBy = cameraHeld({
    height: foot.bearingLength / 2 + draw.normal(way === 'block' ? 30 : 90),
    distance: way === 'block' ? draw.between(450, 650) : draw.between(500, 1000),
    yaw: draw.normal(way === 'block' ? 3 : 7),
    roll: draw.normal(4),
    aim: [draw.normal(20), foot.bearingLength / 2 + draw.normal(20), 0],
    k1: draw.normal(0.01),
    side,
  })
  const { points, truth } = soleSeen(foot, seenBy)
  const { onFoot } = tapper(seenBy, draw)
  const tapped = Object.fromEntries(Object.entries(points).map(([name, at]) => [name, onFoot(at)]))
  return { view: 'solar', foot, camera: seenBy, marked: { ...none, points: tapped }, truth, way }
}

/** With a stick of 100 mm, in the foot's plane as well as the person puts it there, and the edge of the ground. */
export function withStick({ view, camera: seenBy, marked, way, foot }: Shot, draw: Chance): Landmarks {
  const { onLine } = tapper(seenBy, draw)
  const nearer = way === 'block' ? draw.normal(6) : 8 + draw.normal(34)
  const [left, low] = view === 'solar' ? [foot.width / 2 + 12, 10] : [10, 4]
  const along = (t: number): Point =>
    seenBy.project(view === 'solar' ? [left, low + t, nearer] : [left + t, low, nearer])
  const scale = { from: onLine(along(0)), to: onLine(along(100)), length: 100 }
  if (view === 'solar') return { ...marked, scale }
  // The edge of the board runs beside the foot, some centimetres nearer, not quite along it.
  const [gap, turn] =
    way === 'block' ? [draw.between(40, 70), draw.normal(1)] : [draw.between(40, 90), draw.normal(1.5)]
  const edgeAt = (x: number) => seenBy.project([x, 0, gap + x * Math.tan((turn * Math.PI) / 180)])
  return { ...marked, scale, lines: { ...marked.lines, ground: [onLine(edgeAt(-90)), onLine(edgeAt(190))] } }
}

/** Where the card was put: its lower left corner, and its directions to the right and up. */
export interface Stood {
  readonly origin: Place
  readonly right: Place
  readonly up: Place
}

/** Beside the foot in its plane, as well as a person sets it up by eye; against the sole beside it. */
export function cardBeside({ view, foot }: Shot, draw: Chance): Stood {
  const turn = (draw.normal(2) * Math.PI) / 180
  const right: Place = [Math.cos(turn), 0, Math.sin(turn)]
  const depth = draw.normal(6)
  if (view === 'solar') return { origin: [foot.width / 2 + 15, 0, depth], right, up: [0, 1, 0] }
  // In front of the toe or behind the heel, whichever has room; its near edge is what a person brings into the plane.
  const isInFront = draw.uniform() < 0.5
  const near = isInFront ? -draw.between(10, 40) : foot.bearingLength + draw.between(40, 70)
  const origin: Place = isInFront
    ? [near - cardWidth * right[0], 0, depth - cardWidth * right[2]]
    : [near, 0, depth]
  return { origin, right, up: [0, 1, 0] }
}

export const onStood = ({ origin, right, up }: Stood, [x, y]: Point): Place => [
  origin[0] + x * right[0] + y * up[0],
  origin[1] + x * right[1] + y * up[1],
  origin[2] + x * right[2] + y * up[2],
]
