/** What holds for every drawing of a foot, and what each view shows. The short run draws 150 feet. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Foot, feet } from '../../../src/hoof/feet.ts'
import { type FindingName, findingMeanings, places } from '../../../src/hoof/findings.ts'
import type { FootMeasures } from '../../../src/hoof/stand-ins.ts'
import { behindView } from '../../../src/render/drawings/behind.ts'
import { sideView } from '../../../src/render/drawings/side.ts'
import { type SoleFinding, soleView } from '../../../src/render/drawings/sole.ts'
import type { Grade } from '../../../src/render/drawings/sole-places.ts'
import { wallView } from '../../../src/render/drawings/wall.ts'
import { runs } from '../../runs.ts'
import { anyFlares, anyFoot, middling } from './feet.ts'
import { readDrawing, withLook } from './read-drawing.ts'

const sides = { medial: 'inner', lateral: 'outer' }
const name = { 'aria-label': 'what <it> shows' }
const features = [
  { what: 'ring', place: 'whole foot', at: 24, ahead: [34, 44], wallLength: null, sign: 'a' },
  { what: 'old abscess', place: 'medial toe', at: 40, ahead: [], wallLength: null, sign: 'b' },
  { what: 'nail holes', place: 'medial quarter', at: 50, ahead: [60], wallLength: 75, sign: 'c' },
  { what: 'crack', place: 'lateral heel', at: 46, ahead: [], wallLength: null, sign: 'd' },
]
const findings: readonly SoleFinding[] = [
  { what: 'thrush', place: 'medial groove', grade: 2, sign: '1' },
  { what: 'flare', place: 'lateral quarter', grade: 3, sign: '2' },
  { what: 'bruise', place: 'sole', grade: 1, sign: '3' },
  { what: 'heat', place: 'whole foot', grade: 2, sign: '4' },
  { what: 'bar laid over', place: 'bars', grade: 3, sign: '5' },
]

interface Any {
  readonly foot: Foot
  readonly now: FootMeasures
  readonly first?: FootMeasures
  readonly flares?: { readonly medial: number; readonly lateral: number }
}

const views = {
  side: ({ foot, now, first }: Any) => sideView({ foot, now, first, trim: { toe: 8, heel: 3 } }, name),
  behind: ({ foot, now, flares }: Any) => behindView({ foot, now, label: '8 mm', sides, flares }, name),
  sole: ({ foot, now, first, flares }: Any) => soleView({ foot, now, first, findings, sides, flares }, name),
  wall: ({ foot, now, flares }: Any) => wallView({ foot, now, features, sides, flares }, name),
}
const viewNames = Object.keys(views) as (keyof typeof views)[]
const tints = ['skin', 'bulb', 'wall', 'side', 'sole', 'hollow', 'frog', 'groove', 'deep', 'white-line']

describe.each(viewNames)('the view %s', (view) => {
  it('is drawn whole, closed and within its sheet for any foot that could be read', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...feet),
        anyFoot,
        fc.option(anyFoot, { nil: undefined }),
        anyFlares,
        (foot, now, first, flares) => {
          const svg = views[view]({ foot, now, ...(first ? { first } : {}), flares })
          expect(svg).not.toMatch(/NaN|Infinity|undefined/)
          const drawing = readDrawing(svg)
          expect(drawing.paths.length).toBeGreaterThan(5)
          const outside = drawing.paths.flatMap(({ look, points }) =>
            points.flat().some(([x, y]) => x < -8 || x > 1008 || y < -8 || y > drawing.height + 8)
              ? [look]
              : [],
          )
          expect(outside).toEqual([])
          for (const tint of tints)
            for (const { isClosed } of withLook(drawing, tint)) expect(isClosed, tint).toBe(true)
        },
      ),
      { numRuns: runs(150, 4000) },
    )
  })

  it('shows a right foot as the mirror image of a left one', () => {
    const now = { ...middling, 'heel-medial': 44, 'heel-lateral': 34 }
    const flares = { medial: 0, lateral: 12 }
    const [left, right] = (['LF', 'RF'] as const).map((foot) =>
      readDrawing(views[view]({ foot, now, flares, first: { ...middling, 'bearing-length': 125 } })),
    )
    expect(right?.height).toBe(left?.height)
    expect(right?.paths.length).toBe(left?.paths.length)
    left?.paths.forEach(({ look, points }, i) => {
      const other = right?.paths[i]
      expect(other?.look).toBe(look)
      points.flat().forEach(([x, y], j) => {
        const [mx, my] = other?.points.flat()[j] ?? [Number.NaN, Number.NaN]
        expect(Math.abs(mx + x - 1000)).toBeLessThan(2)
        expect(Math.abs(my - y)).toBeLessThan(2)
      })
    })
    left?.texts.forEach(({ at, text }, i) => {
      expect(right?.texts[i]?.text).toBe(text)
      expect((right?.texts[i]?.at[0] ?? 0) + at[0]).toBeCloseTo(1000, -1)
    })
  })

  it('carries its text alternative, and no id, colour or size', () => {
    const svg = views[view]({ foot: 'LF', now: middling })
    expect(svg).toMatch(
      /^<svg class="drawing" viewBox="0 0 1000 \d+" role="img" aria-label="what &lt;it&gt; shows"/,
    )
    expect(svg).not.toMatch(/\sid=|url\(|#|rgb|style=|\swidth=|\sheight=/)
  })

  it('is the same for the same foot', () => {
    const one = { foot: 'RH', now: middling } as const
    expect(views[view](one)).toBe(views[view](one))
  })
})

describe('what was not read', () => {
  const dotted = (svg: string) => withLook(readDrawing(svg), 'unread').map(({ look }) => look)

  it('is dotted: the heel and the ground of a side, the outline of a sole, the width from behind, the ground of a wall', () => {
    const side = { 'toe-length': 85, 'toe-angle': 50 }
    expect(dotted(sideView({ foot: 'LF', now: side }, name))).toEqual(['outline unread'])
    expect(dotted(sideView({ foot: 'LF', now: {} }, name))).toEqual(['outline unread', 'outline unread'])
    expect(dotted(behindView({ foot: 'LF', now: side, label: '', sides }, name))).toEqual(['outline unread'])
    expect(dotted(soleView({ foot: 'LF', now: side, findings: [], sides }, name))).toContain('outline unread')
    expect(dotted(wallView({ foot: 'LF', now: side, features: [], sides }, name))).toEqual(['outline unread'])
    expect(dotted(wallView({ foot: 'LF', now: {}, features: [], sides }, name))).toHaveLength(2)
  })

  it('is nowhere where all was read', () => {
    const now = { ...middling, breakover: 112 - 73 }
    expect(dotted(sideView({ foot: 'LF', now }, name))).toEqual([])
    expect(dotted(behindView({ foot: 'LF', now, label: '', sides }, name))).toEqual([])
    expect(dotted(wallView({ foot: 'LF', now, features: [], sides }, name))).toEqual([])
  })

  it('is no level: one heel alone says nothing of the other', () => {
    const now = { width: 124, 'heel-medial': 40 }
    const drawing = readDrawing(behindView({ foot: 'LF', now, label: '8 mm', sides }, name))
    expect(withLook(drawing, 'mark')).toEqual([])
    expect(drawing.texts.map(({ text }) => text)).toEqual(['outer', 'inner'])
  })
})

describe('a difference', () => {
  const heels = (medial: number, lateral: number) => ({
    ...middling,
    'heel-medial': medial,
    'heel-lateral': lateral,
  })

  it('of the heels is drawn and written where it is greater than its error, else the heels are level', () => {
    const read = (now: FootMeasures) =>
      readDrawing(behindView({ foot: 'LF', now, label: '8 mm', sides }, name))
    expect(read(heels(42, 34)).texts.map(({ text }) => text)).toContain('8 mm')
    const level = read(heels(40, 36))
    expect(level.texts.map(({ text }) => text)).not.toContain('8 mm')
    const ends = withLook(level, 'mark').flatMap(({ points }) => points.flat().map(([, y]) => y))
    expect(new Set(ends).size).toBe(1)
  })

  it('lifts the inner heel of a left foot on the right, that of a right foot on the left', () => {
    const slope = (foot: Foot) => {
      const drawing = readDrawing(behindView({ foot, now: heels(42, 34), label: '', sides }, name))
      const points = withLook(drawing, 'mark').flatMap((path) => path.points.flat())
      const sorted = [...points].sort((a, b) => a[0] - b[0])
      return (sorted.at(-1)?.[1] ?? 0) - (sorted[0]?.[1] ?? 0)
    }
    expect(slope('LF')).toBeLessThan(-20)
    expect(slope('RH')).toBeGreaterThan(20)
  })

  it('of two outlines is drawn where one measure changed by more than its error', () => {
    const was = (first: FootMeasures) =>
      withLook(readDrawing(sideView({ foot: 'LF', now: middling, first }, name)), 'was').length
    expect(was({ ...middling, 'toe-length': 95 })).toBe(1)
    expect(was({ ...middling, 'toe-length': 89, 'toe-angle': 52 })).toBe(0)
  })

  it('of two side outlines keeps the toe hairlines over each other, on one ground', () => {
    const first = { ...middling, 'toe-length': 105, 'toe-angle': 44 }
    const drawing = readDrawing(sideView({ foot: 'LF', now: middling, first }, name))
    const [old] = withLook(drawing, 'was')
    const ground = withLook(drawing, 'ground')[0]?.points[0]?.[0]?.[1] ?? 0
    const lowest = Math.max(...(old?.points.flat().map(([, y]) => y) ?? []))
    expect(Math.abs(lowest - ground)).toBeLessThan(3)
    const inner = withLook(drawing, 'inner').at(-1)?.points.at(-1)?.[0] ?? [0, 0]
    const oldHairline = old?.points[1]?.[0] ?? [500, 0]
    expect(Math.abs(inner[0] - oldHairline[0])).toBeLessThan(2)
  })
})

describe('the side', () => {
  it('shows a dish as a hollow in the front of the wall, in the middle and not at its ends', () => {
    const toe = (dish: number) => {
      const drawing = readDrawing(sideView({ foot: 'LF', now: middling, dish }, name))
      return withLook(drawing, 'outline')[0]?.points[0] ?? []
    }
    const moved = toe(6).map(([x], i) => x - (toe(0)[i]?.[0] ?? 0))
    expect(Math.max(...moved)).toBeGreaterThan(10)
    expect(moved[0]).toBe(0)
    expect(moved.at(-1)).toBe(0)
  })

  it('hatches what a trim would take, below a line from wall to wall', () => {
    const drawing = readDrawing(sideView({ foot: 'LF', now: middling, trim: { toe: 10, heel: 4 } }, name))
    const ground = withLook(drawing, 'ground')[0]?.points[0]?.[0]?.[1] ?? 0
    const [line = []] = withLook(drawing, 'cut').map(({ points }) => points[1] ?? [])
    const [toe, heel] = [ground - (line[0]?.[1] ?? 0), ground - (line[1]?.[1] ?? 0)]
    // Along the walls: 10 mm at 50 degrees, 4 mm at 47.
    expect(toe / heel).toBeCloseTo(
      (10 * Math.sin(50 * (Math.PI / 180))) / (4 * Math.sin(47 * (Math.PI / 180))),
      0,
    )
    expect(withLook(drawing, 'mark-hair')[0]?.points.length).toBe(16)
  })
})

describe('findings on the sole', () => {
  const drawn = (what: string, place: string, grade: Grade) =>
    soleView({ foot: 'LF', now: middling, findings: [{ what, place, grade, sign: '' }], sides }, name)
  const bare = soleView({ foot: 'LF', now: middling, findings: [], sides }, name)
  /** What one finding adds, without its classes: shapes alone. */
  const marks = (svg: string) =>
    readDrawing(svg)
      .paths.filter(({ look }) => !bare.includes(`class="${look}"`) || /mark|dots|gap|finding/.test(look))
      .flatMap(({ points }) => points.map((line) => line.map(String).join(' ')))
      .join('|')

  it.each(Object.keys(findingMeanings) as FindingName[])(
    'shows %s by its shape, another at each grade',
    (what) => {
      for (const place of ['toe', 'medial quarter', 'sole', 'frog', 'lateral groove']) {
        const grades = ([0, 1, 2, 3] as const).map((grade) => marks(drawn(what, place, grade)))
        expect(new Set(grades).size, place).toBe(4)
      }
    },
  )

  it.each(places.filter((place) => place !== 'pastern'))('has a place of its own for %s', (place) => {
    const all = places.map((each) => marks(drawn('scar', each, 2)))
    expect(all.filter((one) => one === marks(drawn('scar', place, 2)))).toHaveLength(1)
  })

  it('shows the inner side of a left foot on the left, seen from below', () => {
    const middle = (place: string) => {
      const points = withLook(readDrawing(drawn('scar', place, 1)), 'dots').flatMap((path) =>
        path.points.flat(),
      )
      return points.reduce((sum, [x]) => sum + x, 0) / points.length
    }
    expect(middle('medial quarter')).toBeLessThan(250)
    expect(middle('lateral quarter')).toBeGreaterThan(750)
    expect(Math.abs(middle('toe') - 500)).toBeLessThan(20)
  })

  it('puts the signs in the margins, none over another', () => {
    const many = places.map(
      (place, i): SoleFinding => ({ what: 'scar', place, grade: 2, sign: String(i + 1) }),
    )
    const { texts, height } = readDrawing(
      soleView({ foot: 'RF', now: middling, findings: many, sides }, name),
    )
    const signs = texts.filter(({ text }) => /^\d+$/.test(text))
    expect(signs).toHaveLength(places.length)
    for (const { at } of signs) {
      expect(at[0] < 60 || at[0] > 940).toBe(true)
      expect(at[1]).toBeGreaterThan(0)
      expect(at[1]).toBeLessThan(height)
      expect(signs.filter((other) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) < 60)).toHaveLength(
        1,
      )
    }
  })
})

describe('the wall', () => {
  const read = (feature: Partial<(typeof features)[0]>) =>
    readDrawing(
      wallView(
        {
          foot: 'LF',
          now: middling,
          sides,
          features: [{ ...(features[0] as (typeof features)[0]), ...feature }],
        },
        name,
      ),
    )

  it('shows a ring as a line that follows the coronet, and broken where it will be', () => {
    const drawing = read({ at: 20, ahead: [40] })
    const bows = (look: string) =>
      withLook(drawing, look).map(({ points }) => {
        const line = points[0] ?? []
        return (line[0]?.[1] ?? 0) - Math.min(...line.map(([, y]) => y))
      })
    const [hairline = 0] = bows('inner').slice(-1)
    for (const bow of [...bows('bold'), ...bows('unread')]) expect(bow).toBeGreaterThan(30)
    expect(hairline).toBeGreaterThan(40)
    const top = (look: string) =>
      Math.min(...withLook(drawing, look).flatMap(({ points }) => points.flat().map(([, y]) => y)))
    const scale = 1000 / (1.24 * 124)
    expect(top('unread') - top('bold')).toBeCloseTo(20 * scale, -1)
  })

  it('lets what has the length of its own wall behind it reach the ground', () => {
    const drawing = read({ what: 'line', place: 'medial quarter', at: 60, wallLength: 60, ahead: [] })
    const low = Math.max(
      ...withLook(drawing, 'bold').flatMap(({ points }) => points.flat().map(([, y]) => y)),
    )
    const ground = withLook(drawing, 'ground')[0]?.points[0]?.[0]?.[1] ?? 0
    expect(Math.abs(low - ground)).toBeLessThan(60)
  })

  it('shows a crack as a wedge down to the ground, nail holes as squares', () => {
    const wedge = withLook(read({ what: 'crack', place: 'toe', at: 30, ahead: [] }), 'finding')
    expect(wedge[0]?.points[0]?.length).toBe(16)
    expect(
      withLook(read({ what: 'nail holes', place: 'toe', ahead: [] }), 'finding')[0]?.points,
    ).toHaveLength(3)
  })
})
