import { describe, expect, it } from 'vitest'
import type { MeasuresPage } from '../../src/pages/practice/measures-page.ts'
import { buildHorse } from '../trend/build-horse.ts'
import { asOf, mallow, modelAt, pagesOf, practice, uneven } from './practice-kit.ts'

const pageOf = (horse = mallow, day = asOf) =>
  modelAt<MeasuresPage>(pagesOf(horse, day, practice), `${horse.id}/measures.html`)
const page = pageOf()
const section = (id: string, of = page) => of.measures.find((one) => one.id === id)

describe('all measures of a horse', () => {
  it('has every measure that was read, in the usual order, and an index of its parts', () => {
    expect(page.measures.map(({ id }) => id)).toEqual([
      'toe-length',
      'toe-angle',
      'heel-medial',
      'heel-lateral',
      'width',
      'heel-balance',
      'heel-tilt',
      'toe-to-heel-ratio',
      'pair-mismatch',
    ])
    expect(page.index.slice(0, 2).map(({ href }) => href)).toEqual(['#toe-length', '#toe-angle'])
    expect(page.index.at(-1)?.href).toBe('#record')
  })

  it('tells of each foot first and last reading, rate with interval, days, stage and verdict', () => {
    expect(section('toe-angle')).toMatchObject({
      target: 'Target: LF 54° to 58°',
      reference: { href: '../reference.html#toe-angle' },
    })
    expect(section('toe-angle')?.rows[0]).toEqual({
      foot: 'LF',
      footName: 'Left fore',
      first: { text: '45', reading: 'LF toe-angle 2026-01-12 after gauge' },
      last: { text: '51°', reading: 'LF toe-angle 2026-03-23 after gauge' },
      verdict: { text: 'too early to tell', tone: 'early' },
      told: '+2.6° a month (95 %: 0.6 to 4.6°) · no date yet',
    })
  })

  it('charts the telling ones with their readings as a table, and tells of the others in rows', () => {
    expect(section('toe-angle')?.chart).toMatchObject({
      size: 'full',
      table: { caption: 'Toe angle, all readings, °' },
    })
    expect(section('width')?.chart).toBeNull()
  })

  it('names the days once, and at a foot where they are others', () => {
    expect(page.usual).toBe(
      'Where no days are named, the readings are of 12 Jan 26 to 23 Mar 26, after the trim.',
    )
    const late = buildHorse({
      id: 'late',
      visits: [
        { date: '2026-01-12', after: { 'toe-angle': { LF: 45, RF: 46, LH: 47 } } },
        { date: '2026-02-16', after: { 'toe-angle': { LF: 46, RF: 46, LH: 47, RH: 48 } } },
      ],
    })
    const told = section('toe-angle', pageOf(late))?.rows.map(({ foot, told: text }) => [foot, text])
    expect(told?.find(([foot]) => foot === 'RH')?.[1]).toContain('16 Feb 26, after the trim')
    expect(told?.find(([foot]) => foot === 'LF')?.[1]).not.toContain('26')
  })

  it('gives every number behind a statement, those beside a chart once', () => {
    const numbers = section('width')?.numbers
    expect(numbers?.head.slice(0, 2)).toEqual(['Visit or number', 'Left fore'])
    expect(numbers?.rows.map(([step]) => step)).toEqual([
      '12 Jan 26',
      '23 Mar 26',
      'Readings',
      'Change',
      'Real from',
      'Scatter',
      'Degrees of freedom',
      'The line now',
    ])
    const charted = section('toe-angle')
    expect(charted?.numbers.rows.map(([step]) => step)[0]).toBe('Readings')
    expect(charted?.numbers.rows[1]?.[1]).toBe('+6°')
    expect(charted?.chart?.table?.rows).toHaveLength(3)
  })

  it('says how each of its verdicts is reached, once', () => {
    const names = page.method.map(({ name }) => name)
    expect(names).toContain('Too early to tell')
    expect(names).toContain('A month')
    expect(new Set(names).size).toBe(names.length)
  })

  it('gives both readings of a day with two visits', () => {
    const twice = buildHorse({
      id: 'twice',
      visits: [
        { date: '2026-01-12', after: { 'toe-angle': 45 } },
        { date: '2026-02-16', id: '2026-02-16', after: { 'toe-angle': 48 } },
        { date: '2026-02-16', id: '2026-02-16-2', after: { 'toe-angle': 49 } },
      ],
    })
    expect(section('toe-angle', pageOf(twice))?.chart?.table?.rows).toEqual([
      ['12 Jan 26', 'after the trim', '45'],
      ['16 Feb 26', 'after the trim', '48'],
      ['16 Feb 26', 'after the trim', '49'],
    ])
  })

  it('keeps what the hoof did apart from what the trims did', () => {
    // Grown 9 mm in each of two stretches of 35 days; trims took 8, 11, 10 mm.
    expect(page.growth[0]).toMatch(/^LF toe length: .*3 trims took 29 mm\.$/)
    expect(page.growthTables[0]?.rows.map(([step, leftFore]) => [step, leftFore])).toEqual([
      ['Trim of 12 Jan 26', '−8 mm'],
      ['Grown 12 Jan 26 to 16 Feb 26, 35 days', '+9 mm, 7.8 mm a month'],
      ['Trim of 16 Feb 26', '−11 mm'],
      ['Grown 16 Feb 26 to 23 Mar 26, 35 days', '+9 mm, 7.8 mm a month'],
      ['Trim of 23 Mar 26', '−10 mm'],
    ])
  })

  it('says the same of several walls once', () => {
    expect(page.growth.slice(1)).toEqual([
      'LF heel medial, LF heel lateral, RF heel medial and RF heel lateral: Growth is not known: nothing was read on arrival, so the trims hide it.',
    ])
  })

  it('compares left and right of a pair', () => {
    expect(page.pairs).toContain(
      'Fores, toe angle: left 51°, right 46°. They differ by 5°, more than measuring error (4.7°).',
    )
  })

  it('draws no heels whose difference may be the error of the reading', () => {
    expect(page.levels.drawings).toEqual([])
    expect(pageOf(uneven).levels.drawings.map(({ title }) => title)).toEqual([
      'Left fore: inner heel 6 mm higher, a tilt of 2.7°',
    ])
  })

  it('has the plan step by step, what is held, and what grows down', () => {
    const { plans, held } = pageOf(uneven)
    expect(plans[0]?.foot).toBe('Left fore, heel balance')
    expect(plans[0]?.sentences[0]).toContain('Off the inner heel, at most: 11.5 mm')
    expect(plans[0]?.steps?.rows.length).toBeGreaterThan(1)
    expect(held[0]).toMatch(/^Right fore: no plan and no amount/)
    expect(page.growing[0]?.name).toBe('Nail holes, left fore toe')
    expect(page.growing[0]?.sentence).toContain('reaches the ground about 9 September 2026')
    expect(page.growOutTable?.rows[0]?.[1]).toBe(
      '20 mm on 12 Jan 26, 30 mm on 16 Feb 26 and 40 mm on 23 Mar 26',
    )
    expect(page.walls.drawings[0]?.features[0]).toMatchObject({
      place: 'toe',
      label: 'nail holes, toe: 40.5 mm',
    })
  })

  it('explains a remark of a kind once, and of the others says what they read', () => {
    const low = buildHorse({
      id: 'low',
      visits: [
        {
          date: '2026-01-12',
          after: { 'toe-angle': { LF: 50, RF: 50 }, 'heel-angle': { LF: 38, RF: 36 } },
        },
      ],
    })
    const remarks = pageOf(low).remarks.filter((text) => text.includes('less than the toe angle'))
    expect(remarks).toEqual([
      expect.stringMatching(
        /^Left fore, 12 January 2026: The heel angle is 12° less than the toe angle\. One published/,
      ),
      'Right fore, 12 January 2026: the heel angle 14° less than the toe angle.',
    ])
  })
})
