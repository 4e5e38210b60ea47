/** The hoof from the side, first against latest, to scale, with toe angle and toe length marked. */
import type { SideDrawing, SideOutline } from '../../pages/shared/figures.ts'
import { frame, labelledBy } from '../figure.ts'
import type { Attributes } from '../html.ts'
import { first as firstColour, ink, inkSoft, latest as latestColour, paper } from '../ink.ts'
import { capsule, limbHint, type SideCorners } from './side-shape.ts'
import {
  arc,
  dimension,
  direction,
  type Point,
  path,
  plainText,
  plus,
  radians,
  svg,
  text,
  through,
} from './svg.ts'

const width = 400
const margin = 22
/** Room above the hairline for the pastern and for the two lines that name the outlines, mm and units. */
const pasternHeight = 34
const nameLine = 21
const bulb = 12

export function sideDrawing(drawing: SideDrawing): string {
  const { first, latest, id } = drawing
  const outlines = latest === null ? [first] : [first, latest]
  const extents = outlines.map(extentOf)
  const left = Math.min(...extents.map(({ left }) => left))
  const right = Math.max(...extents.map(({ right }) => right)) + bulb
  const scale = Math.min(2.3, (width - 2 * margin - 20) / (right - left))
  const top = Math.max(...outlines.map(({ toeHairline }) => toeHairline[1] + pasternHeight)) * scale
  const ground = Math.max(top, 120) + outlines.length * nameLine
  const originX = (width - (right - left) * scale) / 2 + 8 - left * scale
  const place = (outline: SideOutline) => corners(outline, [originX, ground], scale)

  const now = place(latest ?? first)
  const shown = latest ?? first
  const picture = svg(
    width,
    ground + 22,
    labelledBy(id),
    limbHint(now),
    capsule(now, {
      fill: 'var(--paper-2, #f4f0e5)',
      stroke: ink,
      'stroke-width': shown.assumed ? 2 : 2.6,
      'stroke-dasharray': shown.assumed ? assumedDash : null,
    }),
    shown.assumed ? frontWall(now, { stroke: ink, 'stroke-width': 2.6 }) : '',
    latest === null ? '' : firstOutline(place(first), first.assumed),
    path(
      through([
        [6, ground],
        [width - 6, ground],
      ]),
      { stroke: inkSoft, 'stroke-width': 1.4 },
    ),
    angleMark(now, shown.toeAngleLabel, scale),
    lengthMark(now, shown.toeLengthLabel),
    names(first, latest),
  )
  return frame(drawing, picture)
}

/** Sides that stand in for readings that were not taken; the front wall is always read. */
const assumedDash = '2 5'

const frontWall = ({ toeGround, toeHairline }: SideCorners, style: Attributes): string =>
  path(through([toeGround, toeHairline]), style)

function firstOutline(corners: SideCorners, assumed: boolean): string {
  const style = { stroke: firstColour, 'stroke-width': 2, 'stroke-dasharray': '7 5' }
  if (!assumed) return capsule(corners, style)
  return (
    capsule(corners, { ...style, 'stroke-dasharray': assumedDash, 'stroke-width': 1.6 }) +
    frontWall(corners, style)
  )
}

/** Horizontal extent about the middle of the hairline, by which outlines are laid over each other. */
function extentOf({ toeHairline, heelHairline, heelGround }: SideOutline) {
  const middle = (toeHairline[0] + heelHairline[0]) / 2
  return { left: -middle, right: Math.max(heelHairline[0], heelGround[0]) - middle }
}

/**
 * Outlines share the ground and the middle of the hairline: the hairline is the living edge and stays,
 * while the horn below it grows and is trimmed.
 */
function corners(outline: SideOutline, [originX, ground]: Point, scale: number): SideCorners {
  const { left } = extentOf(outline)
  const at = ([x, y]: Point): Point => [originX + (left + x) * scale, ground - y * scale]
  return {
    toeGround: at([0, 0]),
    toeHairline: at(outline.toeHairline),
    heelHairline: at(outline.heelHairline),
    heelGround: at(outline.heelGround),
    toeAngle: outline.toeAngle,
    scale,
  }
}

function angleMark({ toeGround, toeAngle }: SideCorners, label: string, scale: number): string {
  const radius = 26 * scale
  const half = radians(toeAngle / 2)
  const at = plus(toeGround, (radius + 8) * Math.cos(half), -(radius + 8) * Math.sin(half) + 5)
  return (
    arc(toeGround, radius, 0, toeAngle, { stroke: latestColour, 'stroke-width': 2 }) +
    text(at, label, { 'font-weight': 600 })
  )
}

function lengthMark({ toeGround, toeHairline }: SideCorners, label: string): string {
  const [ux, uy] = direction(toeGround, toeHairline)
  const out = 13
  const aside = (at: Point, by: number): Point => plus(at, uy * by, -ux * by)
  const middle: Point = [(toeGround[0] + toeHairline[0]) / 2, (toeGround[1] + toeHairline[1]) / 2]
  const [x, y] = aside(middle, out + 8)
  const turn = (Math.atan2(uy, ux) * 180) / Math.PI
  return (
    dimension(
      aside(toeGround, out),
      aside(toeHairline, out),
      { stroke: latestColour, 'stroke-width': 2 },
      5,
    ) +
    plainText([x, y], label, {
      'text-anchor': 'middle',
      'font-weight': 600,
      transform: `rotate(${turn.toFixed(1)} ${x.toFixed(1)} ${y.toFixed(1)})`,
      stroke: paper,
    })
  )
}

/** Which line is which, with what it read, in the free corner above the toe. */
function names(first: SideOutline, latest: SideOutline | null): string {
  const said = ({ label, toeLengthLabel, toeAngleLabel }: SideOutline) =>
    `${label}: ${toeLengthLabel}, ${toeAngleLabel}`
  const entry = (outline: SideOutline, y: number, dash: string | null, stroke: string) =>
    path(
      through([
        [4, y],
        [30, y],
      ]),
      { stroke, 'stroke-width': 2.4, 'stroke-dasharray': dash },
    ) + plainText([38, y + 5], said(outline))
  if (latest === null) return entry(first, 12, null, ink)
  return entry(first, 12, '7 5', firstColour) + entry(latest, 12 + nameLine, null, ink)
}
