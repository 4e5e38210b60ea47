/** Keys to charts: what each mark stands for, as a list of small pictures with their words. Only marks that occur. */
import type { TrendChart } from '../../pages/shared/figures.ts'
import type { FigureWords } from '../figure-words.ts'
import { element, escapeHtml, shape } from '../html.ts'
import { band, ink, inkSoft, paper, ribbon } from '../ink.ts'
import { gradeFill } from '../patterns.ts'

export interface KeyEntry {
  /** Marks in a box of 28 by 16. */
  readonly mark: string
  readonly label: string
}

export function keyList(entries: readonly KeyEntry[]): string {
  if (entries.length === 0) return ''
  const items = entries.map(({ mark, label }) =>
    element(
      'li',
      {},
      element('svg', { viewBox: '0 0 28 16', width: 28, height: 16, 'aria-hidden': 'true' }, mark),
      ' ',
      escapeHtml(label),
    ),
  )
  return element('ul', { class: 'figure-key' }, ...items)
}

const level = (stroke: string, width: number, dash: string | null = null) =>
  shape('path', { d: 'M1 8H27', stroke, 'stroke-width': width, 'stroke-dasharray': dash, fill: 'none' })

const trendMarks: Readonly<Record<keyof FigureWords['trend'], string>> = {
  after: shape('circle', { cx: 14, cy: 8, r: 5, fill: ink }),
  before: shape('path', { d: 'M14 3L19.5 13H8.5Z', fill: ink }),
  unused:
    shape('circle', { cx: 8, cy: 8, r: 4.5, fill: paper, stroke: inkSoft, 'stroke-width': 1.25 }) +
    shape('path', { d: 'M20 3.5L25 12.5H15Z', fill: paper, stroke: inkSoft, 'stroke-width': 1.25 }),
  sawTooth: shape('path', {
    d: 'M1 12L10 3V12L19 3V12L27 4',
    fill: 'none',
    stroke: inkSoft,
    'stroke-width': 1.25,
  }),
  line: level(ink, 3),
  interval: shape('rect', { x: 1, y: 2, width: 26, height: 12, fill: ribbon }),
  band:
    shape('rect', { x: 1, y: 2, width: 26, height: 12, fill: band }) +
    shape('path', { d: 'M1 2H27M1 14H27', stroke: inkSoft, 'stroke-dasharray': '2 4', fill: 'none' }),
  forecast:
    level(ink, 2) +
    shape('path', { d: 'M2 4V12M26 4V12', stroke: ink, 'stroke-width': 2, fill: 'none' }) +
    shape('path', { d: 'M9 3L19 13M9 13L19 3', stroke: ink, 'stroke-width': 2.5, fill: 'none' }),
}

/** The key to a trend chart, in the order in which the marks matter. */
export function trendKey({ panels }: TrendChart, words: FigureWords['trend']): string {
  const points = panels.flatMap((panel) => panel.points)
  const shows = {
    after: points.some(({ stage, used }) => used && stage === 'after'),
    before: points.some(({ stage, used }) => used && stage === 'before'),
    unused: points.some(({ used }) => !used),
    sawTooth: panels.some(({ sawTooth }) => sawTooth),
    line: panels.some(({ line }) => line.length > 0),
    interval: panels.some(({ line }) => line.length > 0),
    band: panels.some(({ band }) => band !== null),
    forecast: panels.some(({ forecast }) => forecast !== null),
  }
  const names = Object.keys(shows) as (keyof typeof shows)[]
  return keyList(
    names.filter((name) => shows[name]).map((name) => ({ mark: trendMarks[name], label: words[name] })),
  )
}

/** The key to grades; `id` is that of the figure that holds the patterns. */
export function gradeKey(id: string, { grades, notRecorded }: FigureWords, withGaps: boolean): string {
  const boxed = { x: 2, y: 1, width: 24, height: 14, stroke: inkSoft }
  const entries = ([0, 1, 2, 3] as const).map((grade) => ({
    mark: shape('rect', { ...boxed, fill: gradeFill(id, grade) }),
    label: `${grade} ${grades[grade]}`,
  }))
  const gap = { mark: shape('path', { d: 'M10 8H18', stroke: inkSoft, fill: 'none' }), label: notRecorded }
  return keyList(withGaps ? [...entries, gap] : entries)
}
