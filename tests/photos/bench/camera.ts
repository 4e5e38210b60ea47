/**
 * A telephone's camera as a pinhole with a little radial distortion. The world is in millimetres: x to the right along
 * the foot's plane, y up from the ground, z out of the plane toward the camera.
 */
import type { Point } from '../../../src/hoof/landmarks.ts'

export type Place = readonly [x: number, y: number, z: number]

export interface Camera {
  readonly width: number
  readonly height: number
  /** Focal length in pixels. */
  readonly focal: number
  readonly at: Place
  readonly project: (place: Place) => Point
  /** Where the line of sight through a pixel meets a plane. */
  readonly meets: (pixel: Point, origin: Place, right: Place, up: Place) => Point
}

export interface Held {
  /** Millimetres over the ground, and from the foot as the crow flies over the ground. */
  readonly height: number
  readonly distance: number
  /** Degrees: how far the camera stands from square on; how far it is turned about its own axis. */
  readonly yaw: number
  readonly roll: number
  /** Where the middle of the picture points to. */
  readonly aim: Place
  /** Radial distortion, of the square of the distance from the middle in focal lengths. */
  readonly k1: number
  /** Longer side in pixels; the other is three quarters of it. */
  readonly side: number
}

/** 26 mm on a film of 36 by 24 mm, by the diagonal. */
const focalOf = (width: number, height: number) => (26 / Math.hypot(36, 24)) * Math.hypot(width, height)

const radians = Math.PI / 180
const minus = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const dot = (a: Place, b: Place) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Place, b: Place): Place => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
const unit = (a: Place): Place => {
  const length = Math.sqrt(dot(a, a))
  return [a[0] / length, a[1] / length, a[2] / length]
}

export function cameraHeld(held: Held): Camera {
  const width = held.side
  const height = Math.round(held.side * 0.75)
  const focal = focalOf(width, height)
  const { distance, aim, k1 } = held
  const at: Place = [
    aim[0] + distance * Math.sin(held.yaw * radians),
    held.height,
    distance * Math.cos(held.yaw * radians),
  ]
  const forward = unit(minus(aim, at))
  const level = unit(cross(forward, [0, 1, 0]))
  const overhead = cross(level, forward)
  const [cos, sin] = [Math.cos(held.roll * radians), Math.sin(held.roll * radians)]
  const mixed = (a: Place, s: number, b: Place, t: number): Place => [
    s * a[0] + t * b[0],
    s * a[1] + t * b[1],
    s * a[2] + t * b[2],
  ]
  const right = mixed(level, cos, overhead, sin)
  const up = mixed(overhead, cos, level, -sin)
  const project = (place: Place): Point => {
    const from = minus(place, at)
    const depth = dot(from, forward)
    const [x, y] = [dot(from, right) / depth, dot(from, up) / depth]
    const bent = 1 + k1 * (x * x + y * y)
    return [width / 2 + focal * x * bent, height / 2 - focal * y * bent]
  }
  const meets: Camera['meets'] = ([u, v], origin, along, upward) => {
    const [bx, by] = [(u - width / 2) / focal, (height / 2 - v) / focal]
    // The distortion undone: at these sizes two rounds are exact to a thousandth of a pixel.
    let [x, y] = [bx, by]
    for (let i = 0; i < 3; i++) {
      const bent = 1 + k1 * (x * x + y * y)
      ;[x, y] = [bx / bent, by / bent]
    }
    const ray = mixed(mixed(forward, 1, right, x), 1, up, y)
    const normal = cross(along, upward)
    const t = dot(minus(origin, at), normal) / dot(ray, normal)
    const hit = minus(mixed(at, 1, ray, t), origin)
    return [dot(hit, along), dot(hit, upward)]
  }
  return { width, height, focal, at, project, meets }
}
