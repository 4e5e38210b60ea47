import { describe, expect, it } from 'vitest'
import { places } from '../../src/hoof/findings.ts'
import { measureIds } from '../../src/hoof/measures.ts'
import { createDrawings } from '../../src/render/drawings/drawing.ts'
import { soleShape } from '../../src/render/drawings/sole-shape.ts'
import { figureWords } from '../../src/render/figure-words.ts'
import { english } from '../english.ts'
import { elementsOf, named, textOf } from './read-html.ts'
import { level, side, sole, wall } from './samples.ts'

const words = figureWords(english)

const draw = createDrawings(words)
const mark = (place: string, grade: 0 | 1 | 2 | 3 = 2) => ({ place, grade, sign: '1', label: place })

/** The disc with the sign, in the units of the picture, 320 wide. */
const signAt = (html: string) => {
  const disc = named(html, 'circle').find(({ properties }) => Number(properties.r) === 11)
  return { x: Number(disc?.properties.cx), y: Number(disc?.properties.cy) }
}

describe('the sole', () => {
  it('puts the inner side of a left foot to the left, seen from below, and mirrors a right foot', () => {
    const left = signAt(draw(sole('LF', [mark('medial quarter')])))
    const right = signAt(draw(sole('RF', [mark('medial quarter')])))
    expect(left.x).toBeLessThan(80)
    expect(right.x).toBeGreaterThan(240)
    expect(left.x + right.x).toBeCloseTo(320, 1)
    expect(left.y).toBe(right.y)
  })

  it.each(['LF', 'RF', 'LH', 'RH'] as const)('names the sides of %s', (foot) => {
    const names = named(draw(sole(foot, [])), 'text').map(textOf)
    expect(names).toEqual(foot.startsWith('L') ? ['inner', 'outer'] : ['outer', 'inner'])
  })

  it('is rounder and wider before than behind', () => {
    const half = (pair: 'fore' | 'hind') => soleShape(pair).wall.lateral
    const widest = (pair: 'fore' | 'hind') => Math.max(...half(pair).map(([x]) => x))
    // Width a fifth of the way down: a pointed toe is narrow there.
    const shoulder = (pair: 'fore' | 'hind') =>
      Math.max(
        ...half(pair)
          .filter(([, y]) => y < 25)
          .map(([x]) => x),
      )
    expect(widest('fore')).toBeGreaterThan(widest('hind') + 5)
    expect(shoulder('fore') / widest('fore')).toBeGreaterThan(shoulder('hind') / widest('hind') + 0.05)
  })

  it.each(places)('has a place of its own for %s', (place) => {
    const all = places.map((each) => signAt(draw(sole('LF', [mark(each)]))))
    const own = signAt(draw(sole('LF', [mark(place)])))
    const same = all.filter(({ x, y }) => Math.hypot(x - own.x, y - own.y) < 8)
    // The bars of both sides are signed at one of them.
    expect(same).toHaveLength(place === 'bars' || place === 'lateral bar' ? 2 : 1)
    expect(own.x).toBeGreaterThan(11)
    expect(own.x).toBeLessThan(309)
    expect(own.y).toBeGreaterThan(11)
    expect(own.y).toBeLessThan(315)
  })

  it.each([1, 2, 3] as const)('paints grade %i with its pattern', (grade) => {
    for (const place of places.filter((each) => each !== 'pastern')) {
      const painted = elementsOf(draw(sole('RH', [mark(place, grade)]))).filter(
        ({ tagName, properties }) =>
          tagName === 'path' && [properties.fill, properties.stroke].includes(`url(#sole-RH-grade-${grade})`),
      )
      expect(painted.length, place).toBeGreaterThan(0)
    }
  })

  it('shows the worst of two findings at one place, and both signs side by side', () => {
    const html = draw(
      sole('LF', [
        { ...mark('frog', 3), sign: '1' },
        { ...mark('frog', 1), sign: '2' },
      ]),
    )
    const fills = named(html, 'path').map(({ properties }) => properties.fill)
    expect(fills).toContain('url(#sole-LF-grade-3)')
    expect(fills).not.toContain('url(#sole-LF-grade-1)')
    expect(named(html, 'text').map(textOf)).toEqual(['inner', 'outer', '1', '2'])
  })
})

describe('the side', () => {
  it('is to scale: the angle and length of the drawn wall are those of the reading', () => {
    const html = draw({ ...side, latest: null })
    const outline =
      named(html, 'path')
        .map(({ properties }) => String(properties.d))
        .find((d) => d.endsWith('Z')) ?? ''
    const points = [...outline.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((match) => [
      Number(match[1]),
      Number(match[2]),
    ])
    const [hairX = 0, hairY = 0] = points[0] ?? []
    const [groundX = 0, groundY = 0] = points.at(-2) ?? []
    const [heelX = 0] = points.at(-3) ?? []
    const angle = (Math.atan2(groundY - hairY, hairX - groundX) * 180) / Math.PI
    expect(angle).toBeCloseTo(44, 1)
    const scale = (heelX - groundX) / 124
    expect(Math.hypot(hairX - groundX, groundY - hairY) / scale).toBeCloseTo(98, 1)
  })

  it('draws the first broken under the latest, and labels angle and length', () => {
    const html = draw(side)
    const texts = named(html, 'text').map(textOf)
    expect(texts).toEqual(['51°', '88 mm', 'January: 98 mm, 44°', 'June: 88 mm, 51°'])
    expect(html).toContain('stroke="var(--first, #857b69)" stroke-width="2" stroke-dasharray="7 5"')
  })

  it('draws sides that were not read dotted', () => {
    const html = draw({ ...side, latest: null, first: { ...side.first, assumed: true } })
    expect(html).toContain('stroke-dasharray="2 5"')
    expect(draw({ ...side, latest: null })).not.toContain('stroke-dasharray="2 5"')
  })
})

describe('the level', () => {
  const turnOf = (html: string) => Number(/rotate\((-?[\d.]+)\)/.exec(html)?.[1])

  it('falls to the lower heel: seen from behind, the inner side of a left foot is to the right', () => {
    // A turn against the clock, negative in SVG, lifts the right.
    expect(turnOf(draw(level('LF', 6)))).toBeLessThan(-2)
    expect(turnOf(draw(level('RF', 6)))).toBeGreaterThan(2)
    expect(turnOf(draw(level('LH', -6)))).toBeGreaterThan(2)
    expect(turnOf(draw(level('RH', 0, true)))).toBeCloseTo(0)
  })

  it('tilts by the tilt of the heels', () => {
    expect(turnOf(draw(level('RF', 6)))).toBeCloseTo((Math.atan2(6, 120) * 180) / Math.PI, 1)
  })

  it('has its bubble between the marks exactly when the heels are within the target', () => {
    const bubble = (html: string) => Math.abs(Number(named(html, 'ellipse')[0]?.properties.cx))
    expect(bubble(draw(level('LF', 2, true)))).toBeLessThan(22 - 15)
    expect(bubble(draw(level('LF', 3)))).toBeGreaterThan(22 + 10)
  })
})

describe('the wall', () => {
  it('shows features to scale and never below the ground', () => {
    const [toe] = named(draw(wall), 'svg')
    const heights = toe
      ? [...JSON.stringify(toe).matchAll(/translate\([\d.]+,([\d.]+)\)/g)].map((match) => Number(match[1]))
      : []
    const [now = 0, april = 0, july = 0] = heights
    expect((april - now) / (51 - 42)).toBeCloseTo(2.1, 1)
    expect((july - now) / (88 - 42)).toBeCloseTo(2.1, 1)
  })

  it('leaves a wall whose length was not read open', () => {
    const [toe, quarter] = named(draw(wall), 'svg')
    expect(JSON.stringify(toe)).not.toContain('["9","5"]')
    expect(JSON.stringify(quarter)).toContain('["9","5"]')
  })
})

describe('measures', () => {
  it.each(measureIds)('%s is drawn with its mark', (measure) => {
    const html = draw({ kind: 'measure', measure, description: 'how <it> is taken' })
    const [svg] = named(html, 'svg')
    expect(svg?.properties.ariaLabel).toBe('how <it> is taken')
    expect(html).toContain('stroke="var(--latest, #0072b2)" stroke-width="3')
  })

  it('each differ from every other', () => {
    const all = measureIds.map((measure) => draw({ kind: 'measure', measure, description: '' }))
    expect(new Set(all).size).toBe(measureIds.length)
  })

  it('draws nothing for what is no measure', () => {
    expect(draw({ kind: 'measure', measure: 'heel-gap', description: '' })).toBe('')
  })
})
