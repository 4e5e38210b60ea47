/**
 * The marked points and lines of a picture as drawn over it: letters at the points, and in the margin what is measured
 * between them. Places in hundredths of the picture.
 */
import {
  groundLine,
  type LandmarkPoint,
  type Landmarks,
  measureLandmarks,
  type PhotoView,
  type Point,
} from '../../hoof/landmarks.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
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
}

/** An end of a measured line, with its letter a little aside. */
export interface MarkedPoint {
  readonly letter: string
  readonly x: string
  readonly y: string
  /** Where the letter stands, screen pixels from the point. */
  readonly dx: number
  readonly dy: number
}

/** A line of the margin: between which letters what was measured. */
export interface MarginEntry {
  readonly kind: LineKind
  readonly letters: string
  readonly texts: readonly string[]
}

export interface MarkedPicture {
  readonly lines: readonly MarkedLine[]
  readonly points: readonly MarkedPoint[]
  readonly margin: readonly MarginEntry[]
}

interface Size {
  readonly width: number
  readonly height: number
}

interface Drawn {
  readonly kind: LineKind
  readonly line: readonly [Point, Point]
  readonly measures?: readonly AnyMeasureId[]
  readonly text?: string
}

/** Points and lines that were marked, with the values of `measureLandmarks` in the margin. */
export function markedPicture(
  landmarks: Landmarks,
  view: PhotoView,
  size: Size,
  format: Formatter,
): MarkedPicture {
  const values = new Map(measureLandmarks(landmarks, view).map(({ measure, value }) => [measure, value]))
  const drawn = [...linesOf(landmarks, view), ...(landmarks.card ? [] : scaleLine(landmarks, format))].map(
    (one) => ({
      ...one,
      texts: textsOf(one, values, format),
    }),
  )
  const measured = drawn.filter(({ texts }) => texts.length > 0)
  const places = [...new Map(measured.flatMap(({ line }) => line).map((at) => [at.join(), at])).values()]
  const letterOf = (at: Point) => letters[places.findIndex((one) => one.join() === at.join())] ?? ''
  return {
    lines: drawn.map(({ kind, line: [from, to] }) => ({
      kind,
      x1: share(from[0], size.width),
      y1: share(from[1], size.height),
      x2: share(to[0], size.width),
      y2: share(to[1], size.height),
    })),
    points: lettersBeside(places, size).map(({ at, dx, dy }) => ({
      letter: letterOf(at),
      x: share(at[0], size.width),
      y: share(at[1], size.height),
      dx,
      dy,
    })),
    margin: measured.map(({ kind, line: [from, to], texts }) => ({
      kind,
      letters: `${letterOf(from)}${letterOf(to)}`,
      texts,
    })),
  }
}

const letters = [...'abcdefghijklmnopqrstuvwxyz']

const textsOf = (
  { measures = [], text }: Drawn,
  values: ReadonlyMap<AnyMeasureId, number>,
  format: Formatter,
): readonly string[] => [
  ...measures.flatMap((id) => {
    const value = values.get(id)
    return value === undefined ? [] : [`${format.name(id)} ${format.measure(id, value)}`]
  }),
  ...(text === undefined ? [] : [text]),
]

const share = (at: number, of: number) => `${((at / of) * 100).toFixed(2)}%`

/** A letter's distance from its point, and how near two letters may come, screen pixels. */
const aside = 17
const apart = 21
/** Width at which letters are kept apart: that of a phone. */
const narrow = 320
/** Nearer to an edge than this, a letter would be cut off. */
const edge = 11
const turns = [0, 30, -30, 60, -60, 90, -90, 120, -120, 150, -150, 180]

/** Each letter outward from the middle of all points, turned aside where another point or letter stands. */
function lettersBeside(places: readonly Point[], size: Size) {
  const scale = narrow / size.width
  const onScreen = places.map(([x, y]): Point => [x * scale, y * scale])
  const middle: Point = [mean(onScreen.map(([x]) => x)), mean(onScreen.map(([, y]) => y))]
  const taken: Point[] = []
  return places.map((at, i) => {
    const [x, y] = onScreen[i] ?? middle
    const outward = Math.atan2(y - middle[1], x - middle[0])
    const spots = turns.map((turn): Point => {
      const angle = outward + (turn * Math.PI) / 180
      return [x + aside * Math.cos(angle), y + aside * Math.sin(angle)]
    })
    const isFree = (spot: Point) =>
      spot[0] > edge &&
      spot[0] < narrow - edge &&
      spot[1] > edge &&
      spot[1] < size.height * scale - edge &&
      taken.every((other) => distance(spot, other) > apart) &&
      onScreen.every((other) => distance(spot, other) > apart - aside + edge)
    const spot = spots.find(isFree) ?? spots[0] ?? [x, y]
    taken.push(spot)
    return { at, dx: Math.round(spot[0] - x), dy: Math.round(spot[1] - y) }
  })
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)
const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

function scaleLine({ scale }: Landmarks, format: Formatter): readonly Drawn[] {
  if (scale === null) return []
  const text = format.words.photos.scale(format.length(scale.length))
  return [{ kind: 'scale', line: [scale.from, scale.to], text }]
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
  const hasStrip = points['new-growth-ends'] !== undefined
  const ground = groundLine(landmarks)
  return [
    ...(ground ? [{ kind: 'ground', line: ground } as const] : []),
    ...joined(landmarks, 'toe-at-ground', 'heel-at-ground', {
      kind: 'side',
      measures: ['bearing-length'],
    }),
    ...joined(landmarks, 'toe-at-ground', hasStrip ? 'new-growth-ends' : 'toe-at-hairline', {
      kind: 'wall',
      measures: ['toe-angle', 'toe-length'],
    }),
    ...joined(landmarks, 'new-growth-ends', 'toe-at-hairline', {
      kind: 'new',
      measures: ['new-angle', 'new-length'],
    }),
    ...joined(landmarks, 'heel-at-ground', 'heel-at-hairline', {
      kind: 'side',
      measures: ['heel-angle', view === 'lateral' ? 'heel-lateral' : 'heel-medial'],
    }),
    ...joined(landmarks, 'toe-at-hairline', 'heel-at-hairline', {
      kind: 'side',
      measures: ['coronet-angle'],
    }),
    ...(lines.pastern ? [{ kind: 'side', line: lines.pastern, measures: ['pastern-angle'] } as const] : []),
  ]
}

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
          } as const,
        ]
      : []),
    ...joined(landmarks, 'widest-medial', 'widest-lateral', {
      kind: 'side',
      measures: ['width'],
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
    }),
  ]
}

/** The point of a line that lies square below another point. */
function footOn([a, b]: readonly [Point, Point], p: Point): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)
  return [a[0] + t * dx, a[1] + t * dy]
}
