/**
 * Ink: strokes in millimetres become SVG. Every drawing is a sheet 1,000 units wide, on which places are whole numbers;
 * what a line looks like (its pen, its tint, what is left out of a small drawing) is said by its class, in
 * `templates/styles/drawings.css`. So no drawing carries an id, a colour or a size of its own.
 */
import { type Attributes, element, escapeHtml, shape } from '../html.ts'
import type { Point, Stroke } from './curves.ts'

/** A rectangle of the drawn world, millimetres. */
export interface Box {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

export interface Sheet {
  readonly box: Box
  readonly height: number
  /** Units a millimetre. */
  readonly scale: number
  readonly isMirrored: boolean
  readonly at: (point: Point) => readonly [number, number]
}

export const sheetWidth = 1000

/** A sheet that holds a box; mirrored, its left is the box's right. */
export function sheetFor(box: Box, isMirrored = false): Sheet {
  const scale = sheetWidth / (box.right - box.left)
  return {
    box,
    height: Math.round((box.top - box.bottom) * scale),
    scale,
    isMirrored,
    at: isMirrored
      ? ([x, y]) => [Math.round((box.right - x) * scale), Math.round((box.top - y) * scale)]
      : ([x, y]) => [Math.round((x - box.left) * scale), Math.round((box.top - y) * scale)],
  }
}

/** How a picture is named: by the ids of its caption and its text, or by a label of its own. */
export type PictureName =
  | { readonly 'aria-labelledby': string; readonly 'aria-describedby'?: string }
  | { readonly 'aria-label': string }

/** Bare of any stylesheet it is still a line drawing in the colour of the text. */
export const picture = (sheet: Sheet, name: PictureName, ...content: readonly string[]): string =>
  element(
    'svg',
    {
      class: 'drawing',
      viewBox: `0 0 ${sheetWidth} ${sheet.height}`,
      role: 'img',
      ...name,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': 5,
    },
    ...content,
  )

const signed = (value: number): string => (value < 0 ? `${value}` : ` ${value}`)

/** The data of a path: where it begins, then step by step, each relative to the last. */
export function pathData({ at }: Sheet, strokes: readonly Stroke[], closed = false): string {
  let data = ''
  let [x, y] = [0, 0]
  for (const { start, steps } of strokes) {
    const [sx, sy] = at(start)
    data += `m${sx - x}${signed(sy - y)}`
    x = sx
    y = sy
    for (const step of steps) {
      const points = (step as readonly Point[]).map(at)
      const [tx, ty] = points.at(-1) ?? [x, y]
      if (step.length === 1 && tx === x && ty === y) {
        // A dot: the pen set down and lifted.
        if (steps.length === 1) data += 'h0'
        continue
      }
      data += step.length === 1 ? 'l' : 'c'
      points.forEach(([px, py], i) => {
        data += (i === 0 ? `${px - x}` : signed(px - x)) + signed(py - y)
      })
      x = tx
      y = ty
    }
    if (!closed) continue
    data += 'z'
    x = sx
    y = sy
  }
  return data
}

/** Lines of one pen. */
export const lines = (sheet: Sheet, pen: string, ...strokes: readonly Stroke[]): string =>
  strokes.length === 0 ? '' : shape('path', { class: pen, d: pathData(sheet, strokes) })

/** Areas of one tint. */
export const area = (sheet: Sheet, tint: string, ...strokes: readonly Stroke[]): string =>
  strokes.length === 0 ? '' : shape('path', { class: tint, d: pathData(sheet, strokes, true) })

/** The ground across the whole sheet. */
export const groundLine = (sheet: Sheet): string =>
  lines(sheet, 'ground', { start: [sheet.box.left, 0], steps: [[[sheet.box.right, 0]]] })

export type Anchor = 'start' | 'middle' | 'end'

/** A few words or a figure, in ink. */
export function words(
  sheet: Sheet,
  place: Point,
  text: string,
  anchor: Anchor = 'middle',
  look = '',
): string {
  const [x, y] = sheet.at(place)
  const attributes: Attributes = {
    x,
    y,
    class: look === '' ? null : look,
    'text-anchor': anchor === 'middle' ? null : anchor,
  }
  return text === '' ? '' : element('text', attributes, escapeHtml(text))
}

/** The box round points, with room on each side, millimetres. */
export function boxOf(points: readonly Point[], room: Box): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return {
    left: Math.min(...xs) - room.left,
    right: Math.max(...xs) + room.right,
    bottom: Math.min(...ys) - room.bottom,
    top: Math.max(...ys) + room.top,
  }
}
