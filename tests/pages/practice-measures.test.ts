import { describe, expect, it } from 'vitest'
import type { ShownReading } from '../../src/pages/practice/case/shown-reading.ts'
import type { HorsePage } from '../../src/pages/practice/horse/horse-page.ts'
import type { MeasuresPage } from '../../src/pages/practice/measures/measures-page.ts'
import type { FeetTable } from '../../src/pages/practice/parts/feet-table.ts'
import { buildHorse } from '../trend/build-horse.ts'
import { asOf, mallow, modelAt, pagesOf, practice, uneven } from './practice-kit.ts'

const pageOf = (horse = mallow, day = asOf) =>
  modelAt<MeasuresPage>(pagesOf(horse, day, practice), `${horse.id}/measures.html`)
const page = pageOf()
const section = (id: string, of = page) => of.measures.find((one) => one.id === id)

const leftFore = (part: { readonly table: FeetTable } | undefined) =>
  part?.table.rows.map(({ name, cells }) => [name, cells[0]] as const) ?? []

const both = (arrival: ShownReading | null, after: ShownReading) => ({ arrival, after, isReal: false })

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

  it('has a row a visit, then verdict and rate with its interval', () => {
    expect(section('toe-angle')).toMatchObject({
      target: 'Target: LF 54° to 58°',
      reference: { href: '../reference.html#toe-angle' },
    })
    expect(section('toe-angle')?.table.corner).toBe('°')
    expect(section('toe-angle')?.table.feet[0]).toBe('Left fore')
    expect(leftFore(section('toe-angle')).slice(0, 6)).toEqual([
      ['12 Jan 26', both(null, { text: '45', reading: 'LF toe-angle 2026-01-12 after gauge' })],
      ['16 Feb 26', both(null, { text: '48', reading: 'LF toe-angle 2026-02-16 after gauge' })],
      ['23 Mar 26', both(null, { text: '51', reading: 'LF toe-angle 2026-03-23 after gauge' })],
      ['Verdict', { text: 'too early to tell', tone: 'early' }],
      ['A month', { text: '+2.6 (0.6 to 4.6)' }],
      ['Expected', { text: 'no date yet' }],
    ])
  })

  it('charts the telling ones, whose readings of both stages stand below', () => {
    expect(section('toe-length')?.chart).toMatchObject({ size: 'full', table: null })
    expect(leftFore(section('toe-length'))[0]?.[1]).toMatchObject({
      arrival: { reading: 'LF toe-length 2026-01-12 before gauge' },
      after: { reading: 'LF toe-length 2026-01-12 after gauge' },
    })
    expect(section('width')?.chart).toBeNull()
    expect(leftFore(section('width'))[0]?.[1]).toMatchObject({ reading: 'LF width 2026-01-12 after gauge' })
  })

  it('has what was worked out at both stages, since no visit’s page has it', () => {
    expect(leftFore(section('heel-balance'))[0]?.[1]).toHaveProperty('after')
    expect(leftFore(section('heel-tilt'))[0]?.[1]).toHaveProperty('after')
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
    const read = section('toe-angle', pageOf(late))?.table.rows.find(({ name }) => name === 'Read')
    expect(read?.cells).toEqual([null, null, null, { text: '16 Feb 26, after the trim' }])
    expect(section('toe-angle')?.table.rows.map(({ name }) => name)).not.toContain('Read')
  })

  it('gives every number behind a statement', () => {
    const { rows = [] } = section('width')?.table ?? {}
    expect(rows.map(({ name }) => name)).toEqual([
      '12 Jan 26',
      '23 Mar 26',
      'Verdict',
      'A month',
      'Readings',
      'Real from',
      'Scatter',
      'Degrees of freedom',
      'The line now',
    ])
    expect(rows.find(({ name }) => name === 'Readings')?.cells).toEqual([{ text: '2' }])
    expect(leftFore(section('toe-angle')).find(([name]) => name === 'Readings')?.[1]).toEqual({
      text: 'all feet: 3',
    })
  })

  it('says once what is alike at all feet', () => {
    const even = buildHorse({
      id: 'even',
      visits: ['2026-01-12', '2026-02-16'].map((date) => ({
        date,
        after: { width: { LF: 120, RF: 121, LH: 122, RH: 123 } },
      })),
    })
    const row = section('width', pageOf(even))?.table.rows.find(({ name }) => name === 'Readings')
    expect(row?.cells).toEqual([{ text: 'all feet: 2' }])
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
    const rows = leftFore(section('toe-angle', pageOf(twice))).slice(0, 3)
    expect(rows.map(([name, cell]) => [name, cell && 'after' in cell && cell.after?.text])).toEqual([
      ['12 Jan 26', '45'],
      ['16 Feb 26', '48'],
      ['16 Feb 26', '49'],
    ])
  })

  it('keeps what the hoof did apart from what the trims did', () => {
    // Grown 9 mm in each of two stretches of 35 days; trims took 8, 11, 10 mm.
    const [toe] = page.growthTables
    expect(toe?.name).toBe('Toe length')
    const rows = leftFore(toe).map(([name, cell]) => [name, cell && 'text' in cell && cell.text])
    expect(rows[0]).toEqual(['Grown a month', expect.stringMatching(/^\+8\.1 \(5\.5 to 10\.6\)$/)])
    expect(rows.slice(2)).toEqual([
      ['Trims', '3'],
      ['Taken off', '29'],
      ['12 Jan 26', '–, −8'],
      ['16 Feb 26', '+9, −11'],
      ['23 Mar 26', '+9, −10'],
    ])
  })

  it('says the same of several walls once', () => {
    expect(page.growth).toEqual([
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
  })

  it('draws nothing again that the horse’s own page draws', () => {
    const horsePage = modelAt<HorsePage>(pagesOf(), 'mallow/index.html')
    const drawn = horsePage.drawings.map(({ kind, foot }) => `${kind} ${foot}`)
    const again = [...page.sides.drawings, ...page.walls.drawings].map(({ kind, foot }) => `${kind} ${foot}`)
    expect(drawn.length).toBeGreaterThan(0)
    expect(again.filter((one) => drawn.includes(one))).toEqual([])
    expect(page.drawn).toMatch(/^Drawn on the horse’s own page: LF/)
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
