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
  /** Of a symbol. */
  readonly shape?: string
  readonly size?: number
  readonly text?: string
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
const lookNames = Object.keys(looks) as readonly Look[]

/** Values that change nothing. */
const needless: ReadonlySet<string> = new Set(['', 'none', 'normal', 'translate(0,0)'])

interface Outline {
  /** Of a circle; null where it is made of lines. */
  readonly radius: number | null
  /** Where it begins, seen from its middle, and how it goes on from there. */
  readonly start: readonly [number, number]
  readonly rest: string
}

/** Outlines of symbols by shape and size. */
type Outlines = Map<string, Outline>

/**
 * What writes the marks below a mark, from the ground up. Items of one look that follow each other share a `<g>`.
 * It keeps the outlines of symbols that it has written.
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
    const alone = to - from === 1
    const own = alone ? look : ''
    const shapes = shown.slice(from, to).map((item) => shapeOf(item, geometry, own, outlines))
    svg += alone ? shapes.join('') : `<g${look}>${shapes.join('')}</g>`
  }
  return svg
}

function lookOf(item: SceneItem): string {
  let text = ''
  for (const name of lookNames) text += attribute(looks[name], item[name])
  return text
}

function shapeOf(item: SceneItem, { tag, attr }: Geometry, look: string, outlines: Outlines): string {
  if (item.shape !== undefined) return symbolOf(item, attr, look, outlines)
  let text = `<${tag}`
  attr((name, value) => {
    text += attribute(name, value)
  }, item)
  return `${text}${look}${item.text === undefined ? '/>' : `>${escapeHtml(item.text)}</${tag}>`}`
}

/** A symbol where it stands: few outlines are used, each many times, so each is written as briefly as it can be. */
function symbolOf(item: SceneItem, attr: Geometry['attr'], look: string, outlines: Outlines): string {
  const { x = 0, y = 0, shape, size } = item
  const key = `${shape} ${size}`
  let outline = outlines.get(key)
  if (outline === undefined) {
    const drawn: Record<string, unknown> = {}
    attr((name, value) => {
      drawn[name] = value
    }, item)
    outline = outlineOf(String(drawn.d))
    outlines.set(key, outline)
  }
  if (outline.radius !== null)
    return `<circle cx="${num(x)}" cy="${num(y)}" r="${num(outline.radius)}"${look}/>`
  const [dx, dy] = outline.start
  return `<path d="M${num(x + dx)},${num(y + dy)}${outline.rest}"${look}/>`
}

/** Vega's outline about the origin: of lines, or a full circle. */
function outlineOf(path: string): Outline {
  const steps = [...path.matchAll(/([MLAZ])([^MLAZ]*)/g)].map(([, command = '', figures = '']) => ({
    command,
    figures: figures.split(/[ ,]/).map(Number),
  }))
  const [first] = steps
  const start = [first?.figures[0] ?? 0, first?.figures[1] ?? 0] as const
  if (steps.some(({ command }) => command === 'A')) return { radius: start[0], start, rest: '' }
  let [x, y] = start
  const rest = steps.slice(1).map(({ command, figures: [toX = x, toY = y] }) => {
    if (command === 'Z') return 'z'
    const step = `${command.toLowerCase()}${num(toX - x)},${num(toY - y)}`
    ;[x, y] = [toX, toY]
    return step
  })
  return { radius: null, start, rest: rest.join('') }
}

function attribute(name: string, value: unknown): string {
  if (value === null || value === undefined) return ''
  const text = typeof value === 'number' ? num(value) : written(String(value))
  return needless.has(text) ? '' : ` ${name}="${text}"`
}

/** Vega writes every digit that it knows into a path; a tenth of a unit is less than anyone sees. */
const written = (value: string): string =>
  escapeHtml(value.replace(/(\.\d)\d+/g, '$1').replaceAll(/\.0(?!\d)/g, ''))
