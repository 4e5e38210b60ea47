/**
 * Points marked on a picture, and what they measure. Pixels run right and down from the upper left corner of the
 * upright picture. Angles are taken against the ground line, lengths by the scale; where the printed card stands in the
 * foot's plane it is both, and the view is straightened by it.
 *
 * A picture is a flat view: whatever leans toward the camera or away from it looks shorter, and a scale that lies nearer
 * than the foot makes it small. That cannot be seen in the points; `sd` includes it as it is told or assumed
 * (stance.ts). Photo readings never share a trend with gauge readings all the same.
 */
import { assumedCamera, cardPlane, type PlacedCard } from './card.ts'
import type { AnyMeasureId } from './measures.ts'
import { inFront, inverseOf, onTurned, type Place, type Point, through } from './plane.ts'
import { type Camera, frogDepths, heelOut, type Stance, soleLeanSd, stanceOf, toeRound } from './stance.ts'

export type PhotoView = 'lateral' | 'medial' | 'front' | 'behind' | 'solar' | 'other'

export type { Point }

/** Points a person marked on a picture. Names as in the case file, hyphenated; a line is two points. */
export interface Landmarks {
  /** Two points and the true length between them, millimetres. */
  readonly scale: Scale | null
  /** The printed card, where it was found. */
  readonly card?: PlacedCard
  /** What was told of a card that has still to be found: how it stands, or that it is not to be used. */
  readonly cardTold?: 'none' | { readonly nearer: number }
  /** How the camera stood; as in a yard where nothing is told. */
  readonly camera?: Camera
  readonly lines: Partial<Record<LandmarkLine, readonly [Point, Point]>>
  readonly points: Partial<Record<LandmarkPoint, Point>>
}

export interface Scale {
  readonly from: Point
  readonly to: Point
  readonly length: number
  /** How much nearer to the camera than the foot's plane it lies, millimetres, where that was told. */
  readonly nearer?: number
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
  /** Standard deviation, from the marked points and from how the camera stood, as far as that is known. */
  readonly sd: number
}

/** Half of the range that is shown with a reading: the true value lies in it nineteen times of twenty. */
export const shownHalf = (sd: number): number => 1.96 * sd

/** How exactly a point is set on the screen: standard deviation of each coordinate, pixels. Common practice, no source. */
export const tapSd = 2
/** How exactly the edge of horn or hair can be told on the foot: the same, millimetres. Common practice, no source. */
export const edgeSd = 0.4
/** How exactly a corner of the card is found: measured on rendered pictures (tests/photos), pixels. */
export const cornerSd = 0.3

/** Every marked point under one name each; the ends of lines and of the scale as well. */
type Marks = Pick<ReadonlyMap<string, Point>, 'get' | 'has'>
/** NaN where a point that it needs is not marked. */
type Formula = (marks: Marks, scaleLength: number | null) => number

const nowhere: Point = [Number.NaN, Number.NaN]
const at = (marks: Marks, name: string): Point => marks.get(name) ?? nowhere
const between = (a: Point, b: Point): Point => [b[0] - a[0], b[1] - a[1]]
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1]
const degrees = 180 / Math.PI

function marksOf({ scale, lines, points, card }: Landmarks): ReadonlyMap<string, Point> {
  const marks = new Map<string, Point>(Object.entries(points))
  for (const [name, line] of Object.entries(lines)) {
    marks.set(`${name} from`, line[0])
    marks.set(`${name} to`, line[1])
  }
  if (scale !== null) marks.set('scale from', scale.from).set('scale to', scale.to)
  for (const [i, corner] of card?.corners.entries() ?? []) marks.set(`card ${i}`, corner)
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
 * `sd` is first-order propagation of `tapSd` at every point, of `edgeSd` at every point of the foot where the scale is
 * known, of the card's corners, and of what the stance leaves open. The true length of the scale is taken as exact.
 */
export function measureLandmarks(landmarks: Landmarks, view: PhotoView): readonly PhotoReading[] {
  const shown = formulas[view]
  if (shown.length === 0) return []
  const picture: Picture = {
    landmarks,
    view,
    stance: stanceOf(landmarks.camera ?? 'yard', isToldNearer(landmarks)),
  }
  const marks = marksOf(landmarks)
  const values = valuesOf(picture, marks, certain)
  if (!shown.some(([measure], i) => canBe(measure, values[i] ?? Number.NaN))) return []
  const sds = spread(picture, marks, values)
  return shown.flatMap(([measure], i) => {
    const [value, sd] = [values[i] ?? Number.NaN, sds[i] ?? Number.NaN]
    return canBe(measure, value) ? [{ measure, value, sd }] : []
  })
}

interface Picture {
  readonly landmarks: Landmarks
  readonly view: PhotoView
  readonly stance: Stance
}

const isToldNearer = ({ scale }: Landmarks): boolean => scale?.nearer !== undefined

/** What the points do not show, each as far as it is off from what is told or assumed. */
interface Doubts {
  /** Radians that the camera looks down further, and stands from square on. */
  readonly down: number
  readonly yaw: number
  /** Millimetres that the scale or the card is nearer than the foot. */
  readonly nearer: number
  /** Millimetres that the near heel is further out; that its hairline leans out; of where the camera is over the heel. */
  readonly heelOut: number
  readonly heelLean: number
  readonly heelAside: number
  /** Share by which the near heel looks larger. */
  readonly heelNear: number
  /** Share by which the frog lies deeper than most; millimetres that a point one deep is seen too high or aside. */
  readonly frogDeep: number
  readonly frogUp: number
  readonly frogAside: number
  /** Radians that the card is turned out of the foot's plane. */
  readonly cardTurn: number
}

const certain: Doubts = {
  down: 0,
  yaw: 0,
  nearer: 0,
  heelOut: 0,
  heelLean: 0,
  heelAside: 0,
  heelNear: 0,
  frogDeep: 0,
  frogUp: 0,
  frogAside: 0,
  cardTurn: 0,
}

function valuesOf(picture: Picture, marks: ReadonlyMap<string, Point>, doubts: Doubts): readonly number[] {
  const { landmarks, view } = picture
  const flat = landmarks.card
    ? onCard(picture, landmarks.card, marks, doubts)
    : upright(picture, marks, doubts)
  const scaleLength = landmarks.card ? 1 : scaleLengthOf(picture, doubts)
  return formulas[view].map(([, formula]) => formula(flat, scaleLength))
}

const isSide = (view: PhotoView) => view === 'lateral' || view === 'medial'

/** The scale's length as it would be in the foot's plane: one that lies nearer looks longer. */
function scaleLengthOf({ landmarks: { scale }, stance }: Picture, { nearer }: Doubts): number | null {
  if (scale === null) return null
  const by = (scale.nearer ?? 0) + nearer
  return by === 0 ? scale.length : scale.length / (1 - by / stance.distance)
}

/** Points of a picture without a card as they would lie if the camera had stood square before the foot. */
function upright(
  { view, stance }: Picture,
  marks: ReadonlyMap<string, Point>,
  doubts: Doubts,
): ReadonlyMap<string, Point> {
  const [down, yaw] = [stance.down * (isSide(view) ? 1 : 0) + doubts.down, doubts.yaw]
  if (down === 0 && doubts === certain) return marks
  const { back, up } = view === 'solar' ? pictureFrame : frameOf(marks)
  if (!Number.isFinite(back[0])) return marks
  // Seen along the ground line, level lengths are as `across` and upright ones as `risen`, which the yaw makes lean.
  const lean = Math.atan2(Math.sin(yaw) * Math.sin(down), Math.cos(yaw))
  const across = Math.hypot(Math.cos(yaw), Math.sin(yaw) * Math.sin(down))
  const risen = Math.cos(down)
  const offset = view === 'solar' ? frogOffset(marks, doubts) : heelOffset(marks, doubts)
  const moved = new Map<string, Point>()
  for (const [name, at] of marks) {
    const [dx, dy] = offset(name)
    const [s, t] = [dot(at, back) + dx, dot(at, up) + dy]
    const y = t / (risen * Math.cos(lean))
    const x = (s - y * risen * Math.sin(lean)) / across
    moved.set(name, [x * back[0] + y * up[0], x * back[1] + y * up[1]])
  }
  return moved
}

type Offset = (name: string) => Point

/** Where the heel that is seen would be in the plane of the toe, from where it is: pixels behind and up. */
function heelOffset(marks: ReadonlyMap<string, Point>, doubts: Doubts): Offset {
  const [ground, hairline] = [at(marks, 'heel-at-ground'), at(marks, 'heel-at-hairline')]
  const bearing = Math.hypot(...between(at(marks, 'toe-at-ground'), ground))
  // Pixels of a millimetre: a bearing length of 120 mm is sure enough for what is in doubt anyway.
  const pixel = Number.isFinite(bearing) ? bearing / 120 : 0
  const { back, up } = frameOf(marks)
  const wall = between(ground, hairline)
  const [along, rise] = Number.isFinite(wall[0]) ? [dot(wall, back), dot(wall, up)] : [0, 0]
  const { heelAside, heelOut: out, heelLean, heelNear } = doubts
  return (name) => {
    if (name === 'heel-at-ground') return [heelAside * pixel, out * pixel]
    if (name !== 'heel-at-hairline') return here
    return [heelAside * pixel + heelNear * along, (out + heelLean) * pixel + heelNear * rise]
  }
}

function frogOffset(marks: ReadonlyMap<string, Point>, { frogAside, frogUp }: Doubts): Offset {
  const width = Math.hypot(...between(at(marks, 'widest-medial'), at(marks, 'widest-lateral')))
  const length = Math.hypot(...between(at(marks, 'frog-tip'), at(marks, 'frog-base')))
  // As at the heel: a width of 122 mm or a frog of 75 mm.
  const pixel = Number.isFinite(width) ? width / 122 : Number.isFinite(length) ? length / 75 : 0
  return (name) => {
    const deep = (frogDepths.get(name) ?? 0) * pixel
    return deep === 0 ? here : [frogAside * deep, frogUp * deep]
  }
}

const here: Point = [0, 0]

const pictureFrame: Frame = { back: [1, 0], up: [0, -1] }

/** Points of a picture with a card, in millimetres of the foot's plane; y runs down as in a picture. */
function onCard(
  { view }: Picture,
  card: PlacedCard,
  marks: ReadonlyMap<string, Point>,
  doubts: Doubts,
): ReadonlyMap<string, Point> {
  const corner = (i: number) => at(marks, `card ${i}`)
  const plane = cardPlane({ corners: [corner(0), corner(1), corner(2), corner(3)], width: card.width })
  const nearer = (card.nearer ?? 0) + doubts.nearer
  const before = card.camera ?? assumedCamera
  const camera: Place = [before[0], before[1], before[2] + nearer]
  const about = through(plane, at(marks, 'toe-at-ground'))[0]
  const flat = new Map<string, Point>()
  for (const [name, pixel] of marks) {
    if (name.startsWith('scale ') || name.startsWith('ground ') || name.startsWith('card ')) continue
    let place = inFront(through(plane, pixel), before, -nearer)
    if (doubts.cardTurn !== 0 && Number.isFinite(about))
      place = onTurned(place, camera, about, doubts.cardTurn)
    if (isSide(view) && name.startsWith('heel-at-')) {
      const lean = name === 'heel-at-hairline' ? doubts.heelLean : 0
      place = inFront(place, camera, heelOut.mean + doubts.heelOut + lean)
    }
    const deep = view === 'solar' ? frogDepths.get(name) : undefined
    if (deep !== undefined) place = inFront(place, camera, -deep * (1 + doubts.frogDeep))
    flat.set(name, [place[0], -place[1]])
  }
  if (isSide(view)) toMidline(flat, camera)
  const one: readonly [Point, Point] = [
    [0, 0],
    [1, 0],
  ]
  flat.set('scale from', one[0]).set('scale to', one[1])
  return isSide(view) || view === 'behind' ? flat.set('ground from', one[0]).set('ground to', one[1]) : flat
}

/**
 * What is seen as the toe is the edge of a rounded wall, which from above or from the side is not its midline: it is
 * moved to where the midline would be seen, for a toe as round as most are (toeRound).
 */
function toMidline(flat: Map<string, Point>, [cx, cy, cz]: Place): void {
  const [toe, top] = [at(flat, 'toe-at-ground'), at(flat, 'toe-at-hairline')]
  const wall = between(toe, top)
  const length = Math.hypot(...wall)
  if (!Number.isFinite(length) || length === 0) return
  const back = Math.sign(wall[0]) || 1
  // Square to the wall, forward and up; here y runs up.
  const [nx, ny] = [(back * wall[1]) / length, (back * wall[0]) / length]
  for (const [name, radius, fall] of [
    ['toe-at-ground', toeRound.ground, 0],
    ['new-growth-ends', (toeRound.ground + toeRound.hairline) / 2, 0],
    ['toe-at-hairline', toeRound.hairline, toeRound.fall],
  ] as const) {
    const seen = flat.get(name)
    if (seen === undefined) continue
    const [wx, wy] = [(cx - seen[0]) / cz, (cy + seen[1]) / cz]
    const t = Math.atan2(nx * wx + ny * wy, nx * back - ny * fall)
    const turned = Math.abs(t) > Math.PI / 2 ? t - Math.sign(t) * Math.PI : t
    const [deep, out] = [radius * (1 - Math.cos(turned)), radius * Math.sin(turned)]
    const [dx, dy] = [back * deep - wx * out, -fall * deep - wy * out]
    flat.set(name, [seen[0] - dx, seen[1] + dy])
  }
}

/** How far each doubt goes in a picture: one standard deviation. */
function doubtsOf({
  landmarks: { card, scale, camera = 'yard' },
  view,
  stance,
}: Picture): readonly Partial<Doubts>[] {
  const isAtSide = isSide(view)
  if (card) {
    const { nearer } = card
    // How far the camera stands comes from the focal length of a whole picture, which zooming changes.
    const nearerSd = nearer === null ? cardDepthSd : Math.hypot(5, 0.25 * nearer)
    const shape = isAtSide ? [{ heelOut: heelOut.sd }, { heelLean: heelOut.leanSd }] : [{ frogDeep: 0.8 }]
    return [{ nearer: nearerSd }, { cardTurn: cardTurnSd }, ...shape]
  }
  const { down, downSd, yawSd, distance, scaleDepthSd } = stance
  const lean = view === 'solar' ? soleLeanSd(camera) : null
  const [ofDown, ofYaw] = [lean ?? downSd, lean ?? yawSd]
  const depth = scale === null ? [] : [{ nearer: scaleDepthSd }]
  if (ofDown === 0) return depth
  const above = Math.tan(Math.hypot(down, downSd))
  const heel = isAtSide
    ? [
        { heelOut: heelOut.mean * above },
        { heelLean: heelOut.leanSd * above },
        { heelAside: heelOut.mean * Math.hypot(Math.tan(yawSd), halfFoot / distance) },
        { heelNear: heelOut.mean / distance },
      ]
    : []
  // What lies deeper than the sole is seen shifted, as the sole leans and as it is away from the middle of the picture.
  const shift = Math.hypot(Math.tan(ofDown), halfFoot / distance)
  const frog = view === 'solar' ? [{ frogUp: shift }, { frogAside: shift }] : []
  // What the yaw does goes with how far the camera looks down, so the two are off together.
  return [{ down: ofDown, yaw: ofYaw }, ...depth, ...heel, ...frog]
}

/** How far a card that is set up in the foot's plane by eye is out of it: millimetres, radians. Common practice. */
const cardDepthSd = 7
const cardTurnSd = (2.2 * Math.PI) / 180
/** From the middle of a foot to its ends, millimetres. */
const halfFoot = 60

/** Half the step of a central difference, pixels: far below a tap, far above rounding. */
const step = 0.01

/** Standard deviation of each value. */
function spread(
  picture: Picture,
  marks: ReadonlyMap<string, Point>,
  values: readonly number[],
): readonly number[] {
  const variances = values.map(() => 0)
  const add = (differences: readonly number[], by: number) => {
    for (const [i, difference] of differences.entries())
      variances[i] = (variances[i] ?? 0) + (difference * by) ** 2
  }
  const { landmarks } = picture
  const mm = landmarks.card
    ? landmarks.card.width / Math.hypot(...between(landmarks.card.corners[0], landmarks.card.corners[1]))
    : mmPerPixel(marks, landmarks.scale?.length ?? null)
  const footSd = Number.isFinite(mm) ? Math.hypot(tapSd, edgeSd / mm) : tapSd
  const moved = new Map(marks)
  for (const [name, [x, y]] of marks) {
    const sd = name.startsWith('card ') ? cornerSd : name.startsWith('scale ') ? tapSd : footSd
    for (const [dx, dy] of [
      [step, 0],
      [0, step],
    ] as const) {
      const more = valuesOf(picture, moved.set(name, [x + dx, y + dy]), certain)
      const less = valuesOf(picture, moved.set(name, [x - dx, y - dy]), certain)
      add(
        more.map((value, i) => (value - (less[i] ?? 0)) / (2 * step)),
        sd,
      )
    }
    moved.set(name, [x, y])
  }
  for (const doubt of doubtsOf(picture)) {
    for (const sign of [1, -1]) {
      add(
        valuesOf(picture, marks, signed(doubt, sign)).map((value, i) => value - (values[i] ?? 0)),
        Math.SQRT1_2,
      )
    }
  }
  return variances.map(Math.sqrt)
}

/** Down is down: of a camera that looks down, the yaw alone may be either way. */
function signed(doubt: Partial<Doubts>, sign: number): Doubts {
  const turned = Object.entries(doubt).map(([name, by]) => [name, name === 'down' ? by : sign * by] as const)
  return { ...certain, ...Object.fromEntries(turned) }
}

/** How a foot lies in its picture: millimetres behind and above its origin, and back to pixels. */
export interface Pose {
  /** From the side the toe at the ground, on the sole the toe, from behind the middle of the heels. */
  readonly origin: Point
  /** From the toe toward the heel (from behind, along the ground), one pixel long, at the origin. */
  readonly back: Point
  readonly toFoot: (pixel: Point) => Point
  readonly toPixel: (place: Point) => Point
}

/** Null where scale, ground line (on the sole the line of the heels) or origin are not marked, and no card is there. */
export function poseOf(landmarks: Landmarks, view: PhotoView): Pose | null {
  const { card } = landmarks
  const picture: Picture = {
    landmarks,
    view,
    stance: stanceOf(landmarks.camera ?? 'yard', isToldNearer(landmarks)),
  }
  const marks = marksOf(landmarks)
  const plane = card ? cardPlane(card) : null
  // With a card everything is in its millimetres, y down; without one in pixels.
  const flatten = (pixel: Point): Point => {
    if (plane === null) return pixel
    const [x, y] = through(plane, pixel)
    return [x, -y]
  }
  const flat = new Map([...marks].map(([name, at]) => [name, flatten(at)] as const))
  if (card && view !== 'solar') flat.set('ground from', [0, 0]).set('ground to', [1, 0])
  const { origin, back, up } = directionsOf(flat, view)
  const nearer = card ? (card.nearer ?? 0) / (card.camera ?? assumedCamera)[2] : 0
  const size = card ? 1 + nearer : mmPerPixel(marks, scaleLengthOf(picture, certain))
  if (![...origin, ...back, size].every(Number.isFinite)) return null
  const toFoot = (pixel: Point): Point => {
    const from = between(origin, flatten(pixel))
    return [dot(from, back) * size, dot(from, up) * size]
  }
  const picturing = plane && inverseOf(plane)
  const toPixel = ([x, y]: Point): Point => {
    const [s, t] = [x / size, y / size]
    const at: Point = [origin[0] + s * back[0] + t * up[0], origin[1] + s * back[1] + t * up[1]]
    return picturing ? through(picturing, [at[0], -at[1]]) : at
  }
  const [from, to] = [toPixel([0, 0]), toPixel([1, 0])]
  const way = between(from, to)
  const length = Math.hypot(...way)
  return { origin: from, back: [way[0] / length, way[1] / length], toFoot, toPixel }
}

/** `matrix(a b c d e f)` of SVG. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

/** About the middle of a foot from its origin, millimetres behind and above. */
const middles: Readonly<Partial<Record<PhotoView, Point>>> = {
  lateral: [60, 35],
  medial: [60, 35],
  solar: [60, 0],
}

/**
 * What lays one picture over another so that the feet lie on each other. Where cards take the perspective out it is that
 * of the middle of the foot, which leaves a hundredth at its ends.
 */
export function laying(from: Pose, to: Pose, view: PhotoView): Affine {
  const [x, y] = from.toPixel(middles[view] ?? [0, 0])
  const laid = (pixel: Point) => to.toPixel(from.toFoot(pixel))
  const [at, right, low] = [laid([x, y]), laid([x + 1, y]), laid([x, y + 1])]
  const [a, b] = between(at, right)
  const [c, d] = between(at, low)
  return [a, b, c, d, at[0] - a * x - c * y, at[1] - b * x - d * y]
}

/** Whether lengths of a picture are sure: by the card, on a block, or with the depth of the scale told. */
export const hasSureScale = ({ card, camera, scale }: Landmarks): boolean =>
  card !== undefined || camera === 'block' || camera === 'flat' || scale?.nearer !== undefined

function directionsOf(marks: Marks, view: PhotoView): Frame & { readonly origin: Point } {
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

/** The line that a view is seen against: the card's edge, the ground line, or toe to heel at the ground; null without. */
export function groundLine({ card, lines, points }: Landmarks): readonly [Point, Point] | null {
  const { 'toe-at-ground': toe, 'heel-at-ground': heel } = points
  if (card) {
    const plane = cardPlane(card)
    const along = [toe, heel].flatMap((point) => (point ? [through(plane, point)[0]] : []))
    const [from, to] = [Math.min(0, ...along) - 30, Math.max(card.width, ...along) + 30]
    const picture = inverseOf(plane)
    return [through(picture, [from, 0]), through(picture, [to, 0])]
  }
  return lines.ground ?? (toe && heel ? [toe, heel] : null)
}
