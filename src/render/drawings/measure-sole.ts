/** Measures that are taken on the sole, seen from below with the toe up. */
import { element } from '../html.ts'
import { latest } from '../ink.ts'
import { soleBase } from './sole.ts'
import { soleShape } from './sole-shape.ts'
import { dimension, type Point, path, through } from './svg.ts'

const scale = 0.6
const origin: Point = [110, 10]
const shape = soleShape('fore')
const base = element(
  'g',
  { transform: `translate(${origin[0]},${origin[1]}) scale(${scale})` },
  soleBase(shape),
)
/** A place in the units of the sole's shape. */
const at = (x: number, y: number): Point => [origin[0] + x * scale, origin[1] + y * scale]

const strong = { stroke: latest, 'stroke-width': 3 }
const leading = { stroke: latest, 'stroke-width': 1.4, 'stroke-dasharray': '4 3' }

const frogTip = 88
const frogBase = 214
const heels = 206

export const bearingLength = (): string =>
  base + path(through([at(-92, heels), at(92, heels)]), leading) + dimension(at(0, 0), at(0, heels), strong)

export const width = (): string => base + dimension(at(-107, 105), at(113, 105), strong)

/** The foot rolls over a little behind the very edge of the toe. */
export const breakover = (): string =>
  base + path(through([at(-48, 6), at(48, 6)]), leading) + dimension(at(0, 6), at(0, frogTip), strong)

export const frogLength = (): string => base + dimension(at(0, frogTip), at(0, frogBase), strong)

export const frogWidth = (): string => base + dimension(at(-41, 207), at(41, 207), strong)

/** The toe from nearer, for what is only millimetres wide. */
const near = 3.4
const closeBase = element(
  'svg',
  { x: 10, y: 12, width: 200, height: 146, viewBox: `${-100 / near} -9 ${200 / near} ${146 / near}` },
  element('g', { 'stroke-width': 1 }, soleBase(shape)),
)
const closeAt = (y: number): Point => [110, 12 + (y + 9) * near]

export const wallThickness = (): string => closeBase + dimension(closeAt(0), closeAt(13), strong)

export const whiteLine = (): string => closeBase + dimension(closeAt(13), closeAt(18), strong)
