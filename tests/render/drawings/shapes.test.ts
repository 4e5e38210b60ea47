/** Anatomy that holds for every foot that could be read. The short run draws 200 feet for each rule. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { behindMeasures, sideMeasures, soleMeasures, wallMeasures } from '../../../src/hoof/stand-ins.ts'
import { behindShape } from '../../../src/render/drawings/behind-shape.ts'
import {
  distance,
  endOf,
  heightAt,
  joined,
  type Point,
  pointAt,
  reversed,
  type Stroke,
  sampled,
} from '../../../src/render/drawings/curves.ts'
import { capsuleOutline, sideShape } from '../../../src/render/drawings/side-shape.ts'
import { frogOutline, groundOutline, soleShape } from '../../../src/render/drawings/sole-shape.ts'
import { wallOutline, wallShape } from '../../../src/render/drawings/wall-shape.ts'
import { runs } from '../../runs.ts'
import { anyFlares, anyFoot, middling } from './feet.ts'

const many = { numRuns: runs(200, 5000) }
const pair = fc.constantFrom('fore', 'hind')

/** How far the bow of a line stands off the straight between its ends, as a share of that. */
function bowOf(of: Stroke): number {
  const [a, b] = [of.start, endOf(of)]
  const length = distance(a, b)
  const off = ([x, y]: Point) => ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / length
  return Math.max(...sampled(of, 16).map((point) => Math.abs(off(point)))) / length
}

const turn = (a: Point, b: Point, c: Point) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

/** Whether a line crosses itself anywhere; its end is led back to its beginning where it is an outline. */
function crossesItself(outline: Stroke, isClosed = true): boolean {
  const points = sampled(outline, 12).filter(
    (point, i, all) => i === 0 || distance(point, all[i - 1] ?? point) > 0.05,
  )
  const edges = points.map((point, i) => [point, points[(i + 1) % points.length] ?? point] as const)
  if (!isClosed) edges.pop()
  return edges.some(([a, b], i) =>
    edges.slice(i + 2).some(([c, d], j) => {
      if (i === 0 && i + 2 + j === edges.length - 1) return false
      return turn(a, b, c) * turn(a, b, d) < -1e-6 && turn(c, d, a) * turn(c, d, b) < -1e-6
    }),
  )
}

/** Whether a point lies within a closed line. */
function isInside([x, y]: Point, outline: Stroke): boolean {
  const points = sampled(outline, 16)
  return (
    points.filter(([ax, ay], i) => {
      const [bx, by] = points[(i + 1) % points.length] ?? [ax, ay]
      return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)
    }).length %
      2 ===
    1
  )
}

describe('a foot from the side', () => {
  const shapeOf = (foot: Parameters<typeof sideMeasures>[0], rolled = 0) =>
    sideShape(sideMeasures(foot), { rolled, dish: 0 })

  it('is to scale: toe, heel and bearing length are those that were read', () => {
    const { toeHairline, heelHairline, heelGround, closes } = shapeOf(middling)
    expect(Math.hypot(...toeHairline)).toBeCloseTo(85, 9)
    expect((Math.atan2(toeHairline[1], toeHairline[0]) * 180) / Math.PI).toBeCloseTo(50, 9)
    expect(distance(heelGround, heelHairline)).toBeCloseTo(38, 9)
    expect(heelGround).toEqual([112, 0])
    expect(closes).toBe(true)
  })

  it('has a coronet that falls to the heel and is bowed', () => {
    fc.assert(
      fc.property(anyFoot, (foot) => {
        const { hairline, toeHairline, heelHairline } = shapeOf(foot)
        expect(heelHairline[0]).toBeGreaterThan(toeHairline[0])
        expect(heelHairline[1]).toBeLessThan(toeHairline[1])
        expect(bowOf(hairline)).toBeGreaterThan(0.02)
      }),
      many,
    )
  })

  it('has an outline that does not cross itself', () => {
    fc.assert(
      fc.property(anyFoot, fc.double({ min: 0, max: 15, noNaN: true }), (foot, rolled) => {
        expect(crossesItself(capsuleOutline(shapeOf(foot, rolled)))).toBe(false)
      }),
      many,
    )
  })

  it('bends a steeper strip of new growth where it ends', () => {
    const { bend, toeHairline } = shapeOf({ ...middling, 'new-angle': 62, 'new-length': 30 })
    expect(distance(bend, toeHairline)).toBeCloseTo(30, 9)
    const rise = [toeHairline[0] - bend[0], toeHairline[1] - bend[1]] as const
    expect((Math.atan2(rise[1], rise[0]) * 180) / Math.PI).toBeCloseTo(62, 9)
  })

  it('says where readings cannot close, and bends the heel to a foot', () => {
    const broken = shapeOf({ ...middling, 'bearing-length': 70, 'toe-length': 150, 'toe-angle': 35 })
    expect(broken.closes).toBe(false)
    expect(broken.heelHairline[0]).toBeGreaterThan(broken.toeHairline[0])
  })

  it('has growth lines that end on both walls', () => {
    fc.assert(
      fc.property(anyFoot, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (foot, share) => {
        const shape = shapeOf(foot)
        const end = endOf(shape.ringAt(share))
        const along = distance(shape.heelHairline, end) + distance(end, shape.heelGround)
        expect(along).toBeCloseTo(distance(shape.heelHairline, shape.heelGround), 6)
      }),
      many,
    )
  })
})

describe('a foot from behind', () => {
  it('has a frog that is joined: groove, heel and bulb meet in one point, the frog goes on to the middle', () => {
    fc.assert(
      fc.property(anyFoot, anyFlares, (foot, flares) => {
        const shape = behindShape(behindMeasures(foot), flares)
        for (const { groove, bulbEdge, bearing, cleft } of [shape.medial, shape.lateral]) {
          expect(distance(endOf(groove[0]), groove[1].start)).toBeLessThan(1e-9)
          expect(distance(endOf(bulbEdge), groove[1].start)).toBeLessThan(1e-9)
          expect(distance(endOf(bearing), groove[0].start)).toBeLessThan(1e-9)
          expect(endOf(groove[1])[0]).toBeCloseTo(0, 9)
          expect(endOf(groove[1])[1]).toBeLessThan(endOf(cleft)[1])
        }
      }),
      many,
    )
  })

  it('has one line below from the quarter to the middle that does not cross itself', () => {
    fc.assert(
      fc.property(anyFoot, anyFlares, (foot, flares) => {
        const { medial } = behindShape(behindMeasures(foot), flares)
        expect(crossesItself(joined(medial.bearing, ...medial.groove), false)).toBe(false)
        expect(crossesItself(joined(medial.wall, ...medial.hairline), false)).toBe(false)
      }),
      many,
    )
  })

  it('draws no more than 20 mm of heel difference', () => {
    const shape = behindShape(behindMeasures({ ...middling, 'heel-medial': 80, 'heel-lateral': 35 }))
    expect(shape.drawnDifference).toBe(20)
    expect(shape.medial.heel[1] - shape.lateral.heel[1]).toBeCloseTo(20, 9)
  })
})

describe('a sole', () => {
  const shapeOf = (foot: Parameters<typeof soleMeasures>[0], which: 'fore' | 'hind' = 'fore') =>
    soleShape(soleMeasures(foot), which)

  it('is to scale: width, bearing length and frog are those that were read', () => {
    const { lateral, medial, frogTip } = shapeOf(middling)
    const widest = Math.max(...sampled(lateral.outer, 40).map(([x]) => x))
    const innermost = Math.min(...sampled(medial.outer, 40).map(([x]) => x))
    expect(widest - innermost).toBeCloseTo(124, 1)
    expect(lateral.outer.start).toEqual([0, 112])
    expect(frogTip[1] + 0.035 * 112).toBeCloseTo(76, 9)
  })

  it('has ground surface and frog whose outlines do not cross themselves', () => {
    fc.assert(
      fc.property(anyFoot, anyFlares, pair, (foot, flares, which) => {
        const shape = soleShape(soleMeasures(foot), which, flares)
        expect(crossesItself(groundOutline(shape))).toBe(false)
        expect(crossesItself(frogOutline(shape))).toBe(false)
      }),
      many,
    )
  })

  it('has a frog whose base lies in the bulbs', () => {
    fc.assert(
      fc.property(anyFoot, pair, (foot, which) => {
        const { lateral, medial } = soleShape(soleMeasures(foot), which)
        // Just inside the corner: the bulbs end at the buttress.
        const [x, y] = endOf(lateral.frog)
        expect(isInside([x * 0.9, y], joined(lateral.bulb, reversed(medial.bulb)))).toBe(true)
      }),
      many,
    )
  })

  it('has bars that fold in from the buttress and end beside the frog', () => {
    fc.assert(
      fc.property(anyFoot, pair, (foot, which) => {
        const { lateral } = soleShape(soleMeasures(foot), which)
        expect(distance(endOf(lateral.buttress), lateral.barInner.start)).toBeLessThan(1e-9)
        const [x, y] = endOf(lateral.barInner)
        expect(x).toBeGreaterThan(
          -heightAt(
            sampled(lateral.frog, 12).map(([a, b]): Point => [b, -a]),
            y,
          ),
        )
      }),
      many,
    )
  })

  it('is rounder and blunter before than behind', () => {
    const halfAt = (which: 'fore' | 'hind', share: number) =>
      pointAt(shapeOf(middling, which).lateral.outer, share)[0]
    expect(halfAt('fore', 0.2)).toBeGreaterThan(halfAt('hind', 0.2) + 4)
  })

  it('has a wall that is thickest at the toe', () => {
    const { lateral, bearing } = shapeOf(middling)
    const toe = bearing - endOf(lateral.inner)[1]
    const side =
      Math.max(...sampled(lateral.outer, 40).map(([x]) => x)) -
      Math.max(...sampled(lateral.inner, 40).map(([x]) => x))
    expect(toe).toBeGreaterThan(side + 1)
  })
})

describe('a wall', () => {
  it('is bowed at the hairline and does not cross itself', () => {
    fc.assert(
      fc.property(anyFoot, anyFlares, (foot, flares) => {
        const shape = wallShape(wallMeasures(foot), flares)
        expect(bowOf(shape.hairline)).toBeGreaterThan(0.02)
        expect(crossesItself(wallOutline(shape))).toBe(false)
      }),
      many,
    )
  })

  it('has lines as far from the hairline at the quarters as at the toe, that touch the outline', () => {
    const shape = wallShape(wallMeasures(middling))
    const ring = shape.ringAt(0.4)
    expect(distance(ring.start, shape.hairline.start)).toBeCloseTo(0.4 * 85, 0)
    expect(pointAt(shape.hairline, 0.5)[1] - pointAt(ring, 0.5)[1]).toBeCloseTo(0.4 * 85, 0)
    const edge = sampled(shape.sides.medial, 60)
    expect(Math.min(...edge.map((point) => distance(point, ring.start)))).toBeLessThan(1)
  })
})
