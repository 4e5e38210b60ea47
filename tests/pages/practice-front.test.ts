import { describe, expect, it } from 'vitest'
import { derivedIds, measureIds } from '../../src/hoof/measures.ts'
import type { FrontPage } from '../../src/pages/practice/front-page.ts'
import { presentFront } from '../../src/pages/practice/index.ts'
import type { ReferencePage } from '../../src/pages/practice/reference-page.ts'
import type { HorseSummary } from '../../src/pages/shared/summary.ts'
import { asOf, modelAt, practice, summaryOf } from './practice-kit.ts'

const calm: HorseSummary = {
  id: 'alder',
  name: 'Alder',
  owner: 'Pim Aldous',
  visits: 4,
  lastVisit: '2026-02-01',
  due: '2026-03-08',
  overdueDays: 17,
  state: '2 improving.',
  tags: ['overdue', 'improving', 'thrush'],
  cautions: [],
  changes: ['Left fore toe length: 92 mm to 84 mm, more than measuring error.'],
  backtest: { made: 30, held: 28 },
}

const summary = summaryOf()
const pages = presentFront(practice, [summary, calm], [{ id: 'spoilt', problems: 2 }], asOf)
const front = modelAt<FrontPage>(pages, 'index.html')

describe('what the front page keeps of a horse', () => {
  it('says a stop before all else', () => {
    expect(summary.state).toBe('Stop: ask a vet before any more work on the right fore.')
  })

  it('counts verdicts where nothing stops the work', () => {
    const before = summaryOf(undefined, '2026-02-20')
    expect(before.state).toMatch(/^\d+ \S.*\.$/)
    expect(before.state).toContain('too early to tell')
  })

  it('tells what the last visit changed', () => {
    expect(summary.changes).toContain('Left fore flare, medial quarter: moderate to mild.')
    expect(summary.changes).toContain('Left fore thrush, central sulcus: resolved.')
  })

  it('tags what the list is filtered by', () => {
    expect(summary.tags).toEqual(['caution', 'improving', 'finding', 'flare'])
  })
})

describe('the front page', () => {
  it('puts cautions in force first, stop as a block of its own', () => {
    expect(front.urgent[0]).toMatchObject({
      level: 'stop',
      word: 'Stop: ask a vet first',
      horse: { text: 'Mallow', href: 'mallow/index.html' },
    })
    expect(front.urgent[0]?.items[0]).toEqual({
      text: 'Right fore: Lameness 4 of 5. Do not trim and do not make the horse walk.',
      date: '23 March 2026',
    })
    // Two lines a horse; what it should take care of stands on its own page.
    expect(front.urgent[0]?.more).toBe('2 more on its page.')
    expect(front.mind).toEqual([])
  })

  it('names overdue visits', () => {
    expect(front.overdue).toEqual([
      { horse: { text: 'Alder', href: 'alder/index.html' }, text: 'was due 8 March 2026, 2 weeks ago' },
    ])
    expect(front.soon).toEqual([])
  })

  it('names visits that are due soon', () => {
    const soon = presentFront(practice, [{ ...calm, due: '2026-03-30', overdueDays: -5 }], [], asOf)
    expect(modelAt<FrontPage>(soon, 'index.html').soon[0]?.text).toBe('due 30 March 2026, in 5 days')
  })

  it('counts how past forecasts held over all horses', () => {
    const others = presentFront(
      practice,
      [calm, { ...calm, id: 'b', backtest: { made: 8, held: 6 } }],
      [],
      asOf,
    )
    expect(modelAt<FrontPage>(others, 'index.html').forecasts.text).toBe(
      '34 of 38 past forecasts fell within their range.',
    )
    const none = presentFront(practice, [{ ...calm, backtest: { made: 0, held: 0 } }], [], asOf)
    expect(modelAt<FrontPage>(none, 'index.html').forecasts.text).toBe('No past forecast can be judged yet.')
  })

  it('lists every horse by name with state, owner and what the search looks in', () => {
    expect(front.horses.map(({ horse }) => horse.text)).toEqual(['Alder', 'Mallow'])
    expect(front.horses[0]).toMatchObject({
      owner: 'Pim Aldous',
      last: 'last seen 1 February 2026',
      flag: null,
    })
    expect(front.horses[0]?.find).toContain('thrush')
    expect(front.horses[0]?.tags).toBe('overdue improving')
    expect(front.horses[1]?.flag).toEqual({ level: 'stop', text: 'Stop: ask a vet first' })
  })

  it('names horses that could not be read', () => {
    expect(front.broken).toEqual([{ id: 'spoilt', text: '2 problems' }])
  })
})

describe('the reference page', () => {
  const reference = modelAt<ReferencePage>(pages, 'reference.html')

  it('has an entry and a drawing for every measure', () => {
    expect(reference.measures.map(({ id }) => id)).toEqual([...measureIds])
    expect(reference.derived.map(({ id }) => id)).toEqual([...derivedIds])
    for (const entry of [...reference.measures, ...reference.derived]) {
      expect(entry.drawing.measure).toBe(entry.id)
      expect(entry.founded.length).toBeGreaterThan(0)
    }
  })

  it('says how well each figure is founded', () => {
    expect(reference.measures.find(({ id }) => id === 'toe-length')?.founded).toEqual([
      'Common practice, no source',
    ])
    expect(reference.derived.find(({ id }) => id === 'pair-mismatch')?.founded[0]).toContain('from memory')
    expect(reference.growthTable.rows[0]?.[3]).toContain('Lungwitz')
  })

  it('explains the practice’s own words, and what no page does', () => {
    expect(reference.terms).toEqual([{ name: 'Chalk toe', text: 'crumbling horn at the toe' }])
    expect(reference.w.reference.neverList[0]).toContain('No page makes a diagnosis')
  })

  it('shows the spread of advice on toe angle', () => {
    expect(reference.toeAngle.join(' ')).toContain('Ovnicek 53-60')
    expect(reference.toeAngle.join(' ')).toContain('Fleming 1869')
  })
})
