import { describe, expect, it } from 'vitest'
import type { HorsePage } from '../../src/pages/practice/horse/horse-page.ts'
import { buildHorse } from '../trend/build-horse.ts'
import { asOf, mallow, modelAt, pagesOf, practice, uneven } from './practice-kit.ts'

const pageOf = (horse = mallow, day = asOf) =>
  modelAt<HorsePage>(pagesOf(horse, day, practice), `${horse.id}/index.html`)
const page = pageOf()

/** Ten visits of a toe angle that rises by half a degree each, and a heel that is levelled. */
const steady = buildHorse({
  id: 'steady',
  targets: { 'toe-angle': { LF: { low: 54, high: 58 } } },
  problems: [
    { feet: ['LF'], text: 'LF toe angle', about: { kind: 'measure', measure: 'toe-angle' } },
    { feet: ['LF'], text: 'LF thrush', about: { kind: 'finding', what: 'thrush', place: null } },
    { feet: ['RF'], text: 'RF nail holes', about: { kind: 'grow-out', what: 'nail holes', place: null } },
    { feet: ['RF'], text: 'RF hates the stand', about: { kind: 'words' } },
  ],
  visits: Array.from({ length: 10 }, (_, i) => ({
    date: `2025-${String(i + 1).padStart(2, '0')}-10`,
    before: { 'toe-length': { LF: 98 } },
    after: {
      'toe-angle': { LF: 47 + i / 2, RF: 50 },
      'toe-length': { LF: 88, RF: 88 },
      width: { LF: 110 + i },
    },
    findings: [`LF thrush, central sulcus, ${i < 5 ? 2 : 0}`],
    growOut: [`RF nail holes, toe, ${12 + i * 8}`],
  })),
})
const working = pageOf(steady, '2025-10-12')

describe('the first screen of a horse’s page', () => {
  it('says who the horse is, when it was seen, when it is due', () => {
    expect(page.identity).toBe('Cob, mare, 12 years old · Orla Fenn')
    expect(page.seen).toBe('Last seen 23 March 2026, visit 3.')
    expect(page.due).toBe('Due on 27 April 2026.')
  })

  it('has what is needed at the horse to tap', () => {
    expect(page.bar.map(({ href }) => href)).toEqual([
      'field-sheet.html',
      'hand-over.html',
      '2026-03-23.html',
      'measures.html',
    ])
  })

  it('has one line of cautions a foot, worst first, and all of them in full', () => {
    expect(page.cautions.map(({ level, about, text }) => [level, about, text])).toEqual([
      ['stop', 'Right fore', 'Severe lameness, bounding pulse'],
      ['mind', 'The whole horse', 'Not spoken of since: earlier diagnosis (12 Jan 26)'],
      ['mind', 'Left fore', 'Sole flat'],
    ])
    expect(page.cautions[0]?.word).toBe('Stop: ask a vet first')
    const [stop] = page.cautionsInFull
    expect(stop?.items.map(({ text }) => text)).toContain(
      'Right fore: Lameness 4 of 5. Do not trim and do not make the horse walk.',
    )
    expect(stop?.items[0]?.visit).toEqual({ text: 'visit of 23 March 2026', href: '2026-03-23.html' })
  })

  it('says under a level of a line what stands lower there as well', () => {
    const both = pageOf({
      ...mallow,
      visits: mallow.visits.map((visit) => ({
        ...visit,
        comfort: { ...visit.comfort, lameness: { LF: 5 as const } },
      })),
    })
    expect(both.cautions[0]).toMatchObject({ level: 'stop', about: 'Left fore' })
    expect(both.cautions[0]?.text).toMatch(/^Severe lameness.*; also sole flat/)
  })

  it('shows the last note, or its beginning with the way to the whole', () => {
    const noted = (own: string) =>
      pageOf({
        ...mallow,
        visits: mallow.visits.map((visit) => ({ ...visit, body: { ...visit.body, own } })),
      }).today.note
    expect(page.today.note).toBeNull()
    expect(noted('Stood well.')).toEqual({
      text: 'Stood well.',
      visit: { text: 'Your note of 23 March 2026', href: '2026-03-23.html' },
    })
    const long = noted(`Stood well. ${'Rain again, and the gate banged. '.repeat(20)}`)
    expect(long?.text).toMatch(/^Stood well\. .*banged\.$/)
    expect(long?.text.length).toBeLessThanOrEqual(300)
    expect(long?.visit.text).toBe('The whole of your note of 23 March 2026')
  })

  it('says what a plan allows as the total off the wall and what it leaves, and of a held foot nothing', () => {
    expect(pageOf(uneven).today.allowed).toEqual([
      'Right fore: no plan and no amount while a caution waits for the vet. A visit that says it is gone, or cleared with the vet’s day, ends the wait.',
      'LF inner heel: at most 11.5 mm off, outer 10 mm as grown; leaves 4.5 mm between them. More than 6 mm: better in two trims.',
    ])
    expect(working.today.allowed).toEqual(['No staged plan is running.'])
  })

  it('says what should be where on the wall today, with the day unless the problem has it', () => {
    expect(page.today.wall).toEqual([
      'LF nail holes, toe: about 40.5 mm down of 88.5 mm; at the ground about 9 Sep 26.',
    ])
    expect(working.today.wall[0]).toMatch(/^RF nail holes, toe: about \d+(\.5)? mm down of 88 mm\.$/)
  })
})

describe('the problems', () => {
  it('stand with first value and now, trend, verdict, day and what is next', () => {
    const [angle] = working.problems.open
    expect(angle).toMatchObject({
      foot: 'LF',
      name: 'toe angle',
      href: 'measures.html#toe-angle',
      first: { text: '47', reading: 'LF toe-angle 2025-01-10 after gauge' },
      now: { text: '51.5°', reading: 'LF toe-angle 2025-10-10 after gauge' },
      standing: { text: 'improving', tone: 'good' },
      next: 'keep on',
    })
    // 2.5° short at half a degree a month.
    expect(angle?.told).toMatch(/^54° about \d+ (?:Feb|Mar) 26, latest \d+ Jan 27 · keep on$/)
    expect(angle?.spark?.band).toEqual({ low: 54, high: 58 })
    expect(angle?.spark?.points).toHaveLength(10)
    expect(angle?.spark?.description).toBe('Toe angle: 47° to 51.5° over 10 readings; target 54° to 58°')
  })

  it('fold to a line with the day once they are closed', () => {
    expect(working.problems.closed).toEqual(['LF thrush: closed 10 June 2025.'])
    expect(working.problems.open.map(({ name }) => name)).toEqual([
      'toe angle',
      'nail holes, toe',
      'hates the stand',
    ])
  })

  it('are told apart from those that were chosen', () => {
    expect(page.problems.note).toMatch(/^Chosen from the record, as none are written/)
    expect(working.problems.note).toBe('First value, of 10 January 2025 unless said, and now.')
  })

  it('wait for the vet where the foot does', () => {
    const lame = pageOf({
      ...steady,
      visits: steady.visits.map((visit) => ({
        ...visit,
        comfort: { ...visit.comfort, lameness: { LF: 5 as const } },
      })),
    })
    const held = lame.problems.open.find(({ name }) => name === 'toe angle')
    expect(held?.next).toBe('no work before the vet')
    expect(held?.expected).toBeNull()
  })

  it('say of a day that has come that it was expected', () => {
    const late = pageOf(steady, '2026-09-01').problems.open[0]
    expect(late?.expected).toMatch(/^54° was expected by \d+ \w+ 26$/)
    expect(late?.next).toBe('read it at the next visit')
  })

  it('fold away beyond a handful', () => {
    const many = pageOf({
      ...steady,
      problems: Array.from({ length: 9 }, (_, i) => ({
        feet: ['LF' as const],
        text: `LF word ${i}`,
        about: { kind: 'words' as const },
      })),
    })
    expect(many.problems.open).toHaveLength(5)
    expect(many.problems.more).toHaveLength(4)
    expect(many.problems.moreHead).toBe('4 more problems')
  })
})

describe('what has clearly moved', () => {
  it('rests on the false discovery rate alone, and leaves out the open problems', () => {
    expect(working.real.sentences.map(({ measure }) => measure.text)).toEqual([
      'Width',
      'Left-right angle difference',
    ])
    expect(working.real.sentences[0]?.groups).toEqual([
      {
        told: '',
        feet: [
          {
            foot: 'LF',
            told: '',
            ends: {
              first: { text: '110', reading: 'LF width 2025-01-10 after gauge' },
              last: { text: '119 mm', reading: 'LF width 2025-10-10 after gauge' },
            },
          },
        ],
      },
    ])
  })

  it('says in one line that there is nothing else', () => {
    expect(page.real.rest).toBe('Nothing has clearly moved yet.')
    expect(pageOf(mallow, '2026-01-20').real.rest).toBe(
      'There is nothing to compare yet. After two visits there will be.',
    )
  })
})

describe('below the first screens', () => {
  it('charts the problems’ measures alone, small and with the other foot of the pair', () => {
    expect(working.charts.map(({ id, size }) => [id, size])).toEqual([['chart-toe-angle', 'small']])
    expect(working.charts[0]?.panels.map(({ foot }) => foot)).toEqual(['LF', 'RF'])
    expect(working.charts[0]?.table).toBeNull()
    expect(working.charts[0]?.title).toBe('Toe angle, °: LF clearly moved')
  })

  it('draws a forecast no further than six months past the last reading', () => {
    for (const { panels } of working.charts) {
      for (const { forecast, points } of panels) {
        const last = points.at(-1)?.at
        if (forecast === null || last === undefined) continue
        const day = (time: object) => ('date' in time ? Date.parse(String(time.date)) : Number.NaN)
        expect(day(forecast.at) - day(last)).toBeLessThanOrEqual(183 * 86_400_000)
      }
    }
  })

  it('draws one drawing a foot, of what is worth it', () => {
    expect(page.drawings.map(({ kind, foot }) => [kind, foot])).toEqual([['wall', 'LF']])
    expect(working.drawings.map(({ kind, foot }) => [kind, foot])).toEqual([
      ['side', 'LF'],
      ['wall', 'RF'],
    ])
  })

  it('tells findings, visits newest first, profile', () => {
    expect(page.findings?.rows).toEqual([
      { foot: 'LF', label: 'LF flare, medial quarter', grades: [2, 2, 1] },
      { foot: 'LF', label: 'LF thrush, central sulcus', grades: [2, 1, 0] },
    ])
    expect(page.findings?.title).toBe('1 finding open, 1 resolved')
    expect(page.findings?.table).toBeNull()
    expect(page.visits.map(({ href }) => href)).toEqual([
      '2026-03-23.html',
      '2026-02-16.html',
      '2026-01-12.html',
    ])
    expect(working.visits).toHaveLength(3)
    expect(working.olderVisits).toHaveLength(7)
    const facts = Object.fromEntries(page.profile.map(({ name, text }) => [name, text]))
    expect(facts).toMatchObject({
      Owner: 'Orla Fenn',
      Height: '14.2 hh (147 cm)',
      Weight: '505 kg (1113 lb)',
      Vet: 'Involved. Diagnosis by the vet: old laminitis in both fores.',
      Targets: 'Toe angle: left fore 54° to 58°',
      'Trim limits':
        'Left fore sole flat; Left fore, left hind and right hind: at most 1.5 mm a trim beyond what grows',
      Consent: 'none given',
    })
  })

  it('carries the standing cautions and the local rule', () => {
    expect(page.page.standing.join(' ')).toContain('a trimmer does not diagnose')
    expect(page.page.standing.join(' ')).toContain('a horse in pain can kick or strike')
    expect(page.page.localRules).toBe('In this county a trimmer may not nail.')
  })

  it('stands without a single reading', () => {
    const bare = pageOf(buildHorse({ id: 'new', name: 'New', visits: [] }))
    expect(bare.seen).toBe('No visit is on record yet.')
    expect(bare.problems.note).toMatch(/^Nothing stands out in the record/)
    expect(bare.charts).toEqual([])
    expect(bare.drawings).toEqual([])
    expect(bare.findings).toBeNull()
  })
})
