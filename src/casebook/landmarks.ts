/** Marked points of a photo entry, in pixels of the upright picture, and whether they can be. */
import type { LandmarkLine, LandmarkPoint, Landmarks, PhotoView, Point } from '../hoof/landmarks.ts'
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

const pointIn = (value: YamlNode): Point | null => {
  if (value.kind !== 'list' || value.items.length !== 2) return null
  const [x, y] = value.items.map((item) => (item.kind === 'text' ? parseNumber(item.text) : null))
  return typeof x === 'number' && typeof y === 'number' && x >= 0 && y >= 0 ? [x, y] : null
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

/** `[[x, y], [x, y], 100 mm]` or `{from: [x, y], to: [x, y], length: 100 mm}`. */
const scale: Reader<Placed<Scale>> = (value, context, name) => {
  const parts = scaleParts(value)
  const from = parts?.[0] && pointIn(parts[0])
  const to = parts?.[1] && pointIn(parts[1])
  const lengthText = parts?.[2]
  const length = lengthText?.kind === 'text' ? parseLength(lengthText.text, context.units) : null
  if (!from || !to || !length || !lengthText) {
    return wrongForm(
      value,
      context,
      name,
      'two points in pixels and the length between them: [[x, y], [x, y], 100 mm]',
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
  return { value: { from, to, length: length.mm }, range: value }
}

function scaleParts(value: YamlNode): readonly YamlNode[] | null {
  if (value.kind === 'list') return value.items.length === 3 ? value.items : null
  if (value.kind !== 'map' || value.entries.length !== 3) return null
  const named = (key: string) => value.entries.find((entry) => entry.key.text === key)?.value
  const parts = [named('from'), named('to'), named('length')]
  return parts.every((part) => part !== undefined) ? parts : null
}

const spoken = (name: string): string => name.replaceAll('-', ' ')

/** Keys of a photo entry that mark points. */
export const landmarkFields: Readonly<Record<string, Field<unknown>>> = {
  scale: field<unknown>(scale, null),
  ...Object.fromEntries(lineNames.map((name) => [spoken(name), field<unknown>(line, null)])),
  ...Object.fromEntries(pointNames.map((name) => [spoken(name), field<unknown>(point, null)])),
}

/** The landmarks of an entry read by `landmarkFields`; null when none are marked. Impossible ones are reported and left out. */
export function landmarksOf(
  read: Resolved<typeof landmarkFields>,
  view: PhotoView,
  entry: YamlMap,
  context: ParseContext,
): Landmarks | null {
  const points = placedOf<Point>(read, pointNames)
  const lines = placedOf<Line>(read, lineNames)
  const scaleRead = read.scale as Placed<Scale> | null
  if (!scaleRead && points.size === 0 && lines.size === 0) return null
  warnOfView(points, pointViews, view, context)
  warnOfView(lines, lineViews, view, context)
  if (!allApart(points, context)) return null
  if (side.includes(view) && !sideViewStands(points, lines.get('ground') ?? null, context)) return null
  if (!scaleRead && points.size > 0 && !lines.has('ground')) {
    context.report.warning(
      'landmark-no-scale',
      entry,
      'Points are marked, but neither a scale nor the ground line.',
      {
        expected: 'scale for lengths, ground for angles',
      },
    )
  }
  return {
    scale: scaleRead?.value ?? null,
    lines: valuesOf(lines),
    points: valuesOf(points),
  }
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

/**
 * From the side the hairline lies above the ground line, and everything of the heel lies behind the toe. Behind is
 * the way the toe wall leans: from the toe at the ground towards the toe at the hairline, seen along the ground line.
 */
function sideViewStands(
  points: ReadonlyMap<string, Placed<Point>>,
  ground: Placed<Line> | null,
  context: ParseContext,
): boolean {
  if (!ground) return true
  const [[ax, ay], [bx, by]] = ground.value
  const length = Math.hypot(bx - ax, by - ay)
  const along = ([x, y]: Point) => ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length
  // Pixels count down the picture, so above the line means a smaller y at the same x.
  const above = ([x, y]: Point) =>
    (((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length) * Math.sign(bx - ax || 1)
  let stands = true
  const impossible = (at: Placed<Point>, message: string, expected: string) => {
    stands = false
    context.report.error('landmark-impossible', at.range, message, { expected })
  }
  for (const name of ['toe-at-hairline', 'heel-at-hairline', 'new-growth-ends']) {
    const at = points.get(name)
    if (at && above(at.value) <= 0) {
      impossible(at, `${sentence(spoken(name))} lies below the ground line.`, 'a point above the ground line')
    }
  }
  const toe = points.get('toe-at-ground')
  const lean = points.get('toe-at-hairline')
  if (!toe || !lean) return stands
  const back = Math.sign(along(lean.value) - along(toe.value))
  for (const [name, from] of [
    ['heel-at-ground', toe],
    ['heel-at-hairline', lean],
  ] as const) {
    const at = points.get(name)
    if (at && back !== 0 && (along(at.value) - along(from.value)) * back <= 0) {
      impossible(
        at,
        `${sentence(spoken(name))} lies in front of the toe.`,
        'a point behind the toe, where the toe wall leans',
      )
    }
  }
  return stands
}
