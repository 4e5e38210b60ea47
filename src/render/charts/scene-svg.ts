/** A scene of Vega as SVG: the geometry that Vega gives each mark, and of its looks only what shows. */
import { escapeHtml, num } from '../html.ts'

/** What is read of Vega's scene graph; its types leave out what items hold. */
export interface SceneMark {
  readonly marktype: string
  readonly items: readonly SceneItem[]
}

interface SceneItem extends Readonly<Partial<Record<Look, unknown>>> {
  readonly x?: number
  readonly y?: number
  /** Where a rule ends. */
  readonly x2?: number
  readonly y2?: number
  /** Of a symbol. */
  readonly shape?: string
  readonly size?: number
  readonly text?: string
  readonly align?: string
  /** The marks of a group. */
  readonly items?: readonly SceneMark[]
}

/** Vega's knowledge of a type of mark: its element, whether all items make one shape, the geometry of an item. */
export interface Geometry {
  readonly tag: string
  readonly nested: boolean
  attr(emit: (name: string, value: string | number | null | undefined) => void, item: SceneItem): void
}

export type Geometries = Readonly<Record<string, Geometry | undefined>>

/** What an item looks like, as the attributes that say so. */
const looks = {
  fill: 'fill',
  stroke: 'stroke',
  strokeWidth: 'stroke-width',
  strokeDash: 'stroke-dasharray',
  fontWeight: 'font-weight',
} as const
type Look = keyof typeof looks
/** Where a text stands to its place, by Vega's names; from it on is usual. */
const anchors: Readonly<Record<string, string | undefined>> = { center: 'middle', right: 'end' }
const lookNames = Object.keys(looks) as readonly Look[]

/** Values that change nothing. */
const needless: ReadonlySet<string> = new Set(['', 'none', 'normal', 'translate(0,0)'])

type Point = readonly [x: number, y: number]

/** A line drawn without lifting the pen, from point to point; closed where it ends at its beginning. */
interface Line {
  readonly points: readonly Point[]
  readonly isClosed: boolean
}

/** Of a symbol about its middle: a circle, or lines. */
type Outline = { readonly radius: number } | { readonly lines: readonly Line[] }

/** Outlines of symbols by shape and size. */
type Outlines = Map<string, Outline>

/**
 * What writes the marks below a mark, from the ground up. Items of one look that follow each other are one path where
 * they are made of lines, else share a `<g>`. It keeps the outlines of symbols that it has written.
 */
export function sceneWriter(geometries: Geometries): (scene: SceneMark) => string {
  const outlines: Outlines = new Map()
  return (scene) => `<g fill="none">${marksOf(scene, geometries, outlines)}</g>`
}

function marksOf({ marktype, items }: SceneMark, geometries: Geometries, outlines: Outlines): string {
  if (marktype === 'group') {
    return items
      .flatMap(({ items: marks = [] }) => marks.map((mark) => marksOf(mark, geometries, outlines)))
      .join('')
  }
  const geometry = geometries[marktype]
  if (geometry === undefined) throw new Error(`chart specification: there is no mark ${marktype}`)
  const shown = geometry.nested ? items.slice(0, 1) : items
  const allLooks = shown.map(lookOf)
  let svg = ''
  for (let from = 0, to = 0; from < shown.length; from = to) {
    const look = allLooks[from] ?? ''
    while (to < shown.length && allLooks[to] === look) to += 1
    svg += alike(marktype, shown.slice(from, to), look, geometry, outlines)
  }
  return svg
}

function lookOf(item: SceneItem): string {
  let text = ''
  for (const name of lookNames) text += attribute(looks[name], item[name])
  return item.align === undefined ? text : text + attribute('text-anchor', anchors[item.align])
}

const madeOfLines: ReadonlySet<string> = new Set(['rect', 'line', 'area'])

/** Items of one look. */
function alike(
  marktype: string,
  items: readonly SceneItem[],
  look: string,
  geometry: Geometry,
  outlines: Outlines,
): string {
  if (marktype === 'rule') return pathOf(items.map(ruleLine), look)
  if (marktype === 'symbol') {
    const symbols = items.map((item) => symbolOf(item, geometry, outlines))
    const lines = symbols.flatMap((symbol) => ('lines' in symbol ? symbol.lines : []))
    const circles = symbols.flatMap((symbol) => ('circle' in symbol ? [symbol.circle] : []))
    if (circles.length === 0) return pathOf(lines, look)
    return lines.length === 0 ? together(circles, look) : together([pathOf(lines, ''), ...circles], look)
  }
  if (madeOfLines.has(marktype))
    return pathOf(
      items.flatMap((item) => linesOf(drawnPath(item, geometry))),
      look,
    )
  return together(
    items.map((item) => shapeOf(item, geometry)),
    look,
  )
}

/** Elements that end in `/>` or in a tag of their own, with a look that they share. */
function together(shapes: readonly string[], look: string): string {
  const [only = ''] = shapes
  return shapes.length === 1 ? only.replace(/(?=\/?>)/, () => look) : `<g${look}>${shapes.join('')}</g>`
}

function shapeOf(item: SceneItem, { tag, attr }: Geometry): string {
  let text = `<${tag}`
  attr((name, value) => {
    const place = name === 'transform' ? moved.exec(String(value)) : null
    if (place !== null) text += ` x="${place[1]}" y="${place[2]}"`
    else if (name !== 'text-anchor') text += attribute(name, value)
  }, item)
  return `${text}${item.text === undefined ? '/>' : `>${escapeHtml(item.text)}</${tag}>`}`
}

/** How Vega places a text. */
const moved = /^translate\((-?[\d.]+),(-?[\d.]+)\)$/

const ruleLine = ({ x = 0, y = 0, x2 = x, y2 = y }: SceneItem): Line => ({
  points: [
    [x, y],
    [x2, y2],
  ],
  isClosed: false,
})

/** A symbol where it stands: few outlines are used, each many times. */
function symbolOf(
  item: SceneItem,
  geometry: Geometry,
  outlines: Outlines,
): { readonly circle: string } | { readonly lines: readonly Line[] } {
  const { x = 0, y = 0, shape, size } = item
  const key = `${shape} ${size}`
  const outline = outlines.get(key) ?? outlineOf(drawnPath(item, geometry))
  outlines.set(key, outline)
  if ('radius' in outline)
    return { circle: `<circle cx="${tenth(x)}" cy="${tenth(y)}" r="${tenth(outline.radius)}"/>` }
  return {
    lines: outline.lines.map(({ points, isClosed }) => ({
      points: points.map(([dx, dy]) => [x + dx, y + dy] as const),
      isClosed,
    })),
  }
}

/** The path that Vega makes of an item. */
function drawnPath(item: SceneItem, { attr }: Geometry): string {
  let path = ''
  attr((name, value) => {
    if (name === 'd') path = String(value)
  }, item)
  return path
}

/** Vega's outline about the origin: of lines, or a full circle, which begins at its side. */
const outlineOf = (path: string): Outline =>
  path.includes('A') ? { radius: Number(/^M(-?[\d.]+)/.exec(path)?.[1]) } : { lines: linesOf(path) }

/** The lines of a path of Vega's, which knows M, L, H, V and Z, each place as it is. */
function linesOf(path: string): readonly Line[] {
  const lines: { points: Point[]; isClosed: boolean }[] = []
  let at: Point = [0, 0]
  for (const [, command = '', figures = ''] of path.matchAll(/([MLHVZ])([^MLHVZ]*)/gi)) {
    const line = lines.at(-1)
    if (command === 'Z' || command === 'z') {
      if (line) line.isClosed = true
      continue
    }
    const [first = 0, second = 0] = figures.split(/[ ,]/).map(Number)
    if (command === 'h') at = [at[0] + first, at[1]]
    else if (command === 'v') at = [at[0], at[1] + first]
    else if (command === 'H') at = [first, at[1]]
    else if (command === 'V') at = [at[0], first]
    else at = [first, second]
    if (command === 'M') lines.push({ points: [at], isClosed: false })
    else line?.points.push(at)
  }
  return lines
}

/** A tenth of a unit is less than anyone sees. */
const tenths = (value: number): number => Math.round(value * 10)
const tenth = (value: number): string => String(tenths(value) / 10)

/** One path of all lines: each step relative to the last, counted in tenths, so that no rounding adds up. */
function pathOf(lines: readonly Line[], look: string): string {
  let data = ''
  let [x, y] = [0, 0]
  const pair = (dx: number, dy: number) => `${dx / 10}${dy < 0 ? '' : ' '}${dy / 10}`
  for (const { points, isClosed } of lines) {
    const [first = [0, 0], ...rest] = points.map(([px, py]) => [tenths(px), tenths(py)] as const)
    data += `M${pair(first[0], first[1])}`
    ;[x, y] = first
    rest.forEach(([tx, ty], i) => {
      const [dx, dy] = [tx - x, ty - y]
      data += `${i === 0 ? 'l' : dx < 0 ? '' : ' '}${pair(dx, dy)}`
      ;[x, y] = [tx, ty]
    })
    if (isClosed) data += 'z'
  }
  return data === '' ? '' : `<path d="${data}"${look}/>`
}

function attribute(name: string, value: unknown): string {
  if (value === null || value === undefined) return ''
  const text = typeof value === 'number' ? num(value) : written(String(value))
  return needless.has(text) ? '' : ` ${name}="${text}"`
}

/** Vega writes every digit that it knows into a path. */
const written = (value: string): string =>
  escapeHtml(value.replace(/(\.\d)\d+/g, '$1').replaceAll(/\.0(?!\d)/g, ''))
