/** The marked lines of a picture as drawn over it, each with what it measures. Places in hundredths of the picture. */
import {
  groundLine,
  type LandmarkPoint,
  type Landmarks,
  measureLandmarks,
  type PhotoView,
  type Point,
} from '../../hoof/landmarks.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { poseOf } from '../../hoof/pose.ts'
import type { Formatter } from './format.ts'

/** `ground` and `scale` are what is measured against; `new` is the strip of new growth; `side` all else. */
export type LineKind = 'ground' | 'scale' | 'wall' | 'new' | 'side'

export interface MarkedLine {
  readonly kind: LineKind
  /** `41.5%`, from the left or the upper edge. */
  readonly x1: string
  readonly y1: string
  readonly x2: string
  readonly y2: string
  readonly label: LineLabel | null
}

export interface LineLabel {
  /** One value a row, each with its shift down, screen pixels. */
  readonly rows: readonly { readonly text: string; readonly dy: number }[]
  readonly x: string
  readonly y: string
  /** Screen pixels. */
  readonly dx: number
  readonly anchor: 'start' | 'middle' | 'end'
}

interface Size {
  readonly width: number
  readonly height: number
}

/** Where a label stands beside its line: to the left, to the right, over it, under it. */
type Beside = 'left' | 'right' | 'over' | 'under'

interface Drawn {
  readonly kind: LineKind
  readonly line: readonly [Point, Point]
  readonly measures?: readonly AnyMeasureId[]
  readonly text?: string
  readonly beside?: Beside
  /** Where along the line its label stands, 0 to 1; the middle unless said. */
  readonly along?: number
}

/** Screen pixels between a line and its label. */
const gap = 9
const rowHeight = 16
/** Nearer to the edge than this share of the width, a label would be cut off on a phone: it goes to the other side. */
const edgeShare = 0.25

/** Lines that the points allow, with the values of `measureLandmarks` beside them. */
export function markedLines(
  landmarks: Landmarks,
  view: PhotoView,
  size: Size,
  format: Formatter,
): readonly MarkedLine[] {
  const values = new Map(measureLandmarks(landmarks, view).map(({ measure, value }) => [measure, value]))
  const said = (ids: readonly AnyMeasureId[]) =>
    ids.flatMap((id) => {
      const value = values.get(id)
      return value === undefined ? [] : [format.measure(id, value)]
    })
  return [...(landmarks.card ? [] : scaleLine(landmarks, format)), ...linesOf(landmarks, view)].map(
    (drawn) => {
      const { kind, line, measures = [], beside = 'right', along = 0.5 } = drawn
      const rows = drawn.text === undefined ? said(measures) : [drawn.text]
      const [from, to] = line
      const at: Point = [from[0] + along * (to[0] - from[0]), from[1] + along * (to[1] - from[1])]
      return {
        kind,
        x1: share(from[0], size.width),
        y1: share(from[1], size.height),
        x2: share(to[0], size.width),
        y2: share(to[1], size.height),
        label: rows.length === 0 ? null : labelAt(rows, at, beside, size),
      }
    },
  )
}

const share = (at: number, of: number) => `${((at / of) * 100).toFixed(2)}%`

function labelAt(texts: readonly string[], [x, y]: Point, beside: Beside, size: Size): LineLabel {
  const place = { x: share(x, size.width), y: share(y, size.height) }
  const stacked = (middle: number) =>
    texts.map((text, i) => ({ text, dy: middle + (i - (texts.length - 1) / 2) * rowHeight }))
  if (beside === 'over') return { ...place, rows: stacked(-gap - 2), dx: 0, anchor: 'middle' }
  if (beside === 'under') return { ...place, rows: stacked(gap + 4), dx: 0, anchor: 'middle' }
  const across = x / size.width
  const toTheLeft = beside === 'left' ? across > edgeShare : across > 1 - edgeShare
  return { ...place, rows: stacked(0), dx: toTheLeft ? -gap : gap, anchor: toTheLeft ? 'end' : 'start' }
}

function scaleLine({ scale }: Landmarks, format: Formatter): readonly Drawn[] {
  if (scale === null) return []
  const { from, to, length } = scale
  const isUpright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0])
  const beside = isUpright ? 'right' : 'under'
  return [{ kind: 'scale', line: [from, to], text: format.length(length), beside }]
}

function linesOf(landmarks: Landmarks, view: PhotoView): readonly Drawn[] {
  if (view === 'lateral' || view === 'medial') return sideLines(landmarks, view)
  if (view === 'solar') return soleLines(landmarks)
  return view === 'behind' ? heelLines(landmarks) : []
}

/** A line between two points that are both marked. */
const joined = (
  { points }: Landmarks,
  from: LandmarkPoint,
  to: LandmarkPoint,
  drawn: Omit<Drawn, 'line'>,
): readonly Drawn[] => {
  const [a, b] = [points[from], points[to]]
  return a && b ? [{ ...drawn, line: [a, b] }] : []
}

function sideLines(landmarks: Landmarks, view: 'lateral' | 'medial'): readonly Drawn[] {
  const { points, lines } = landmarks
  const facesLeft = (poseOf({ ...landmarks, scale: anyScale }, view)?.back[0] ?? 1) > 0
  const [front, behind] = facesLeft ? (['left', 'right'] as const) : (['right', 'left'] as const)
  const hasStrip = points['new-growth-ends'] !== undefined
  const ground = groundLine(landmarks)
  return [
    ...(ground ? [{ kind: 'ground', line: ground } as const] : []),
    ...joined(landmarks, 'toe-at-ground', 'heel-at-ground', {
      kind: 'side',
      measures: ['bearing-length'],
      beside: 'over',
    }),
    ...joined(landmarks, 'toe-at-ground', hasStrip ? 'new-growth-ends' : 'toe-at-hairline', {
      kind: 'wall',
      measures: ['toe-angle', 'toe-length'],
      beside: front,
    }),
    ...joined(landmarks, 'new-growth-ends', 'toe-at-hairline', {
      kind: 'new',
      measures: ['new-angle', 'new-length'],
      beside: front,
    }),
    ...joined(landmarks, 'heel-at-ground', 'heel-at-hairline', {
      kind: 'side',
      measures: ['heel-angle', view === 'lateral' ? 'heel-lateral' : 'heel-medial'],
      beside: behind,
    }),
    ...joined(landmarks, 'toe-at-hairline', 'heel-at-hairline', {
      kind: 'side',
      measures: ['coronet-angle'],
      beside: 'over',
    }),
    ...(lines.pastern
      ? [{ kind: 'side', line: lines.pastern, measures: ['pastern-angle'], beside: front } as const]
      : []),
  ]
}

/** The pose's directions need no scale; this one only fills the place. */
const anyScale = { from: [0, 0], to: [1, 0], length: 1 } as const

function soleLines(landmarks: Landmarks): readonly Drawn[] {
  const { 'heel-medial': medial, 'heel-lateral': lateral, toe } = landmarks.points
  const heels = medial && lateral ? ([medial, lateral] as const) : null
  return [
    ...(heels ? [{ kind: 'ground', line: heels } as const] : []),
    ...(heels && toe
      ? [
          {
            kind: 'wall',
            line: [toe, footOn(heels, toe)],
            measures: ['bearing-length'],
            beside: 'left',
            along: 0.8,
          } as const,
        ]
      : []),
    ...joined(landmarks, 'widest-medial', 'widest-lateral', {
      kind: 'side',
      measures: ['width'],
      beside: 'over',
      along: 0.2,
    }),
    ...joined(landmarks, 'frog-tip', 'frog-base', { kind: 'side', measures: ['frog-length'] }),
    ...joined(landmarks, 'frog-tip', 'breakover', { kind: 'new', measures: ['breakover'] }),
  ]
}

/** Both heels down to the ground line. */
function heelLines(landmarks: Landmarks): readonly Drawn[] {
  const { 'heel-medial': medial, 'heel-lateral': lateral } = landmarks.points
  const { ground } = landmarks.lines
  if (!ground) return []
  return [
    { kind: 'ground', line: ground },
    ...[medial, lateral].flatMap((heel) =>
      heel ? [{ kind: 'wall', line: [heel, footOn(ground, heel)] } as const] : [],
    ),
    ...joined(landmarks, 'heel-medial', 'heel-lateral', {
      kind: 'side',
      measures: ['heel-balance'],
      beside: 'over',
    }),
  ]
}

/** The point of a line that lies square below another point. */
function footOn([a, b]: readonly [Point, Point], p: Point): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)
  return [a[0] + t * dx, a[1] + t * dy]
}
