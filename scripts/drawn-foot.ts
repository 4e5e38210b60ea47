/**
 * Feet drawn from known numbers: an SVG that is plainly a drawing, the landmarks at their exact places in it, and the
 * true values, worked out from the numbers alone. Millimetres and degrees; pixels run right and down.
 */
import type { Landmarks, Point } from '../src/hoof/landmarks.ts'
import type { AnyMeasureId } from '../src/hoof/measures.ts'

export interface DrawnFoot {
  readonly svg: string
  readonly width: number
  readonly height: number
  readonly landmarks: Landmarks
  readonly truth: Readonly<Partial<Record<AnyMeasureId, number>>>
}

/** Where the camera stood: how large a pixel is, how far the picture is turned, where the toe lies in it. */
export interface Camera {
  readonly width: number
  readonly height: number
  readonly mmPerPixel: number
  /** Clockwise, degrees. */
  readonly turned: number
  /** Of the toe at the ground, or of the toe on the sole. */
  readonly toe: Point
  /** The horse looks to the right, or the inner side of the sole lies to the right. */
  readonly mirrored: boolean
}

export interface SideNumbers {
  readonly toeAngle: number
  /** Of the old wall below the strip, along the wall. */
  readonly wallLength: number
  /** The strip of new growth; null where the wall runs straight to the hairline. */
  readonly strip: { readonly angle: number; readonly length: number } | null
  readonly heelAngle: number
  readonly heelLength: number
  readonly bearingLength: number
  readonly pasternAngle: number
}

export interface SoleNumbers {
  readonly bearingLength: number
  readonly width: number
  readonly frogLength: number
  readonly frogWidth: number
  /** From the true frog tip forward. */
  readonly breakover: number
  /** From the toe back to the frog tip. */
  readonly toeToFrogTip: number
}

const ink = '#3a352c'
const horn = '#d9c9a6'
const hornDark = '#b09a6d'
const fresh = '#e9dfc6'
const coat = '#8d7b66'
const paper = '#f3efe4'
const board = '#c8c2b4'
const measured = '#0a5c8f'

const radians = Math.PI / 180
const rad = (degrees: number) => degrees * radians
const along = (from: Point, angle: number, length: number): Point => [
  from[0] + length * Math.cos(rad(angle)),
  from[1] + length * Math.sin(rad(angle)),
]

/** From millimetres (x toward the heel, y up) to pixels. */
function lens({ mmPerPixel, turned, toe, mirrored }: Camera) {
  const [cos, sin] = [Math.cos(rad(turned)), Math.sin(rad(turned))]
  const sign = mirrored ? -1 : 1
  return ([x, y]: Point): Point => {
    const [px, py] = [(sign * x) / mmPerPixel, -y / mmPerPixel]
    return [toe[0] + px * cos - py * sin, toe[1] + px * sin + py * cos]
  }
}

type Place = (at: Point) => Point

const fixed = (n: number) => n.toFixed(2)
const spot = ([x, y]: Point) => `${fixed(x)} ${fixed(y)}`
const closed = (place: Place, points: readonly Point[]) => `M${points.map((p) => spot(place(p))).join('L')}Z`
const open = (place: Place, points: readonly Point[]) => `M${points.map((p) => spot(place(p))).join('L')}`
const curve = (place: Place, points: readonly Point[]) => {
  const [start, ...rest] = points.map((p) => spot(place(p)))
  const groups = rest.flatMap((_, i) => (i % 3 === 0 ? [rest.slice(i, i + 3).join(' ')] : []))
  return `M${start}${groups.map((group) => `C${group}`).join('')}`
}
const path = (d: string, attributes: string) => `<path d="${d}" ${attributes}/>`
const stroke = (colour: string, width: number) => `fill="none" stroke="${colour}" stroke-width="${width}"`

/** A bar of 100 mm with a tick each centimetre, from `from` along x or, downward, along y. */
function ruler(place: Place, from: Point, way: 'along' | 'down', toMm: number) {
  const at = (t: number, off: number): Point =>
    way === 'along' ? [from[0] + t, from[1] - off] : [from[0] + off, from[1] - t]
  const ticks = Array.from({ length: 11 }, (_, i) =>
    open(place, [at(i * 10, 0), at(i * 10, i % 5 === 0 ? 5 : 3)]),
  )
  const to = at(toMm, 0)
  return {
    svg: path(`${open(place, [from, to])}${ticks.join('')}`, stroke(measured, 2.5)),
    scale: { from: place(from), to: place(to), length: toMm },
  }
}

/** DRAWN, in strokes of its own: fonts differ from machine to machine. */
const letters = [
  'M0 0V14H4Q10 14 10 7Q10 0 4 0Z',
  'M0 14V0H5Q9 0 9 4Q9 8 5 8H0M5 8L10 14',
  'M0 14L5 0L10 14M2 9H8',
  'M0 0L3 14L5 5L7 14L10 0',
  'M0 14V0L10 14V0',
]
const lettering = letters
  .map((d, i) => `<path d="${d}" transform="translate(${24 + i * 30} 24) scale(1.8)" ${stroke(ink, 1.2)}/>`)
  .join('')

const frameOf = ({ width, height }: Camera, content: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><rect width="${width}" height="${height}" fill="${paper}"/>${content}${lettering}</svg>`

/** A foot from the side on a board, with a ruler of 100 mm below. */
export function drawSide(of: SideNumbers, camera: Camera): DrawnFoot {
  const place = lens(camera)
  const toe: Point = [0, 0]
  const bend = along(toe, of.toeAngle, of.wallLength)
  const toeHair = of.strip ? along(bend, of.strip.angle, of.strip.length) : bend
  const heel: Point = [of.bearingLength, 0]
  const heelHair = along(heel, of.heelAngle, of.heelLength)
  const ground: readonly [Point, Point] = [
    [-28, 0],
    [of.bearingLength + 44, 0],
  ]
  const low = along(toeHair, of.pasternAngle, 8)
  const high = along(toeHair, of.pasternAngle, 92)
  const rule = ruler(place, [10, -14], 'along', 100)
  const hairline: readonly Point[] = [
    toeHair,
    [toeHair[0] + 0.35 * (heelHair[0] - toeHair[0]), toeHair[1] - 0.22 * (toeHair[1] - heelHair[1])],
    [toeHair[0] + 0.75 * (heelHair[0] - toeHair[0]), toeHair[1] - 0.62 * (toeHair[1] - heelHair[1])],
    heelHair,
  ]
  const grain = [0.16, 0.33, 0.5, 0.67, 0.84].map((t) => {
    const top: Point = [
      toeHair[0] + t * (heelHair[0] - toeHair[0]),
      toeHair[1] + t * (heelHair[1] - toeHair[1]) - 5,
    ]
    return open(place, [[t * of.bearingLength, 2], top])
  })
  const back = along(heelHair, 74, 46)
  const leg = [
    curve(place, [
      heelHair,
      [heelHair[0] + 12, heelHair[1] + 12],
      [back[0] + 6, back[1] - 14],
      back,
      [back[0] - 8, back[1] + 26],
      [high[0] + 52, high[1] + 4],
      [high[0] + 56, high[1] + 22],
    ]),
    open(place, [[high[0] + 12, high[1] + 22], high, toeHair]).replace('M', 'L'),
    curve(place, hairline).replace('M', 'L'),
    'Z',
  ].join('')
  const wall = [toe, ...(of.strip ? [bend] : []), toeHair]
  const hoof = `${open(place, wall)}${curve(place, hairline).replace('M', 'L')}L${spot(place(heel))}Z`
  const content = [
    path(
      closed(place, [
        [-400, 0],
        [600, 0],
        [600, -400],
        [-400, -400],
      ]),
      `fill="${board}"`,
    ),
    path(leg, `fill="${coat}" stroke="${ink}" stroke-width="2" stroke-linejoin="round"`),
    path(hoof, `fill="${horn}"`),
    of.strip
      ? `<clipPath id="hoof"><path d="${hoof}"/></clipPath>${path(
          closed(place, [bend, toeHair, [toeHair[0] + 60, toeHair[1]], [bend[0] + 34, bend[1] - 10]]),
          `fill="${fresh}" clip-path="url(#hoof)"`,
        )}`
      : '',
    path(grain.join(''), stroke(hornDark, 1.5)),
    path(curve(place, hairline), stroke(ink, 3)),
    path(open(place, [heelHair, heel, toe, ...wall.slice(1)]), `${stroke(ink, 2)} stroke-linejoin="round"`),
    path(open(place, ground), stroke(measured, 2.5)),
    rule.svg,
  ].join('')
  const s = of.strip
  const toeLength = s
    ? Math.sqrt(
        of.wallLength ** 2 +
          s.length ** 2 +
          2 * of.wallLength * s.length * Math.cos(rad(s.angle - of.toeAngle)),
      )
    : of.wallLength
  const rise =
    of.wallLength * Math.sin(rad(of.toeAngle)) +
    (s ? s.length * Math.sin(rad(s.angle)) : 0) -
    of.heelLength * Math.sin(rad(of.heelAngle))
  const run =
    of.bearingLength +
    of.heelLength * Math.cos(rad(of.heelAngle)) -
    of.wallLength * Math.cos(rad(of.toeAngle)) -
    (s ? s.length * Math.cos(rad(s.angle)) : 0)
  return {
    svg: frameOf(camera, content),
    width: camera.width,
    height: camera.height,
    landmarks: {
      camera: 'flat',
      scale: rule.scale,
      lines: { ground: [place(ground[0]), place(ground[1])], pastern: [place(low), place(high)] },
      points: {
        'toe-at-ground': place(toe),
        'toe-at-hairline': place(toeHair),
        ...(s && { 'new-growth-ends': place(bend) }),
        'heel-at-ground': place(heel),
        'heel-at-hairline': place(heelHair),
      },
    },
    truth: {
      'toe-angle': of.toeAngle,
      'toe-length': toeLength,
      ...(s && { 'new-angle': s.angle, 'new-length': s.length }),
      'heel-angle': of.heelAngle,
      'pastern-angle': of.pasternAngle,
      'coronet-angle': Math.atan(rise / run) / radians,
      'bearing-length': of.bearingLength,
      'heel-lateral': of.heelLength,
    },
  }
}

/** A sole with the toe up, the inner side to the left, with a ruler of 100 mm beside it. */
export function drawSole(of: SoleNumbers, camera: Camera): DrawnFoot {
  const place = lens(camera)
  // On the sole y runs up from the toe, so everything behind it lies below.
  const down = (x: number, y: number): Point => [x, -y]
  const half = of.width / 2
  const { bearingLength: b } = of
  const widest = 0.5 * b
  const heelOut = 0.62 * half
  const halfOutline = (side: 1 | -1): readonly Point[] => [
    down(0, 0),
    down(side * 0.55 * half, 0),
    down(side * half, widest - 0.32 * b),
    down(side * half, widest),
    down(side * half, widest + 0.22 * b),
    down(side * (heelOut + 4), b - 4),
    down(side * heelOut, b),
  ]
  const [inner, outer] = [halfOutline(-1), halfOutline(1)]
  const tip = of.toeToFrogTip
  const base = tip + of.frogLength
  const frog: readonly Point[] = [
    down(0, tip),
    down(of.frogWidth / 2, base - 6),
    down(of.frogWidth / 4, base + 3),
    down(0, base),
    down(-of.frogWidth / 4, base + 3),
    down(-of.frogWidth / 2, base - 6),
  ]
  const bars = ([-1, 1] as const).map((side) =>
    open(place, [
      down(side * heelOut, b),
      down(side * (of.frogWidth / 2 + 1), b - 30),
      down(side * 12, tip + 18),
    ]),
  )
  const rule = ruler(place, down(half + 16, 0.5 * b - 50), 'down', 100)
  const inside = (side: 1 | -1) => halfOutline(side).map(([x, y]): Point => [x * 0.88, y * 0.9 - 0.05 * b])
  const content = [
    path(
      `${curve(place, inner)}L${spot(place(down(0, base + 8)))}L${spot(place(down(heelOut, b)))}${curve(place, [...outer].reverse()).replace('M', 'L')}Z`,
      `fill="${horn}" stroke="${ink}" stroke-width="3" stroke-linejoin="round"`,
    ),
    path(curve(place, inside(-1)), stroke(hornDark, 2)),
    path(curve(place, inside(1)), stroke(hornDark, 2)),
    path(bars.join(''), stroke(ink, 2)),
    path(closed(place, frog), `fill="${coat}" stroke="${ink}" stroke-width="2" stroke-linejoin="round"`),
    path(open(place, [down(0, tip + 0.45 * of.frogLength), down(0, base - 4)]), stroke(ink, 2)),
    path(open(place, [down(-14, tip - of.breakover), down(14, tip - of.breakover)]), stroke(measured, 2.5)),
    rule.svg,
  ].join('')
  return {
    svg: frameOf(camera, content),
    width: camera.width,
    height: camera.height,
    landmarks: {
      camera: 'flat',
      scale: rule.scale,
      lines: {},
      points: {
        toe: place(down(0, 0)),
        breakover: place(down(0, tip - of.breakover)),
        'frog-tip': place(down(0, tip)),
        'frog-base': place(down(0, base)),
        'widest-medial': place(down(-half, widest)),
        'widest-lateral': place(down(half, widest)),
        'heel-medial': place(down(-heelOut, b)),
        'heel-lateral': place(down(heelOut, b)),
      },
    },
    truth: {
      'bearing-length': b,
      width: of.width,
      'frog-length': of.frogLength,
      breakover: of.breakover,
      'toe-share': tip / b,
    },
  }
}
