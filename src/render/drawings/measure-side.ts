/** Measures that are taken from the side. */
import { ink, inkSoft, latest, paper } from '../ink.ts'
import { capsule, limbHint, type SideCorners } from './side-shape.ts'
import { arc, between, curve, dimension, direction, type Point, path, plus, radians, through } from './svg.ts'

const scale = 1.12
const ground = 146
const toe: Point = [28, ground]
const angles = { toe: 51, heel: 46, newGrowth: 60 }
const millimetres = { toe: 84, heel: 38, bearing: 112, newGrowth: 30 }

const from = (start: Point, length: number, degrees: number): Point =>
  plus(start, length * scale * Math.cos(radians(degrees)), -length * scale * Math.sin(radians(degrees)))

const heelGround: Point = [toe[0] + millimetres.bearing * scale, ground]
const foot: SideCorners = {
  toeGround: toe,
  toeHairline: from(toe, millimetres.toe, angles.toe),
  heelHairline: from(heelGround, millimetres.heel, angles.heel),
  heelGround,
  toeAngle: angles.toe,
  scale,
}

/** The measure itself, and lines that lead to it. */
const strong = { stroke: latest, 'stroke-width': 3 }
const leading = { stroke: latest, 'stroke-width': 1.4, 'stroke-dasharray': '4 3' }

const groundLine = path(`M6 ${ground}H214`, { stroke: inkSoft, 'stroke-width': 1.2 })
const base =
  limbHint(foot) +
  capsule(foot, { stroke: ink, 'stroke-width': 1.8, fill: 'var(--paper-2, #f4f0e5)' }) +
  groundLine

/** A length beside a wall, outside it. */
function beside(a: Point, b: Point, by: number): string {
  const [ux, uy] = direction(a, b)
  const aside = (at: Point): Point => plus(at, uy * by, -ux * by)
  return dimension(aside(a), aside(b), strong)
}

export const toeLength = (): string => base + beside(toe, foot.toeHairline, 9)

export const toeAngle = (): string =>
  base + path(through([foot.toeHairline, toe]), strong) + arc(toe, 34, 0, angles.toe, strong)

/** Where the steeper strip ends: the wall bends here. */
const bend = from(toe, millimetres.toe - millimetres.newGrowth, angles.toe)
const newHairline = from(bend, millimetres.newGrowth, angles.newGrowth)
const bent: SideCorners = { ...foot, toeHairline: newHairline }
const bentBase =
  limbHint(bent) +
  path(`${through([toe, bend, newHairline])}L${foot.heelHairline.join(' ')}L${heelGround.join(' ')}Z`, {
    stroke: ink,
    'stroke-width': 1.8,
    fill: 'var(--paper-2, #f4f0e5)',
  }) +
  groundLine

export const newAngle = (): string => {
  const meets: Point = [bend[0] - (ground - bend[1]) / Math.tan(radians(angles.newGrowth)), ground]
  return (
    bentBase +
    path(through([bend, meets]), leading) +
    path(through([bend, newHairline]), strong) +
    arc(meets, 30, 0, angles.newGrowth, strong)
  )
}

export const newLength = (): string =>
  bentBase + dimension(bend, newHairline, { ...strong, transform: 'translate(-8,-5)' })

export const heelAngle = (): string =>
  base + path(through([heelGround, foot.heelHairline]), strong) + arc(heelGround, 24, 0, angles.heel, strong)

export const pasternAngle = (): string => {
  const high = from(foot.toeHairline, 42, angles.toe)
  const at: Point = [high[0] - (ground - high[1]) / Math.tan(radians(angles.toe)) + 7, ground]
  const line = [plus(high, 7, 0), plus(foot.toeHairline, 10, -4)] as const
  return (
    base +
    path(through([line[1], at]), leading) +
    path(through(line), strong) +
    arc(at, 34, 0, angles.toe, strong)
  )
}

export const coronetAngle = (): string => {
  const { heelHairline, toeHairline } = foot
  const degrees =
    180 - (Math.atan2(heelHairline[1] - toeHairline[1], heelHairline[0] - toeHairline[0]) * 180) / Math.PI
  return (
    base +
    path(through([heelHairline, plus(heelHairline, -88, 0)]), leading) +
    path(through([heelHairline, toeHairline]), strong) +
    arc(heelHairline, 52, 180, degrees, strong)
  )
}

/** A tape round the hairline, before the foot and behind it. */
export const coronetGirth = (): string => {
  const { heelHairline, toeHairline } = foot
  const at = (share: number, dy: number): Point => plus(between(toeHairline, heelHairline, share), 0, dy)
  const near = curve(toeHairline, [at(0.3, -1), at(0.65, -2), heelHairline])
  const far = curve(toeHairline, [at(0.3, -15), at(0.75, -17), heelHairline])
  return (
    base +
    path(far, leading) +
    path(near, { ...strong, 'stroke-width': 3.6 }) +
    path(near, { stroke: paper, 'stroke-width': 1.4, 'stroke-dasharray': '1 5' })
  )
}

/** As on a radiograph: the coffin bone within the foot, and the sole beneath its tip. */
export const soleDepth = (): string => {
  const tip = plus(toe, 28, -17)
  const bone = curve(
    tip,
    [plus(tip, 14, -20), plus(tip, 32, -48), plus(tip, 44, -62)],
    [plus(tip, 52, -62), plus(tip, 56, -46), plus(tip, 68, -44)],
    [plus(tip, 82, -40), plus(tip, 88, -26), plus(tip, 86, -14)],
    [plus(tip, 60, -10), plus(tip, 30, -3), tip],
  )
  return (
    base +
    path(`${bone}Z`, { stroke: inkSoft, 'stroke-width': 1.4, fill: 'var(--line, #d9d1c0)' }) +
    dimension(tip, [tip[0], ground], strong)
  )
}
