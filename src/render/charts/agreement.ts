/** Two ways of reading one thing: difference against mean (Bland and Altman 1986, Lancet 327:307; title from memory). */
import type { AgreementChart } from '../../pages/shared/figures.ts'
import { frame } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element } from '../html.ts'
import { ink, inkSoft, latest, paper } from '../ink.ts'
import { axes } from './axes.ts'
import { agreementKey } from './key.ts'
import type { PlotRenderer } from './plot-renderer.ts'
import { noMarks, plotFeed } from './plot-spec.ts'
import { chartSvg, chartWidth, label } from './svg.ts'
import { valueAxis } from './ticks.ts'

const height = 250
const margin = { left: 40, right: 14, top: 28, bottom: 44 }
const plot = { width: chartWidth - margin.left - margin.right, height: height - margin.top - margin.bottom }
const inPlot = { transform: `translate(${margin.left},${margin.top})` }

export function drawAgreement(chart: AgreementChart, renderPlot: PlotRenderer, words: FigureWords): string {
  const { pairs, bias, limits, id } = chart
  const means = pairs.map(({ mean }) => mean)
  const ends = [...pairs.map(({ difference }) => difference), ...limits.map(({ at }) => at), 0]
  const x = valueAxis(Math.min(...means), Math.max(...means), 5, words.decimalSign)
  const y = valueAxis(Math.min(...ends), Math.max(...ends), 4, words.decimalSign)
  const level = (at: number, stroke: string, width: number, dash: readonly number[]) => ({
    x: x.low,
    x2: x.high,
    y: at,
    y2: at,
    stroke,
    width,
    dash,
  })
  const marks = {
    ...noMarks,
    rules: [
      level(0, inkSoft, 1, []),
      level(bias.at, ink, 2, []),
      ...limits.map(({ at }) => level(at, inkSoft, 1.5, [6, 4])),
    ],
    symbols: pairs.map(({ mean, difference, isExplained }) => ({
      x: mean,
      y: difference,
      shape: 'circle',
      size: 50,
      fill: isExplained ? 'none' : ink,
      stroke: isExplained ? latest : paper,
      width: isExplained ? 2 : 1,
    })),
  }
  const down = (at: number) => ((y.high - at) / (y.high - y.low)) * plot.height
  const named = [bias, ...limits].map(({ at, label: text }) =>
    label(plot.width, down(at) - 4, text, 'end', 'over'),
  )
  const picture = chartSvg(
    { width: chartWidth, height },
    { by: `${id}-title`, describedBy: `${id}-text` },
    label(0, 15, chart.differenceTitle),
    element('g', inPlot, axes(plot, x, y), renderPlot(plotFeed(plot, x, y, marks)), ...named),
    label(chartWidth - margin.right, height - 4, chart.valueTitle, 'end'),
  )
  return frame(
    chart,
    element('div', { class: 'panels' }, element('div', { class: 'panel' }, picture)) +
      agreementKey(
        words.agreement,
        pairs.some(({ isExplained }) => !isExplained),
      ),
  )
}
