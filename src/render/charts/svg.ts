/** The outer `<svg>` of a chart and texts in it. */
import { element, escapeHtml } from '../html.ts'

/** Width of every chart picture, in its own units. */
export const chartWidth = 400

/** Widest that a picture is shown, CSS pixels: beyond it text would outgrow the page's. A stylesheet narrows it. */
const widest = 540

/** A picture as wide as its column allows, and no wider than it was laid out for; its stylesheet sets the size of text. `labelled` names the ids of its name and of its text alternative. */
export const chartSvg = (
  { width, height }: { readonly width: number; readonly height: number },
  labelled: { readonly by: string; readonly describedBy: string | null },
  ...content: readonly string[]
): string =>
  element(
    'svg',
    {
      viewBox: `0 0 ${width} ${height}`,
      width: (width / chartWidth) * widest,
      role: 'img',
      'aria-labelledby': labelled.by,
      'aria-describedby': labelled.describedBy,
    },
    ...content,
  )

export type Anchor = 'start' | 'middle' | 'end'

/** How a label looks, as a class of the stylesheet: what is said softly, what names a row, what lies over the marks. */
type Look = 'soft' | 'name' | 'over'

export const label = (
  x: number,
  y: number,
  text: string,
  anchor: Anchor = 'start',
  look: Look = 'soft',
): string =>
  element('text', { class: look, x, y, 'text-anchor': anchor === 'start' ? null : anchor }, escapeHtml(text))

export const moved = (x: number, y: number, ...content: readonly string[]): string =>
  element('g', { transform: `translate(${x},${y})` }, ...content)
