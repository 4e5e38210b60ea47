/** The wall from hairline to ground, a lane a place, with followed features where they are and where they will be. */
import type { WallDrawing } from '../../pages/shared/figures.ts'
import { keyList } from '../charts/key.ts'
import { frame } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element, escapeHtml, num, shape } from '../html.ts'
import { ink, inkSoft, latest, paper } from '../ink.ts'
import { curve, type Point, path, plainText, svg, through } from './svg.ts'

const width = 320
const top = 26
/** Units a millimetre: every lane is to the same scale. */
const scale = 2.1
const strip = { left: 14, right: 84 }
const textLeft = 112
const lineHeight = 20
/** Length that is drawn where none was read, mm. */
const unreadLength = 90

type Lane = WallDrawing['lanes'][number]

export function wallDrawing(drawing: WallDrawing, words: FigureWords): string {
  const lanes = drawing.lanes.map((lane, i) =>
    element(
      'div',
      { class: 'panel' },
      element(
        'p',
        { class: 'panel-head', id: `${drawing.id}-${i}` },
        element('strong', {}, escapeHtml(lane.place)),
      ),
      lanePicture(lane, {
        'aria-labelledby': `${drawing.id}-title ${drawing.id}-${i}`,
        'aria-describedby': `${drawing.id}-text`,
      }),
    ),
  )
  return frame(drawing, element('div', { class: 'panels panels-narrow' }, ...lanes) + key(words))
}

const key = ({ wall }: FigureWords): string =>
  keyList([
    { mark: shape('ellipse', { cx: 14, cy: 8, rx: 9, ry: 5, fill: latest }), label: wall.now },
    {
      mark: shape('ellipse', {
        cx: 14,
        cy: 8,
        rx: 9,
        ry: 5,
        fill: 'none',
        stroke: latest,
        'stroke-width': 1.8,
        'stroke-dasharray': '3 2.5',
      }),
      label: wall.ahead,
    },
  ])

interface Spot {
  readonly x: number
  readonly y: number
  readonly label: string
  readonly isNow: boolean
  /** The shape by which one feature is told from another. */
  readonly shape: number
}

function lanePicture(lane: Lane, name: Readonly<Record<string, string>>): string {
  const length = lane.wallLength ?? Math.max(unreadLength, ...lane.features.map(({ at }) => at + 12))
  const ground = top + length * scale
  const y = (mm: number) => top + Math.min(mm, length) * scale
  const step = (strip.right - strip.left) / (lane.features.length + 1)
  const spots = lane.features.flatMap(({ at, label, ahead }, i): Spot[] => {
    const column = { x: strip.left + step * (i + 1), shape: i % spotShapes.length }
    return [
      { ...column, y: y(at), label, isNow: true },
      ...ahead.map((next) => ({ ...column, y: y(next.at), label: next.label, isNow: false })),
    ]
  })
  const labelled = spread(spots)
  const bottom = Math.max(ground + 16, ...labelled.map(({ textY }) => textY + 14))
  return svg(
    width,
    bottom,
    name,
    wall(ground, lane.wallLength !== null),
    ...labelled.map(leader),
    ...labelled.map(spotMark),
    ...labelled.map(spotLabel),
  )
}

/** A strip of wall: hairline bowed above, ground straight below, or open where its length was not read. */
function wall(ground: number, isRead: boolean): string {
  const { left, right } = strip
  const hairline = curve(
    [left, top],
    [
      [left + 18, top - 9],
      [right - 18, top - 9],
      [right, top],
    ],
  )
  const sides = `L${right} ${ground}${isRead ? `L${left} ${ground}` : `M${left} ${ground}`}L${left} ${top}`
  const skin = curve(
    [left - 3, top - 7],
    [
      [left + 17, top - 17],
      [right - 17, top - 17],
      [right + 3, top - 7],
    ],
  )
  const edge: readonly Point[] = [
    [4, ground],
    [right + 10, ground],
  ]
  return (
    path(`${hairline}L${right} ${ground}L${left} ${ground}Z`, { fill: 'var(--paper-2, #f4f0e5)' }) +
    path(hairline + sides, {
      stroke: ink,
      'stroke-width': 2.2,
      'stroke-dasharray': isRead ? null : '9 5',
    }) +
    path(skin, { stroke: inkSoft, 'stroke-width': 1.4 }) +
    (isRead ? path(through(edge), { stroke: inkSoft, 'stroke-width': 1.4 }) : '')
  )
}

/** Spots from the top, with the heights of their labels moved apart so that none lies over another. */
function spread(spots: readonly Spot[]): readonly (Spot & { readonly textY: number })[] {
  let free = 14
  return [...spots]
    .sort((a, b) => a.y - b.y)
    .map((spot) => {
      const textY = Math.max(spot.y + 5, free)
      free = textY + lineHeight
      return { ...spot, textY }
    })
}

/** One shape a feature, round its middle: lying oval, diamond, square, upright triangle. */
const spotShapes = [
  'M-11 0A11 6 0 0 1 11 0A11 6 0 0 1 -11 0Z',
  'M0 -9L9 0L0 9L-9 0Z',
  'M-7 -7H7V7H-7Z',
  'M0 -9L9 7H-9Z',
]

const spotMark = (spot: Spot): string =>
  path(spotShapes[spot.shape] ?? '', {
    transform: `translate(${num(spot.x)},${num(spot.y)})`,
    fill: spot.isNow ? latest : paper,
    stroke: latest,
    'stroke-width': 2,
    'stroke-dasharray': spot.isNow ? null : '4 3',
  })

const spotLabel = ({ textY, label, isNow }: Spot & { readonly textY: number }): string =>
  plainText([textLeft, textY], label, isNow ? { 'font-weight': 600 } : {})

const leader = ({ x, y, textY }: Spot & { readonly textY: number }): string =>
  path(
    through([
      [x + 12, y],
      [strip.right + 8, y],
      [textLeft - 5, textY - 5],
    ]),
    { stroke: inkSoft, 'stroke-width': 1 },
  )
