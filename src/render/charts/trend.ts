/** Trend charts: one measure at up to four feet, a picture a foot, all on one scale. What can be is labelled where it stands. */
import type { ChartTime, TrendChart, TrendPanel } from '../../pages/shared/figures.ts'
import { frame } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element, escapeHtml, shape } from '../html.ts'
import { band as bandTone, ink, inkSoft, paper, seriesColour } from '../ink.ts'
import { axes } from './axes.ts'
import { trendKey } from './key.ts'
import type { PlotRenderer } from './plot-renderer.ts'
import { noMarks, type PlotMarks, type PlotSize, type PlotSymbol, plotFeed, textSize } from './plot-spec.ts'
import { chartSvg, chartWidth, label } from './svg.ts'
import { type Axis, dateAxis, dayAxis, dayNumber, valueAxis, weekAxis } from './ticks.ts'

/** A picture and the room round its plot for the labels of the axes. */
interface Layout {
  readonly width: number
  readonly height: number
  readonly margin: {
    readonly left: number
    readonly right: number
    readonly top: number
    readonly bottom: number
  }
  readonly timeTicks: number
  readonly valueTicks: number
}

const layouts: Readonly<Record<TrendChart['size'], Layout>> = {
  full: {
    width: chartWidth,
    height: 250,
    margin: { left: 44, right: 14, top: 28, bottom: 42 },
    timeTicks: 5,
    valueTicks: 4,
  },
  small: {
    width: 210,
    height: 138,
    margin: { left: 34, right: 8, top: 12, bottom: 40 },
    timeTicks: 3,
    valueTicks: 3,
  },
}

const plotOf = ({ width, height, margin }: Layout): PlotSize => ({
  width: width - margin.left - margin.right,
  height: height - margin.top - margin.bottom,
})

export function drawTrend(chart: TrendChart, renderPlot: PlotRenderer, words: FigureWords): string {
  const layout = layouts[chart.size]
  const { width, height, margin } = layout
  const plot = plotOf(layout)
  const inPlot = { transform: `translate(${margin.left},${margin.top})` }
  const time = timeAxis(chart, layout, words)
  const value = sharedValueAxis(chart, layout, words.decimalSign)
  const axesId = `${chart.id}-axes`
  const isSmall = chart.size === 'small'
  const panels = chart.panels.map((panel, i) => {
    const head = `${chart.id}-${panel.foot}`
    return element(
      'div',
      { class: `panel panel-${panel.foot}` },
      element(
        'p',
        { class: 'panel-head', id: head },
        element('strong', {}, escapeHtml(panel.label)),
        ' ',
        element('span', { class: 'panel-note' }, escapeHtml(panel.note)),
      ),
      chartSvg(
        { width, height },
        {
          by: `${chart.id}-title ${head}`,
          describedBy: chart.description === '' ? null : `${chart.id}-text`,
        },
        isSmall ? '' : label(0, 15, chart.valueTitle),
        // The axes stand in the first picture and serve all.
        i === 0
          ? element('g', { id: axesId, ...inPlot }, axes(plot, time, value))
          : shape('use', { href: `#${axesId}` }),
        element(
          'g',
          inPlot,
          renderPlot(plotFeed(plot, time, value, marks(chart, panel, time, value))),
          ...labels(panel, plot, time, value, isSmall ? null : words.target),
        ),
        // Numbers of days or weeks say nothing by themselves; dates do.
        tellsIn(chart, 'date') ? '' : label(width - margin.right, height - 4, chart.timeTitle, 'end'),
      ),
    )
  })
  // Several small ones share a key, which stands with them.
  return isSmall
    ? frame(chart, element('div', { class: 'panels panels-small' }, ...panels))
    : frame(chart, element('div', { class: 'panels' }, ...panels) + trendKey(chart, words.trend))
}

/** The band, where there is room, and the forecast, each named where it lies. */
function labels(
  { band, forecast }: TrendPanel,
  { width, height }: PlotSize,
  time: Axis,
  value: Axis,
  target: FigureWords['target'] | null,
): readonly string[] {
  const across = (at: ChartTime) => ((dayNumber(at) - time.low) / (time.high - time.low)) * width
  const down = (at: number) => ((value.high - at) / (value.high - value.low)) * height
  const named: string[] = []
  if (band !== null && target !== null) {
    const top = Math.max(0, down(band.high ?? value.high))
    const foot = Math.min(height, down(band.low ?? value.low))
    // Within the band where it is high enough, else just above it or below.
    const y = foot - top >= textSize ? foot - 4 : top >= textSize ? top - 4 : foot + textSize
    named.push(label(3, y, target(band.label), 'start', 'over'))
  }
  if (forecast !== null) {
    const x = across(forecast.at)
    const y = down(forecast.value)
    const anchor = x > width - 40 ? 'end' : 'middle'
    named.push(
      label(anchor === 'end' ? width : x, y > 2 * textSize ? y - 9 : y + 20, forecast.label, anchor, 'over'),
    )
  }
  return named
}

const tellsIn = ({ panels }: TrendChart, unit: 'date' | 'week'): boolean =>
  panels.some(({ points }) => points.some(({ at }) => unit in at))

function timeAxis(chart: TrendChart, { timeTicks }: Layout, { months, decimalSign }: FigureWords): Axis {
  const { panels } = chart
  const seen = panels.flatMap(({ points, line }) => [...points, ...line].map(({ at }) => dayNumber(at)))
  const first = Math.min(...seen)
  const last = Math.max(...seen)
  const ahead = panels.flatMap(({ forecast }) => (forecast ? [aheadEnd(forecast, first)] : []))
  const end = Math.max(last, ...ahead)
  const beyond = Math.max(3, (end - first) * 0.04)
  const [low, high] = [first - beyond, end + beyond]
  if (tellsIn(chart, 'date')) return dateAxis(low, high, timeTicks, months)
  const axis = tellsIn(chart, 'week') ? weekAxis : dayAxis
  return axis(low, high, timeTicks, decimalSign)
}

/** The forecast itself is always in sight; of a long range, half as much again as led up to it. */
function aheadEnd({ at, latest }: NonNullable<TrendPanel['forecast']>, first: number): number {
  const day = dayNumber(at)
  const furthest = day + Math.max(30, (day - first) / 2)
  return latest === null ? day + 15 : Math.max(day, Math.min(dayNumber(latest), furthest))
}

/** Holds all readings, lines and band edges; a wide interval may run out of sight by half of that span. */
function sharedValueAxis(
  { panels, baseline }: TrendChart,
  { valueTicks }: Layout,
  decimalSign: string,
): Axis {
  const core = panels.flatMap(({ points, line, band, forecast }) => [
    ...points.map(({ value }) => value),
    ...line.map(({ value }) => value),
    ...(band ? [band.low, band.high].filter((edge) => edge !== null) : []),
    ...(forecast ? [forecast.value] : []),
  ])
  if (baseline === 'zero') core.push(0)
  const low = Math.min(...core)
  const high = Math.max(...core)
  const slack = (high - low) / 2
  const interval = panels.flatMap(({ line }) => line.flatMap((point) => [point.low, point.high]))
  const beyond = (high - low) * 0.04
  return valueAxis(
    Math.max(Math.min(low - beyond, ...interval), low - slack),
    Math.min(Math.max(high + beyond, ...interval), high + slack),
    valueTicks,
    decimalSign,
  )
}

function marks(chart: TrendChart, panel: TrendPanel, time: Axis, value: Axis): PlotMarks {
  const colour = seriesColour(panel.foot)
  return {
    ...noMarks,
    bands: bandMarks(panel, time, value),
    ribbon: ribbonWithin(panel.line, value),
    path: sawTooth(panel),
    rules: [...levels(chart, panel, colour, time, value), ...line(panel, colour)],
    symbols: [...readings(panel, colour, chart.size), ...forecastSymbols(panel, colour, time)],
  }
}

function bandMarks({ band }: TrendPanel, time: Axis, value: Axis): PlotMarks['bands'] {
  if (band === null) return []
  const { low, high } = band
  return [
    {
      x: time.low,
      x2: time.high,
      y: low ?? value.low,
      y2: high ?? value.high,
      fill: bandTone,
      stroke: 'none',
    },
  ]
}

/** The interval of the line, cut off where it leaves the axis. */
function ribbonWithin(line: TrendPanel['line'], { low: floor, high: ceiling }: Axis): PlotMarks['ribbon'] {
  const points = line.map(({ at, low, high }) => ({ x: dayNumber(at), low, high }))
  const cut: { x: number; low: number; high: number }[] = []
  for (const [i, point] of points.entries()) {
    const before = points[i - 1]
    if (before) {
      const crossings = [crossing(before.low, point.low, floor), crossing(before.high, point.high, ceiling)]
      for (const part of crossings.filter((part) => part !== null).sort((a, b) => a - b)) {
        cut.push({
          x: before.x + (point.x - before.x) * part,
          low: before.low + (point.low - before.low) * part,
          high: before.high + (point.high - before.high) * part,
        })
      }
    }
    cut.push(point)
  }
  return cut.map(({ x, low, high }) => ({ x, y: Math.max(low, floor), y2: Math.min(high, ceiling) }))
}

/** Where between two values, as a share of the way, a limit is crossed; null where it is not. */
const crossing = (from: number, to: number, limit: number): number | null =>
  from < limit !== to < limit ? (limit - from) / (to - from) : null

function levels(
  { baseline }: TrendChart,
  { band, forecast }: TrendPanel,
  colour: string,
  time: Axis,
  value: Axis,
): PlotMarks['rules'] {
  const level = (y: number) => ({ x: time.low, x2: time.high, y, y2: y })
  const edges = band ? [band.low, band.high].filter((edge) => edge !== null) : []
  const all = [
    { ...level(value.low), stroke: inkSoft, width: 1, dash: [] },
    ...edges.map((edge) => ({ ...level(edge), stroke: inkSoft, width: 1, dash: [2, 4] })),
  ]
  if (baseline === 'zero') all.push({ ...level(0), stroke: ink, width: 1, dash: [] })
  if (forecast) {
    const range = { x: dayNumber(forecast.earliest), x2: rangeEnd(forecast.latest, time) }
    all.push({ ...level(forecast.value), ...range, stroke: colour, width: 2, dash: [] })
  }
  return all
}

const rangeEnd = (latest: ChartTime | null, time: Axis): number =>
  latest === null ? time.high : Math.min(dayNumber(latest), time.high)

/** From reading to reading, for what grows and is cut. */
const sawTooth = ({ points, sawTooth }: TrendPanel): PlotMarks['path'] =>
  sawTooth ? points.map(({ at, value }) => ({ x: dayNumber(at), y: value })) : []

/** The fitted line, and dashed on to where it enters the band. */
function line({ line, forecast }: TrendPanel, colour: string): PlotMarks['rules'] {
  const [start] = line
  const end = line.at(-1)
  if (start === undefined || end === undefined) return []
  const from = { x: dayNumber(start.at), y: start.value }
  const seen = { x: dayNumber(end.at), y: end.value }
  const fitted = { ...from, x2: seen.x, y2: seen.y, stroke: colour, width: 3, dash: [] }
  if (forecast === null) return [fitted]
  const ahead = { ...seen, x2: dayNumber(forecast.at), y2: forecast.value }
  return [fitted, { ...ahead, stroke: colour, width: 2, dash: [6, 5] }]
}

/** Path of a saltire, of an upright end, and of an arrow that says that a range goes on. */
const cross = 'M-1,-1L1,1M-1,1L1,-1'
const end = 'M0,-1L0,1'
const goesOn = 'M-1,-1L0,0L-1,1'

/** After the trim as full discs on top of the open triangles of arrival; what is left out as a cross. */
function readings({ points }: TrendPanel, colour: string, size: TrendChart['size']): readonly PlotSymbol[] {
  const part = size === 'small' ? 0.6 : 1
  const order = (point: TrendPanel['points'][number]) =>
    point.isLeftOut ? 0 : point.stage === 'before' ? 1 : 2
  return points
    .toSorted((a, b) => order(a) - order(b))
    .map((point): PlotSymbol => {
      const at = { x: dayNumber(point.at), y: point.value }
      if (point.isLeftOut)
        return { ...at, shape: cross, size: 60 * part, fill: 'none', stroke: inkSoft, width: 2 }
      return point.stage === 'after'
        ? { ...at, shape: 'circle', size: 75 * part, fill: colour, stroke: paper, width: 1.25 }
        : { ...at, shape: 'triangle-up', size: 50 * part, fill: paper, stroke: colour, width: 1.5 }
    })
}

function forecastSymbols({ forecast }: TrendPanel, colour: string, time: Axis): readonly PlotSymbol[] {
  if (forecast === null) return []
  const { at, value, earliest, latest } = forecast
  const last = rangeEnd(latest, time)
  const open = latest === null || dayNumber(latest) > time.high
  const mark = { y: value, fill: 'none', stroke: colour }
  return [
    { ...mark, x: dayNumber(earliest), shape: end, size: 90, width: 2 },
    { ...mark, x: last, shape: open ? goesOn : end, size: 90, width: 2 },
    { ...mark, x: dayNumber(at), shape: cross, size: 130, width: 3 },
  ]
}
