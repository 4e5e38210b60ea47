/** A case part by part, and what it tells of the problems that were written. */
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { outcomeOf } from '../../src/pages/portfolio/follow-up.ts'
import type { Problem } from '../../src/trend/assessment.ts'
import { zoe } from '../owner/zoe.ts'
import { assessment, input, type TrendGiven, trend } from '../owner/zoe-assessed.ts'
import { inDays, made, own } from './made.ts'

describe('a case', () => {
  it('stands by its alias and tells what, how long and how it went', () => {
    const { page, summary } = made()
    expect(summary).toMatchObject({
      slug: 'bramble',
      alias: 'Bramble',
      visits: 4,
      span: '15 weeks',
      length: 'half',
      outcome: 'mixed',
    })
    expect(summary.findings).toEqual(['chip', 'crack', 'flare', 'moon ring', 'thrush'])
    // The gravest findings of the first visit that have a name known to all, then what lay furthest outside its band.
    expect(page.title).toBe('Thrush, flare, crack, toe length, heel balance')
    expect(page.problems).toBe(
      'Thrush (left fore), flare (left fore), crack (right fore), toe length (left fore), heel balance (left fore).',
    )
    // A reader decides first: how it went stands behind the fold alone.
    expect(JSON.stringify({ ...page, outcome: null })).not.toContain('some better, some worse')
  })

  it('counts its visits in weeks', () => {
    const { timeline, keyFacts, csvNote } = made().page
    expect(timeline.text).toBe('4 visits, each 5 weeks after the one before.')
    expect(timeline.visits.head).toEqual(['Visit', 'Week', 'Weeks since the visit before'])
    expect(timeline.visits.rows).toEqual([
      ['1', '0', '–'],
      ['2', '5', '5'],
      ['3', '10', '5'],
      ['4', '15', '5'],
    ])
    expect(keyFacts).toBe('4 visits over 15 weeks.')
    expect(csvNote).toBe('Weeks from the first visit; lengths in millimetres, angles in degrees.')
  })

  it('counts its visits in days where the practice asks for them', () => {
    const { timeline, keyFacts } = made(zoe, inDays).page
    expect(keyFacts).toBe('4 visits over 105 days.')
    expect(timeline.visits.rows).toEqual([
      ['1', '0', '–'],
      ['2', '35', '35'],
      ['3', '70', '35'],
      ['4', '105', '35'],
    ])
  })

  it('judges the first visit against its bands', () => {
    expect(made().page.assessment.bands?.rows).toEqual([
      ['Left fore, toe length', '98 mm, 14 mm above', 'at most 84 mm'],
      ['Left fore, heel balance', '6 mm, 4 mm above', '−2 mm to 2 mm'],
    ])
    expect(made().page.assessment.cautions).toEqual([
      { level: 'vet', word: 'Tell the vet', text: 'left fore: severe thrush (frog): tell the vet' },
    ])
  })

  it('shows what each trim took, and holds back amounts that a caution held back', () => {
    const { page } = made()
    expect(page.done.taken?.rows).toEqual([['toe length, mm', '6.5 (5\u20138)', '–', '–', '–']])
    expect(page.done.each[0]?.rows[0]).toEqual(['0', '8 mm', '–', '–', '–'])
    expect(page.done.plans).toEqual([
      'Right hind: no amounts, because a caution asked for a vet first.',
      'Left fore: heels 6 mm apart, to be brought within 2 mm; it kept to the plan.',
    ])
  })

  it('draws charts by week, its fitted line with no day in it', () => {
    const { chart } = made().page.outcome
    expect(chart?.id).toBe('chart-toe-length')
    expect(chart?.timeTitle).toBe('weeks from the first visit')
    expect(chart?.panels[0]?.points[0]?.at).toEqual({ week: 0 })
    expect(chart?.panels[0]?.forecast?.at).toEqual({ week: 25 })
    expect(chart?.title).toBe('Toe length, visit by visit')
    const line = chart?.panels[0]?.line.map(({ at }) => ('week' in at ? at.week : Number.NaN)) ?? []
    expect(line.length).toBeGreaterThan(2)
    const step = ((line.at(-1) ?? 0) - (line[0] ?? 0)) / (line.length - 1)
    for (const [i, week] of line.entries()) expect(week).toBeCloseTo((line[0] ?? 0) + i * step, 9)
    expect([line[0], line.at(-1)].every(Number.isInteger)).toBe(true)
  })

  it('draws charts by day where the practice asks for them', () => {
    const { chart } = made(zoe, inDays).page.outcome
    expect(chart?.timeTitle).toBe('days from the first visit')
    expect(chart?.panels[0]?.forecast?.at).toEqual({ day: 179 })
  })

  it('gives its readings as a table that a program reads', () => {
    const rows = parse(made().csv, { columns: true }) as Record<string, string>[]
    expect(rows.length).toBe(assessment.readings.length)
    expect(rows[0]).toEqual({
      case: 'Bramble',
      week: '0',
      stage: 'before',
      foot: 'LF',
      measure: 'toe-length',
      value: '98',
      unit: 'mm',
      source: 'entered',
    })
    expect(new Set(rows.map(({ week }) => week))).toEqual(new Set(['0', '5', '10', '15']))
    const inDay = parse(made(zoe, inDays).csv, { columns: true }) as Record<string, string>[]
    expect(new Set(inDay.map(({ day }) => day))).toEqual(new Set(['0', '35', '70', '105']))
  })

  it('draws a forecast no further than six months past the last reading, and none that is due', () => {
    const drawn = (date: string, latest: string | null, isDue = false) => {
      const forecast = { kind: 'date', edge: 84, date, earliest: date, latest, isDue } as const
      const trends = [trend({ more: { forecast, target: { low: null, high: 84 } } })]
      const page = presentPortfolioCase({ ...input, assessment: { ...assessment, trends } }, own)?.page
      const shown = page?.outcome.chart?.panels[0]?.forecast
      return shown && [shown.at, shown.latest]
    }
    expect(drawn('2026-10-20', '2026-10-25')).toEqual([{ week: 40 }, { week: 40 }])
    expect(drawn('2026-10-20', '2027-04-01')).toEqual([{ week: 40 }, null])
    expect(drawn('2026-11-20', '2027-04-01')).toBeNull()
    expect(drawn('2026-05-01', '2026-07-01', true)).toBeNull()
  })

  it('has no chart of a measure that neither moves nor lies outside its band', () => {
    const trends = [trend({ isClear: false, verdict: 'steady', position: 'on target' })]
    const page = presentPortfolioCase({ ...input, assessment: { ...assessment, trends } }, own)?.page
    expect([page?.outcome.chart, page?.outcome.all.charts, page?.outcome.side]).toEqual([null, [], null])
  })

  type Way = Pick<TrendGiven, 'verdict' | 'position' | 'isClear'>
  const [onTarget, improving, worsening, steady]: readonly Way[] = [
    { verdict: 'steady', position: 'on target', isClear: false },
    { verdict: 'improving' },
    { verdict: 'worsening' },
    { verdict: 'steady', isClear: false },
  ]
  it.each<[readonly (Way | undefined)[], string]>([
    [[onTarget, onTarget], 'on target'],
    [[onTarget, { verdict: 'falling', position: 'on target' }], 'on target'],
    [[steady, { verdict: 'falling', position: 'on target' }], 'improving'],
    // What lay in its band from the first is no merit.
    [[onTarget, worsening], 'worsening'],
    [[onTarget, steady], 'unsettled'],
    [[onTarget, improving, steady], 'improving'],
    [[improving, worsening], 'mixed'],
    [[worsening, steady], 'worsening'],
    [[steady, { verdict: 'too early to tell', isClear: false }], 'unsettled'],
    // What may have moved by chance is no outcome.
    [
      [
        { verdict: 'improving', isClear: false },
        { verdict: 'worsening', isClear: false },
      ],
      'unsettled',
    ],
    [[], 'unsettled'],
  ])('of verdicts %j comes out as %s', (ways, outcome) => {
    const trends = ways.map((way) => trend({ ...way, more: { target: { low: null, high: 84 } } }))
    expect(outcomeOf({ ...assessment, trends })).toBe(outcome)
  })

  it('concludes from what clearly moved, what got worse first', () => {
    expect(made().page.outcome.conclusion).toEqual([
      'Clearly away from the target: toe length (right hind).',
      'Graver than at first, or new since: crack (right fore) and chip (right hind).',
      'Clearly toward the target: toe length (left fore).',
      'Clearly moved and on target: heel balance (left fore).',
      'Gone: thrush (left fore).',
      'Less grave than at first: flare (left fore).',
      'Of 6 courses of a measure at a foot 4 clearly moved.',
    ])
  })

  it('tells a change along the line, never first against last', () => {
    const bent = trend({ values: [98, 94, 92, 89], more: { fit: trend({ values: [96, 95, 94, 93] }).fit } })
    const found = presentPortfolioCase({ ...input, assessment: { ...assessment, trends: [bent] } }, own)
    expect(found?.page.outcome.problems?.rows).toEqual([
      ['Left fore, toe length', '96 mm to 93 mm', 'improving, clearly moved'],
    ])
    expect(found?.summary.changes).toEqual([
      { measure: 'toe-length', mean: expect.closeTo(-3, 6), feet: 1, up: 0, down: 1, within: 0 },
    ])
  })

  it('tells what grows down as to come only where it is', () => {
    const lines = (more: Partial<(typeof assessment.growOut)[number]>, asOf = assessment.asOf) => {
      const growOut = assessment.growOut.map((one) => ({ ...one, ...more }))
      return presentPortfolioCase({ ...input, assessment: { ...assessment, growOut, asOf } }, own)?.page
        .outcome.all.growOut
    }
    expect(lines({})).toEqual([
      'Left fore, nail holes, toe: at the ground about week 40, week 35 at the earliest, week 51 at the latest.',
    ])
    expect(lines({}, '2026-10-01')).toEqual([
      'Left fore, nail holes, toe: at the ground about week 40, week 51 at the latest.',
    ])
    expect(lines({ state: 'due' }, '2026-11-01')).toEqual([
      'Left fore, nail holes, toe: was expected at the ground by week 40; not looked at since.',
    ])
  })
})

describe('problems as the practitioner wrote them', () => {
  const problem = (about: Problem['about'], foot: Problem['foot'] = 'LF'): Problem => ({
    foot,
    text: 'PRIVATE-PROBLEM of Thistledown',
    from: 'written',
    about,
    closedOn: null,
  })
  const withProblems = (...problems: readonly Problem[]) =>
    presentPortfolioCase({ ...input, assessment: { ...assessment, problems } }, own)

  it('are told as measures and findings of the vocabulary, never as written', () => {
    const found = withProblems(
      problem({ kind: 'measure', measure: 'toe-angle', trend: null }),
      problem({ kind: 'finding', what: 'thrush', place: null, course: [] }, 'RF'),
      problem({ kind: 'finding', what: 'thrush', place: null, course: [] }),
      problem({ kind: 'finding', what: 'moon ring', place: null, course: [] }),
      problem({ kind: 'grow-out', what: 'Quillon stripe', place: null, growOut: [] }),
      problem({ kind: 'words' }, null),
    )
    expect(found?.page.problems).toBe('Toe angle (left fore), thrush (left fore and right fore).')
    expect(found?.summary.kinds).toEqual(['toe angle', 'thrush'])
    expect(JSON.stringify(found)).not.toMatch(/PRIVATE|Quillon/)
  })

  it('are those of the first visit where none is written: what the engine chooses tells how it went', () => {
    const chosen = {
      ...problem({ kind: 'measure', measure: 'width', trend: null }),
      from: 'chosen',
      text: null,
    } as const
    expect(withProblems(chosen)?.summary.kinds).not.toContain('width')
  })
})
