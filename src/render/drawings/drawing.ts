/** Drawings of a page in their frames: picture, what it stands for where that must be told, the same in words. */

import { behindMeasures } from '../../hoof/stand-ins.ts'
import type {
  Drawing,
  LevelDrawing,
  SideDrawing,
  SoleDrawing,
  WallDrawing,
} from '../../pages/shared/figures.ts'
import { keyList } from '../charts/key.ts'
import { type Framed, frame, labelledBy } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element, escapeHtml, shape } from '../html.ts'
import { behindView } from './behind.ts'
import { differs } from './differences.ts'
import { measureDrawing } from './measure.ts'
import { sideView } from './side.ts'
import { soleView } from './sole.ts'
import { wallView } from './wall.ts'

/** A drawing in its frame; the drawing of a measure stands alone. */
export function draw(drawing: Drawing, words: FigureWords): string {
  switch (drawing.kind) {
    case 'side':
      return side(drawing)
    case 'sole':
      return sole(drawing, words)
    case 'wall':
      return wall(drawing, words)
    case 'level':
      return level(drawing, words)
    case 'measure':
      return measureDrawing(drawing, words)
  }
}

const framed = (drawing: Framed & { readonly unread: string | null }, picture: string, key = ''): string =>
  frame(
    drawing,
    element('div', { class: 'drawn' }, picture) +
      key +
      (drawing.unread === null ? '' : element('p', { class: 'figure-note' }, escapeHtml(drawing.unread))),
  )

const sides = ({ inner, outer }: FigureWords) => ({ medial: inner, lateral: outer })

/** A stroke of the key: an outline as it is, or broken as it was. */
const swatch = (look: string): string => shape('path', { class: look, d: 'M1 8H27' })

/** Horn that a trim would take. */
const hatching = shape('path', { class: 'key-hatch', d: 'M2 14L8 2M10 14L16 2M18 14L24 2' })

function side(drawing: SideDrawing): string {
  const { foot, first, latest, trim } = drawing
  const now = latest ?? first
  const isBoth = latest !== null && differs('side', first.measures, latest.measures)
  const label = (one: typeof first) => `${one.label}: ${one.toeLengthLabel}, ${one.toeAngleLabel}`
  return framed(
    drawing,
    sideView(
      { foot, now: now.measures, first: latest === null ? null : first.measures, trim },
      labelledBy(drawing),
    ),
    keyList([
      ...(isBoth ? [{ mark: swatch('key-was'), label: label(first) }] : []),
      { mark: swatch('key-now'), label: label(now) },
      ...(trim ? [{ mark: hatching, label: trim.label }] : []),
    ]),
  )
}

function sole(drawing: SoleDrawing, words: FigureWords): string {
  const { foot, measures, marks, first } = drawing
  // A single finding is named by the caption.
  const findings = marks.length === 1 ? marks.map((mark) => ({ ...mark, sign: '' })) : marks
  const isBoth = first !== undefined && differs('sole', first.measures, measures)
  return framed(
    drawing,
    // Pages show soles beside each other, none as wide as texture wants.
    soleView(
      { foot, now: measures, first: first?.measures, findings, sides: sides(words), isSmall: true },
      labelledBy(drawing),
    ),
    isBoth ? keyList([{ mark: swatch('key-was'), label: first.label }]) : '',
  )
}

function level(drawing: LevelDrawing, words: FigureWords): string {
  const { foot, measures, balance, balanceLabel: label } = drawing
  const { medial, lateral } = behindMeasures(measures)
  const mean = (medial + lateral) / 2
  const now = {
    ...measures,
    'heel-medial': Math.max(1, mean + balance / 2),
    'heel-lateral': Math.max(1, mean - balance / 2),
  }
  return framed(drawing, behindView({ foot, now, label, sides: sides(words) }, labelledBy(drawing)))
}

/** Letters, as many as a wall can need. */
const letter = (i: number): string => String.fromCodePoint(97 + (i % 26))

function wall(drawing: WallDrawing, words: FigureWords): string {
  const { foot, measures, features } = drawing
  const drawn = features.map(({ what, place, at, wallLength, ahead }, i) => ({
    what,
    place,
    at,
    wallLength,
    ahead: ahead.map((one) => one.at),
    sign: letter(i),
  }))
  const items = features.map(({ label, ahead }, i) => {
    const next = ahead.length === 0 ? '' : `; ${words.ahead(ahead.map((one) => one.label).join(', '))}`
    return element('li', {}, element('b', {}, letter(i)), ' ', escapeHtml(label + next))
  })
  return framed(
    drawing,
    wallView({ foot, now: measures, features: drawn, sides: sides(words) }, labelledBy(drawing)),
    element('ul', { class: 'figure-key' }, ...items),
  )
}
