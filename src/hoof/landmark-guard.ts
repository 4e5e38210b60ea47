/** Points that cannot be where they are, or hardly: named while they are set, and when a case file is read. */
import { isUpright } from './card.ts'
import { type Foot, sideOf } from './feet.ts'
import { between, dot, isSide, type Landmarks, type PhotoView } from './marks.ts'
import type { Point } from './plane.ts'

export interface LandmarkDoubt {
  /** Key as the case file writes it: `toe at ground`, `scale`. */
  readonly at: string
  readonly isImpossible: boolean
  readonly message: string
  readonly expected: string
}

/** Fewest pixels of a scale of which the taps do not take more than a twentieth. */
const leastScalePixels = 60
/** Shorter than this, a scale that is set a millimetre off is off by a twentieth. */
const leastScaleLength = 20
/** A point at the ground lies no further off the ground line than this share of the hairline's height over it. */
const mostOffGround = 0.45
/** Where new growth ends lies no further off the toe wall than this share of it. */
const mostOffWall = 0.3

export function doubtedLandmarks(
  landmarks: Landmarks,
  view: PhotoView,
  foot: Foot | null,
): readonly LandmarkDoubt[] {
  const doubts = [...doubtedScale(landmarks)]
  if (landmarks.card && view !== 'solar' && !isUpright(landmarks.card))
    return [
      impossible(
        'card',
        'The card does not stand on its long edge, so that edge is not the ground.',
        'a card that stands beside the foot with its arrow down',
      ),
    ]
  if (isSide(view)) doubts.push(...doubtedSide(landmarks, view, foot))
  if (view === 'solar') doubts.push(...doubtedSole(landmarks, foot))
  if (view === 'behind') doubts.push(...doubtedHeels(landmarks, foot))
  return doubts
}

const impossible = (at: string, message: string, expected: string): LandmarkDoubt => ({
  at,
  isImpossible: true,
  message,
  expected,
})
const unlikely = (at: string, message: string, expected: string): LandmarkDoubt => ({
  ...impossible(at, message, expected),
  isImpossible: false,
})
const spoken = (name: string): string => name.replaceAll('-', ' ')
const named = (name: string): string => {
  const words = spoken(name)
  return words.charAt(0).toUpperCase() + words.slice(1)
}

function doubtedScale({ scale }: Landmarks): readonly LandmarkDoubt[] {
  if (scale === null) return []
  const pixels = Math.hypot(...between(scale.from, scale.to))
  if (pixels > 0 && pixels < leastScalePixels)
    return [
      unlikely(
        'scale',
        `The scale is ${Math.round(pixels)} pixels long: a tap that is one off makes every length wrong by ${Math.round(100 / pixels)} %.`,
        'both ends of a scale that is about as long as the foot',
      ),
    ]
  if (scale.length < leastScaleLength)
    return [
      unlikely(
        'scale',
        `A scale of ${Number(scale.length.toFixed(1))} mm is too short to measure a foot by.`,
        'about 100 mm, as a ruler shows them',
      ),
    ]
  return []
}

/** Along the ground line, and above it, in pixels. */
interface Ground {
  along(point: Point): number
  above(point: Point): number
  /** Whether counting along it runs to the right in the picture: 1, or -1. */
  readonly right: number
}

function groundOf(landmarks: Landmarks): Ground | null {
  const { card } = landmarks
  const line = card ? ([card.corners[0], card.corners[1]] as const) : (landmarks.lines.ground ?? null)
  if (line === null) return null
  const [[ax, ay], [bx, by]] = line
  const length = Math.hypot(bx - ax, by - ay)
  if (length === 0) return null
  const right = Math.sign(bx - ax) || 1
  return {
    along: ([x, y]) => ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length,
    // Pixels count down the picture, so above the line means a smaller y at the same x.
    above: ([x, y]) => (((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length) * right,
    right,
  }
}

/**
 * From the side the hairline lies above the ground line, and everything of the heel lies behind the toe. Behind is the
 * way the toe wall leans: from the toe at the ground towards the toe at the hairline, seen along the ground line.
 */
function doubtedSide(
  landmarks: Landmarks,
  view: 'lateral' | 'medial',
  foot: Foot | null,
): readonly LandmarkDoubt[] {
  const { points } = landmarks
  const { 'toe-at-ground': toe, 'toe-at-hairline': hair } = points
  const doubts: LandmarkDoubt[] = []
  const ground = groundOf(landmarks)
  if (ground) {
    for (const name of ['toe-at-hairline', 'heel-at-hairline', 'new-growth-ends'] as const) {
      const at = points[name]
      if (at && ground.above(at) <= 0)
        doubts.push(
          impossible(
            spoken(name),
            `${named(name)} lies below the ground line.`,
            'a point above the ground line',
          ),
        )
    }
  }
  if (!toe || !hair) return doubts
  const wall = between(toe, hair)
  const length = Math.hypot(...wall)
  if (length === 0) return doubts
  if (ground && doubts.length === 0) doubts.push(...offGround(landmarks, ground, ground.above(hair)))
  const strip = points['new-growth-ends']
  if (strip) {
    const [x, y] = between(toe, strip)
    const up = (x * wall[0] + y * wall[1]) / length ** 2
    const off = Math.abs(x * wall[1] - y * wall[0]) / length ** 2
    if (up >= 1)
      doubts.push(
        impossible(
          'new growth ends',
          'New growth ends above the hairline.',
          'a point on the toe wall, between hairline and ground',
        ),
      )
    else if (off > mostOffWall || up <= 0)
      doubts.push(
        impossible(
          'new growth ends',
          'New growth ends off the toe wall.',
          'a point on the toe wall, between hairline and ground',
        ),
      )
  }
  if (!ground) return doubts
  const back = Math.sign(ground.along(hair) - ground.along(toe))
  for (const [name, from] of [
    ['heel-at-ground', toe],
    ['heel-at-hairline', hair],
  ] as const) {
    const at = points[name]
    if (at && back !== 0 && (ground.along(at) - ground.along(from)) * back <= 0)
      doubts.push(
        impossible(
          spoken(name),
          `${named(name)} lies in front of the toe.`,
          'a point behind the toe, where the toe wall leans',
        ),
      )
  }
  if (doubts.length === 0) doubts.push(...facing(back * ground.right, view, foot))
  return doubts
}

function offGround({ points, lines }: Landmarks, ground: Ground, height: number): readonly LandmarkDoubt[] {
  const doubts: LandmarkDoubt[] = []
  for (const name of ['toe-at-ground', 'heel-at-ground'] as const) {
    const at = points[name]
    if (at && Math.abs(ground.above(at)) > mostOffGround * height)
      doubts.push(
        impossible(
          spoken(name),
          `${named(name)} lies far off the ground line.`,
          'a point where the foot stands, and the ground line along the same ground',
        ),
      )
  }
  const { pastern } = lines
  if (pastern) {
    const heights = pastern.map(ground.above)
    if (Math.min(...heights) < 0.6 * height)
      doubts.push(
        impossible(
          'pastern',
          'The pastern is marked on the hoof or on the ground.',
          'two points on the front of the pastern, above the hairline',
        ),
      )
  }
  return doubts
}

/** Seen from its left, a horse looks to the left; the inner side of a foot is seen from the horse's other side. */
function facing(back: number, view: 'lateral' | 'medial', foot: Foot | null): readonly LandmarkDoubt[] {
  if (foot === null || back === 0) return []
  const looksLeft = (sideOf(foot) === 'left') === (view === 'lateral')
  if (looksLeft === back > 0) return []
  const [is, other] = back > 0 ? ['left', 'right'] : ['right', 'left']
  return [
    unlikely(
      'toe at ground',
      `The toe points to the ${is}: from this side the toe of ${foot} points to the ${other}.`,
      'the foot and the view that the picture shows, and a picture that is not mirrored',
    ),
  ]
}

const across = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0]

function doubtedSole({ points }: Landmarks, foot: Foot | null): readonly LandmarkDoubt[] {
  const { 'heel-medial': medial, 'heel-lateral': lateral, toe, breakover } = points
  const { 'frog-tip': tip, 'frog-base': base } = points
  if (!medial || !lateral || !toe) return []
  const heels: Point = [(medial[0] + lateral[0]) / 2, (medial[1] + lateral[1]) / 2]
  const axis = between(heels, toe)
  const length = Math.hypot(...axis)
  if (length === 0) return []
  const forward = (at: Point) => dot(between(heels, at), axis) / length ** 2
  const doubts: LandmarkDoubt[] = []
  if (tip && (forward(tip) >= 1 || forward(tip) <= 0))
    doubts.push(
      impossible(
        'frog tip',
        'The frog tip lies in front of the toe or behind the heels.',
        'a point between toe and heels',
      ),
    )
  if (tip && base && forward(base) >= forward(tip))
    doubts.push(
      impossible('frog base', 'The frog base lies in front of the frog tip.', 'the back end of the frog'),
    )
  if (tip && breakover && forward(breakover) <= forward(tip))
    doubts.push(
      impossible('breakover', 'The breakover lies behind the frog tip.', 'a point between frog tip and toe'),
    )
  // Seen from below with the toe up, the inner side of a left foot is at the left; y runs down.
  const isMedialLeft = across(axis, between(lateral, medial)) < 0
  if (doubts.length === 0 && foot !== null && isMedialLeft !== (sideOf(foot) === 'left'))
    doubts.push(exchangedHeels(foot))
  return doubts
}

function doubtedHeels(landmarks: Landmarks, foot: Foot | null): readonly LandmarkDoubt[] {
  const { 'heel-medial': medial, 'heel-lateral': lateral } = landmarks.points
  if (!medial || !lateral || foot === null) return []
  return medial[0] > lateral[0] === (sideOf(foot) === 'left') ? [] : [exchangedHeels(foot)]
}

const exchangedHeels = (foot: Foot): LandmarkDoubt =>
  unlikely(
    'heel medial',
    `Inner and outer heel lie as they do on the other foot than ${foot}.`,
    'the inner side at heel medial, the foot that the picture shows, and a picture that is not mirrored',
  )
