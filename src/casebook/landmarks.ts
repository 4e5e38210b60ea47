/** Marked points of a photo entry, in pixels of the upright picture, and whether they can be. */
import { cardWidth } from '../hoof/card.ts'
import type { Foot } from '../hoof/feet.ts'
import { doubtedLandmarks } from '../hoof/landmark-guard.ts'
import type { LandmarkLine, LandmarkPoint, Landmarks, PhotoView, Point } from '../hoof/landmarks.ts'
import type { Place } from '../hoof/plane.ts'
import type { Camera } from '../hoof/stance.ts'
import { parseLength, parseNumber } from '../hoof/units.ts'
import {
  type Field,
  field,
  type ParseContext,
  type Reader,
  type Resolved,
  sentence,
  wrongForm,
} from './fields.ts'
import type { TextRange } from './report.ts'
import { listed } from './words.ts'
import type { YamlMap, YamlNode } from './yaml-tree.ts'

type Line = readonly [Point, Point]
type Scale = NonNullable<Landmarks['scale']>
type CardWritten = Pick<Landmarks, 'card' | 'cardTold'>
interface Placed<T> {
  readonly value: T
  readonly range: TextRange
}

const side: readonly PhotoView[] = ['lateral', 'medial']
const solar: readonly PhotoView[] = ['solar']

/** In which views a point or line is marked. */
const pointViews: Readonly<Record<LandmarkPoint, readonly PhotoView[]>> = {
  'toe-at-ground': side,
  'toe-at-hairline': side,
  'new-growth-ends': side,
  'heel-at-ground': side,
  'heel-at-hairline': side,
  'frog-tip': solar,
  'frog-base': solar,
  toe: solar,
  'heel-medial': ['solar', 'behind'],
  'heel-lateral': ['solar', 'behind'],
  'widest-medial': solar,
  'widest-lateral': solar,
  breakover: solar,
}
const lineViews: Readonly<Record<LandmarkLine, readonly PhotoView[]>> = {
  ground: [...side, 'front', 'behind'],
  pastern: side,
}

const pointNames = Object.keys(pointViews) as readonly LandmarkPoint[]
const lineNames = Object.keys(lineViews) as readonly LandmarkLine[]

const pairIn = (value: YamlNode): Point | null => {
  if (value.kind !== 'list' || value.items.length !== 2) return null
  const [x, y] = value.items.map((item) => (item.kind === 'text' ? parseNumber(item.text) : null))
  return typeof x === 'number' && typeof y === 'number' ? [x, y] : null
}

const pointIn = (value: YamlNode): Point | null => {
  const pair = pairIn(value)
  return pair && pair[0] >= 0 && pair[1] >= 0 ? pair : null
}

const same = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1]

const point: Reader<Placed<Point>> = (value, context, name) => {
  const read = pointIn(value)
  return read ? { value: read, range: value } : wrongForm(value, context, name, 'a point in pixels: [x, y]')
}

const line: Reader<Placed<Line>> = (value, context, name) => {
  const [a, b] = value.kind === 'list' && value.items.length === 2 ? value.items.map(pointIn) : []
  if (!a || !b) return wrongForm(value, context, name, 'two points in pixels: [[x, y], [x, y]]')
  if (!same(a, b)) return { value: [a, b], range: value }
  context.report.error(
    'landmark-impossible',
    value,
    `${sentence(name)} has the same point twice, so it has no direction.`,
    {
      expected: 'two points well apart',
    },
  )
  return undefined
}

/** `30 mm nearer`, or `further`: how much nearer to the camera than the foot's plane something lies. */
function nearerIn(value: YamlNode | undefined, context: ParseContext): number | null {
  const match = value?.kind === 'text' ? /^(.+?)\s+(nearer|further|farther)$/i.exec(value.text.trim()) : null
  const length = match && parseLength(match[1] ?? '', context.units)
  if (!length || length.mm < 0 || length.mm > 1000) return null
  return match?.[2]?.toLowerCase() === 'nearer' ? length.mm : -length.mm
}

/** `[[x, y], [x, y], 100 mm]` or `{from: [x, y], to: [x, y], length: 100 mm}`; `30 mm nearer` may follow. */
const scale: Reader<Placed<Scale>> = (value, context, name) => {
  const parts = scaleParts(value)
  const from = parts?.[0] && pointIn(parts[0])
  const to = parts?.[1] && pointIn(parts[1])
  const lengthText = parts?.[2]
  const length = lengthText?.kind === 'text' ? parseLength(lengthText.text, context.units) : null
  const nearer = nearerIn(parts?.[3], context)
  if (!from || !to || !length || !lengthText || (parts?.[3] && nearer === null)) {
    return wrongForm(
      value,
      context,
      name,
      'two points in pixels and the length between them: [[x, y], [x, y], 100 mm], and where it lies nearer to the camera than the foot: [[x, y], [x, y], 100 mm, 30 mm nearer]',
    )
  }
  if (same(from, to) || length.mm <= 0) {
    const message = same(from, to)
      ? 'The scale has the same point twice.'
      : 'The length of the scale is not above zero.'
    context.report.error('landmark-impossible', length.mm <= 0 ? lengthText : value, message, {
      expected: 'two points well apart, and the true length between them',
    })
    return undefined
  }
  return { value: { from, to, length: length.mm, ...(nearer !== null && { nearer }) }, range: value }
}

function scaleParts(value: YamlNode): readonly YamlNode[] | null {
  if (value.kind === 'list') return [3, 4].includes(value.items.length) ? value.items : null
  const parts = partsOf(value, ['from', 'to', 'length', 'nearer'], 3)
  return parts?.filter((part) => part !== undefined) ?? null
}

/** The values of a map by these keys and no others, of which the first so many must be there. */
function partsOf(
  value: YamlNode,
  keys: readonly string[],
  wanted: number,
): readonly (YamlNode | undefined)[] | null {
  if (value.kind !== 'map' || value.entries.some(({ key }) => !keys.includes(key.text))) return null
  const parts = keys.map((key) => value.entries.find((entry) => entry.key.text === key)?.value)
  return parts.slice(0, wanted).every((part) => part !== undefined) ? parts : null
}

const cardForm =
  'the card as it was found: {corners: [[x, y], [x, y], [x, y], [x, y]], width: 180 mm, camera: [x, y, z]}, with nearer: 30 mm nearer where that is so; or only 30 mm nearer; or none'

/** The card as marking wrote it down; or only how it stands, so that it is looked for; or `none`, so that it is not. */
const card: Reader<Placed<CardWritten>> = (value, context, name) => {
  const told = nearerIn(value, context)
  if (told !== null) return { value: { cardTold: { nearer: told } }, range: value }
  if (value.kind === 'text' && value.text.trim().toLowerCase() === 'none')
    return { value: { cardTold: 'none' }, range: value }
  const [cornersNode, widthNode, cameraNode, nearerNode] =
    partsOf(value, ['corners', 'width', 'camera', 'nearer'], 1) ?? []
  // A corner may lie out of the picture.
  const corners = cornersNode?.kind === 'list' ? cornersNode.items.map(pairIn) : []
  const [a, b, c, d] = corners
  const width =
    widthNode?.kind === 'text' ? (parseLength(widthNode.text, context.units)?.mm ?? null) : cardWidth
  const camera = cameraNode ? placeIn(cameraNode) : null
  const nearer = nearerIn(nearerNode, context)
  if (!a || !b || !c || !d || corners.length !== 4 || width === null || width <= 0)
    return wrongForm(value, context, name, cardForm)
  if ((cameraNode && camera === null) || (nearerNode && nearer === null))
    return wrongForm(value, context, name, cardForm)
  if (!isConvex([a, b, c, d])) {
    context.report.error('landmark-impossible', value, 'The corners of the card cross.', {
      expected: 'lower left, lower right, upper right, upper left',
    })
    return undefined
  }
  return { value: { card: { corners: [a, b, c, d], width, camera, nearer } }, range: value }
}

/** Counterclockwise as seen, since pixels count down. */
const isConvex = (corners: readonly Point[]): boolean =>
  corners.every((a, i) => {
    const [b, c] = [corners[(i + 1) % 4] ?? a, corners[(i + 2) % 4] ?? a]
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < 0
  })

/** Millimetres from the card's lower left corner: right, up, out. */
const placeIn = (value: YamlNode): Place | null => {
  if (value.kind !== 'list' || value.items.length !== 3) return null
  const [x, y, z] = value.items.map((item) => (item.kind === 'text' ? parseNumber(item.text) : null))
  return typeof x === 'number' && typeof y === 'number' && typeof z === 'number' && z > 0 ? [x, y, z] : null
}

const cameraWords: Readonly<Record<string, Camera>> = {
  'on a block': 'block',
  block: 'block',
  'by hand': 'yard',
  flat: 'flat',
}

/** `on a block`, `by hand`, `flat` (a drawing, or a tracing on a scanner), or `{height: 60 cm, distance: 120 cm}`. */
const camera: Reader<Camera> = (value, context, name) => {
  const word = value.kind === 'text' ? cameraWords[value.text.trim().toLowerCase()] : undefined
  if (word) return word
  const lengths = partsOf(value, ['height', 'distance'], 2)?.map((part) =>
    part?.kind === 'text' ? (parseLength(part.text, context.units)?.mm ?? null) : null,
  )
  const [height, distance] = lengths ?? []
  if (typeof height !== 'number' || typeof distance !== 'number' || height < 0 || distance < 100)
    return wrongForm(
      value,
      context,
      name,
      'on a block, by hand, flat (a drawing or a scan), or {height: 60 cm, distance: 120 cm}',
    )
  return { height, distance }
}

const spoken = (name: string): string => name.replaceAll('-', ' ')

/** Keys of a photo entry that mark points. */
export const landmarkFields: Readonly<Record<string, Field<unknown>>> = {
  scale: field<unknown>(scale, null),
  card: field<unknown>(card, null),
  camera: field<unknown>(camera, null),
  ...Object.fromEntries(lineNames.map((name) => [spoken(name), field<unknown>(line, null)])),
  ...Object.fromEntries(pointNames.map((name) => [spoken(name), field<unknown>(point, null)])),
}

/** The landmarks of an entry read by `landmarkFields`; null when none are marked. Impossible ones are reported and left out. */
export function landmarksOf(
  read: Resolved<typeof landmarkFields>,
  { view, foot }: { readonly view: PhotoView; readonly foot: Foot | null },
  entry: YamlMap,
  context: ParseContext,
): Landmarks | null {
  const points = placedOf<Point>(read, pointNames)
  const lines = placedOf<Line>(read, lineNames)
  const scaleRead = read.scale as Placed<Scale> | null
  const cardRead = read.card as Placed<CardWritten> | null
  const cameraRead = read.camera as Camera | null
  if (!scaleRead && !cardRead?.value.card && points.size === 0 && lines.size === 0) return null
  warnOfView(points, pointViews, view, context)
  warnOfView(lines, lineViews, view, context)
  if (!allApart(points, context)) return null
  const landmarks: Landmarks = {
    scale: scaleRead?.value ?? null,
    ...cardRead?.value,
    ...(cameraRead !== null && { camera: cameraRead }),
    lines: valuesOf(lines),
    points: valuesOf(points),
  }
  const placed = new Map<string, TextRange>(
    [...points, ...lines].map(([name, one]) => [spoken(name), one.range]),
  )
  if (scaleRead) placed.set('scale', scaleRead.range)
  if (cardRead) placed.set('card', cardRead.range)
  let stands = true
  for (const { at, isImpossible, message, expected } of doubtedLandmarks(landmarks, view, foot)) {
    const add = isImpossible ? context.report.error : context.report.warning
    add(isImpossible ? 'landmark-impossible' : 'landmark-unlikely', placed.get(at) ?? entry, message, {
      expected,
    })
    stands &&= !isImpossible
  }
  if (!stands) return null
  if (!scaleRead && !cardRead && points.size > 0 && !lines.has('ground')) {
    context.report.warning(
      'landmark-no-scale',
      entry,
      'Points are marked, but neither a scale nor the ground line.',
      {
        expected: 'scale for lengths, ground for angles; or the card for both',
      },
    )
  }
  return landmarks
}

function placedOf<T>(
  read: Readonly<Record<string, unknown>>,
  names: readonly string[],
): Map<string, Placed<T>> {
  const placed = new Map<string, Placed<T>>()
  for (const name of names) {
    const one = read[spoken(name)]
    if (one) placed.set(name, one as Placed<T>)
  }
  return placed
}

const valuesOf = <T>(placed: ReadonlyMap<string, Placed<T>>): Readonly<Record<string, T>> =>
  Object.fromEntries([...placed].map(([name, one]) => [name, one.value]))

function warnOfView(
  placed: ReadonlyMap<string, Placed<unknown>>,
  views: Readonly<Record<string, readonly PhotoView[]>>,
  view: PhotoView,
  context: ParseContext,
): void {
  for (const [name, { range }] of placed) {
    const wanted = views[name] ?? []
    if (wanted.includes(view)) continue
    context.report.warning(
      'landmark-view',
      range,
      `${sentence(spoken(name))} says nothing in a ${view} view.`,
      {
        expected: `it is marked in a view: ${listed(wanted)}`,
      },
    )
  }
}

function allApart(points: ReadonlyMap<string, Placed<Point>>, context: ParseContext): boolean {
  const placed = [...points]
  let apart = true
  placed.forEach(([name, one], index) => {
    const twin = placed.slice(0, index).find(([, other]) => same(one.value, other.value))
    if (!twin) return
    apart = false
    context.report.error(
      'landmark-impossible',
      one.range,
      `${sentence(spoken(name))} is the very point that ${spoken(twin[0])} is.`,
      { expected: 'two different points' },
    )
  })
  return apart
}
