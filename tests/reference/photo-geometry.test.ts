/**
 * Figures of known geometry, drawn, found again in the pixels, and measured as feet are.
 * ISO 216: the sides of a sheet are as 1 to the square root of 2, and A4 is 210 mm by 297 mm.
 * Euclid, Elements I.48: a triangle with sides 3, 4 and 5 has a right angle.
 */
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { type Landmarks, measureLandmarks, type PhotoView, type Point } from '../../src/hoof/landmarks.ts'
import type { AnyMeasureId } from '../../src/hoof/measures.ts'
import { pixelsOf, pointsOf } from '../photos/drawn.ts'

const degrees = 180 / Math.PI

/** Corners of a figure as found in a picture of it: of all its pixels those furthest out in each direction. */
async function cornersFound(corners: readonly Point[], turned: number): Promise<readonly Point[]> {
  const side = 2000
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}"><rect width="${side}" height="${side}" fill="#ffffff"/><polygon transform="translate(1000 1000) rotate(${turned})" points="${corners.join(' ')}" fill="#000000"/></svg>`
  const points = pointsOf(
    await pixelsOf(await sharp(Buffer.from(svg)).jpeg({ quality: 90 }).toBuffer()),
    '#000000',
    127,
  )
  const [cos, sin] = [Math.cos(turned / degrees), Math.sin(turned / degrees)]
  const centre = [0, 1].map(
    (i) => corners.reduce((sum, corner) => sum + (corner[i] ?? 0), 0) / corners.length,
  )
  return corners.map(([x, y]) => {
    const [ox, oy] = [x - (centre[0] ?? 0), y - (centre[1] ?? 0)]
    const out: Point = [ox * cos - oy * sin, ox * sin + oy * cos]
    return points.reduce((best, point) =>
      point[0] * out[0] + point[1] * out[1] > best[0] * out[0] + best[1] * out[1] ? point : best,
    )
  })
}

const measured = (landmarks: Landmarks, view: PhotoView, id: AnyMeasureId): number =>
  measureLandmarks(landmarks, view).find(({ measure }) => measure === id)?.value ?? Number.NaN

describe('figures of known geometry', () => {
  it.each([0, 4, -11])('a sheet of A4, turned by %i degrees', async (turned) => {
    const pixelsPerMm = 5.2
    const [w, h] = [(210 * pixelsPerMm) / 2, (297 * pixelsPerMm) / 2]
    const found = await cornersFound(
      [
        [-w, h],
        [w, h],
        [w, -h],
        [-w, -h],
      ],
      turned,
    )
    const [lowLeft, lowRight, highRight] = found
    if (!lowLeft || !lowRight || !highRight) throw new Error('no corners')
    const sheet: Landmarks = {
      scale: { from: lowLeft, to: lowRight, length: 210 },
      lines: { ground: [lowLeft, lowRight] },
      points: { 'toe-at-ground': lowLeft, 'toe-at-hairline': highRight },
    }
    expect(Math.abs(measured(sheet, 'lateral', 'toe-angle') - Math.atan(Math.SQRT2) * degrees)).toBeLessThan(
      0.3,
    )
    expect(Math.abs(measured(sheet, 'lateral', 'toe-length') - 210 * Math.sqrt(3))).toBeLessThan(0.5)
    const upright: Landmarks = {
      ...sheet,
      points: { 'toe-at-ground': lowRight, 'toe-at-hairline': highRight },
    }
    expect(Math.abs(measured(upright, 'lateral', 'toe-length') - 297)).toBeLessThan(0.5)
  })

  it.each([0, -7, 13])('a triangle of 3, 4 and 5, turned by %i degrees', async (turned) => {
    const unit = 300
    const found = await cornersFound(
      [
        [-2 * unit, 1.5 * unit],
        [2 * unit, 1.5 * unit],
        [2 * unit, -1.5 * unit],
      ],
      turned,
    )
    const [sharpEnd, rightAngle, top] = found
    if (!sharpEnd || !rightAngle || !top) throw new Error('no corners')
    const triangle: Landmarks = {
      scale: { from: sharpEnd, to: rightAngle, length: 40 },
      lines: { ground: [sharpEnd, rightAngle] },
      points: { 'toe-at-ground': sharpEnd, 'toe-at-hairline': top, 'heel-at-ground': rightAngle },
    }
    expect(Math.abs(measured(triangle, 'lateral', 'toe-angle') - Math.asin(3 / 5) * degrees)).toBeLessThan(
      0.3,
    )
    expect(Math.abs(measured(triangle, 'lateral', 'toe-length') - 50)).toBeLessThan(0.5)
    expect(Math.abs(measured(triangle, 'lateral', 'bearing-length') - 40)).toBeLessThan(0.5)
  })
})
