/** Drawings as a page has them: in frames, with what they stand for beside them. */
import { describe, expect, it } from 'vitest'
import { measureIds } from '../../../src/hoof/measures.ts'
import type { Drawing } from '../../../src/pages/shared/figures.ts'
import { draw as drawWith } from '../../../src/render/drawings/drawing.ts'
import { figureWords } from '../../../src/render/figure-words.ts'
import { english } from '../../english.ts'
import { named, textOf } from '../read-html.ts'
import { level, side, sole, wall } from '../samples.ts'

const draw = (drawing: Drawing) => drawWith(drawing, figureWords(english))
const items = (html: string) => named(html, 'li').map((item) => textOf(item).trim())

describe('a drawing in its frame', () => {
  it.each([side, sole('LF', []), wall, level('RH', 8)])(
    '$kind is named by its caption and its words, which say the finding',
    (drawing) => {
      const html = draw(drawing)
      const [svg] = named(html, 'svg').filter(({ properties }) => properties.role === 'img')
      expect(svg?.properties.ariaLabelledBy).toEqual([`${drawing.id}-title`])
      expect(svg?.properties.ariaDescribedBy).toEqual([`${drawing.id}-text`])
      expect(html).toContain(`id="${drawing.id}-title">${drawing.title}<`)
      expect(html).toContain(`id="${drawing.id}-text">${drawing.description}<`)
    },
  )

  it('shares no id with another: all begin with its own', () => {
    const html = [side, sole('LF', []), wall, level('RH', 8)].map(draw).join('')
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map((match) => match[1])
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('says once what was not read', () => {
    expect(draw(wall).match(/Width was not measured\./g)).toHaveLength(1)
    expect(draw(side)).not.toContain('figure-note')
  })

  it('tells outlines apart in words, and names the first only where it is drawn', () => {
    expect(items(draw(side))).toEqual(['January: 98 mm, 44°', 'June: 88 mm, 51°'])
    const { latest } = side
    if (latest === null) throw new Error('the sample has two outlines')
    expect(items(draw({ ...side, first: { ...latest, label: 'May' } }))).toEqual(['June: 88 mm, 51°'])
    expect(items(draw({ ...side, latest: null }))).toEqual(['January: 98 mm, 44°'])
  })

  it('tells what a trim would take, and what a sole was, where they are drawn', () => {
    const trimmed = draw({ ...side, trim: { toe: 8, heel: 0, label: '8 mm off the toe' } })
    expect(items(trimmed).at(-1)).toBe('8 mm off the toe')
    expect(trimmed).toContain('class="mark cut"')
    const bare = sole('LF', [])
    const was = (width: number) =>
      draw({ ...bare, first: { label: 'January', measures: { ...bare.measures, width } } })
    expect(items(was(135))).toEqual(['January'])
    expect(was(135)).toContain('class="was"')
    expect(items(was(123))).toEqual([])
    expect(was(123)).not.toContain('class="was"')
  })

  it('signs findings where there are several', () => {
    const mark = (sign: string, place: string) => ({ what: 'bruise', place, grade: 2 as const, sign })
    const signs = (html: string) =>
      named(html, 'text')
        .map(textOf)
        .filter((text) => /^\d$/.test(text))
    expect(signs(draw(sole('LF', [mark('1', 'sole')])))).toEqual([])
    expect(signs(draw(sole('LF', [mark('1', 'sole'), mark('2', 'frog')]))).sort()).toEqual(['1', '2'])
  })

  it('gives each thing on the wall a letter, with where it is going', () => {
    const html = draw(wall)
    expect(items(html)).toEqual(['a nail holes, toe: 42 mm; broken: April, July', 'b ring, 20 mm'])
    expect(named(html, 'text').map(textOf)).toEqual(expect.arrayContaining(['a', 'b']))
  })

  it('draws heels as far apart as the balance says, whatever was read on other days', () => {
    const texts = (balance: number) => named(draw(level('LF', balance)), 'text').map(textOf)
    expect(texts(8)).toContain('8 mm')
    expect(texts(2)).not.toContain('2 mm')
  })
})

describe('measures', () => {
  it.each(measureIds)('%s is drawn with its mark', (measure) => {
    const html = draw({ kind: 'measure', measure, description: 'how <it> is taken' })
    const [svg] = named(html, 'svg')
    expect(svg?.properties.ariaLabel).toBe('how <it> is taken')
    expect(html).toContain('class="mark"')
  })

  it('each differ from every other', () => {
    const all = measureIds.map((measure) => draw({ kind: 'measure', measure, description: '' }))
    expect(new Set(all).size).toBe(measureIds.length)
  })

  it('draws nothing for what is no measure', () => {
    expect(draw({ kind: 'measure', measure: 'heel-gap', description: '' })).toBe('')
  })
})
