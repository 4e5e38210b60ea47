/** Where the next point is to be looked for, from those that are set: a foot's usual proportions, so that it is in view. */
import { type Foot, sideOf } from '../../../src/hoof/feet.ts'
import type { Point } from '../../../src/hoof/landmarks.ts'

export interface Known {
  readonly view: string
  readonly foot: Foot | null
  readonly marks: Readonly<Record<string, Point>>
  /** Pixels to a millimetre of the foot, where the scale or the card says it. */
  readonly pixelsPerMm: number | null
}

/** Millimetres from a point that is set: toward the heel and up; on the sole to the lateral side and toward the heels. */
type Hint = readonly [from: string, along: number, up: number]

const sideHints: Readonly<Record<string, readonly Hint[]>> = {
  'toe-at-hairline': [['toe-at-ground', 58, 70]],
  'heel-at-ground': [['toe-at-ground', 118, 0]],
  'heel-at-hairline': [['heel-at-ground', 28, 28]],
  'pastern from': [['toe-at-hairline', 5, 7]],
  'pastern to': [['toe-at-hairline', 44, 62]],
}
const soleHints: Readonly<Record<string, readonly Hint[]>> = {
  breakover: [['toe', 0, 10]],
  'frog-tip': [['toe', 0, 38]],
  'frog-base': [['frog-tip', 0, 72]],
  'widest-medial': [['toe', -60, 58]],
  'widest-lateral': [['toe', 60, 58]],
  'heel-medial': [['toe', -38, 118]],
  'heel-lateral': [['toe', 38, 118]],
}

/** Null where nothing tells. */
export function nextPlace(id: string, known: Known): Point | null {
  const { marks, view } = known
  if (id === 'new-growth-ends') return part(marks['toe-at-ground'], marks['toe-at-hairline'], 0.75)
  const isSole = view === 'solar'
  const frame = isSole ? soleFrame(known) : sideFrame(known)
  if (frame === null) return null
  const hints = (isSole ? soleHints : sideHints)[id] ?? []
  for (const [name, along, up] of hints) {
    const from = marks[name]
    if (from)
      return [
        from[0] + along * frame.along[0] + up * frame.up[0],
        from[1] + along * frame.along[1] + up * frame.up[1],
      ]
  }
  return null
}

const part = (from: Point | undefined, to: Point | undefined, share: number): Point | null =>
  from && to ? [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])] : null

/** Pixels that a millimetre goes, toward the heel and up. */
interface Frame {
  readonly along: Point
  readonly up: Point
}

function sideFrame({ marks, foot, view, pixelsPerMm }: Known): Frame | null {
  const [toe, hair] = [marks['toe-at-ground'], marks['toe-at-hairline']]
  const wall = toe && hair ? Math.hypot(hair[0] - toe[0], hair[1] - toe[1]) / 90 : null
  const mm = pixelsPerMm ?? wall
  if (mm === null) return null
  const looksLeft =
    toe && hair ? hair[0] > toe[0] : foot === null ? null : (sideOf(foot) === 'left') === (view === 'lateral')
  if (looksLeft === null) return null
  return { along: [looksLeft ? mm : -mm, 0], up: [0, -mm] }
}

function soleFrame({ marks, foot, pixelsPerMm }: Known): Frame | null {
  const { toe, 'frog-tip': tip } = marks
  const reach = toe && tip ? Math.hypot(tip[0] - toe[0], tip[1] - toe[1]) : null
  const mm = pixelsPerMm ?? (reach === null ? null : reach / 38)
  if (mm === null) return null
  // As most pictures are taken: the toe up, unless the frog says otherwise.
  const back: Point = toe && tip && reach ? [(tip[0] - toe[0]) / reach, (tip[1] - toe[1]) / reach] : [0, 1]
  const side = foot !== null && sideOf(foot) === 'right' ? -1 : 1
  return { along: [mm * side * back[1], mm * -side * back[0]], up: [mm * back[0], mm * back[1]] }
}
