/**
 * The geometry of a trim against a before and after study: Iranian Journal of Veterinary Surgery, article 79374; ten
 * sound horses, front feet, radiographs, means. Dorsal wall 88.3 to 85.3 mm, sole length 136.9 to 130.1 mm, hoof angle
 * 50.05 to 51.40 degrees, sole 11.5 to 8.6 mm.
 * The study's own scatter is not at hand. Scatter of a mean change of ten horses is taken from the repeatability of the
 * readings: sd x sqrt(2 / 10), 95 % limits 1.96 of it (toe angle 1.4 degrees: Malone & Davies 2019; length 2 mm, common
 * practice).
 */
import { describe, expect, it } from 'vitest'
import { capsuleSide, lowered } from '../../src/hoof/geometry.ts'
import { measures } from '../../src/hoof/measures.ts'

const before = {
  toeAngle: 50.05,
  toeLength: 88.3,
  // Not given by the study; Dyson's sound heel angle and half the toe length. Neither moves the toe's figures.
  heelAngle: 43.5,
  heelLength: 44,
  bearingLength: 136.9,
}
const scatter = (sd: number): number => 1.96 * sd * Math.sqrt(2 / 10)

/** Height of the toe's ground edge that takes so much off the dorsal wall, heels untouched. */
function toeLoweringFor(wall: number): number {
  let low = 0
  let high = 10
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (before.toeLength - lowered(before, middle, 0).toeLength < wall) low = middle
    else high = middle
  }
  return low
}

describe('the trim study', () => {
  it('given the 3.0 mm taken off the dorsal wall, has the angle it reports, within its scatter', () => {
    const after = lowered(before, toeLoweringFor(88.3 - 85.3), 0)
    expect(after.toeLength).toBeCloseTo(85.3, 6)
    expect(Math.abs(after.toeAngle - 51.4)).toBeLessThan(scatter(measures['toe-angle'].sd))
    expect(after.toeAngle - before.toeAngle).toBeCloseTo(0.98, 2)
  })

  it('given the 2.9 mm of sole taken at the toe, has the dorsal wall and the angle it reports, within its scatter', () => {
    const after = lowered(before, 11.5 - 8.6, 0)
    expect(Math.abs(after.toeLength - 85.3)).toBeLessThan(scatter(measures['toe-length'].sd))
    expect(Math.abs(after.toeAngle - 51.4)).toBeLessThan(scatter(measures['toe-angle'].sd))
  })

  it('shortens the sole by about 2 mm of the 6.8 reported: dressing the front of the toe is not lowering it', () => {
    const after = lowered(before, toeLoweringFor(88.3 - 85.3), 0)
    const shorter = before.bearingLength - after.bearingLength
    expect(shorter).toBeGreaterThan(1.5)
    expect(shorter).toBeLessThan(136.9 - 130.1)
  })
})

describe('the geometry itself', () => {
  it('turns by atan((p - q) / B), steeper when the toe is lowered and flatter when the heel is', () => {
    const turn = (p: number, q: number) => lowered(before, p, q).toeAngle - before.toeAngle
    expect(turn(5, 1)).toBeCloseTo((Math.atan(4 / 136.9) * 180) / Math.PI, 12)
    expect(turn(0, 3)).toBeCloseTo((-Math.atan(3 / 136.9) * 180) / Math.PI, 12)
    expect(turn(2, 2)).toBeCloseTo(0, 12)
  })

  it('leaves the same hairline: a steeper toe has a hairline that falls less toward the heel, by the same turn', () => {
    const after = lowered(before, 4, 1.5)
    const turned = capsuleSide(after).coronetAngle - capsuleSide(before).coronetAngle
    expect(turned).toBeCloseTo(before.toeAngle - after.toeAngle, 9)
    const [bx, by] = capsuleSide(before).toeHairline
    const [cx, cy] = capsuleSide(before).heelHairline
    const [ax, ay] = capsuleSide(after).toeHairline
    const [dx, dy] = capsuleSide(after).heelHairline
    expect(Math.hypot(dx - ax, dy - ay)).toBeCloseTo(Math.hypot(cx - bx, cy - by), 9)
  })
})
