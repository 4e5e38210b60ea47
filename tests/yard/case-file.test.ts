/** Whatever is in a draft comes out of its case file again by the reader of case files. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { memoryFolder } from '../../src/casebook/memory-folder.ts'
import type { Visit } from '../../src/casebook/model.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { type Foot, feet } from '../../src/hoof/feet.ts'
import { findingMeanings, places } from '../../src/hoof/findings.ts'
import { measureIds, measures } from '../../src/hoof/measures.ts'
import { caseFileOf, fieldAt } from '../../src/yard/case-file.ts'
import type { YardDraft } from '../../src/yard/draft.ts'
import { draftOf, files, practiceText, today } from './kit.ts'

const practice = { feetOrder: feet }

/** The visit as the desk reads it. */
function readBack(draft: YardDraft, feetOrder: readonly Foot[] = feet): Visit | undefined {
  const { path, text } = caseFileOf(draft, { feetOrder })
  const pictures = draft.photos.map(({ name }) => [`juno/photos/${name}`, ''])
  const folder = memoryFolder({
    ...files,
    'practice.md': practiceText.replace('owners:', `feet: [${feetOrder.join(', ')}]\nowners:`),
    ...Object.fromEntries(pictures),
    [path]: text,
  })
  const { casebook, diagnostics } = readCasebook(folder, today)
  expect(diagnostics.filter(({ level }) => level === 'error')).toEqual([])
  return casebook?.horses[0]?.visits.find(({ id }) => id === draft.date)
}

const foot = fc.constantFrom(...feet)
const words = fc.string({ unit: 'grapheme', maxLength: 60 })

const reading = fc
  .record({
    stage: fc.constantFrom('before' as const, 'after' as const),
    foot,
    measure: fc.constantFrom(...measureIds),
  })
  .chain((of) => {
    const { likely } = measures[of.measure]
    return fc
      .integer({ min: Math.ceil(likely[0]), max: Math.floor(likely[1]) })
      .map((value) => ({ ...of, value, text: String(value), heard: null }))
  })
const finding = fc.record({
  foot,
  what: fc.constantFrom(...Object.keys(findingMeanings)),
  place: fc.constantFrom(...places),
  grade: fc.integer({ min: 0, max: 3 }),
  heard: fc.option(words),
})
const feature = fc.record({
  foot,
  what: fc.constantFrom('nail holes', 'event line', 'old abscess'),
  place: fc.constantFrom('toe', 'medial quarter', 'lateral heel'),
  text: fc.integer({ min: 0, max: 120 }).map((mm) => `${mm} mm`),
  heard: fc.option(words),
})
const perFoot = (...levels: string[]) =>
  fc.dictionary(foot, fc.constantFrom(...levels), { maxKeys: 4, noNullPrototype: true })

const drafts = fc.record({
  readings: fc.uniqueArray(reading, { selector: (one) => `${one.stage} ${one.foot} ${one.measure}` }),
  findings: fc.uniqueArray(finding, { selector: (one) => `${one.foot} ${one.what} ${one.place}` }),
  features: fc.uniqueArray(feature, { selector: (one) => `${one.foot} ${one.what} ${one.place}` }),
  comfort: fc.record({
    lameness: perFoot('0', '1', '2', '5'),
    lamenessBy: fc.constantFrom(null, 'vet' as const, 'practitioner' as const),
    landing: perFoot('heel', 'flat', 'toe'),
    'digital pulse': perFoot('0', '1', '2', '3'),
    surfaces: fc.dictionary(
      fc.constantFrom('sand', 'gravel', 'road: wet', 'a "good" track', '#1 field'),
      fc.constantFrom('easy', 'short'),
      { noNullPrototype: true },
    ),
  }),
  body: fc.record({
    weight: fc.constantFrom('', '505 kg', '1,100 lb'),
    condition: fc.constantFrom('', '6', '5.5'),
    crest: fc.constantFrom('', '0', '2'),
  }),
  care: fc.array(words.filter((text) => text.trim() !== '' && text.trim() !== '_' && text.trim() !== '?')),
  note: fc.string({ unit: 'grapheme', maxLength: 200 }),
  forOwner: fc.string({ unit: 'grapheme', maxLength: 100 }),
  dictated: words,
})

const orders = fc.shuffledSubarray([...feet], { minLength: 4 })

describe('a draft', () => {
  it('is read back as it was written', () => {
    fc.assert(
      fc.property(drafts, orders, (of, order) => {
        const visit = readBack(draftOf(of), order)
        const key = (one: { foot: string; what: string; place: string }) =>
          `${one.foot} ${one.what} ${one.place}`
        const readings = visit?.readings.map((one) => [one.stage, one.foot, one.measure, one.value].join())
        expect(new Set(readings)).toEqual(
          new Set(of.readings.map((one) => [one.stage, one.foot, one.measure, one.value].join())),
        )
        expect(new Map(visit?.findings.map((one) => [key(one), one.grade]))).toEqual(
          new Map(of.findings.map((one) => [key(one), one.grade])),
        )
        expect(new Map(visit?.growOut.map((one) => [key(one), `${one.distance} mm`]))).toEqual(
          new Map(of.features.map((one) => [key(one), one.text])),
        )
        const grades = (levels: object) =>
          Object.fromEntries(Object.entries(levels).map(([at, level]) => [at, Number(level)]))
        const { comfort } = of
        expect(visit?.comfort).toMatchObject({
          lameness: grades(comfort.lameness),
          landing: comfort.landing,
          digitalPulse: grades(comfort['digital pulse']),
        })
        expect(Object.values(visit?.comfort.surfaces ?? {})).toEqual(Object.values(comfort.surfaces))
        expect(visit?.care).toEqual(of.care.map((line) => line.replaceAll(/\s+/g, ' ').trim()))
        expect(visit?.yard).toEqual({ draft: '3f9ab2c4d5e6', version: 1 })
        expect(visit?.draft).toBe(false)
      }),
      { numRuns: 150 },
    )
  })

  it('keeps its note from every other reader, and its letter whole', () => {
    const texts = fc
      .array(
        fc.constantFrom(
          '## For the owner',
          '# Title',
          'For teaching',
          '---',
          '===',
          '```',
          '~~~',
          '<!--',
          '<div>',
          '    ## For the owner',
          '- ## For teaching',
          '> ## For the owner',
          'plain words',
          '',
          '| a | b |',
          '[a]: b',
        ),
        { maxLength: 6 },
      )
      .map((lines) => lines.join('\n'))
    fc.assert(
      fc.property(texts, texts, (note, letter) => {
        const visit = readBack(draftOf({ note: `secret\n${note}`, forOwner: `dear\n${letter}`, care: ['x'] }))
        expect(visit?.body.own).toContain('secret')
        expect(visit?.body.forOwner).toContain('dear')
        expect(visit?.body.forOwner).not.toContain('secret')
        expect(visit?.body.forTeaching).toBeNull()
      }),
      { numRuns: 200 },
    )
  })

  it('leads each place of its text back to the field', () => {
    const draft = draftOf({
      readings: [
        { stage: 'before', foot: 'LF', measure: 'toe-length', text: '98', heard: '"toe length 98"' },
        { stage: 'before', foot: 'RH', measure: 'toe-length', text: '3 5/8 in', heard: null },
      ],
      findings: [{ foot: 'LH', what: 'thrush', place: 'frog', grade: 2, heard: null }],
      comfort: { ...draftOf().comfort, landing: { LF: 'heel' } },
      photos: [
        {
          name: '2026-06-20-lf-side-3f9a.jpg',
          sha256: 'a'.repeat(64),
          foot: 'LF',
          view: 'lateral',
          stage: 'before',
          landmarks: 'ground: [[1, 2], [3, 4]]\ntoe at ground: [5, 6]',
        },
      ],
      questions: [{ ask: 'Which is it?', said: '"44 or 45"' }],
      note: 'Quiet.',
    })
    const { path, text, places: found } = caseFileOf(draft, practice)
    expect(path).toBe('juno/2026-06-20.md')
    expect(text).toBe(`---
# Not sure, and so not written below. Settle each, then delete these lines.
# 1. Which is it? "44 or 45"
date: 2026-06-20
yard: 3f9ab2c4d5e6-1
draft: yes
before:
  # LF "toe length 98"
  toe length: {LF: 98, RH: 3 5/8 in}
findings:
  LH:
    - thrush, frog, 2
comfort:
  landing: {LF: heel}
photos:
  - file: photos/2026-06-20-lf-side-3f9a.jpg
    foot: LF
    view: lateral
    stage: before
    ground: [[1, 2], [3, 4]]
    toe at ground: [5, 6]
---
Quiet.
`)
    const lines = text.split('\n')
    const at = (words: string) => {
      const line = lines.findIndex((one) => one.includes(words))
      return fieldAt(found, line + 1, (lines[line] ?? '').indexOf(words) + 1)
    }
    expect(at('98, RH')).toEqual({ part: 'reading', stage: 'before', measure: 'toe-length', foot: 'LF' })
    expect(at('3 5/8')).toEqual({ part: 'reading', stage: 'before', measure: 'toe-length', foot: 'RH' })
    expect(at('thrush')).toEqual({ part: 'findings', index: 0 })
    expect(at('heel}')).toEqual({ part: 'comfort', scale: 'landing', foot: 'LF' })
    expect(at('toe at ground')).toEqual({ part: 'photos', index: 0 })
    expect(at('Quiet')).toEqual({ part: 'note' })
  })

  it('of a day that has a visit gets the next letter', () => {
    const taken = new Set(['juno/2026-06-20.md', 'juno/2026-06-20-b.md'])
    expect(caseFileOf(draftOf(), practice, taken).path).toBe('juno/2026-06-20-c.md')
  })

  it('keeps what was dictated before it was heard', () => {
    const visit = readBack(draftOf({ dictated: 'She leaned on me.\nTwice.', care: ['x'] }))
    expect(visit?.body.own).toBe('She leaned on me.\n\nTwice.')
  })
})
