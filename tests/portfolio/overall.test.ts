import { describe, expect, it } from 'vitest'
import { presentIndex, presentSummary } from '../../src/pages/portfolio/overall.ts'
import type { CaseSummary } from '../../src/pages/portfolio/view.ts'
import { formatIn } from '../english.ts'
import { practice } from '../owner/zoe.ts'

const one = (alias: string, more: Partial<CaseSummary> = {}): CaseSummary => ({
  slug: alias.toLowerCase(),
  alias,
  visits: 4,
  span: '15 weeks',
  length: 'half',
  outcome: 'improving',
  kinds: ['toe length'],
  findings: ['flare'],
  feet: ['LF'],
  changes: [{ measure: 'toe-length', mean: -8, feet: 2, up: 0, down: 1, within: 1 }],
  ...more,
})

describe('the list of cases', () => {
  it('goes by alias, whatever came of a case', () => {
    const cases = [
      one('Sorrel', { outcome: 'on target' }),
      one('Bramble', { outcome: 'worsening' }),
      one('Fern'),
    ]
    expect(presentIndex(cases, practice, formatIn('mm')).cards.map(({ alias }) => alias)).toEqual([
      'Bramble',
      'Fern',
      'Sorrel',
    ])
    expect(presentIndex([...cases].reverse(), practice, formatIn('mm'))).toEqual(
      presentIndex(cases, practice, formatIn('mm')),
    )
  })

  it('offers to choose by what there is', () => {
    const { filters } = presentIndex(
      [one('Fern', { findings: ['thrush', 'flare'], feet: ['RH'] }), one('Sorrel', { length: 'long' })],
      practice,
      formatIn('mm'),
    )
    expect(filters.map(({ id, choices }) => [id, ...choices.map(({ value }) => value)])).toEqual([
      ['finding', 'flare', 'thrush'],
      ['foot', 'LF', 'RH'],
      ['length', 'half', 'long'],
      ['outcome', 'improving'],
    ])
  })

  it('is empty and says nothing where there is no case', () => {
    expect(presentIndex([], practice, formatIn('mm'))).toMatchObject({ cards: [], filters: [] })
    expect(presentSummary([], formatIn('mm'))).toMatchObject({ charts: [], changes: null })
  })
})

describe('the page over all cases', () => {
  const changes = (values: readonly number[]) =>
    values.map((mean, i) =>
      one(`Case${i}`, { changes: [{ measure: 'toe-length', mean, feet: 2, up: 0, down: 1, within: 1 }] }),
    )

  it('gives count, median and interval of each measure', () => {
    const { changes: table, charts } = presentSummary(changes([-3, -9, -1, -7, -5, -6]), formatIn('mm'))
    expect(table?.rows).toEqual([['toe length', '0', '6', '6', '12']])
    expect(charts[0]?.rows[0]).toEqual({
      label: 'toe length, 6 cases: −5.5 mm (−9 mm to −1 mm)',
      values: [-9, -7, -6, -5, -3, -1],
      median: -5.5,
      low: -9,
      high: -1,
    })
  })

  it('gives no interval for fewer than six', () => {
    const { charts } = presentSummary(changes([-3, -9, -1, -7, -5]), formatIn('mm'))
    expect(charts[0]?.rows[0]).toMatchObject({
      label: 'toe length, 5 cases: −5 mm (too few for an interval)',
      low: null,
      high: null,
    })
    expect(charts[0]?.description).toContain('too few cases for an interval (fewer than six)')
  })

  it('never mixes two units on one scale', () => {
    const cases = changes([-3, -5]).map((each) => ({
      ...each,
      changes: [
        ...each.changes,
        { measure: 'toe-angle' as const, mean: 2, feet: 1, up: 1, down: 0, within: 0 },
      ],
    }))
    expect(presentSummary(cases, formatIn('in')).charts.map(({ id, unit }) => [id, unit])).toEqual([
      ['change-angle', '°'],
      ['change-length', 'in'],
    ])
    expect(presentSummary(cases, formatIn('in')).charts[1]?.rows[0]?.values[1]).toBeCloseTo(-3 / 25.4)
  })

  it('names no case and puts none above another', () => {
    const text = JSON.stringify(presentSummary(changes([-3, -9]), formatIn('mm')))
    expect(text).not.toMatch(/Case\d/)
  })
})
