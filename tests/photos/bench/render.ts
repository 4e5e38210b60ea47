/** A shot as a picture: ground, foot and card, seen through the camera, with blur, noise and JPEG. */
import sharp from 'sharp'
import { markerCells } from '../../../src/card/markers.ts'
import { cardHeight, cardWidth, markerCorners, markerIds, markerSide } from '../../../src/hoof/card.ts'
import type { Landmarks } from '../../../src/hoof/landmarks.ts'
import type { Point } from '../../../src/hoof/plane.ts'
import type { Camera, Place } from './camera.ts'
import { type Chance, chance } from './chance.ts'
import { onStood, type Shot, type Stood } from './shots.ts'

export interface Fault {
  /** Millimetres that the middle of the card stands out. */
  readonly bend?: number
  /** Numbers of the markers instead of the card's own. */
  readonly ids?: readonly number[]
  /** Only so much of the card's width is there. */
  readonly cut?: number
  /** Millimetres from line to line of the screen that it is shown on. */
  readonly screen?: number
}

export interface Rendered {
  readonly blur?: number
  readonly noise?: number
  readonly quality?: number
  readonly fault?: Fault
  readonly cards?: readonly Stood[]
  readonly seed: number
}

/** How much light the card gives back, 0 to 1. */
function ink(ids: readonly number[]): (x: number, y: number) => number {
  const cells = ids.map(markerCells)
  const squares = ids.map((_, i) => markerCorners(i as 0 | 1 | 2 | 3))
  const cell = markerSide / 8
  return (x, y) => {
    for (const [i, square] of squares.entries()) {
      const [column, row] = [Math.floor((x - square[0][0]) / cell), Math.floor((square[0][1] - y) / cell)]
      if (column < 0 || column > 7 || row < 0 || row > 7) continue
      return cells[i]?.[row - 1]?.[column - 1] ? 0.88 : 0.07
    }
    return 0.88
  }
}

/** The card as upright strips, one where it is flat. */
function strips(
  stood: Stood,
  bend: number,
  cut: number,
): readonly { readonly at: Stood; readonly from: number; readonly to: number }[] {
  const n = bend === 0 ? 1 : 16
  const out: Place = [stood.up[1] * -stood.right[2], 0, stood.right[0]]
  const edge = (x: number): Place => {
    const z = bend * (1 - (2 * (x / cardWidth) - 1) ** 2)
    const [px, py, pz] = onStood(stood, [x, 0])
    return [px + z * out[0], py + z * out[1], pz + z * out[2]]
  }
  return Array.from({ length: n }, (_, i) => {
    const [from, to] = [(cut * i) / n, (cut * (i + 1)) / n]
    const [a, b] = [edge(from), edge(to)]
    const way: Place = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
    const length = Math.hypot(...way)
    return {
      at: { origin: a, right: [way[0] / length, way[1] / length, way[2] / length], up: stood.up },
      from,
      to,
    }
  })
}

/** The same camera with half as many pixels each way, which is what the card is looked for in. */
function half({ width, height, focal, at, project, meets }: Camera): Camera {
  return {
    width: width / 2,
    height: height / 2,
    focal: focal / 2,
    at,
    project: (place) => {
      const [u, v] = project(place)
      return [u / 2, v / 2]
    },
    meets: ([u, v], ...plane) => meets([2 * u, 2 * v], ...plane),
  }
}

/** A JPEG, at half the size that the points are in. */
export async function rendered(shot: Shot, of: Rendered): Promise<Buffer> {
  const camera = half(shot.camera)
  const { width, height } = camera
  const draw = chance(of.seed)
  const light = new Float32Array(width * height)
  ground(light, camera, draw)
  foot(light, camera, shot.marked)
  const fault = of.fault ?? {}
  const shade = ink(fault.ids ?? markerIds)
  const [slope, bright] = [draw.between(-0.2, 0.2), draw.between(0.75, 1)]
  for (const stood of of.cards ?? [])
    for (const { at, from, to } of strips(stood, fault.bend ?? 0, fault.cut ?? cardWidth)) {
      const lit = (x: number, y: number) => {
        const glow = fault.screen === undefined ? 1 : screenAt(x, y, fault.screen)
        return shade(x, y) * glow * bright * (1 + slope * (x / cardWidth - 0.5))
      }
      strip(light, camera, at, from, to, lit, fault.screen === undefined ? 3 : 2)
    }
  const noise = (of.noise ?? 3) / 255
  const bytes = Buffer.alloc(width * height)
  for (let i = 0; i < bytes.length; i++) {
    // Three evenly spread numbers are near enough to a bell.
    const grain = noise * 2 * (draw.uniform() + draw.uniform() + draw.uniform() - 1.5)
    // sRGB's curve, as a power.
    bytes[i] = Math.max(0, Math.min(255, 255 * ((light[i] ?? 0) ** 0.4545 + grain)))
  }
  const picture = sharp(bytes, { raw: { width, height, channels: 1 } })
  return (of.blur ? picture.blur(of.blur) : picture).jpeg({ quality: of.quality ?? 85 }).toBuffer()
}

/** Lit lines with dark gaps between them, both ways. */
const screenAt = (x: number, y: number, pitch: number): number => {
  const dark = (at: number) => (at / pitch - Math.floor(at / pitch) < 0.35 ? 0.35 : 1)
  return dark(x) * dark(y) * 1.6
}

/** Trodden ground and what stands behind it, in patches large and small. */
function ground(light: Float32Array, { width, height, project }: Camera, draw: Chance): void {
  const horizon = project([0, 0, -900])[1]
  // Each patch between its corners: first down the columns, once a row of the picture, then along the row.
  const patches = [160, 40, 9].map((size) => {
    const columns = Math.ceil(width / size) + 2
    const rows = Math.ceil(height / size) + 2
    const values = Float64Array.from({ length: columns * rows }, () => draw.uniform())
    return { size, columns, values, across: new Float64Array(columns), row: new Float64Array(width) }
  })
  for (let y = 0; y < height; y++) {
    for (const { size, columns, values, across, row } of patches) {
      const start = Math.floor(y / size) * columns
      const t = y / size - Math.floor(y / size)
      for (let i = 0; i < columns; i++)
        across[i] = (values[start + i] ?? 0) * (1 - t) + (values[start + columns + i] ?? 0) * t
      for (let x = 0; x < width; x++) {
        const i = Math.floor(x / size)
        const s = x / size - i
        row[x] = (across[i] ?? 0) * (1 - s) + (across[i + 1] ?? 0) * s
      }
    }
    const base = y > horizon ? 0.28 : 0.4
    const [large, middle, small] = patches.map(({ row }) => row)
    for (let x = 0; x < width; x++)
      light[y * width + x] =
        base *
        (0.5 + 0.5 * (large?.[x] ?? 0)) *
        (0.7 + 0.6 * (middle?.[x] ?? 0)) *
        (0.75 + 0.5 * (small?.[x] ?? 0))
  }
}

/** The hoof as a dark form between the points that are marked. */
function foot(light: Float32Array, camera: Camera, { points }: Landmarks): void {
  const outline = [
    points['toe-at-ground'],
    points['toe-at-hairline'],
    points['heel-at-hairline'],
    points['heel-at-ground'],
  ].flatMap((point): readonly Point[] => (point ? [[point[0] / 2, point[1] / 2]] : []))
  if (outline.length < 4) return
  const [top, low] = [Math.min(...outline.map(([, y]) => y)), Math.max(...outline.map(([, y]) => y))]
  for (let y = Math.max(0, Math.floor(top)); y < Math.min(camera.height, low); y++) {
    const crossings = outline.flatMap((a, i) => {
      const b = outline[(i + 1) % outline.length] ?? a
      return a[1] > y !== b[1] > y ? [a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])] : []
    })
    const [from = 0, to = -1] = crossings.sort((a, b) => a - b)
    for (let x = Math.max(0, Math.round(from)); x < Math.min(camera.width, to); x++)
      light[y * camera.width + x] = 0.09
  }
}

function strip(
  light: Float32Array,
  camera: Camera,
  at: Stood,
  from: number,
  to: number,
  lit: (x: number, y: number) => number,
  samples: number,
): void {
  const corners = [
    [0, 0],
    [to - from, 0],
    [to - from, cardHeight],
    [0, cardHeight],
  ].map(([x = 0, y = 0]) => camera.project(onStood(at, [x, y])))
  const range = (i: 0 | 1, most: number) => [
    Math.max(0, Math.floor(Math.min(...corners.map((corner) => corner[i])) - 1)),
    Math.min(most, Math.ceil(Math.max(...corners.map((corner) => corner[i])) + 1)),
  ]
  const [x0 = 0, x1 = 0] = range(0, camera.width)
  const [y0 = 0, y1 = 0] = range(1, camera.height)
  for (let y = y0; y < y1; y++)
    for (let x = x0; x < x1; x++) {
      let [sum, hit] = [0, 0]
      for (let i = 0; i < samples * samples; i++) {
        const pixel: Point = [
          x + ((i % samples) + 0.5) / samples,
          y + (Math.floor(i / samples) + 0.5) / samples,
        ]
        const [u, v] = camera.meets(pixel, at.origin, at.right, at.up)
        if (u < 0 || u >= to - from || v < 0 || v >= cardHeight) continue
        hit++
        sum += lit(u + from, v)
      }
      if (hit === 0) continue
      const share = hit / (samples * samples)
      const i = y * camera.width + x
      light[i] = (light[i] ?? 0) * (1 - share) + sum / (samples * samples)
    }
}
