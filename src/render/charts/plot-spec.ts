/**
 * The one Vega-Lite specification behind every chart: marks on a shared pair of axes, from the ground up
 * bands, ribbon, rules, lines, symbols, figures. Domains, ticks, colours and shapes come with the data.
 */
import type { TopLevelSpec } from 'vega-lite'
import { inkSoft, line, ribbon } from '../ink.ts'
import type { Feed } from './machine.ts'
import type { Axis } from './ticks.ts'

/** Size of all text in a chart, in its own units: a picture is 400 wide, so about 12 px on a telephone. */
export const textSize = 14

/** What every mark of a chart is made of. `x` and `y` in units of the axes; `dash` empty for a whole line. */
export interface PlotMarks {
  readonly bands: readonly { x: number; x2: number; y: number; y2: number; fill: string; stroke: string }[]
  /** From `y` to `y2` along `x`. */
  readonly ribbon: readonly { x: number; y: number; y2: number }[]
  readonly rules: readonly (Stroke & { x: number; x2: number; y: number; y2: number })[]
  /** Points of one `part` are joined in their order. */
  readonly lines: readonly (Stroke & { part: string; x: number; y: number })[]
  /** `shape`: a Vega shape name or an SVG path in a square from -1 to 1; `size` in square units. */
  readonly symbols: readonly PlotSymbol[]
  readonly figures: readonly { x: number; y: number; text: string; fill: string; halo: string }[]
}

interface Stroke {
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

export const noMarks: PlotMarks = { bands: [], ribbon: [], rules: [], lines: [], symbols: [], figures: [] }

/** What the machine is fed to draw marks on two axes. */
export const plotFeed = (
  size: { readonly width: number; readonly height: number },
  x: Axis,
  y: Axis,
  marks: PlotMarks,
): Feed => ({
  ...size,
  params: {
    xDomain: [x.low, x.high],
    yDomain: [y.low, y.high],
    xTicks: x.ticks.map(({ at }) => at),
    yTicks: y.ticks.map(({ at }) => at),
    xLabels: Object.fromEntries(x.ticks.map(({ at, label }) => [at, label])),
    yLabels: Object.fromEntries(y.ticks.map(({ at, label }) => [at, label])),
  },
  data: { ...marks },
})

const xField = {
  field: 'x',
  type: 'quantitative' as const,
  scale: { domain: { expr: 'xDomain' }, nice: false, zero: false },
  axis: {
    title: null,
    values: { expr: 'xTicks' },
    labelExpr: 'xLabels[datum.value]',
    grid: false,
    tickColor: inkSoft,
    labelPadding: 4,
    labelFlush: false,
  },
}

const yField = {
  field: 'y',
  type: 'quantitative' as const,
  scale: { domain: { expr: 'yDomain' }, nice: false, zero: false },
  axis: {
    title: null,
    values: { expr: 'yTicks' },
    labelExpr: 'yLabels[datum.value]',
    gridColor: line,
    ticks: false,
    labelPadding: 6,
  },
}

const at = { x: xField, y: yField }
const span = { ...at, x2: { field: 'x2' }, y2: { field: 'y2' } }
/** A field that holds the mark's own colour, dash, shape or size. */
const own = (field: string) => ({ field, type: 'nominal' as const, scale: null, legend: null })
const ownNumber = (field: string) => ({ field, type: 'quantitative' as const, scale: null, legend: null })
const stroke = { stroke: own('stroke'), strokeWidth: ownNumber('width'), strokeDash: own('dash') }

const text = {
  type: 'text' as const,
  fontSize: textSize,
  fontWeight: 600 as const,
  baseline: 'middle' as const,
}

export const plotSpec: TopLevelSpec = {
  autosize: 'none',
  padding: 0,
  params: ['xDomain', 'yDomain', 'xTicks', 'yTicks', 'xLabels', 'yLabels'].map((name) => ({
    name,
    value: name.endsWith('Domain') ? [0, 1] : name.endsWith('Labels') ? {} : [],
  })),
  config: {
    aria: false,
    font: 'inherit',
    view: { stroke: null },
    mark: { invalid: null },
    axis: {
      domain: false,
      labelColor: inkSoft,
      labelFontSize: textSize,
      labelLineHeight: 17,
      labelLimit: 0,
      labelOverlap: false,
    },
  },
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
    { data: { name: 'rules' }, mark: 'rule', encoding: { ...span, ...stroke } },
    {
      data: { name: 'lines' },
      mark: { type: 'line', strokeJoin: 'round', strokeCap: 'round' },
      encoding: { ...at, detail: { field: 'part', type: 'nominal' }, order: { value: 0 }, ...stroke },
    },
    {
      data: { name: 'symbols' },
      mark: { type: 'point', opacity: 1, strokeJoin: 'round', strokeCap: 'round' },
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
      mark: { ...text, stroke: 'none', strokeWidth: 5, strokeJoin: 'round' },
      encoding: { ...at, text: { field: 'text' }, fill: own('halo'), stroke: own('halo') },
    },
    {
      data: { name: 'figures' },
      mark: text,
      encoding: { ...at, text: { field: 'text' }, fill: own('fill') },
    },
  ],
}
