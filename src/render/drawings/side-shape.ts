/** A hoof from the side, heel to the right: capsule from its corners, bulb and pastern as a hint above. */
import type { Attributes } from '../html.ts'
import { inkSoft, paper } from '../ink.ts'
import { between, curve, type Point, path, plus, radians, through } from './svg.ts'

/** Corners in the drawing. */
export interface SideCorners {
  readonly toeGround: Point
  readonly toeHairline: Point
  readonly heelHairline: Point
  readonly heelGround: Point
  readonly toeAngle: number
  /** Units of the drawing a millimetre. */
  readonly scale: number
}

/** The capsule: straight front wall, hairline falling to the heel, heel wall, ground. */
export function capsule(
  { toeGround, toeHairline, heelHairline, heelGround, scale }: SideCorners,
  style: Attributes,
) {
  const lift = 3 * scale
  const third = (share: number, dy: number): Point => [
    toeHairline[0] + (heelHairline[0] - toeHairline[0]) * share,
    toeHairline[1] + (heelHairline[1] - toeHairline[1]) * share + dy,
  ]
  const hairline = curve(toeHairline, [third(0.3, -lift * 0.7), third(0.65, -lift), heelHairline])
  const rest = through([heelHairline, heelGround, toeGround, toeHairline]).slice(1)
  return path(`${hairline}L${rest}Z`, style)
}

/**
 * Skin above the hairline: the roll of the coronet, the bulb of the heel, and the pastern, cut off above.
 * It is there to be recognised and says nothing measured: the pastern runs on in line with the front wall.
 */
export function limbHint(corners: SideCorners): string {
  const { toeHairline, heelHairline, heelGround, toeAngle, scale } = corners
  const at = (from: Point, x: number, y: number): Point => plus(from, x * scale, -y * scale)
  const run = (from: Point, length: number, angle: number): Point =>
    at(from, length * Math.cos(radians(angle)), length * Math.sin(radians(angle)))
  const roll = at(toeHairline, 2, 7)
  const top = run(roll, 30, toeAngle + 1)
  const front = curve(
    toeHairline,
    [at(toeHairline, -2, 1.5), at(toeHairline, -1, 5), roll],
    [run(roll, 7, toeAngle + 12), run(roll, 16, toeAngle + 4), top],
  )
  const low = between(heelHairline, heelGround, 0.32)
  const bulb = at(heelHairline, 6.5, 13)
  const hollow = at(heelHairline, 1.5, 25)
  const back = curve(
    low,
    [at(low, 7, -1), at(heelHairline, 13, 3), bulb],
    [at(bulb, -2, 4), at(hollow, -1, -4), hollow],
    [run(hollow, 5, 72), run(hollow, 9, toeAngle + 14), run(hollow, 20, toeAngle + 6)],
  )
  // The roll of the coronet dies away towards the bulb.
  const band = curve(roll, [
    [roll[0] + (bulb[0] - roll[0]) * 0.3, roll[1] + (bulb[1] - roll[1]) * 0.16],
    [roll[0] + (bulb[0] - roll[0]) * 0.6, roll[1] + (bulb[1] - roll[1]) * 0.5],
    at(heelHairline, -8, 9),
  ])
  const thin = { stroke: inkSoft, 'stroke-width': 1.6 }
  return (
    path(back, { ...thin, fill: paper }) +
    path(front, thin) +
    path(band, { ...thin, 'stroke-width': 1, 'stroke-opacity': 0.7 })
  )
}
