import { existsSync, readFileSync } from 'node:fs'
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { demoPictures } from '../../scripts/demo-feet.ts'
import { type LandmarkPoint, measureLandmarks, type Point } from '../../src/hoof/landmarks.ts'
import type { AnyMeasureId } from '../../src/hoof/measures.ts'
import { landmarkText } from '../../src/pages/mark/landmark-block.ts'
import { readVisitBlock } from '../casebook/read-one.ts'
import { directionOf, pixelsOf } from './drawn.ts'

/** How near a photo reading of a drawing must come: degrees, millimetres, a ratio. */
const within = (id: AnyMeasureId) => (id.endsWith('-angle') ? 0.3 : id === 'toe-share' ? 0.005 : 0.5)

const named = demoPictures.map((one) => [`${one.horse} ${one.file}`, one] as const)

describe('the drawn feet of the demo', () => {
  it.each(named)('%s is measured to what it was drawn from, through its case file', (_, picture) => {
    const { file, view, foot, drawn } = picture
    const block = `photos:\n  - file: ${file}\n    foot: ${foot}\n    view: ${view}\n${landmarkText(drawn.landmarks, '    ')}`
    const { visit } = readVisitBlock(block, { files: { [`juno/${file}`]: 'x' } })
    const landmarks = visit?.photos[0]?.landmarks
    if (!landmarks) throw new Error('the block cannot be read')
    const readings = measureLandmarks(landmarks, view)
    expect(readings.map(({ measure }) => measure).sort()).toEqual(Object.keys(drawn.truth).sort())
    for (const { measure, value } of readings) {
      expect(Math.abs(value - (drawn.truth[measure] ?? Number.NaN)), measure).toBeLessThan(within(measure))
    }
  })

  it.each(named.filter(([, { view }]) => view === 'lateral'))(
    '%s shows in its pixels the angle that it says',
    async (_, { drawn }) => {
      const pixels = await pixelsOf(await sharp(Buffer.from(drawn.svg)).png().toBuffer())
      const at = (name: LandmarkPoint): Point => drawn.landmarks.points[name] ?? [Number.NaN, Number.NaN]
      const [toe, top] = [
        at('toe-at-ground'),
        drawn.landmarks.points['new-growth-ends'] ?? at('toe-at-hairline'),
      ]
      // The first pixel that is neither paper nor ground, row by row, along the middle of the lower wall.
      const isPaper = (x: number, y: number) => pixels.has(x, y, '#f3efe4')
      const facesLeft = top[0] > toe[0]
      const edge: Point[] = []
      for (let y = Math.ceil(top[1] + 0.1 * (toe[1] - top[1])); y < top[1] + 0.9 * (toe[1] - top[1]); y++) {
        const middle = toe[0] + ((y + 0.5 - toe[1]) / (top[1] - toe[1])) * (top[0] - toe[0])
        const from = Math.round(middle) + (facesLeft ? -20 : 20)
        let x = from
        while (isPaper(x, y) && Math.abs(x - from) < 60) x += facesLeft ? 1 : -1
        edge.push([x + 0.5, y + 0.5])
      }
      const ground = drawn.landmarks.lines.ground
      if (!ground) throw new Error('no ground')
      const between = Math.abs(directionOf(edge) - directionOf(ground)) % 180
      const angle = Math.min(between, 180 - between)
      expect(edge.length).toBeGreaterThan(50)
      expect(Math.abs(angle - (drawn.truth['toe-angle'] ?? 0))).toBeLessThan(0.3)
    },
  )

  it.each(named)('%s is in the casebook as it is drawn, and small', async (_, { horse, file, drawn }) => {
    const path = `cases/${horse}/${file}`
    expect(existsSync(path)).toBe(true)
    const bytes = readFileSync(path)
    expect(bytes.length).toBeLessThan(60 * 1024)
    const [inCase, fresh] = await Promise.all(
      [bytes, Buffer.from(drawn.svg)].map((image) =>
        sharp(image).resize(64, 48, { fit: 'fill' }).flatten({ background: '#fff' }).raw().toBuffer(),
      ),
    )
    const squares = fresh?.reduce((sum, value, i) => sum + (value - (inCase?.[i] ?? 255)) ** 2, 0)
    expect(Math.sqrt((squares ?? Number.NaN) / (fresh?.length ?? 1))).toBeLessThan(4)
  })
})
