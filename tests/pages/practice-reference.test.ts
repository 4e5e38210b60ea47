import { describe, expect, it } from 'vitest'
import { derivedIds, measureIds } from '../../src/hoof/measures.ts'
import { sources } from '../../src/hoof/sources.ts'
import { presentFront } from '../../src/pages/practice/index.ts'
import type { ReferencePage } from '../../src/pages/practice/over-all/reference-page.ts'
import { lessonsOf, type PracticeLessons, untaughtPractice } from '../../src/trend/model/practice.ts'
import { formatIn } from '../english.ts'
import { sampleAsOf, sampleHorse } from '../trend/sample-horse.ts'
import { asOf, modelAt, practice } from './practice-kit.ts'

const withPeople = { ...practice, people: [{ id: 'kit', name: 'Kit Arlen' }] }
const pageOf = (lessons: PracticeLessons, units: 'mm' | 'in' = 'mm') =>
  modelAt<ReferencePage>(
    presentFront(
      { practice: withPeople, summaries: [], broken: [], asOf, tokens: {}, lessons },
      formatIn(units),
    ),
    'reference.html',
  )
const reference = pageOf(untaughtPractice)

describe('measures and sources', () => {
  it('has an entry and a drawing for every measure', () => {
    expect(reference.measures.map(({ id }) => id)).toEqual([...measureIds])
    expect(reference.derived.map(({ id }) => id)).toEqual([...derivedIds])
    for (const entry of [...reference.measures, ...reference.derived]) {
      expect(entry.drawing.measure).toBe(entry.id)
      expect(entry.evidence.length).toBeGreaterThan(0)
    }
  })

  it('calls measures by their plain names', () => {
    const names = [...reference.measures, ...reference.derived].map(({ name }) => name)
    for (const name of ['New growth angle', 'Groove depth at frog tip', 'Toe-heel angle difference'])
      expect(names).toContain(name)
    expect(names.join(' ')).not.toMatch(/heel gap|toe share|mismatch|new length|groove apex/i)
  })

  it('says how well each figure is founded', () => {
    expect(reference.measures.find(({ id }) => id === 'toe-length')).toMatchObject({
      facts: 'Likely: 50 mm to 160 mm. Scatter of one reading: 2.0 mm. A change matters from 5 mm on.',
      evidence: 'Scatter: Common practice, no source.',
    })
    expect(reference.derived.find(({ id }) => id === 'pair-mismatch')?.evidence[0]).toContain('from memory')
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

  it('names a source for each method that has one, and the plan’s limits in the practice’s unit', () => {
    const method = (id: string) => reference.methods.find((one) => one.id === id)
    expect(method('practice-teaches')?.sources).toEqual([sources.pattersonThompson.cite, sources.smyth.cite])
    expect(method('verdict')?.sources).toEqual([sources.schuirmann.cite])
    expect(method('clear-moves')?.sources).toEqual([sources.benjaminiHochberg.cite])
    expect(method('forecast')?.sources).toEqual([sources.fieller.cite])
    expect(method('plan')?.text).toContain('1.5 mm on a flat sole and 3 mm on a cupped one')
    expect(pageOf(untaughtPractice, 'in').methods.find(({ id }) => id === 'plan')?.text).toContain('1/16 in')
    for (const { text, formula } of reference.methods) expect(text === '' || formula === '').toBe(false)
  })
})

describe('what the practice has taught', () => {
  it('is nothing before anything was read', () => {
    expect(reference.lessons).toEqual({ sentences: [], table: null })
  })

  it('stands against the literature, with the readings it rests on', () => {
    const lesson = { e: 0.7, u: 0.4, w: 0.4, worth: 20, slopes: 0.2, season: { cos: 0, sin: 0 } }
    const { lessons } = pageOf({
      learned: {
        measures: {},
        people: {},
        growOut: { mean: 7.5, meanSd: 0.25, spread: 1, distanceSd: 1.5 },
      },
      hands: { kit: { factor: 1.32, readings: 84 }, gone: { factor: 0.8, readings: 90 } },
      lessons: {
        'gauge toe-length': { ...lesson, readings: 212 },
        'gauge toe-length all': { ...lesson, e: 0.3, readings: 212 },
        'photo toe-length': { ...lesson, e: 1.1, readings: 40 },
        'gauge toe-angle': { ...lesson, e: 1, readings: 0 },
      },
    })
    expect(lessons.sentences).toEqual([
      'Your readings of toe length by gauge repeat to 1.4 mm (literature: 2.0 mm), from 212 readings.',
      'Your readings of toe length by photograph repeat to 2.2 mm (literature: 2.0 mm), from 40 readings.',
      'Readings of Kit Arlen scatter 1.3 times as much as the practice’s, from 84 readings; they count accordingly.',
      'Horn grows down by 7.5 mm a month here (95 % interval 7.0 to 8.0 mm; literature: 8.5 mm a month).',
      'Single walls differ from that by about 1.0 mm either way.',
    ])
    expect(lessons.table?.head).toEqual(['Measure', 'Gauge', 'Photo', 'Literature'])
    expect(lessons.table?.rows).toEqual([
      ['Toe length', '1.4\u00a0mm (212)', '2.2\u00a0mm (40)', '2.0\u00a0mm'],
    ])
  })

  it('comes from the practice’s own horses', () => {
    const { table, sentences } = pageOf(lessonsOf([sampleHorse], sampleAsOf)).lessons
    expect(table?.head).toEqual(['Measure', 'Gauge', 'Literature'])
    expect(table?.rows.find(([name]) => name === 'Toe angle')).toHaveLength(3)
    expect(sentences).toHaveLength(5)
  })
})
