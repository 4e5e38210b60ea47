import { describe, expect, it } from 'vitest'
import type { VisitPage } from '../../src/pages/practice/visit-page.ts'
import { modelAt, pagesOf } from './practice-kit.ts'

const page = modelAt<VisitPage>(pagesOf(), 'mallow/2026-03-23.html')
const row = (name: string) => page.rows.find((one) => one.name === name)

describe('a visit’s page', () => {
  it('says where the visit stands in the record', () => {
    expect(page.heading).toBe('Visit of 23 March 2026')
    expect(page.about).toBe('Visit 3 of 3, 5 weeks after the visit before.')
    expect(page.earlier).toEqual({ text: 'Earlier: 16 February 2026', href: '2026-02-16.html' })
    expect(page.later).toBeNull()
  })

  it('sets before against after, with the smallest real change', () => {
    // t(0.975, 10) × √2 × 2 mm = 2.228 × 1.414 × 2 = 6.3 mm.
    expect(row('Toe length')).toMatchObject({
      href: '../reference.html#toe-length',
      unit: 'mm',
      note: null,
      smallest: '6.3 mm',
      cells: [{ from: '97 → ', value: '87', change: '\u221210', note: '\u221210 real' }, null, null, null],
    })
  })

  it('leaves out the change where one stage alone was read, and says what was worked out', () => {
    expect(row('Toe angle')?.cells[0]).toEqual({ from: '', value: '51', change: null, note: 'After' })
    expect(row('Heel balance')?.note).toBe('worked out')
    expect(row('Heel balance')?.cells[0]?.value).toBe('3')
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

  it('shows heels as a level, comfort with what the level means, and what is followed', () => {
    expect(page.levels.map(({ title }) => title)).toEqual([
      'Left fore: inner heel 3 mm higher, a tilt of 1.4°',
      'Right fore: heels level',
    ])
    expect(page.comfort.byFoot[0]).toEqual({
      name: 'Lameness, 0 to 5, judged by the vet',
      href: '../reference.html#scale-lameness',
      cells: ['', '4, plain at walk: a nod, a hitch or a short stride', '', ''],
    })
    expect(page.followed).toEqual(['Nail holes, left fore toe: 40 mm below the hairline.'])
    expect(page.next).toBe('The next visit is planned for 27 April 2026.')
  })
})
