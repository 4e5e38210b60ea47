/**
 * Points marked on a picture, and what they measure. Pixels run right and down from the upper left corner of the
 * upright picture. Angles are taken against the ground line, lengths by the scale.
 *
 * A picture is a flat view: whatever leans toward the camera or away from it looks shorter. That error cannot be seen
 * in the points and is not in `sd`; it is why photo readings never share a trend with gauge readings.
 */
import type { AnyMeasureId } from './measures.ts'

export type PhotoView = 'lateral' | 'medial' | 'front' | 'behind' | 'solar' | 'other'

export type Point = readonly [x: number, y: number]

/** Points a person marked on a picture. Names as in the case file, hyphenated; a line is two points. */
export interface Landmarks {
  /** Two points and the true length between them, millimetres. */
  readonly scale: { readonly from: Point; readonly to: Point; readonly length: number } | null
  readonly lines: Partial<Record<LandmarkLine, readonly [Point, Point]>>
  readonly points: Partial<Record<LandmarkPoint, Point>>
}

/** In the order in which case files are given them. */
export const landmarkLines = ['ground', 'pastern'] as const
export type LandmarkLine = (typeof landmarkLines)[number]
export const landmarkPoints = [
  'toe-at-ground',
  'toe-at-hairline',
  'new-growth-ends',
  'heel-at-ground',
  'heel-at-hairline',
  'toe',
  'frog-tip',
  'frog-base',
  'breakover',
  'heel-medial',
  'heel-lateral',
  'widest-medial',
  'widest-lateral',
] as const
export type LandmarkPoint = (typeof landmarkPoints)[number]

export interface PhotoReading {
  readonly measure: AnyMeasureId
  readonly value: number
  /** Standard deviation that follows from the uncertainty of the marked points. */
  readonly sd: number
}

/** How exactly a point is set on the screen: standard deviation of each coordinate, pixels. Common practice, no source. */
export const tapSd = 3
/** How exactly the edge of horn or hair can be told on the foot: the same, millimetres. Common practice, no source. */
export const edgeSd = 0.5

/** Every marked point under one name each; the ends of lines and of the scale as well. */
type Marks = Pick<ReadonlyMap<string, Point>, 'get' | 'has'>
/** NaN where a point that it needs is not marked. */
type Formula = (marks: Marks, scaleLength: number | null) => number

const nowhere: Point = [Number.NaN, Number.NaN]
const at = (marks: Marks, name: string): Point => marks.get(name) ?? nowhere
const between = (a: Point, b: Point): Point => [b[0] - a[0], b[1] - a[1]]
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1]
const degrees = 180 / Math.PI

function marksOf({ scale, lines, points }: Landmarks): ReadonlyMap<string, Point> {
  const marks = new Map<string, Point>(Object.entries(points))
  for (const [name, line] of Object.entries(lines)) {
    marks.set(`${name} from`, line[0])
    marks.set(`${name} to`, line[1])
  }
  if (scale !== null) marks.set('scale from', scale.from).set('scale to', scale.to)
  return marks
}

/** Directions of a picture, each one pixel long: along the ground toward the heel, and up from the ground. */
interface Frame {
  readonly back: Point
  readonly up: Point
}

/**
 * The ground line, or toe to heel at the ground where no line is marked. Toward the heel is where the heel is marked,
 * else the way the toe wall or the pastern leans; right where nothing tells.
 */
function frameOf(marks: Marks): Frame {
  const toe = at(marks, 'toe-at-ground')
  const line = marks.has('ground from')
    ? between(at(marks, 'ground from'), at(marks, 'ground to'))
    : between(toe, at(marks, 'heel-at-ground'))
  const length = Math.hypot(...line)
  const along: Point = [line[0] / length, line[1] / length]
  const up: Point = along[0] > 0 ? [along[1], -along[0]] : [-along[1], along[0]]
  const pastern = between(at(marks, 'pastern from'), at(marks, 'pastern to'))
  const towardHeel = [
    between(toe, at(marks, 'heel-at-ground')),
    between(toe, at(marks, 'heel-at-hairline')),
    between(toe, at(marks, 'toe-at-hairline')),
    dot(pastern, up) < 0 ? between(pastern, [0, 0]) : pastern,
  ].find((way) => Number.isFinite(way[0]))
  const back: Point = towardHeel && dot(towardHeel, along) < 0 ? [0 - along[0], 0 - along[1]] : along
  return { back, up }
}

/** Millimetres that a pixel stands for; NaN without a scale. */
const mmPerPixel: Formula = (marks, scaleLength) =>
  (scaleLength ?? Number.NaN) / Math.hypot(...between(at(marks, 'scale from'), at(marks, 'scale to')))

const length =
  (from: string, to: string): Formula =>
  (marks, scaleLength) =>
    Math.hypot(...between(at(marks, from), at(marks, to))) * mmPerPixel(marks, scaleLength)

/** Angle to the ground of a wall that runs up and back. */
const lean =
  (from: string, to: string): Formula =>
  (marks) => {
    const { back, up } = frameOf(marks)
    const wall = between(at(marks, from), at(marks, to))
    return degrees * Math.atan2(dot(wall, up), dot(wall, back))
  }

/** The lower straight part: up to where the new growth ends, if that is marked. */
const toeAngle: Formula = (marks, scaleLength) =>
  lean('toe-at-ground', marks.has('new-growth-ends') ? 'new-growth-ends' : 'toe-at-hairline')(
    marks,
    scaleLength,
  )

/** Either end of the pastern line may be the upper one. */
const pasternAngle: Formula = (marks, scaleLength) => {
  const { up } = frameOf(marks)
  const rises = dot(between(at(marks, 'pastern from'), at(marks, 'pastern to')), up) > 0
  const [low, high] = rises ? ['pastern from', 'pastern to'] : ['pastern to', 'pastern from']
  return lean(low ?? '', high ?? '')(marks, scaleLength)
}

const coronetAngle: Formula = (marks) => {
  const { back, up } = frameOf(marks)
  const hairline = between(at(marks, 'toe-at-hairline'), at(marks, 'heel-at-hairline'))
  return degrees * Math.atan2(-dot(hairline, up), dot(hairline, back))
}

/** Pixels in front of the line through both heels, seen on the sole. */
function inFrontOfHeels(marks: Marks, name: string): number {
  const medial = at(marks, 'heel-medial')
  const line = between(medial, at(marks, 'heel-lateral'))
  const [x, y] = between(medial, at(marks, name))
  return (line[0] * y - line[1] * x) / Math.hypot(...line)
}

const solarBearing: Formula = (marks, scaleLength) =>
  Math.abs(inFrontOfHeels(marks, 'toe')) * mmPerPixel(marks, scaleLength)

const toeShare: Formula = (marks) => 1 - inFrontOfHeels(marks, 'frog-tip') / inFrontOfHeels(marks, 'toe')

/**
 * From behind, the heels lean away from the camera: their heights above the ground are seen, not the lengths of their
 * walls. So the heights are compared, and no heel length is claimed.
 */
const heelBalance: Formula = (marks, scaleLength) => {
  const { up } = frameOf(marks)
  const lateralToMedial = between(at(marks, 'heel-lateral'), at(marks, 'heel-medial'))
  return dot(lateralToMedial, up) * mmPerPixel(marks, scaleLength)
}

const sideFormulas: readonly (readonly [AnyMeasureId, Formula])[] = [
  ['toe-angle', toeAngle],
  ['toe-length', length('toe-at-ground', 'toe-at-hairline')],
  ['new-angle', lean('new-growth-ends', 'toe-at-hairline')],
  ['new-length', length('toe-at-hairline', 'new-growth-ends')],
  ['heel-angle', lean('heel-at-ground', 'heel-at-hairline')],
  ['pastern-angle', pasternAngle],
  ['coronet-angle', coronetAngle],
  ['bearing-length', length('toe-at-ground', 'heel-at-ground')],
]

/** What each view shows. The heel seen from the side is the one on that side. */
const formulas: Readonly<Record<PhotoView, readonly (readonly [AnyMeasureId, Formula])[]>> = {
  lateral: [...sideFormulas, ['heel-lateral', length('heel-at-ground', 'heel-at-hairline')]],
  medial: [...sideFormulas, ['heel-medial', length('heel-at-ground', 'heel-at-hairline')]],
  solar: [
    ['frog-length', length('frog-tip', 'frog-base')],
    ['width', length('widest-medial', 'widest-lateral')],
    ['bearing-length', solarBearing],
    ['breakover', length('frog-tip', 'breakover')],
    ['toe-share', toeShare],
  ],
  behind: [['heel-balance', heelBalance]],
  front: [],
  other: [],
}

/** A wall that leans the wrong way, a length of nothing, a frog that ends in front of the toe. */
const canBe = (measure: AnyMeasureId, value: number): boolean => {
  if (!Number.isFinite(value)) return false
  if (measure === 'heel-balance') return true
  const most = measure === 'toe-share' ? 1 : measure.endsWith('-angle') ? 90 : Number.POSITIVE_INFINITY
  return value > 0 && value < most
}

/**
 * Every measure that the marked points of one picture allow: degrees, millimetres, toe share as a ratio. Points that
 * cannot be give no reading; reading the case file reports them.
 * `sd` is first-order propagation of `tapSd` at every point, and of `edgeSd` at every point of the foot where the scale
 * is known, through the formula. The true length of the scale is taken as exact.
 */
export function measureLandmarks(landmarks: Landmarks, view: PhotoView): readonly PhotoReading[] {
  const marks = marksOf(landmarks)
  const scaleLength = landmarks.scale?.length ?? null
  return formulas[view].flatMap(([measure, formula]) => {
    const value = formula(marks, scaleLength)
    if (!canBe(measure, value)) return []
    return [{ measure, value, sd: propagated(formula, marks, scaleLength) }]
  })
}

/** Half the step of a central difference, pixels: far below a tap, far above rounding. */
const step = 0.01

function propagated(formula: Formula, marks: ReadonlyMap<string, Point>, scaleLength: number | null): number {
  const mm = mmPerPixel(marks, scaleLength)
  const footSd = Number.isFinite(mm) ? Math.hypot(tapSd, edgeSd / mm) : tapSd
  const moved = new Map(marks)
  const valueAt = (name: string, x: number, y: number) => formula(moved.set(name, [x, y]), scaleLength)
  let variance = 0
  for (const name of namesUsed(formula, marks, scaleLength)) {
    const [x, y] = at(marks, name)
    const across = valueAt(name, x + step, y) - valueAt(name, x - step, y)
    const down = valueAt(name, x, y + step) - valueAt(name, x, y - step)
    const slope = Math.hypot(across, down) / (2 * step)
    variance += (slope * (name.startsWith('scale ') ? tapSd : footSd)) ** 2
    moved.set(name, [x, y])
  }
  return Math.sqrt(variance)
}

/** The marked points that a formula looks at. */
function namesUsed(formula: Formula, marks: Marks, scaleLength: number | null): ReadonlySet<string> {
  const names = new Set<string>()
  const noted = (name: string) => {
    if (marks.has(name)) names.add(name)
    return marks.get(name)
  }
  formula({ get: noted, has: (name) => marks.has(name) }, scaleLength)
  return names
}

/** How a foot lies in its picture: what a similarity needs to lay one picture over another. */
export interface Pose {
  /** From the side the toe at the ground, on the sole the toe, from behind the middle of the heels. */
  readonly origin: Point
  /** From the toe toward the heel (from behind, along the ground), and square to it; one pixel long. */
  readonly back: Point
  readonly up: Point
  readonly mmPerPixel: number
}

/** Null where scale, ground line (on the sole the line of the heels) or origin are not marked. */
export function poseOf(landmarks: Landmarks, view: PhotoView): Pose | null {
  const marks = marksOf(landmarks)
  const pose = {
    ...directionsOf(marks, view),
    mmPerPixel: mmPerPixel(marks, landmarks.scale?.length ?? null),
  }
  return [...pose.origin, ...pose.back, pose.mmPerPixel].every(Number.isFinite) ? pose : null
}

function directionsOf(marks: Marks, view: PhotoView): Omit<Pose, 'mmPerPixel'> {
  if (view === 'lateral' || view === 'medial')
    return { origin: at(marks, 'toe-at-ground'), ...frameOf(marks) }
  const [medial, lateral] = [at(marks, 'heel-medial'), at(marks, 'heel-lateral')]
  const middle: Point = [(medial[0] + lateral[0]) / 2, (medial[1] + lateral[1]) / 2]
  if (view === 'behind') return { origin: middle, ...frameOf(marks) }
  const toe = view === 'solar' ? at(marks, 'toe') : nowhere
  const axis = between(toe, middle)
  const length = Math.hypot(...axis)
  const back: Point = [axis[0] / length, axis[1] / length]
  const across: Point = [back[1], -back[0]]
  return {
    origin: toe,
    back,
    up: dot(between(lateral, medial), across) < 0 ? [-across[0], -across[1]] : across,
  }
}

/** The line that a view is seen against: the ground line, or toe to heel at the ground; null where there is none. */
export function groundLine({ lines, points }: Landmarks): readonly [Point, Point] | null {
  const { 'toe-at-ground': toe, 'heel-at-ground': heel } = points
  return lines.ground ?? (toe && heel ? [toe, heel] : null)
}
