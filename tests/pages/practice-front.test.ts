import { describe, expect, it } from 'vitest'
import { presentFront } from '../../src/pages/practice/index.ts'
import type { FrontPage } from '../../src/pages/practice/over-all/front-page.ts'
import type { OfficePage } from '../../src/pages/practice/over-all/office-page.ts'
import type { HorseSummary } from '../../src/pages/shared/summary.ts'
import { untaughtPractice } from '../../src/trend/model/practice.ts'
import { formatIn } from '../english.ts'
import { buildHorse, courseOf } from '../trend/build-horse.ts'
import { asOf, mallow, modelAt, practice, summaryOf } from './practice-kit.ts'

const alder: HorseSummary = {
  id: 'alder',
  name: 'Alder',
  owner: 'Pim Aldous',
  ownerId: 'pim',
  lastVisit: '2026-02-01',
  due: '2026-03-08',
  overdueDays: 17,
  worst: null,
  problems: 'Left fore toe angle improving.',
  find: ['thrush'],
  cautions: [],
  news: { findings: [], moves: ['Improving: toe angle (left fore).'], moving: 1 },
  backtest: { made: 30, held: 28, open: 3 },
}

const format = formatIn(practice.units)
const summary = summaryOf()

const pagesOf = (summaries: readonly HorseSummary[], day = asOf, tokens = {}) =>
  presentFront(
    {
      practice,
      summaries,
      broken: [{ id: 'spoilt', problems: 2 }],
      asOf: day,
      tokens,
      lessons: untaughtPractice,
    },
    format,
  )
const frontOf = (summaries: readonly HorseSummary[], day = asOf) =>
  modelAt<FrontPage>(pagesOf(summaries, day), 'index.html')
const officeOf = (summaries: readonly HorseSummary[], tokens = {}) =>
  modelAt<OfficePage>(pagesOf(summaries, asOf, tokens), 'office.html')
const front = frontOf([summary, alder])

describe('what is kept of a horse', () => {
  it('names the worst caution with its foot', () => {
    expect(summary.worst).toEqual({ level: 'stop', feet: 'right fore' })
    expect(summaryOf(undefined, '2026-02-20').worst).toEqual({ level: 'mind', feet: '' })
  })

  it('has every stop and vet caution, and no other', () => {
    expect(summary.cautions.map(({ level }) => level)).not.toContain('mind')
    expect(summary.cautions[0]).toMatchObject({
      text: 'Right fore: Lameness 4 of 5. Do not trim and do not make the horse walk.',
      date: '2026-03-23',
    })
  })

  it('tells of findings that came, went or changed at the last visit', () => {
    expect(summary.news.findings).toEqual([
      'Left fore flare, medial quarter: moderate to mild.',
      'Left fore thrush, central sulcus: gone.',
    ])
  })
})

describe('the line about the problems', () => {
  /** Problems as `foot kind name`, apart by semicolons; underscores are spaces. */
  const lineOf = (problems: string, day = asOf) =>
    summaryOf({ ...mallow, problems: problems.split(';').map(problemOf) }, day).problems
  const problemOf = (text: string) => {
    const [foot, kind, what = ''] = text.split(' ')
    const feet = foot === '-' ? [] : ([foot] as never)
    const subject =
      kind === 'measure'
        ? { kind, measure: what }
        : kind === 'words'
          ? { kind }
          : { kind, what: what.replaceAll('_', ' '), place: null }
    return { feet, text: what.replaceAll('_', ' '), about: subject } as never
  }

  it('says how each is, and what is gone', () => {
    expect(lineOf('LF finding flare;LF finding thrush')).toBe(
      'Left fore flare mild (was moderate); left fore thrush gone.',
    )
  })

  it('says a subject once, with the feet that are alike together', () => {
    const line = lineOf('LF measure heel-balance;RF measure heel-balance;LF measure width')
    expect(line.match(/heel balance/g)).toHaveLength(1)
    expect(line).toMatch(/^Left fore heel balance .+, right fore waits for the vet; left fore width .+\.$/)
  })

  it('says of what grows down when it is out, and nothing that is past as ahead', () => {
    expect(lineOf('LF grow-out nail_holes')).toMatch(/^Left fore nail holes out about [A-Z][a-z]+( 2026)?\.$/)
    expect(lineOf('LF grow-out nail_holes', '2026-10-15')).toBe(
      'Left fore nail holes due to be grown out: look.',
    )
    expect(lineOf('LF grow-out nail_holes', '2026-12-15')).toBe('Left fore nail holes grown out: look.')
  })

  it('has free words as they are, cut where they are long, and no more than four subjects', () => {
    expect(lineOf('- words Hates_the_rasp')).toBe('Hates the rasp.')
    expect(lineOf(`- words ${'x'.repeat(200)}`)).toHaveLength(81)
    expect(lineOf('LF finding a;LF finding b;LF finding c;LF finding d;LF finding e;LF finding f')).toMatch(
      /; 2 more\.$/,
    )
  })

  it('leaves out what ended long ago', () => {
    expect(lineOf('LF finding thrush', '2027-03-25')).toBe('No open problem besides what the vet is asked.')
  })

  it('never says that nothing is wrong beside a caution', () => {
    const horse = buildHorse({ visits: [{ date: '2026-03-20', findings: ['LF abscess, toe, 2'] }] })
    expect(summaryOf(horse).problems).toBe('No open problem besides what the vet is asked.')
    const calm = buildHorse({ visits: [{ date: '2026-03-20', findings: [] }] })
    expect(summaryOf(calm).problems).toBe('No open problem.')
    expect(summaryOf(buildHorse({ visits: [] })).problems).toBe('Not seen yet.')
  })
})

describe('the list by day', () => {
  // A Wednesday.
  const due = (id: string, days: number, more: Partial<HorseSummary> = {}): HorseSummary => {
    const date = new Date(Date.parse('2026-03-25') + days * 86_400_000).toISOString().slice(0, 10)
    return { ...alder, id, name: id, due: date, overdueDays: days === 0 ? 0 : -days, ...more }
  }
  const groups = ({ days, folded }: FrontPage) =>
    [...days, ...folded].map(({ id, rows }) => [id, rows.map(({ horse }) => horse.text)])

  it('has each horse once, weeks from Monday', () => {
    const all = [3, 1, -17, 12, 4, 11, 0, 40, 5, -200].map((days) => due(`in ${days}`, days))
    expect(groups(frontOf([...all, due('never', 0, { due: null, overdueDays: null })]))).toEqual([
      ['overdue', ['in -17']],
      ['today', ['in 0']],
      ['tomorrow', ['in 1']],
      ['thisWeek', ['in 3', 'in 4']],
      ['nextWeek', ['in 5', 'in 11']],
      ['later', ['in 12', 'in 40']],
      ['long', ['in -200']],
      ['none', ['never']],
    ])
  })

  it('on a Sunday has tomorrow and next week, and no week between', () => {
    const sunday = '2026-03-29'
    const on = (id: string, date: string, overdueDays: number) => ({
      ...alder,
      id,
      name: id,
      due: date,
      overdueDays,
    })
    const all = [on('a', '2026-03-30', -1), on('b', '2026-03-31', -2), on('c', '2026-04-06', -8)]
    expect(groups(frontOf(all, sunday))).toEqual([
      ['tomorrow', ['a']],
      ['nextWeek', ['b']],
      ['later', ['c']],
    ])
  })

  it('says in the row who, how late and what stops the work, and leads to the field sheet', () => {
    expect(front.heading).toBe('Wed 25 March 2026')
    expect(front.days[0]).toEqual({
      id: 'overdue',
      head: 'Overdue',
      rows: [
        {
          horse: { text: 'Alder', href: 'alder/index.html' },
          owner: 'Pim Aldous',
          when: '2 weeks',
          flag: null,
          sheet: { href: 'alder/field-sheet.html', text: 'Sheet', label: 'Field sheet of Alder' },
        },
      ],
    })
    const later = front.folded.find(({ id }) => id === 'later')
    expect(later?.head).toBe('Later: 1')
    expect(later?.rows[0]).toMatchObject({
      when: 'Mon 27 Apr 26',
      flag: { level: 'stop', text: 'Stop: right fore' },
    })
  })
})

describe('the front page', () => {
  it('says every caution once, the gravest first, with horse and date', () => {
    const [stop, ...others] = front.cautions
    expect(stop).toMatchObject({ level: 'stop', word: 'Stop: ask a vet first', date: '23 March 2026' })
    expect(stop?.horse).toEqual({ text: 'Mallow', href: 'mallow/index.html' })
    expect(others.every(({ level }) => level === 'vet')).toBe(true)
    const said = front.cautions.flatMap(({ items }) => items.map(({ text }) => text))
    expect(said).toHaveLength(summary.cautions.length)
    expect(new Set(said).size).toBe(said.length)
  })

  it('gives each line its date where they differ', () => {
    const line = { level: 'vet', text: 'A', date: '2026-03-01', folded: 0 } as const
    const mixed = {
      ...alder,
      cautions: [line, { ...line, text: 'B', date: '2026-02-01' }, { ...line, text: 'C', folded: 2 }],
    }
    const [first] = frontOf([mixed]).cautions
    expect(first?.date).toBeNull()
    expect(first?.items.map(({ date }) => date)).toEqual(['1 March 2026', '1 February 2026', null])
  })

  it('lists every horse by name with its problems, its stop, and what the search looks in', () => {
    expect(front.horses.map(({ horse }) => horse.text)).toEqual(['Alder', 'Mallow'])
    expect(front.horses[0]).toMatchObject({ owner: 'Pim Aldous', flag: null, problems: alder.problems })
    expect(front.horses[0]?.find).toBe('alder pim aldous thrush')
    expect(front.horses[1]?.flag).toEqual({ level: 'stop', text: 'Stop: right fore' })
  })

  it('names horses that could not be read', () => {
    expect(front.broken).toEqual(['spoilt: 2 problems'])
  })
})

describe('the office page', () => {
  it('has the news of the last visits, latest first, and how much of it is expected to be chance', () => {
    const office = officeOf([alder, summary])
    expect(office.news.map(({ horse, date }) => [horse.text, date])).toEqual([
      ['Mallow', 'visit of 23 March 2026'],
      ['Alder', 'visit of 1 February 2026'],
    ])
    expect(office.byChance).toBe('Of the 1 movement in this list, at most one is expected to be chance.')
    const many = { ...alder, news: { ...alder.news, moving: 34 } }
    expect(officeOf([many]).byChance).toBe(
      'Of the 34 movements in this list, about 3 are expected to be chance.',
    )
    const none = { ...alder, news: { findings: [], moves: [], moving: 0 } }
    expect(officeOf([none])).toMatchObject({ news: [], byChance: null })
  })

  it('folds all but the newest', () => {
    const many = Array.from({ length: 11 }, (_, i) => ({ ...alder, id: `h${i}`, name: `H${i}` }))
    const office = officeOf(many)
    expect([office.news.length, office.older.length, office.olderHead]).toEqual([
      8,
      3,
      '3 horses more, seen earlier',
    ])
  })

  it('tells of what clearly moves, worse first, and of nothing that only seems to', () => {
    const rising = buildHorse({
      visits: courseOf('toe-angle', [40, 43, 46, 49, 52, 55]),
      targets: { 'toe-angle': { LF: { low: 60, high: 64 } } },
    })
    const { news } = summaryOf(rising, '2026-09-01')
    expect(news.moves).toEqual(['Improving: toe angle (left fore).'])
    expect(news.moving).toBe(1)
    const still = buildHorse({ visits: courseOf('toe-angle', [50, 51, 50, 51, 50, 51]) })
    expect(summaryOf(still, '2026-09-01').news.moves).toEqual([])
  })

  it('counts forecasts with a closed range, and those without an end apart', () => {
    expect(officeOf([alder, { ...alder, id: 'b', backtest: { made: 8, held: 6, open: 0 } }]).record).toEqual({
      text: '34 of 38 forecasts with a closed range held.',
      open: '3 more had no last day. They are not counted, since they could hardly fail.',
    })
    expect(officeOf([{ ...alder, backtest: { made: 0, held: 0, open: 0 } }]).record).toEqual({
      text: 'No forecast with a closed range has come due yet.',
      open: null,
    })
  })

  it('names the owners’ addresses with their horses', () => {
    const [owner] = practice.owners
    const office = officeOf([{ ...alder, ownerId: owner?.id ?? null }], { [owner?.id ?? '']: 'token' })
    expect(office.addresses).toEqual([{ name: 'Orla Fenn', horses: 'Alder', path: 'owners/token/' }])
    expect(office.about).toBe('We work slowly.')
  })
})
