/**
 * Feet of known geometry through a simulated telephone: how far readings are off, and how often the true value lies in the
 * range that is shown. What was measured before the range counted how the camera stood (2,000 pictures each, range of one
 * standard deviation of the taps): by hand with a stick, toe angle 1.44° with 60 % inside, toe length 4.7 mm with 37 %
 * inside, solar width 6.3 mm with 23 % inside; on a block 0.72° and 69 %, 1.4 mm and 66 %, 1.9 mm and 53 %.
 *   LONG=1 npx vitest run tests/photos/bench.test.ts --disable-console-intercept    # prints the tables
 */
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { findCard, searchedSide } from '../../src/card/find-card.ts'
import { cardHeight, cardWidth, type PlacedCard } from '../../src/hoof/card.ts'
import { cornerSd } from '../../src/hoof/landmarks.ts'
import type { AnyMeasureId } from '../../src/hoof/measures.ts'
import { after, cameraBefore, type Homography, ontoQuad, type Point } from '../../src/hoof/plane.ts'
import { isLong, runs } from '../runs.ts'
import { type Chance, chance } from './bench/chance.ts'
import { rendered } from './bench/render.ts'
import {
  cardBeside,
  onStood,
  type Shot,
  type Stood,
  sideShot,
  soleShot,
  type Way,
  withStick,
} from './bench/shots.ts'
import { printed, type Read, type Row, tableOf } from './bench/table.ts'

const ways: readonly Way[] = ['block', 'yard']
const shoots = { side: sideShot, sole: soleShot }
type Kind = keyof typeof shoots
const kinds = Object.keys(shoots) as Kind[]
const each = ways.flatMap((way) => kinds.map((kind) => [way, kind] as const))

const corners = (at: (x: number, y: number) => Point): readonly [Point, Point, Point, Point] => [
  at(0, 0),
  at(cardWidth, 0),
  at(cardWidth, cardHeight),
  at(0, cardHeight),
]

/** The card as it is found: its corners where they are, but for what the detector is off by. */
function found({ camera }: Shot, stood: Stood, draw: Chance): PlacedCard {
  const quad = corners((x, y) => {
    const [u, v] = camera.project(onStood(stood, [x, y]))
    return [u + draw.normal(cornerSd), v + draw.normal(cornerSd)]
  })
  const size: Homography = [1 / cardWidth, 0, 0, 0, 1 / cardHeight, 0, 0, 0, 1]
  const plane = after(ontoQuad(quad), size)
  const before = cameraBefore(plane, [camera.width / 2, camera.height / 2], camera.focal)
  return { corners: quad, width: cardWidth, camera: before, nearer: null }
}

const many = (n: number, of: () => Read): readonly Read[] => Array.from({ length: n }, of)

const withStickOf = (way: Way, kind: Kind, draw: Chance): Read => {
  const shot = shoots[kind](way, draw)
  return { landmarks: { ...withStick(shot, draw), camera: way }, view: shot.view, truth: shot.truth }
}

const withCardOf = (way: Way, kind: Kind, draw: Chance): Read => {
  const shot = shoots[kind](way, draw)
  const card = found(shot, cardBeside(shot, draw), draw)
  return { landmarks: { ...shot.marked, card }, view: shot.view, truth: shot.truth }
}

const row = (rows: readonly Row[], id: AnyMeasureId): Row => {
  const of = rows.find(({ measure }) => measure === id)
  if (!of) throw new Error(`nothing was read of ${id}`)
  return of
}

const table = (title: string, reads: readonly Read[]): readonly Row[] => {
  const rows = tableOf(reads)
  if (isLong) console.log(printed(title, rows))
  return rows
}

describe('readings of feet of known geometry', () => {
  // Feet of each kind; the bounds hold for either number.
  const n = runs(600, 4000)

  it.each(each)('with a stick, %s, %s: the range shown holds the truth 85 times of 100', (way, kind) => {
    const draw = chance(7)
    const rows = table(
      `stick, ${way}, ${kind}`,
      many(n, () => withStickOf(way, kind, draw)),
    )
    for (const { measure, covered } of rows) expect(covered, measure).toBeGreaterThanOrEqual(0.85)
  })

  it.each(each)(
    'with the card, %s, %s: the range shown holds the truth 90 to 98 times of 100',
    (way, kind) => {
      const draw = chance(8)
      const rows = table(
        `card, ${way}, ${kind}`,
        many(n, () => withCardOf(way, kind, draw)),
      )
      for (const { measure, covered } of rows) {
        expect(covered, measure).toBeGreaterThanOrEqual(0.9)
        expect(covered, measure).toBeLessThanOrEqual(0.985)
      }
    },
  )

  it('with the card toe angle is within 0.8° and toe length within 1.5 mm, all cameras together', () => {
    const draw = chance(9)
    const rows = tableOf(ways.flatMap((way) => many(n, () => withCardOf(way, 'side', draw))))
    expect(row(rows, 'toe-angle').rms).toBeLessThanOrEqual(0.8)
    expect(row(rows, 'toe-length').rms).toBeLessThanOrEqual(1.5)
  })

  it('a card that stands 30 mm nearer measures as well when that is told', () => {
    const draw = chance(10)
    const reads = (nearer: number | null) =>
      many(n, () => {
        const shot = sideShot('yard', draw)
        const { origin, ...way } = cardBeside(shot, draw)
        const moved = { origin: [origin[0], origin[1], origin[2] + 30] as const, ...way }
        const card = { ...found(shot, moved, draw), nearer }
        return { landmarks: { ...shot.marked, card }, view: shot.view, truth: shot.truth }
      })
    const [told, untold] = [row(tableOf(reads(30)), 'toe-length'), row(tableOf(reads(null)), 'toe-length')]
    expect(told.rms).toBeLessThan(1.7)
    expect(untold.rms).toBeGreaterThan(2 * told.rms)
  })

  it('a scale that lies nearer does not look surer', () => {
    const at = (nearer: number) => {
      const scale = { from: [0, 0], to: [300 * (1 + nearer / 900), 0], length: 100 } as const
      const points = { 'toe-at-ground': [0, 500], 'toe-at-hairline': [160, 290] } as const
      return row(
        tableOf([{ landmarks: { scale, lines: {}, points }, view: 'lateral', truth: { 'toe-length': 88 } }]),
        'toe-length',
      )
    }
    expect(at(60).half).toBeGreaterThan(0.9 * at(0).half)
    expect(at(60).half).toBeGreaterThan(5)
  })
})

describe('the card in rendered pictures', () => {
  it.each(ways)(
    '%s: its corners are found to a third of a pixel',
    async (way) => {
      const draw = chance(11)
      // So few in the short run that their error is allowed half as much again.
      const n = runs(5, 40)
      let squares = 0
      const reads: Read[] = []
      for (let i = 0; i < n; i++) {
        const shot = sideShot(way, draw)
        const stood = cardBeside(shot, draw)
        const jpeg = await rendered(shot, {
          seed: i,
          cards: [stood],
          blur: draw.between(0.3, 1),
          noise: draw.between(1, 5),
          quality: 82,
        })
        const { data, info } = await sharp(jpeg).greyscale().raw().toBuffer({ resolveWithObject: true })
        expect(info.width).toBeLessThanOrEqual(searchedSide)
        const search = findCard({ width: info.width, height: info.height, data }, shot.camera)
        expect(search.refusal, `picture ${i}`).toBeNull()
        if (search.card === null) continue
        corners((x, y) => shot.camera.project(onStood(stood, [x, y]))).forEach(([x, y], k) => {
          const [u, v] = search.card.corners[k as 0 | 1 | 2 | 3]
          squares += (u - x) ** 2 + (v - y) ** 2
        })
        // Left of the camera's distance is a hundredth: the focal length is that of the simulated camera.
        expect(Math.abs((search.card.camera?.[2] ?? 0) / shot.camera.at[2] - 1)).toBeLessThan(0.05)
        reads.push({ landmarks: { ...shot.marked, card: search.card }, view: shot.view, truth: shot.truth })
      }
      expect(Math.sqrt(squares / (8 * n))).toBeLessThan(cornerSd * 1.1)
      const rows = table(`card found in rendered pictures, ${way}`, reads)
      expect(row(rows, 'toe-angle').rms).toBeLessThan(isLong ? 0.9 : 1.4)
      expect(row(rows, 'toe-length').rms).toBeLessThan(isLong ? 1.6 : 2.5)
    },
    200_000,
  )
})
