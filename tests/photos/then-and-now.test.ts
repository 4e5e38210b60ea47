/** One picture laid over another of the same foot, from another camera. */
import { describe, expect, it } from 'vitest'
import { cardHeight, cardWidth, type PlacedCard } from '../../src/hoof/card.ts'
import type { Landmarks } from '../../src/hoof/landmarks.ts'
import { hasSureScale, laying, poseOf } from '../../src/hoof/pose.ts'
import { type Camera, cameraHeld, type Place } from './bench/camera.ts'
import { type Foot, sideSeen } from './bench/foot.ts'
import { onStood, type Stood } from './bench/shots.ts'

const foot: Foot = {
  toeAngle: 50,
  toeLength: 90,
  heelAngle: 42,
  heelLength: 36,
  bearingLength: 120,
  pasternAngle: 52,
  width: 125,
}
const camera = (yaw: number, height: number, distance: number): Camera =>
  cameraHeld({ yaw, height, distance, roll: 3, aim: [50, 60, 0], k1: 0, side: 4032 })

const stood: Stood = { origin: [-cardWidth - 20, 0, 0], right: [1, 0, 0], up: [0, 1, 0] }

function taken(
  from: Camera,
  nearer: number,
): { readonly withCard: Landmarks; readonly withStick: Landmarks } {
  const corner = (x: number, y: number) => from.project(onStood(stood, [x, y]))
  const card: PlacedCard = {
    corners: [corner(0, 0), corner(cardWidth, 0), corner(cardWidth, cardHeight), corner(0, cardHeight)],
    width: cardWidth,
    camera: null,
    nearer: null,
  }
  const { points } = sideSeen(foot, from)
  const marked: Landmarks = { scale: null, lines: {}, points }
  return {
    withCard: { ...marked, card },
    withStick: {
      ...marked,
      scale: { from: from.project([0, 5, nearer]), to: from.project([100, 5, nearer]), length: 100 },
      lines: { ground: [from.project([-60, 0, 0]), from.project([180, 0, 0])] },
    },
  }
}

/** Places in the plane of the foot: of the wall, the hairline and the heel. */
const places: readonly Place[] = [
  [30, 35, 0],
  [58, 69, 0],
  [110, 5, 0],
]

/** How far places of one picture come to lie from where they are in the other, millimetres of the foot. */
function apart([from, one]: Taken, [to, other]: Taken): number {
  const [a, b] = [poseOf(from, 'lateral'), poseOf(to, 'lateral')]
  if (!a || !b) throw new Error('no pose')
  const [m, n, o, p, e, f] = laying(a, b, 'lateral')
  const far = places.map((place) => {
    const [x, y] = one.project(place)
    const [u, v] = b.toFoot([m * x + o * y + e, n * x + p * y + f])
    const [wantedX, wantedY] = b.toFoot(other.project(place))
    return Math.hypot(u - wantedX, v - wantedY)
  })
  return Math.max(...far)
}

type Taken = readonly [Landmarks, Camera]

describe('then laid over now', () => {
  const [square, above] = [camera(-8, 90, 800), camera(9, 320, 1100)]
  const [first, second] = [taken(square, 0), taken(above, 70)]

  it('lies on it where the card takes perspective and scale out', () => {
    const withCard = apart([second.withCard, above], [first.withCard, square])
    expect(withCard).toBeLessThan(4)
    expect(apart([second.withStick, above], [first.withStick, square])).toBeGreaterThan(2 * withCard)
  })

  it('is at one scale for sure by the card, on a block, flat, or where the depth of the ruler is told', () => {
    const { withCard, withStick } = first
    expect(hasSureScale(withCard)).toBe(true)
    expect(hasSureScale(withStick)).toBe(false)
    expect(hasSureScale({ ...withStick, camera: 'block' })).toBe(true)
    expect(hasSureScale({ ...withStick, scale: withStick.scale && { ...withStick.scale, nearer: 30 } })).toBe(
      true,
    )
  })
})
