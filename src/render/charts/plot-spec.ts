/**
 * The one Vega-Lite specification behind every chart: marks on a shared pair of axes, from the ground up
 * bands, ribbon, path, rules, symbols, figures. Domains, colours and shapes come with the data.
 * None of the marks is grouped, see `createPlotRenderer`; the axes are drawn by `axes`.
 */
import type { TopLevelSpec } from 'vega-lite'
import { inkSoft, ribbon } from '../ink.ts'
import type { Feed } from './plot-renderer.ts'

/** Size of all text in a chart, in its own units: a picture is 400 wide, so about 12 px on a telephone. */
export const textSize = 14

/** What every mark of a chart is made of. `x` and `y` in units of the axes; `dash` empty for a whole line. */
export interface PlotMarks {
  readonly bands: readonly { x: number; x2: number; y: number; y2: number; fill: string; stroke: string }[]
  /** From `y` to `y2` along `x`. */
  readonly ribbon: readonly { x: number; y: number; y2: number }[]
  /** Points joined in their order by one thin line. */
  readonly path: readonly { x: number; y: number }[]
  readonly rules: readonly PlotRule[]
  /** `shape`: a Vega shape name or an SVG path in a square from -1 to 1; `size` in square units. */
  readonly symbols: readonly PlotSymbol[]
  /** Bold, with a halo of the ground's colour. */
  readonly figures: readonly { x: number; y: number; text: string; fill: string; halo: string }[]
}

export interface PlotRule {
  readonly x: number
  readonly x2: number
  readonly y: number
  readonly y2: number
  readonly stroke: string
  readonly width: number
  readonly dash: readonly number[]
}

export interface PlotSymbol {
  readonly x: number
  readonly y: number
  readonly shape: string
  readonly size: number
  readonly fill: string
  readonly stroke: string
  readonly width: number
}

export const noMarks: PlotMarks = {
  bands: [],
  ribbon: [],
  path: [],
  rules: [],
  symbols: [],
  figures: [],
}

/** What the renderer is fed to draw marks on two axes. */
export const plotFeed = (size: PlotSize, x: Span, y: Span, marks: PlotMarks): Feed => ({
  ...size,
  params: { xDomain: [x.low, x.high], yDomain: [y.low, y.high] },
  data: { ...marks },
})

export interface PlotSize {
  readonly width: number
  readonly height: number
}

/** What an axis spans; `low` lies left or at the bottom. */
interface Span {
  readonly low: number
  readonly high: number
}

const onAxis = (field: 'x' | 'y') => ({
  field,
  type: 'quantitative' as const,
  scale: { domain: { expr: `${field}Domain` }, nice: false, zero: false },
  axis: null,
})

const at = { x: onAxis('x'), y: onAxis('y') }
const span = { ...at, x2: { field: 'x2' }, y2: { field: 'y2' } }
/** A field that holds the mark's own colour, dash, shape or size. */
const own = (field: string) => ({ field, type: 'nominal' as const, scale: null, legend: null })
const ownNumber = (field: string) => ({ field, type: 'quantitative' as const, scale: null, legend: null })

export const plotSpec: TopLevelSpec = {
  autosize: 'none',
  padding: 0,
  params: ['xDomain', 'yDomain'].map((name) => ({ name, value: [0, 1] })),
  config: { aria: false, font: 'inherit', view: { stroke: null }, mark: { invalid: null } },
  layer: [
    {
      data: { name: 'bands' },
      mark: 'rect',
      encoding: { ...span, fill: own('fill'), stroke: own('stroke') },
    },
    {
      data: { name: 'ribbon' },
      mark: { type: 'area', fill: ribbon },
      encoding: { ...at, y2: { field: 'y2' } },
    },
    {
      data: { name: 'path' },
      mark: { type: 'line', stroke: inkSoft, strokeWidth: 1.25 },
      encoding: { ...at, order: { value: 0 } },
    },
    {
      data: { name: 'rules' },
      mark: 'rule',
      encoding: { ...span, stroke: own('stroke'), strokeWidth: ownNumber('width'), strokeDash: own('dash') },
    },
    {
      data: { name: 'symbols' },
      mark: { type: 'point', opacity: 1 },
      encoding: {
        ...at,
        shape: own('shape'),
        size: ownNumber('size'),
        fill: own('fill'),
        stroke: own('stroke'),
        strokeWidth: ownNumber('width'),
      },
    },
    {
      data: { name: 'figures' },
      mark: { type: 'text', fontSize: textSize, baseline: 'middle', fontWeight: 600, strokeWidth: 5 },
      encoding: { ...at, text: { field: 'text' }, fill: own('fill'), stroke: own('halo') },
    },
  ],
}
