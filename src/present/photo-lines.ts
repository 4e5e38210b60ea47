/** The marked lines of a picture as drawn over it, each with what it measures. Places in hundredths of the picture. */
import {
  groundLine,
  type LandmarkPoint,
  type Landmarks,
  measureLandmarks,
  type PhotoView,
  type Point,
  poseOf,
} from '../hoof/landmarks.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
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
  readonly text: string
  readonly x: string
  readonly y: string
  /** Screen pixels. */
  readonly dx: number
  readonly dy: number
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
}

/** Screen pixels between a line and its label. */
const gap = 9
/** Nearer to the edge than this share of the width, a label would be cut off: it goes to the other side of its line. */
const room = 0.27

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
  return [...scaleLine(landmarks, format), ...linesOf(landmarks, view)].map((drawn) => {
    const { kind, line, measures = [], beside = 'right' } = drawn
    const text = drawn.text ?? said(measures).join(' · ')
    const [from, to] = line
    return {
      kind,
      x1: share(from[0], size.width),
      y1: share(from[1], size.height),
      x2: share(to[0], size.width),
      y2: share(to[1], size.height),
      label: text === '' ? null : labelAt(text, middleOf(line), beside, size),
    }
  })
}

const share = (at: number, of: number) => `${((at / of) * 100).toFixed(2)}%`
const middleOf = ([a, b]: readonly [Point, Point]): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

function labelAt(text: string, [x, y]: Point, beside: Beside, size: Size): LineLabel {
  const place = { text, x: share(x, size.width), y: share(y, size.height) }
  if (beside === 'over') return { ...place, dx: 0, dy: -gap, anchor: 'middle' }
  if (beside === 'under') return { ...place, dx: 0, dy: 2 * gap, anchor: 'middle' }
  const across = x / size.width
  const toTheLeft = beside === 'left' ? across > room : across > 1 - room
  return toTheLeft
    ? { ...place, dx: -gap, dy: 0, anchor: 'end' }
    : { ...place, dx: gap, dy: 0, anchor: 'start' }
}

const scaleLine = ({ scale }: Landmarks, format: Formatter): readonly Drawn[] =>
  scale === null
    ? []
    : [{ kind: 'scale', line: [scale.from, scale.to], text: format.length(scale.length), beside: 'under' }]

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
      beside: 'under',
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
          } as const,
        ]
      : []),
    ...joined(landmarks, 'widest-medial', 'widest-lateral', {
      kind: 'side',
      measures: ['width'],
      beside: 'over',
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
