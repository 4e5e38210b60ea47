/** How changes spread over cases: a dot a case, the median as an upright, its interval as a bar, on one scale with its zero. */
import type { DistributionChart } from '../../pages/shared/figures.ts'
import { frame } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element } from '../html.ts'
import { ink, inkSoft, latest, line, ribbon } from '../ink.ts'
import { axes } from './axes.ts'
import type { PlotRenderer } from './plot-renderer.ts'
import { noMarks, type PlotMarks, type PlotSymbol, plotFeed } from './plot-spec.ts'
import { chartSvg, chartWidth, label, moved } from './svg.ts'
import { type Axis, valueAxis } from './ticks.ts'

const margin = { side: 16, bottom: 50 }
/** A row: its label above, its dots round the middle of what is left. */
const row = { height: 72, label: 18, middle: 44 }
/** Dots nearer than this, in units of the picture, are stacked. */
const dot = 9

export function drawDistribution(
  chart: DistributionChart,
  renderPlot: PlotRenderer,
  words: FigureWords,
): string {
  const size = { width: chartWidth - 2 * margin.side, height: chart.rows.length * row.height }
  const all = chart.rows.flatMap(({ values, low, high }) => [...values, low ?? 0, high ?? 0])
  const x = valueAxis(Math.min(0, ...all), Math.max(0, ...all), 5, words.decimalSign)
  const y = { low: size.height, high: 0, ticks: [] }
  const perUnit = size.width / (x.high - x.low)
  const picture = chartSvg(
    { width: chartWidth, height: size.height + margin.bottom },
    { by: `${chart.id}-title`, describedBy: `${chart.id}-text` },
    ...chart.rows.map(({ label: text }, i) => label(0, i * row.height + 13, text, 'start', 'name')),
    moved(margin.side, 0, axes(size, x, y)),
    moved(margin.side, 0, renderPlot(plotFeed(size, x, y, marks(chart, x, size.height, perUnit)))),
    label(chartWidth, size.height + 42, chart.valueTitle, 'end'),
  )
  return frame(chart, element('div', { class: 'panels' }, element('div', { class: 'panel' }, picture)))
}

function marks({ rows }: DistributionChart, x: Axis, bottom: number, perUnit: number): PlotMarks {
  const symbols: PlotSymbol[] = []
  const rules: PlotMarks['rules'][number][] = [
    { x: x.low, x2: x.high, y: bottom, y2: bottom, stroke: inkSoft, width: 1, dash: [] },
    // Every row can be read against the scale, and zero stands out.
    ...x.ticks.flatMap(({ at }) =>
      rows.map((_, i) => {
        const [y, y2] = [i * row.height + row.label + 2, (i + 1) * row.height - 4]
        return { x: at, x2: at, y, y2, stroke: at === 0 ? ink : line, width: 1, dash: [] }
      }),
    ),
  ]
  const bands: PlotMarks['bands'][number][] = []
  for (const [i, { values, median, low, high }] of rows.entries()) {
    const middle = i * row.height + row.middle
    if (low !== null && high !== null) {
      bands.push({ x: low, x2: high, y: middle - 15, y2: middle + 15, fill: ribbon, stroke: inkSoft })
    }
    rules.push({ x: median, x2: median, y: middle - 20, y2: middle + 20, stroke: ink, width: 3, dash: [] })
    for (const [value, offset] of stacked(values, perUnit)) {
      symbols.push({
        x: value,
        y: middle + offset,
        shape: 'circle',
        size: 55,
        fill: 'none',
        stroke: latest,
        width: 2,
      })
    }
  }
  return { ...noMarks, bands, rules, symbols }
}

/** Values in order, each with how far from the row's middle it stands so that no dot hides another. */
function stacked(values: readonly number[], perUnit: number): readonly (readonly [number, number])[] {
  const placed: (readonly [number, number])[] = []
  for (const value of [...values].sort((a, b) => a - b)) {
    const near = placed.filter(([other]) => (value - other) * perUnit < dot)
    const free = offsets.find((offset) => near.every(([, taken]) => taken !== offset))
    placed.push([value, free ?? 0])
  }
  return placed
}

const offsets = [0, -dot, dot, -2 * dot, 2 * dot]
