/** The sole seen from below with findings in their zones, graded by pattern as well as tone. */

import { pairOf, sideOf } from '../../hoof/feet.ts'
import type { Place } from '../../hoof/findings.ts'
import type { SoleDrawing } from '../../pages/shared/figures.ts'
import { gradeKey } from '../charts/key.ts'
import { frame, labelledBy } from '../figure.ts'
import type { FigureWords } from '../figure-words.ts'
import { element, shape as mark } from '../html.ts'
import { ink, inkSoft, paper } from '../ink.ts'
import { type Grade, gradeFill, gradePatterns } from '../patterns.ts'
import { type SolePart, type SoleShape, soleShape } from './sole-shape.ts'
import { soleZones, type Zone } from './sole-zones.ts'
import { type Point, path, svg, text } from './svg.ts'

const width = 320
const height = 326
/** Middle of the foot, and the toe. */
const origin: Point = [160, 40]
const signRadius = 11

const withZones = (shape: SoleShape) => ({ shape, zones: soleZones(shape) })
const soles = { fore: withZones(soleShape('fore')), hind: withZones(soleShape('hind')) }

export function soleDrawing(drawing: SoleDrawing, words: FigureWords): string {
  const { foot, id, marks } = drawing
  const { shape, zones } = soles[pairOf(foot)]
  const zoneOf = (place: string): Zone => zones[place as Place] ?? zones['whole foot']
  // From below the left foot has its inner side to the left.
  const hand = sideOf(foot) === 'left' ? 1 : -1
  const painted = worstFirst(marks).map(({ place, grade }) => ({ zone: zoneOf(place), grade }))
  const picture = svg(
    width,
    height,
    labelledBy(id),
    gradePatterns(id),
    element(
      'g',
      { transform: `translate(${origin[0]},${origin[1]}) scale(${hand},1)` },
      soleBase(shape, (part) => paintOf(id, painted, part), ownPaint(id, painted)),
    ),
    sides(hand, words),
    ...signs(marks, zoneOf, hand),
  )
  // Where its data stands beside it the grades are told there.
  const hasKey = marks.length > 0 && drawing.table !== null
  return frame(drawing, picture + (hasKey ? gradeKey(id, words, false) : ''))
}

interface Painted {
  readonly zone: Zone
  readonly grade: Grade
}

/** Later ones are painted over earlier ones, so the worst come last. */
const worstFirst = (marks: SoleDrawing['marks']) => [...marks].sort((a, b) => a.grade - b.grade)

const paintOf = (id: string, painted: readonly Painted[], part: SolePart): string | null => {
  const worst = painted.findLast(({ zone, grade }) => grade > 0 && zone.parts.includes(part))
  return worst ? gradeFill(id, worst.grade) : null
}

/** Zones that are no part of the base: stretches of wall, and lines painted broadly. */
function ownPaint(id: string, painted: readonly Painted[]): string {
  return painted
    .map(({ zone: { area, line }, grade }) => {
      const paint = gradeFill(id, grade)
      const rim = { stroke: inkSoft, 'stroke-width': 1.4, 'stroke-dasharray': grade === 0 ? '3 3' : null }
      if (area !== null) return path(area, { fill: paint, ...rim })
      if (line !== null && grade > 0) return path(line.d, { stroke: paint, 'stroke-width': line.width })
      return ''
    })
    .join('')
}

/**
 * The sole with its parts: wall, white line, sole, bars, grooves, frog, bulbs.
 * @param paint what fills a part, null for its own ground
 * @param wallPaint marks that lie over the wall and under the lines
 */
export function soleBase(
  { parts }: SoleShape,
  paint: (part: SolePart) => string | null = () => null,
  wallPaint = '',
): string {
  const thin = { stroke: inkSoft, 'stroke-width': 1.3 }
  const ground = 'var(--paper-2, #f4f0e5)'
  return [
    path(parts.bulbs, { ...thin, 'stroke-width': 1.6, fill: paint('bulbs') ?? paper }),
    path(parts.ground, { fill: ground }),
    path(parts.sole, { fill: paint('sole') ?? paper }),
    wallPaint,
    path(parts.whiteLine, { ...thin, 'stroke-width': 1 }),
    path(parts.medialBar, { ...thin, fill: paint('medialBar') ?? ground }),
    path(parts.lateralBar, { ...thin, fill: paint('lateralBar') ?? ground }),
    path(parts.medialGroove, { ...thin, fill: paint('medialGroove') ?? 'var(--line, #d9d1c0)' }),
    path(parts.lateralGroove, { ...thin, fill: paint('lateralGroove') ?? 'var(--line, #d9d1c0)' }),
    path(parts.frog, { ...thin, stroke: ink, 'stroke-width': 1.7, fill: paint('frog') ?? ground }),
    path(parts.sulcus, { ...thin, fill: paint('sulcus') ?? 'var(--line, #d9d1c0)' }),
    path(parts.wallEdge, { stroke: ink, 'stroke-width': 2.6 }),
  ].join('')
}

function sides(hand: 1 | -1, { inner, outer }: FigureWords): string {
  const [left, right] = hand === 1 ? [inner, outer] : [outer, inner]
  return (
    text([4, 14], left, { fill: inkSoft }) +
    text([width - 4, 14], right, { fill: inkSoft, 'text-anchor': 'end' })
  )
}

/** A numbered disc a mark; those of one place side by side. */
function signs(
  marks: SoleDrawing['marks'],
  zoneOf: (place: string) => Zone,
  hand: 1 | -1,
): readonly string[] {
  return marks.map((each) => {
    const same = marks.filter(({ place }) => place === each.place)
    const aside = (same.indexOf(each) - (same.length - 1) / 2) * (2 * signRadius + 3)
    const [x, y] = zoneOf(each.place).sign
    const cx = Math.min(width - 13, Math.max(13, origin[0] + x * hand + aside))
    const cy = origin[1] + y
    return (
      mark('circle', { cx, cy, r: signRadius, fill: paper, stroke: ink, 'stroke-width': 1.6 }) +
      text([cx, cy + 5], each.sign, { 'text-anchor': 'middle', 'font-weight': 600, 'font-size': 14 })
    )
  })
}
