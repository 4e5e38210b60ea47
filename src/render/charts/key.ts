/** Keys to charts: what each mark stands for, as a list of small pictures with their words. Only marks that occur. */
import type { TrendChart } from '../../pages/shared/figures.ts'
import type { FigureWords } from '../figure-words.ts'
import { element, escapeHtml, shape } from '../html.ts'
import { ink, inkSoft, latest, paper } from '../ink.ts'
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

const trendMarks: Readonly<Record<keyof FigureWords['trend'], string>> = {
  after: shape('circle', { cx: 14, cy: 8, r: 5, fill: ink }),
  before: shape('path', { d: 'M14 3L19.5 13H8.5Z', fill: paper, stroke: ink, 'stroke-width': 1.5 }),
  leftOut: shape('path', { d: 'M9 3L19 13M9 13L19 3', stroke: inkSoft, 'stroke-width': 2, fill: 'none' }),
}

/** What the marks of both stages are, for several charts together. */
export const stageKey = (words: FigureWords['trend']): string =>
  keyList((['after', 'before'] as const).map((name) => ({ mark: trendMarks[name], label: words[name] })))

/** What the marks of a trend chart are; all else in it is labelled where it stands. */
export function trendKey({ panels }: TrendChart, words: FigureWords['trend']): string {
  const points = panels.flatMap((panel) => panel.points)
  const shows = {
    after: points.some(({ stage, isLeftOut }) => !isLeftOut && stage === 'after'),
    before: points.some(({ stage, isLeftOut }) => !isLeftOut && stage === 'before'),
    leftOut: points.some(({ isLeftOut }) => isLeftOut),
  }
  const names = Object.keys(shows) as (keyof typeof shows)[]
  return keyList(
    names.filter((name) => shows[name]).map((name) => ({ mark: trendMarks[name], label: words[name] })),
  )
}

export const agreementKey = (words: FigureWords['agreement'], hasUnexplained: boolean): string =>
  keyList([
    {
      mark: shape('circle', { cx: 14, cy: 8, r: 4.5, fill: 'none', stroke: latest, 'stroke-width': 2 }),
      label: words.explained,
    },
    ...(hasUnexplained
      ? [{ mark: shape('circle', { cx: 14, cy: 8, r: 5, fill: ink }), label: words.unexplained }]
      : []),
  ])

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
