/**
 * Marked points as they would lie if the camera had stood square before the foot and the scale in its plane: as far as that
 * is told or known by the card, and as it may be off.
 */
import { assumedCamera, cardPlane, type PlacedCard } from './card.ts'
import { at, between, dot, type Frame, frameOf, isSide, type Landmarks, type PhotoView } from './marks.ts'
import { inFront, onTurned, type Place, type Point, through } from './plane.ts'
import { frogDepths, heelOut, type Stance, soleLeanSd, stanceOf, toeRound } from './stance.ts'

export interface Picture {
  readonly landmarks: Landmarks
  readonly view: PhotoView
  readonly stance: Stance
}

export const pictureOf = (landmarks: Landmarks, view: PhotoView): Picture => ({
  landmarks,
  view,
  stance: stanceOf(landmarks.camera ?? 'yard', landmarks.scale?.nearer !== undefined),
})

/** What the points do not show, each as far as it is off from what is told or assumed. */
export interface Doubts {
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

export const certain: Doubts = {
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

/** Points in the foot's plane, with the length that the scale stands for there. */
export function flattened(
  picture: Picture,
  marks: ReadonlyMap<string, Point>,
  doubts: Doubts,
): readonly [ReadonlyMap<string, Point>, number | null] {
  const { card } = picture.landmarks
  return card
    ? [onCard(picture, card, marks, doubts), 1]
    : [upright(picture, marks, doubts), scaleLengthOf(picture, doubts)]
}

/** The scale's length as it would be in the foot's plane: one that lies nearer looks longer. */
export function scaleLengthOf({ landmarks: { scale }, stance }: Picture, { nearer }: Doubts): number | null {
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
export function doubtsOf({
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

/** Down is down: of a camera that looks down, the yaw alone may be either way. */
export function signed(doubt: Partial<Doubts>, sign: number): Doubts {
  const turned = Object.entries(doubt).map(([name, by]) => [name, name === 'down' ? by : sign * by] as const)
  return { ...certain, ...Object.fromEntries(turned) }
}
