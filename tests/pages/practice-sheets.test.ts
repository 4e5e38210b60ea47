import { describe, expect, it } from 'vitest'
import type { FieldSheetPage } from '../../src/pages/practice/sheets/field-sheet.ts'
import type { HandOverPage } from '../../src/pages/practice/sheets/hand-over.ts'
import { type Block, type Side, sidesOf } from '../../src/pages/practice/sheets/paper-sides.ts'
import { sampleAsOf, sampleHorse } from '../trend/sample-horse.ts'
import { mallow, modelAt, pagesOf, uneven } from './practice-kit.ts'

const blocks = (sides: readonly Side[]): readonly Block[] =>
  sides.flatMap(({ wide, left, right }) => [...wide, ...left, ...right])
const itemsOf = (sides: readonly Side[], heading: string): readonly unknown[] =>
  blocks(sides)
    .filter((block) => block.heading.startsWith(heading))
    .flatMap((block): readonly unknown[] => block.items)

describe('the hand-over', () => {
  const page = modelAt<HandOverPage>(pagesOf(), 'mallow/hand-over.html')

  it('fits on one side and says so', () => {
    expect(page.sides).toHaveLength(1)
    expect(page.print).toBe('Print this page: one side, A4 or US letter.')
  })

  it('says who the horse is and what the vet has said', () => {
    expect(page.from).toBe('From Tideway Hoof Care, 25 March 2026')
    expect(page.identity[0]).toBe(
      'Cob, mare, 12 years old · 14.2 hh (147 cm) · 505 kg (1113 lb) · Owner: Orla Fenn',
    )
    expect(page.identity[1]).toBe('Vet: Involved. Diagnosis by the vet: old laminitis in both fores.')
  })

  it('gives cautions, latest readings with the change in a column of its own, problems', () => {
    expect(itemsOf(page.sides, 'Cautions in force')[0]).toMatchObject({
      level: 'stop',
      word: 'Stop: ask a vet first',
    })
    expect(itemsOf(page.sides, 'Latest readings')).toContainEqual({
      name: 'Toe angle, °',
      cells: [
        { now: { text: '51', reading: 'LF toe-angle 2026-03-23 after gauge' }, change: '+6' },
        { now: { text: '46', reading: 'RF toe-angle 2026-03-23 after gauge' }, change: '0' },
        null,
        null,
      ],
    })
    expect(itemsOf(page.sides, 'Problems')).toEqual([
      'LF toe angle: 45 → 51°; too early to tell; no date yet',
    ])
  })

  it('gives findings, what was done, and what is asked', () => {
    expect(itemsOf(page.sides, 'Open findings')).toEqual(['LF: flare, medial quarter, mild'])
    expect(itemsOf(page.sides, 'What was done on 23 March 2026')).toEqual(['Toe length, mm: LF \u221210'])
    expect(itemsOf(page.sides, 'Questions')).toContain(
      'Right fore: What makes this foot so lame, and may it be worked on?',
    )
    expect(itemsOf(page.sides, 'History')).toEqual(['Shod in front until autumn'])
  })

  it('carries the standing cautions on paper', () => {
    expect(page.standing.join(' ')).toContain('replaces no examination')
    expect(page.localRules).toBe('In this county a trimmer may not nail.')
  })
})

describe('the field sheet', () => {
  const page = modelAt<FieldSheetPage>(pagesOf(), 'mallow/field-sheet.html')

  it('begins with who the horse is, or with the next visit where nothing is noted of that', () => {
    expect(page.lead[0]).toMatch(/^Cob, mare, 12 years old\. /)
    const unknown = pagesOf({ ...mallow, kind: null, sex: null, born: null })
    expect(modelAt<FieldSheetPage>(unknown, 'mallow/field-sheet.html').lead[0]).toMatch(/^[A-Z]/)
  })

  it('has the last value beside empty boxes for all four feet', () => {
    expect(itemsOf(page.sides, 'Readings')[0]).toEqual({
      name: 'Toe length, mm',
      cells: [
        {
          last: { text: '87', reading: 'LF toe-length 2026-03-23 after gauge' },
          single: false,
        },
        { last: null, single: false },
        { last: null, single: false },
        { last: null, single: false },
      ],
    })
  })

  it('lists open findings to ring, and followed features with where they should be', () => {
    expect(itemsOf(page.sides, 'Findings still open')).toEqual([
      { text: 'LF flare, medial quarter (was mild)', boxes: ['0', '1', '2', '3'] },
    ])
    expect(itemsOf(page.sides, 'Followed on the wall')).toEqual([
      { text: 'LF nail holes, toe: was 40 mm, now about 40.5 mm', boxes: [''] },
    ])
  })

  it('gives the agreed limits', () => {
    const sheet = modelAt<FieldSheetPage>(pagesOf(uneven), 'mallow/field-sheet.html')
    const limits = itemsOf(sheet.sides, 'What may be taken today')
    expect(limits[0]).toMatch(/^Right fore: no plan and no amount while/)
    expect(limits[1]).toBe(
      'LF: Off the inner heel, at most: 11.5 mm (10 mm grown since 23 March 2026 at the published pace, and 1.5 mm more), and off the outer heel only what has grown. That leaves 4.5 mm between them. That is more than 6 mm: better in two trims, some weeks apart.',
    )
    expect(limits.slice(2)).toEqual([
      'Trim limits: Left fore sole flat; Left fore, left hind and right hind: at most 1.5 mm a trim beyond what grows',
      'Targets: Toe angle: left fore 54° to 58°',
    ])
  })

  it('has room for what is new, and asks for the feet of the problems to be read twice, three at most', () => {
    expect(itemsOf(page.sides, 'New findings')).toEqual(['LF', 'RF', 'LH', 'RH'])
    expect(itemsOf(page.sides, 'Care, and the next visit')).toEqual(['Care', 'Next visit'])
    expect(itemsOf(page.sides, 'Read twice this month')).toEqual([{ text: 'LF toe angle', boxes: ['', ''] }])
    const problems = (['RH', 'RF', 'LF', 'LH'] as const).map((foot) => ({
      feet: [foot],
      text: `${foot} toe angle`,
      about: { kind: 'measure' as const, measure: 'toe-angle' as const },
    }))
    const asked = modelAt<FieldSheetPage>(pagesOf({ ...mallow, problems }), 'mallow/field-sheet.html')
    // The right fore waits for the vet.
    expect(itemsOf(asked.sides, 'Read twice this month')).toEqual(
      ['RH', 'LF', 'LH'].map((foot) => ({ text: `${foot} toe angle`, boxes: ['', ''] })),
    )
  })

  it('gives no amount for a foot over which a stop stands', () => {
    const stopped = {
      ...mallow,
      visits: mallow.visits.map((visit, i) =>
        i === 2 ? { ...visit, comfort: { ...visit.comfort, lameness: { LF: 5 } } } : visit,
      ),
    }
    const sheet = modelAt<FieldSheetPage>(pagesOf(stopped), 'mallow/field-sheet.html')
    expect(itemsOf(sheet.sides, 'What may be taken today')[0]).toMatch(
      /^Left fore and right fore: no plan and no amount while a caution waits/,
    )
  })

  it('asks for the usual measures where there are none yet', () => {
    const sheet = modelAt<FieldSheetPage>(pagesOf({ ...mallow, visits: [] }), 'mallow/field-sheet.html')
    expect(itemsOf(sheet.sides, 'Readings')).toHaveLength(8)
  })

  it('stops a trim before the first visit, where a vet has said so', () => {
    const vet = { ...mallow.vet, diagnosis: 'acute laminitis', date: null }
    const ill = { ...mallow, vet, visits: [] }
    for (const path of ['mallow/field-sheet.html', 'mallow/hand-over.html']) {
      const { sides } = modelAt<FieldSheetPage | HandOverPage>(pagesOf(ill), path)
      expect(itemsOf(sides, 'Cautions in force')).toMatchObject([
        { level: 'stop', text: expect.stringMatching(/^The vet's diagnosis names laminitis/) },
      ])
    }
  })

  it('does not call the vet uninvolved after a vet cleared a foot', () => {
    const vet = { ...mallow.vet, involved: false, diagnosis: null }
    const vetLine = (visits: typeof mallow.visits) =>
      modelAt<HandOverPage>(pagesOf({ ...mallow, vet, visits }), 'mallow/hand-over.html').identity[1]
    const [first, ...others] = mallow.visits
    if (first === undefined) throw new Error('a visit is needed')
    expect(vetLine([first])).toBe('Vet: Not involved so far.')
    const cleared = { feet: { LF: first.date }, all: null }
    expect(vetLine([{ ...first, cleared }, ...others])).toBe('Vet: Involved; no diagnosis on record.')
  })
})

describe('sides of paper', () => {
  const lines = (n: number) => Array.from({ length: n }, (_, i) => `line ${i}`)
  const sheet = (items: readonly string[], right: readonly string[] = []) =>
    sidesOf({
      wide: [],
      left: [{ kind: 'list', heading: 'History', note: null, items }],
      right: right.length === 0 ? [] : [{ kind: 'list', heading: 'Care', note: null, items: right }],
      share: 0.6,
      toWriteIn: 20,
      title: 'Title',
      lead: [],
      smallPrint: 'small print',
      second: 'Title, second side',
      continued: (heading) => `${heading} (continued)`,
    })

  it('moves what does not fit to further sides under its heading, and loses nothing', () => {
    for (const n of [1, 40, 90, 150, 400]) {
      const sides = sheet(lines(n), lines(30))
      expect(itemsOf(sides, 'History')).toEqual(lines(n))
      expect(itemsOf(sides, 'Care')).toEqual(lines(30))
      expect(sides[0]?.heading).toBeNull()
      for (const side of sides.slice(1)) expect(side.heading).toBe('Title, second side')
    }
    expect(sheet(lines(1))).toHaveLength(1)
    expect(sheet(lines(150)).length).toBeGreaterThan(1)
  })

  it('goes on in the other column before it takes another side', () => {
    const sides = sheet(lines(60))
    expect(sides).toHaveLength(1)
    expect(sides[0]?.right[0]?.heading).toBe('History (continued)')
  })

  it('keeps one item that is taller than a side', () => {
    const sides = sheet(['word '.repeat(4000)])
    expect(itemsOf(sides, 'History')).toHaveLength(1)
  })

  it('holds a horse with every measure on two sides', () => {
    const pages = pagesOf(sampleHorse, sampleAsOf)
    const sheetOf = modelAt<FieldSheetPage>(pages, 'juniper/field-sheet.html')
    expect(itemsOf(sheetOf.sides, 'Readings')).toHaveLength(21)
    expect(sheetOf.sides.length).toBeLessThanOrEqual(2)
  })
})
