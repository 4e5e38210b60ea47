/** Grid, ticks and labels of a plot's two axes. They need no chart library: a place on a straight axis is a rule of three. */
import { element, escapeHtml, num } from '../html.ts'
import { inkSoft, line } from '../ink.ts'
import type { PlotSize } from './plot-spec.ts'
import type { Axis } from './ticks.ts'

/** Distances in units of the picture; `middle` lowers a text by half the height of a figure. */
const tick = 5
const besides = 6
const below = { first: 19, line: 17 }
const middle = 4

/** Labels left of the plot with a grid line each, labels of one or two lines below it with a tick each. */
export function axes({ width, height }: PlotSize, x: Axis, y: Axis): string {
  const across = (at: number) => ((at - x.low) / (x.high - x.low)) * width
  const down = (at: number) => ((y.high - at) / (y.high - y.low)) * height
  const grid = y.ticks.map(({ at }) => `M0 ${num(down(at))}H${width}`)
  const ticks = x.ticks.map(({ at }) => `M${num(across(at))} ${height}v${tick}`)
  const beside = y.ticks.map(({ at, label }) => text(-besides, down(at) + middle, String(label)))
  const underneath = x.ticks.flatMap(({ at, label }) =>
    [label].flat().map((words, i) => text(across(at), height + below.first + i * below.line, words)),
  )
  return (
    element('path', { d: grid.join(''), stroke: line }) +
    element('path', { d: ticks.join(''), stroke: inkSoft }) +
    element('g', { fill: inkSoft, 'text-anchor': 'end' }, ...beside) +
    element('g', { fill: inkSoft, 'text-anchor': 'middle' }, ...underneath)
  )
}

const text = (x: number, y: number, words: string): string => element('text', { x, y }, escapeHtml(words))
