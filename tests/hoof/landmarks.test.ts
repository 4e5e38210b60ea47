import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  edgeSd,
  type Landmarks,
  measureLandmarks,
  type PhotoView,
  type Point,
  tapSd,
} from '../../src/hoof/landmarks.ts'
import type { AnyMeasureId } from '../../src/hoof/measures.ts'
import { laying, poseOf } from '../../src/hoof/pose.ts'

const none: Landmarks = { scale: null, lines: {}, points: {} }
const values = (landmarks: Landmarks, view: PhotoView): Partial<Record<AnyMeasureId, number>> =>
  Object.fromEntries(measureLandmarks(landmarks, view).map(({ measure, value }) => [measure, value]))
const sdOf = (landmarks: Landmarks, view: PhotoView, id: AnyMeasureId): number =>
  measureLandmarks(landmarks, view).find(({ measure }) => measure === id)?.sd ?? Number.NaN

/** Every point through one map. */
function mapped(landmarks: Landmarks, map: (point: Point) => Point): Landmarks {
  const { scale, lines, points } = landmarks
  const line = (pair: readonly [Point, Point] | undefined) => pair && ([map(pair[0]), map(pair[1])] as const)
  const [ground, pastern] = [line(lines.ground), line(lines.pastern)]
  return {
    scale: scale && { ...scale, from: map(scale.from), to: map(scale.to) },
    lines: { ...(ground && { ground }), ...(pastern && { pastern }) },
    points: Object.fromEntries(Object.entries(points).map(([name, point]) => [name, map(point)])),
  }
}

/** One pixel a millimetre, toe to the left: 100 mm of bearing, walls of round slopes. */
const side: Landmarks = {
  scale: { from: [0, 300], to: [50, 300], length: 50 },
  lines: {
    ground: [
      [0, 200],
      [300, 200],
    ],
    pastern: [
      [150, 100],
      [110, 130],
    ],
  },
  points: {
    'toe-at-ground': [50, 200],
    'new-growth-ends': [90, 160],
    'toe-at-hairline': [105, 140],
    'heel-at-ground': [150, 200],
    'heel-at-hairline': [190, 170],
  },
}

const sole: Landmarks = {
  scale: { from: [0, 0], to: [0, 100], length: 50 },
  lines: {},
  points: {
    toe: [200, 100],
    breakover: [200, 120],
    'frog-tip': [200, 180],
    'frog-base': [200, 360],
    'widest-medial': [80, 240],
    'widest-lateral': [320, 240],
    'heel-medial': [120, 340],
    'heel-lateral': [280, 340],
  },
}

describe('a picture from the side', () => {
  it('gives every measure that its points allow', () => {
    const degrees = (rise: number, run: number) => (Math.atan2(rise, run) * 180) / Math.PI
    const read = values(side, 'lateral')
    expect(Object.keys(read)).toEqual([
      'toe-angle',
      'toe-length',
      'new-angle',
      'new-length',
      'heel-angle',
      'pastern-angle',
      'coronet-angle',
      'bearing-length',
      'heel-lateral',
    ])
    expect(read['toe-angle']).toBeCloseTo(45, 10)
    expect(read['toe-length']).toBeCloseTo(Math.hypot(55, 60), 10)
    expect(read['new-angle']).toBeCloseTo(degrees(20, 15), 10)
    expect(read['new-length']).toBeCloseTo(25, 10)
    expect(read['heel-angle']).toBeCloseTo(degrees(30, 40), 10)
    expect(read['heel-lateral']).toBeCloseTo(50, 10)
    expect(read['pastern-angle']).toBeCloseTo(degrees(30, 40), 10)
    expect(read['coronet-angle']).toBeCloseTo(degrees(30, 85), 10)
    expect(read['bearing-length']).toBeCloseTo(100, 10)
  })

  it('shows the heel of the side it is taken from', () => {
    expect(values(side, 'medial')['heel-medial']).toBeCloseTo(50, 10)
    expect(values(side, 'medial')['heel-lateral']).toBeUndefined()
  })

  it('takes the toe angle up to the hairline where no new growth is marked', () => {
    const { 'new-growth-ends': _, ...points } = side.points
    const read = values({ ...side, points }, 'lateral')
    expect(read['toe-angle']).toBeCloseTo((Math.atan2(60, 55) * 180) / Math.PI, 10)
    expect(read['new-angle']).toBeUndefined()
  })

  it('takes toe to heel as the ground where no line is marked', () => {
    const tilted: Landmarks = {
      ...side,
      lines: {},
      points: { ...side.points, 'heel-at-ground': [150, 210] },
    }
    const fall = (Math.atan2(10, 100) * 180) / Math.PI
    expect(values(tilted, 'lateral')['toe-angle']).toBeCloseTo(45 + fall, 10)
  })

  it('says nothing of lengths without a scale, and nothing of angles without a ground', () => {
    expect(Object.keys(values({ ...side, scale: null }, 'lateral'))).toEqual([
      'toe-angle',
      'new-angle',
      'heel-angle',
      'pastern-angle',
      'coronet-angle',
    ])
    const { 'heel-at-ground': _, ...points } = side.points
    expect(Object.keys(values({ ...side, lines: {}, points }, 'lateral'))).toEqual([
      'toe-length',
      'new-length',
    ])
  })

  it.each<[string, Landmarks]>([
    ['a scale of nothing', { ...side, scale: { from: [5, 5], to: [5, 5], length: 50 } }],
    [
      'a ground line of one point',
      {
        ...side,
        lines: {
          ground: [
            [5, 5],
            [5, 5],
          ],
        },
      },
    ],
    ['all points in one', mapped(side, () => [7, 7])],
    ['nothing at all', none],
  ])('gives no wrong number for %s', (_, landmarks) => {
    for (const { value, sd } of measureLandmarks(landmarks, 'lateral')) {
      expect(Number.isFinite(value) && value > 0).toBe(true)
      expect(Number.isFinite(sd)).toBe(true)
    }
    expect(values(landmarks, 'lateral')['toe-angle']).toBe(
      landmarks.scale?.from[0] === 5 ? values(side, 'lateral')['toe-angle'] : undefined,
    )
  })

  it('gives no angle for a wall that leans the wrong way', () => {
    const wrong = { ...side, points: { ...side.points, 'heel-at-hairline': [120, 170] as const } }
    expect(values(wrong, 'lateral')['heel-angle']).toBeUndefined()
    expect(values(wrong, 'lateral')['toe-angle']).toBeCloseTo(45, 10)
  })

  it('does not change when the camera turns, comes closer, moves or stands on the other side', () => {
    const expected = values(side, 'lateral')
    fc.assert(
      fc.property(
        fc.double({ min: -1.2, max: 1.2, noNaN: true }),
        fc.double({ min: 0.2, max: 20, noNaN: true }),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        fc.boolean(),
        fc.boolean(),
        (turn, size, shift, mirror, reversed) => {
          const seen = mapped(side, ([x, y]) => {
            const across = mirror ? -x : x
            return [
              size * (across * Math.cos(turn) - y * Math.sin(turn)) + shift,
              size * (across * Math.sin(turn) + y * Math.cos(turn)) - shift,
            ]
          })
          const [from, to] = seen.lines.ground ?? [
            [0, 0],
            [1, 0],
          ]
          const read = values(
            reversed ? { ...seen, lines: { ...seen.lines, ground: [to, from] } } : seen,
            'lateral',
          )
          for (const [id, value] of Object.entries(expected)) {
            expect(read[id as AnyMeasureId], id).toBeCloseTo(value, 6)
          }
        },
      ),
    )
  })
})

describe('a picture of the sole', () => {
  it('gives frog, width, bearing length to the line of the heels, breakover and toe share', () => {
    expect(values(sole, 'solar')).toEqual({
      'frog-length': 90,
      width: 120,
      'bearing-length': 120,
      breakover: 30,
      'toe-share': expect.closeTo(80 / 240, 12),
    })
  })

  it('knows the toe share without a scale', () => {
    expect(values({ ...sole, scale: null }, 'solar')).toEqual({ 'toe-share': expect.closeTo(80 / 240, 12) })
  })

  it('gives no toe share for a frog tip in front of the toe', () => {
    const wrong = { ...sole, points: { ...sole.points, 'frog-tip': [200, 90] as const } }
    expect(values(wrong, 'solar')['toe-share']).toBeUndefined()
  })
})

describe('a picture from behind', () => {
  const behind: Landmarks = {
    scale: { from: [0, 0], to: [100, 0], length: 50 },
    lines: {
      ground: [
        [400, 300],
        [0, 300],
      ],
    },
    points: { 'heel-medial': [260, 220], 'heel-lateral': [140, 232] },
  }

  it('compares the heights of the heels over the ground', () => {
    expect(values(behind, 'behind')).toEqual({ 'heel-balance': 6 })
    const swapped = { 'heel-medial': [140, 232], 'heel-lateral': [260, 220] } as const
    expect(values({ ...behind, points: swapped }, 'behind')).toEqual({ 'heel-balance': -6 })
  })

  it('takes a slanting ground as level', () => {
    const turn = 0.1
    const seen = mapped(behind, ([x, y]) => [
      x * Math.cos(turn) - y * Math.sin(turn),
      x * Math.sin(turn) + y * Math.cos(turn),
    ])
    expect(values(seen, 'behind')['heel-balance']).toBeCloseTo(6, 10)
  })

  it('needs the ground line', () => {
    expect(values({ ...behind, lines: {} }, 'behind')).toEqual({})
  })
})

describe('the error of a photo reading', () => {
  it('is that of both ends of a length, and of the scale', () => {
    // One pixel a millimetre: along the line each end has the sd of tap and edge, each end of the scale that of a tap.
    const foot = Math.hypot(tapSd, edgeSd)
    const expected = Math.hypot(foot * Math.SQRT2, (100 / 50) * tapSd * Math.SQRT2)
    expect(sdOf({ ...side, camera: 'flat' }, 'lateral', 'bearing-length')).toBeCloseTo(expected, 5)
  })

  it('is that of a turned line for an angle', () => {
    const flat: Landmarks = {
      ...none,
      camera: 'flat',
      lines: {
        ground: [
          [0, 200],
          [300, 200],
        ],
      },
      points: { 'toe-at-ground': [50, 200], 'toe-at-hairline': [110, 120] },
    }
    const turned = (length: number) => (tapSd * Math.SQRT2) / length
    const expected = (Math.hypot(turned(100), turned(300)) * 180) / Math.PI
    expect(sdOf(flat, 'lateral', 'toe-angle')).toBeCloseTo(expected, 5)
  })

  it('is what scattered points show (simulation, 5,000 draws, seeded)', () => {
    let state = 20260301
    const uniform = () => {
      state = (state * 48271) % 2147483647
      return state / 2147483647
    }
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
    // Ten pixels a millimetre, as a close picture has.
    const large: Landmarks = { ...mapped(side, ([x, y]) => [10 * x, 10 * y]), camera: 'flat' }
    const footSd = Math.hypot(tapSd, edgeSd * 10)
    const sums = new Map<string, { n: number; sum: number; square: number }>()
    for (let i = 0; i < 5_000; i++) {
      const scattered = mapped(large, ([x, y]) => [x + footSd * normal(), y + footSd * normal()])
      const { scale } = large
      const drawn = scale && {
        ...scale,
        from: [scale.from[0] + tapSd * normal(), scale.from[1] + tapSd * normal()] as const,
        to: [scale.to[0] + tapSd * normal(), scale.to[1] + tapSd * normal()] as const,
      }
      for (const [id, value] of Object.entries(values({ ...scattered, scale: drawn }, 'lateral'))) {
        const one = sums.get(id) ?? { n: 0, sum: 0, square: 0 }
        sums.set(id, { n: one.n + 1, sum: one.sum + value, square: one.square + value * value })
      }
    }
    for (const { measure, sd } of measureLandmarks(large, 'lateral')) {
      const { n = 0, sum = 0, square = 0 } = sums.get(measure) ?? {}
      const seen = Math.sqrt(square / n - (sum / n) ** 2)
      expect(Math.abs(sd / seen - 1), `${measure}: ${sd} against ${seen}`).toBeLessThan(0.035)
    }
  })
})

describe('the pose of a foot in its picture', () => {
  it('needs scale, ground and toe', () => {
    const pose = poseOf(side, 'lateral')
    expect(pose).toMatchObject({ origin: [50, 200], back: [1, 0] })
    expect(pose?.toFoot([60, 180])).toEqual([10, 20])
    expect(pose?.toPixel([10, 20])).toEqual([60, 180])
    expect(poseOf({ ...side, scale: null }, 'lateral')).toBeNull()
    expect(poseOf({ ...side, points: {} }, 'lateral')).toBeNull()
    expect(poseOf(side, 'front')).toBeNull()
    expect(poseOf(sole, 'solar')?.toFoot([200, 120])).toEqual([10, 0])
  })

  it('lays every point of one picture onto its like in another', () => {
    for (const [landmarks, view] of [
      [side, 'lateral'],
      [sole, 'solar'],
    ] as const) {
      for (const mirror of [1, -1]) {
        const other = mapped(landmarks, ([x, y]) => [
          mirror * 3 * (x * Math.cos(0.2) - y * Math.sin(0.2)) + 900,
          3 * (x * Math.sin(0.2) + y * Math.cos(0.2)) + 40,
        ])
        const [from, to] = [poseOf(other, view), poseOf(landmarks, view)]
        if (!from || !to) throw new Error('no pose')
        const [a, b, c, d, e, f] = laying(from, to, view)
        for (const [name, [x, y]] of Object.entries(other.points)) {
          const expected = landmarks.points[name as keyof typeof landmarks.points]
          expect(a * x + c * y + e, name).toBeCloseTo(expected?.[0] ?? Number.NaN, 6)
          expect(b * x + d * y + f, name).toBeCloseTo(expected?.[1] ?? Number.NaN, 6)
        }
      }
    }
  })
})
