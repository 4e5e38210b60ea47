import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import type { Horse, Practice } from '../../src/casebook/model.ts'
import { identifiersOf, identityOf } from '../../src/identity/identifiers.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { leakSearch } from '../../src/leaks/search.ts'
import { findingsTable, solesAtFirst, timelineOf } from '../../src/pages/portfolio/baseline.ts'
import { type MadeCase, presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { foundTable } from '../../src/pages/portfolio/conclusion.ts'
import { type CaseContext, caseContext } from '../../src/pages/portfolio/context.ts'
import { readingsCsv } from '../../src/pages/portfolio/csv.ts'
import { discussionOf } from '../../src/pages/portfolio/discussion.ts'
import { chartsOf, gridOf, growOutLines, outcomeOf, trimsDone } from '../../src/pages/portfolio/follow-up.ts'
import type { Problem } from '../../src/trend/assessment.ts'
import { english } from '../english.ts'
import { assessment, input, practice, type TrendGiven, trend, visit, zoe } from '../owner/fixture.ts'

const { portfolio } = english

const own = ownWords([], [portfolio])

const inDays: Practice = { ...practice, portfolio: { ...practice.portfolio, time: 'days' } }

function made(horse: Horse = zoe, of: Practice = practice): MadeCase {
  const found = presentPortfolioCase({ ...input, horse, practice: of }, own)
  if (found === null) throw new Error('the fixture has consent')
  return found
}

describe('an alias with signs that mean something elsewhere', () => {
  const context = (alias: string) => {
    const found = caseContext({ ...input, horse: { ...zoe, alias } }, own)
    if (found === null) throw new Error('the fixture has consent')
    return found
  }

  it('runs no formula in the table of readings', () => {
    const rows = parse(readingsCsv(context('=1+1'))) as string[][]
    expect(rows.length).toBeGreaterThan(3)
    expect(new Set(rows.slice(1).map(([alias]) => alias))).toEqual(new Set(["'=1+1"]))
  })

  it.each([
    ['../../x', 'x'],
    ['a/b\\c', 'a-b-c'],
    ['a\u0000b\u001b[31m\r\nc', 'a-b-31-m-c'],
    ['\u202eonuJ\u202c', 'onuj'],
    ['C:con.txt', 'c-con-txt'],
    ['=1+1', '1-1'],
    ['.hidden', 'hidden'],
    ['Zoë & Ül', 'zoe-ul'],
    ['\u05d9\u05d5\u05e0\u05d5\u200f', '\u05d9\u05d5\u05e0\u05d5'],
  ])('%j gives a folder of letters, digits and hyphens: %j', (alias, slug) => {
    expect(context(alias).slug).toBe(slug)
  })

  it.each(['..', '/', '\u202e', '\u0000', '=+@'])('%j gives no folder, so no case', (alias) => {
    expect(caseContext({ ...input, horse: { ...zoe, alias } }, own)).toBeNull()
  })
})

describe('what passes to the portfolio', () => {
  it('is nothing without consent, without an alias, or without a visit', () => {
    const gone = (horse: Horse) => presentPortfolioCase({ ...input, horse }, own)
    expect(gone({ ...zoe, consent: { ...zoe.consent, portfolio: false } })).toBeNull()
    expect(gone({ ...zoe, alias: null })).toBeNull()
    expect(gone({ ...zoe, visits: [] })).toBeNull()
  })

  it('is no name, no note, no caption, no remark, no date', () => {
    const { page, summary, csv } = made()
    const text = JSON.stringify(page) + JSON.stringify(summary) + csv
    expect(text).not.toMatch(/PRIVATE|Zoë|zoe|Kestrel|Thistledown|\d{4}-\d\d-\d\d|January|April/)
    // Which picture is meant stays with the program: the page carries a name of its own for it.
    expect(page.findings.shots.few.map(({ picture }) => picture)).toEqual(['photos/IMG_4711.jpg'])
  })

  it('is pictures with consent only', () => {
    const { page } = made({ ...zoe, consent: { ...zoe.consent, photos: false } })
    const { few, more } = page.findings.shots
    expect([...few, ...more, ...page.outcome.shots.few, ...page.outcome.shots.more]).toEqual([])
    expect(page.consent).toBe(
      'The owner agreed to this case being shown for teaching, without names and without pictures.',
    )
  })

  it('is text for teaching with the alias, and weeks for dates', () => {
    const { page } = made()
    // The last of the visits stands open where nothing is told of the whole case.
    expect([...page.discussionVisits, ...page.discussion]).toEqual([
      { head: 'Week 0', text: 'Bramble came to (left out) in week 0. Long toes.' },
      { head: 'Week 15', text: "J. was wrong. Bramble's flare went first; the owner soaked the frog." },
    ])
    const whole = made({ ...zoe, body: { ...zoe.body, forTeaching: 'Zoë taught me.' } }).page
    expect(whole.discussion).toEqual([{ head: 'On the whole case', text: 'Bramble taught me.' }])
    expect(whole.discussionVisits.map(({ head }) => head)).toEqual(['Week 0', 'Week 15'])
    expect(page.ownerView).toBe('The owner saw a willing mare by week 15.')
  })

  it('is days for dates where the practice asks for them', () => {
    const { page } = made(zoe, inDays)
    expect([...page.discussionVisits, ...page.discussion].map(({ head }) => head)).toEqual([
      'Day 0',
      'Day 105',
    ])
    expect(page.discussionVisits[0]?.text).toBe('Bramble came to (left out) on day 0. Long toes.')
    expect(page.ownerView).toBe('The owner saw a willing mare by day 105.')
  })
})

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

describe('names planted in every field', () => {
  const secrets = ['Quillon', 'Marrowby', 'Hestercombe', 'quillon-7', 'IMG_9031.jpg', '2026-01-12']
  const planted = (text: string) =>
    `${text} Quillon's 2026-01-12 at Hestercombe, said Marrowby (IMG_9031.jpg), quillon-7`
  const bare = visit(0)
  const horse: Horse = {
    ...zoe,
    id: 'quillon-7',
    name: 'Quillon',
    owner: 'marrow',
    kind: planted('cob'),
    sex: planted('mare'),
    alias: 'Bramble',
    privateWords: ['Hestercombe'],
    history: [planted('')],
    tetanus: null,
    vet: { involved: true, diagnosis: planted(''), name: null, phone: null, date: null, feet: [] },
    body: { own: planted(''), forOwner: planted(''), forTeaching: planted('') },
    file: 'quillon-7/horse.md',
    visits: [
      {
        ...bare,
        file: 'quillon-7/2026-01-12.md',
        footing: planted(''),
        findings: [
          { foot: 'LF', what: planted('thrush'), place: planted('toe'), grade: 2, words: planted('') },
        ],
        growOut: [{ foot: 'LF', what: planted('hole'), place: planted('toe'), distance: 4 }],
        comfort: { ...bare.comfort, lamenessBy: planted(''), surfaces: { [planted('sand')]: 'easy' } },
        stance: { LF: { position: 'other', words: planted('') } },
        photos: [
          {
            file: 'photos/IMG_9031.jpg',
            foot: 'LF',
            view: 'solar',
            stage: 'before',
            caption: planted(''),
            landmarks: null,
          },
        ],
        care: [planted('')],
        body: { own: planted(''), forOwner: planted(''), forTeaching: planted('### Marrowby\n') },
      },
      { ...visit(3), file: 'quillon-7/2026-04-27.md' },
    ],
  }
  const owners = [{ id: 'marrow', name: 'Tilda Marrowby', language: null }]
  const house = { ...practice, owners }
  const grown = assessment.growOut.map((one) => ({ ...one, feature: planted('hole'), place: planted('toe') }))
  const findings = presentPortfolioCase(
    { ...input, horse, practice: house, assessment: { ...assessment, growOut: grown } },
    own,
  )
  const search = leakSearch({
    list: identifiersOf([identityOf(horse)], { owners, people: [], contacts: practice.contacts }, own),
    horses: [identityOf(horse)],
    own,
    ownTexts: [],
  })
  const scan = (text: string) =>
    search.scan({
      path: 'portfolio/bramble/index.html',
      bytes: Buffer.from(text),
      reader: { kind: 'everyone' },
    })

  it('come out nowhere in the page, its summary or its table', () => {
    const { page, ...rest } = findings ?? made()
    // The program's own pointer to a picture is put in place of by the page maker.
    const withoutPointers = JSON.stringify({ ...rest, page }, (key, value) =>
      key === 'picture' ? '' : value,
    )
    for (const secret of secrets) expect(withoutPointers).not.toContain(secret)
    expect(scan(withoutPointers)).toEqual([])
  })

  it('are caught by the search in every part of the page whose rewriting is left out', () => {
    const context = caseContext(
      { ...input, horse, practice: house, assessment: { ...assessment, growOut: grown } },
      own,
    )
    if (context === null) throw new Error('the horse has consent')
    const parts: Readonly<Record<string, (of: CaseContext) => unknown>> = {
      findings: findingsTable,
      soles: solesAtFirst,
      grid: gridOf,
      found: foundTable,
      'grow-out': growOutLines,
      discussion: discussionOf,
    }
    for (const [name, part] of Object.entries(parts)) {
      expect(scan(JSON.stringify(part(context))), name).toEqual([])
      const leaking = scan(JSON.stringify(part({ ...context, anonymous: (text) => text })))
      const kinds = new Set(leaking.map(({ kind }) => kind))
      for (const kind of [
        'name of a horse',
        'private word',
        'name of an owner',
        'name of a picture',
        'folder of a horse',
        'date',
      ]) {
        expect(kinds, name).toContain(kind)
      }
    }
  })

  it('are caught where a day is told by its date', () => {
    const context = caseContext(
      { ...input, horse: { ...zoe, visits: horse.visits }, practice: house, assessment },
      own,
    )
    if (context === null) throw new Error('the horse has consent')
    const dated = { ...context, timeOf: (date: string) => date as unknown as number }
    for (const part of [timelineOf, trimsDone, chartsOf, growOutLines, readingsCsv]) {
      expect(scan(JSON.stringify(part(context)))).toEqual([])
      expect(scan(JSON.stringify(part(dated))).map(({ kind }) => kind)).toContain('date')
    }
  })
})
