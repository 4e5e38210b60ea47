import { describe, expect, it } from 'vitest'
import type { VisitPage } from '../../src/pages/practice/horse/visit-page.ts'
import { buildHorse } from '../trend/build-horse.ts'
import { mallow, modelAt, pagesOf, uneven } from './practice-kit.ts'

const page = modelAt<VisitPage>(pagesOf(), 'mallow/2026-03-23.html')
const row = (name: string) => page.rows.find((one) => one.name === name)

describe('a visit’s page', () => {
  it('says where the visit stands in the record', () => {
    expect(page.heading).toBe('Visit of 23 March 2026')
    expect(page.about).toBe('Visit 3 of 3, 5 weeks after the visit before.')
    expect(page.earlier).toEqual({ text: 'Earlier: 16 February 2026', href: '2026-02-16.html' })
    expect(page.later).toBeNull()
  })

  it('sets arrival against after the trim in four columns, with what a real change is', () => {
    expect(row('Toe length')).toMatchObject({
      unit: 'mm',
      notes: ['real from 5.5 mm'],
      cells: [
        {
          arrival: { text: '97', reading: 'LF toe-length 2026-03-23 before gauge' },
          after: { text: '87', reading: 'LF toe-length 2026-03-23 after gauge' },
          isReal: true,
        },
        null,
        null,
        null,
      ],
    })
  })

  it('has one stage alone where no more was read, and nothing that was worked out', () => {
    expect(row('Toe angle')?.cells[0]).toMatchObject({ arrival: null, after: { text: '51' }, isReal: false })
    expect(row('Heel balance')).toBeUndefined()
  })

  it('names a limit that most measures share once', () => {
    const both = { 'heel-medial': 40, 'heel-lateral': 41, 'toe-length': 90 }
    const horse = buildHorse({
      id: 'limits',
      visits: [
        { date: '2026-01-12', before: { ...both, 'toe-angle': 50 }, after: { ...both, 'toe-angle': 50 } },
      ],
    })
    const { limits, rows } = modelAt<VisitPage>(pagesOf(horse), 'limits/2026-01-12.html')
    const own = rows.filter(({ notes }) => notes.length > 0)
    expect(limits).toMatch(/^A change is real from [\d.]+ mm, where no other limit is named\.$/)
    expect(own.map(({ name }) => name)).toContain('Toe angle')
    expect(own.length).toBeLessThan(rows.length - 1)
  })

  it('says in sentences what the trim and the time changed', () => {
    expect(page.changed).toEqual([
      'Toe length by the trim: LF −10 mm.',
      'LF flare, medial quarter: moderate to mild.',
      'LF thrush, central sulcus: mild to resolved.',
    ])
    const first = modelAt<VisitPage>(pagesOf(), 'mallow/2026-01-12.html')
    expect(first.changed).toEqual(['Toe length by the trim: LF −8 mm.'])
  })

  it('divides a long note after a paragraph, and loses nothing of it', () => {
    const own = `${'Rain. '.repeat(60)}\n\n${'Wind. '.repeat(80)}\n\n- a\n- b`
    const visits = mallow.visits.map((visit) => ({ ...visit, body: { ...visit.body, own } }))
    const { notes } = modelAt<VisitPage>(pagesOf({ ...mallow, visits }), 'mallow/2026-03-23.html')
    expect(notes.start).toBe('Rain. '.repeat(60).trim())
    expect(notes.rest).toMatch(/^Wind\..*- b$/s)
  })

  it('tells each finding with what it was before, and draws it on the sole', () => {
    expect(page.findings[0]?.lines.map(({ text }) => text)).toEqual([
      '1. Flare, medial quarter: mild, was moderate',
      '2. Thrush, central sulcus: resolved, was mild',
    ])
    expect(page.findings[0]?.sole?.marks).toEqual([
      { what: 'flare', place: 'medial quarter', grade: 1, sign: '1' },
      { what: 'thrush', place: 'central sulcus', grade: 0, sign: '2' },
    ])
  })

  it('calls a finding new at its first visit', () => {
    const first = modelAt<VisitPage>(pagesOf(), 'mallow/2026-01-12.html')
    expect(first.findings[0]?.lines[0]?.text).toBe('1. Flare, medial quarter: moderate, new')
  })

  it('tells heels that differ by more than the error, comfort with what the level means, and what is followed', () => {
    expect(page.pairs.filter((text) => text.includes('heel'))).toEqual([])
    expect(modelAt<VisitPage>(pagesOf(uneven), 'mallow/2026-03-23.html').pairs[0]).toBe(
      'Left fore: inner heel 6 mm higher, a tilt of 2.7°',
    )
    expect(page.comfort.table.rows[0]).toEqual({
      name: 'Lameness, 0 to 5, judged by the vet',
      cells: [null, { text: '4, plain at walk: a nod, a hitch or a short stride' }, null, null],
    })
    expect(page.followed).toEqual(['Nail holes, left fore toe: 40 mm below the hairline.'])
    expect(page.next).toBe('The next visit is planned for 27 April 2026.')
  })
})
