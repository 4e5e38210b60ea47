/** Charts: Vega-Lite specifications, each compiled once and then fed with data. */
import type { Chart } from '../../pages/shared/figures.ts'
import type { FigureWords } from '../figure-words.ts'
import { drawAgreement } from './agreement.ts'
import { drawDistribution } from './distribution.ts'
import { drawFindings } from './findings.ts'
import { createPlotRenderer, loadVega } from './plot-renderer.ts'
import { plotSpec } from './plot-spec.ts'
import { drawTrend } from './trend.ts'

/** A chart as a whole `<figure>`. */
export type DrawChart = (chart: Chart) => string

const kinds: ReadonlySet<unknown> = new Set<Chart['kind']>(['trend', 'findings', 'distribution', 'agreement'])

/** Whether plain data holds a chart at any depth. */
export function mentionsChart(data: unknown): boolean {
  if (typeof data !== 'object' || data === null) return false
  if ('kind' in data && kinds.has(data.kind)) return true
  return Object.values(data).some(mentionsChart)
}

/** Loads the chart library and compiles the one specification behind every chart. */
export async function loadCharts(words: FigureWords): Promise<DrawChart> {
  const renderPlot = createPlotRenderer(await loadVega(), plotSpec)
  return (chart) => {
    if (chart.kind === 'trend') return drawTrend(chart, renderPlot, words)
    if (chart.kind === 'findings') return drawFindings(chart, renderPlot, words)
    if (chart.kind === 'agreement') return drawAgreement(chart, renderPlot, words)
    return drawDistribution(chart, renderPlot, words)
  }
}
