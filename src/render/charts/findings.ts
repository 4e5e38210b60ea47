/** Findings over time: a row of boxes a finding, a box a visit, its grade as tone, pattern and figure. */
import type { FindingsGrid } from '../../pages/shared/figures.ts'
import { frame } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element } from '../html.ts'
import { gradeColour, ink, inkSoft, onGrade } from '../ink.ts'
import { gradeFill, gradePatterns } from '../patterns.ts'
import { gradeKey } from './key.ts'
import type { PlotRenderer } from './plot-renderer.ts'
import { noMarks, type PlotMarks, plotFeed } from './plot-spec.ts'
import { chartSvg, chartWidth, label } from './svg.ts'

/** Visits in one picture; a longer history goes on in a further picture, so that figures stay legible. */
const visitsInPicture = 14
const widestBox = 40
const box = 24
/** A row: its label, its boxes, a gap. */
const row = { label: 17, height: 46 }
const margin = { side: 1, bottom: 24 }
/** A figure's halo lies under the figure. */
const inPlot = { transform: `translate(${margin.side},0)`, 'paint-order': 'stroke' }
/** Room that the label of a visit takes. */
const labelWidth = 78

type Row = FindingsGrid['rows'][number]

export function drawFindings(chart: FindingsGrid, renderPlot: PlotRenderer, words: FigureWords): string {
  const parts: string[] = []
  for (let from = 0; from < chart.visits.length; from += visitsInPicture) {
    const to = from + visitsInPicture
    const rows = chart.rows
      .map((each) => ({ ...each, grades: each.grades.slice(from, to) }))
      .filter(({ grades }) => grades.some((grade) => grade !== null))
    // The patterns stand in the first picture and serve all.
    const defs = parts.length === 0 ? gradePatterns(chart.id) : ''
    if (rows.length > 0) parts.push(picture(chart, rows, chart.visits.slice(from, to), renderPlot, defs))
  }
  return frame(
    chart,
    element('div', { class: 'panels' }, ...parts) +
      gradeKey(
        chart.id,
        words,
        chart.rows.some(({ grades }) => grades.includes(null)),
      ),
  )
}

function picture(
  chart: FindingsGrid,
  rows: readonly Row[],
  visits: readonly string[],
  renderPlot: PlotRenderer,
  defs: string,
): string {
  const column = Math.min(widestBox, (chartWidth - 2 * margin.side) / visits.length)
  const size = { width: column * visits.length, height: rows.length * row.height }
  const x = { low: 0, high: visits.length, ticks: [] }
  // Rows are counted from the top, as they are read.
  const y = { low: size.height, high: 0, ticks: [] }
  const labels = rows.map(({ label: text }, i) => label(0, i * row.height + 13, text, 'start', 'name'))
  return element(
    'div',
    { class: 'panel' },
    chartSvg(
      { width: chartWidth, height: size.height + margin.bottom },
      { by: `${chart.id}-title`, describedBy: `${chart.id}-text` },
      defs,
      ...labels,
      element('g', inPlot, renderPlot(plotFeed(size, x, y, boxes(chart.id, rows)))),
      ...visitLabels(visits, column, size.height + 6),
    ),
  )
}

function boxes(id: string, rows: readonly Row[]): PlotMarks {
  const bands: PlotMarks['bands'][number][] = []
  const rules: PlotMarks['rules'][number][] = []
  const figures: PlotMarks['figures'][number][] = []
  for (const [i, { grades }] of rows.entries()) {
    const top = i * row.height + row.label
    const middle = top + box / 2
    for (const [visit, grade] of grades.entries()) {
      if (grade === null) {
        const across = { x: visit + 0.36, x2: visit + 0.64, y: middle, y2: middle }
        rules.push({ ...across, stroke: inkSoft, width: 1, dash: [] })
        continue
      }
      const fill = gradeFill(id, grade)
      bands.push({ x: visit + 0.03, x2: visit + 0.97, y: top, y2: top + box, fill, stroke: inkSoft })
      const halo = gradeColour(grade)
      figures.push({
        x: visit + 0.5,
        y: middle,
        text: String(grade),
        fill: grade === 0 ? ink : onGrade,
        halo,
      })
    }
  }
  // Boxes and figures never lie over each other: those of one grade are written together.
  return {
    ...noMarks,
    bands: bands.toSorted((a, b) => (a.fill < b.fill ? -1 : Number(a.fill > b.fill))),
    rules,
    figures: figures.toSorted((a, b) => (a.text < b.text ? -1 : Number(a.text > b.text))),
  }
}

/** The first visit and the last, and as many between as there is room for. */
function visitLabels(visits: readonly string[], column: number, top: number): readonly string[] {
  const last = visits.length - 1
  const end = Math.max(column * visits.length, labelWidth * (last > 0 ? 2.2 : 1))
  const shown = [label(margin.side, top + 11, visits[0] ?? '')]
  if (last > 0) shown.push(label(margin.side + end, top + 11, visits[last] ?? '', 'end'))
  let free = labelWidth
  for (let i = 1; i < last; i += 1) {
    const x = (i + 0.5) * column
    if (x - labelWidth / 2 < free || x + labelWidth / 2 > end - labelWidth) continue
    shown.push(label(margin.side + x, top + 11, visits[i] ?? '', 'middle'))
    free = x + labelWidth / 2
  }
  return shown
}
