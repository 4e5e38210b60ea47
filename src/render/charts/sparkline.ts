/** A trend of the size of a word: a line through its readings, in the band where they are wanted, a dot at the last. */
import type { Sparkline } from '../../pages/shared/figures.ts'
import { element, num, shape } from '../html.ts'
import { band as bandTone, ink, inkSoft } from '../ink.ts'

const width = 88
const height = 26
const rim = 4

export function sparkline({ points, band, within, description }: Sparkline): string {
  const values = [...points.map(({ value }) => value), ...within]
  const edges = band === null ? [] : [band.low, band.high].filter((edge) => edge !== null)
  const low = Math.min(...values, ...edges)
  const high = Math.max(...values, ...edges)
  const span = high - low || 1
  const first = points[0]?.at ?? 0
  const days = (points.at(-1)?.at ?? 0) - first || 1
  const x = (at: number) => rim + ((at - first) / days) * (width - 2 * rim)
  const y = (value: number) => rim + ((high - value) / span) * (height - 2 * rim)
  const last = points.at(-1)
  return element(
    'svg',
    {
      class: 'spark',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      'aria-label': description,
    },
    band === null ? '' : bandMark(band, y),
    shape('path', {
      d: points.map(({ at, value }, i) => `${i === 0 ? 'M' : 'L'}${num(x(at))} ${num(y(value))}`).join(''),
      fill: 'none',
      stroke: ink,
      'stroke-width': 1.5,
      'stroke-linejoin': 'round',
    }),
    last === undefined
      ? ''
      : shape('circle', {
          cx: points.length === 1 ? width / 2 : x(last.at),
          cy: y(last.value),
          r: 2.8,
          fill: ink,
        }),
  )
}

/** An open side of the band runs to the rim. */
function bandMark({ low, high }: NonNullable<Sparkline['band']>, y: (value: number) => number): string {
  const top = high === null ? 0 : Math.max(0, y(high))
  const foot = low === null ? height : Math.min(height, y(low))
  const edges = [
    high === null ? '' : `M0 ${num(top)}H${width}`,
    low === null ? '' : `M0 ${num(foot)}H${width}`,
  ]
  return (
    shape('rect', { x: 0, y: top, width, height: Math.max(1, foot - top), fill: bandTone }) +
    shape('path', { d: edges.join(''), stroke: inkSoft, 'stroke-width': 0.75, 'stroke-dasharray': '2 2' })
  )
}
