/** Ticks, grid and labels of a plot's two axes, as marks like any other: Vega draws them in a third of an axis's time. */
import { inkSoft, line } from '../ink.ts'
import { noMarks, type PlotMarks, type PlotSize } from './plot-spec.ts'
import type { Axis } from './ticks.ts'

/** Distances in units of the picture. */
const tick = 5
const besides = 6
const below = { first: 15, line: 17 }

/** Labels left of the plot with a grid line each, labels of one or two lines below it with a tick each. */
export function axisMarks({ width, height }: PlotSize, x: Axis, y: Axis): PlotMarks {
  const unitX = (x.high - x.low) / width
  const unitY = (y.high - y.low) / height
  const grid = y.ticks.map(({ at }) => ({ ...thin, x: x.low, x2: x.high, y: at, y2: at, stroke: line }))
  const ticks = x.ticks.map(({ at }) => ({
    ...thin,
    x: at,
    x2: at,
    y: y.low,
    y2: y.low - tick * unitY,
    stroke: inkSoft,
  }))
  const beside = y.ticks.map(({ at, label }) => ({
    x: x.low - besides * unitX,
    y: at,
    text: String(label),
    anchor: 'right' as const,
  }))
  const underneath = x.ticks.flatMap(({ at, label }) =>
    [label].flat().map((text, i) => ({
      x: at,
      y: y.low - (below.first + i * below.line) * unitY,
      text,
      anchor: 'center' as const,
    })),
  )
  return { ...noMarks, rules: [...grid, ...ticks], labels: [...beside, ...underneath] }
}

const thin = { width: 1, dash: [] }
