/** A draft judged beside the horse's other files, as the desk will judge it. */
import { describe, expect, it } from 'vitest'
import { memoryFolder } from '../../src/casebook/memory-folder.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { assess } from '../../src/trend/assess.ts'
import type { YardDraft } from '../../src/yard/draft.ts'
import { openHorse } from '../../src/yard/open-horse.ts'
import { draftOf, files, opened, practiceText, today, visitText } from './kit.ts'

const reading = (
  text: string,
  of: Partial<YardDraft['readings'][number]> = {},
): YardDraft['readings'][number] => ({
  stage: 'before',
  foot: 'LF',
  measure: 'toe-length',
  text,
  heard: null,
  ...of,
})
const finding = (what: string, place: string, grade: number): YardDraft['findings'][number] => ({
  foot: 'LH',
  what,
  place,
  grade,
  heard: null,
})

describe('a draft that is checked', () => {
  const lf = { part: 'reading', stage: 'before', measure: 'toe-length', foot: 'LF' }
  const mistakes: readonly (readonly [string, Partial<YardDraft>, object])[] = [
    [
      'a reading in no unit of its kind',
      { readings: [reading('98 kg')] },
      { level: 'error', code: 'value-form', field: lf },
    ],
    [
      'one that cannot be',
      { readings: [reading('440', { measure: 'toe-angle' })] },
      { level: 'error', code: 'reading-impossible', field: { ...lf, measure: 'toe-angle' } },
    ],
    [
      'centimetres without their unit',
      { readings: [reading('9.8')] },
      { level: 'warning', field: lf, fix: '9.8 cm', changes: [{ field: lf, text: '9.8 cm' }] },
    ],
    [
      'a jump that no hoof makes',
      { readings: [reading('140')] },
      { level: 'warning', code: 'jump', field: lf },
    ],
    [
      'longer after the trim than before',
      { readings: [reading('91'), reading('97', { stage: 'after' })] },
      { level: 'warning', code: 'after-longer', field: { ...lf, stage: 'after' } },
    ],
    [
      'a finding that nobody knows',
      { findings: [finding('flair', 'toe', 2)] },
      { level: 'error', code: 'finding-unknown', field: { part: 'findings', index: 0 }, fix: 'flare' },
    ],
    [
      'a distance that is none',
      { features: [{ foot: 'LF', what: 'nail holes', place: 'toe', text: 'far', heard: null }] },
      { level: 'error', field: { part: 'features', index: 0 } },
    ],
    [
      'a weight without its unit',
      { body: { weight: '505', condition: '', crest: '' } },
      { level: 'error', field: { part: 'body', key: 'weight' }, changes: [{ text: '505 kg' }] },
    ],
    [
      'a grade that is none',
      { comfort: { ...draftOf().comfort, lameness: { RH: '7' } } },
      { level: 'error', field: { part: 'comfort', scale: 'lameness', foot: 'RH' } },
    ],
    ['a person whom nobody knows', { by: 'ilse' }, { level: 'error', field: { part: 'by' } }],
    ['a next visit in no form', { nextVisit: 'soon' }, { level: 'error', field: { part: 'nextVisit' } }],
    [
      'a day to come',
      { date: '2026-07-20', readings: [reading('91')] },
      { level: 'warning', field: { part: 'date' } },
    ],
    ['nothing at all', {}, { level: 'warning', code: 'visit-empty', field: null }],
  ]

  it.each(mistakes)('is told of %s, at its field', (_, of, message) => {
    expect(opened().check(draftOf(of)).messages[0]).toMatchObject(message)
  })

  it('has nothing said of it that is sound, with a picture of its own', () => {
    const photo = {
      name: 'lf.jpg',
      sha256: 'a'.repeat(64),
      foot: 'LF',
      view: 'other',
      stage: null,
      landmarks: null,
    } as const
    expect(opened().check(draftOf({ readings: [reading('91')], photos: [photo] })).messages).toEqual([])
  })

  it('is told the same as at the desk, with each key', () => {
    const horse = opened()
    for (const text of ['9', '98', '98 k', '98 kg', '98', '91']) {
      const draft = draftOf({ readings: [reading(text)] })
      const { path, text: written } = horse.written(draft)
      const desk = readCasebook(
        memoryFolder({ ...files, 'practice.md': practiceText, [path]: written }),
        today,
      )
      expect(horse.check(draft).messages.map(({ code, message }) => [code, message])).toEqual(
        desk.diagnostics.filter(({ file }) => file === path).map(({ code, message }) => [code, message]),
      )
    }
  })

  it('of a day that has a visit is judged beside it', () => {
    const horse = opened({ 'juno/2026-06-20.md': visitText('2026-06-20', 92) })
    const checked = horse.check(draftOf({ readings: [reading('91')] }))
    expect(horse.written(draftOf()).path).toBe('juno/2026-06-20-b.md')
    expect(checked.messages.filter(({ level }) => level === 'error')).toEqual([])
  })
})

describe('danger signs', () => {
  it('are answered at once, the gravest first, new ones told from those that stood', () => {
    const lame = '---\nfindings:\n  RF:\n    - thrush, central sulcus, 3\n---\n'
    const horse = opened({ 'juno/2026-06-01.md': lame })
    const before = horse.check(draftOf()).cautions
    expect(before.every(({ isNew }) => !isNew)).toBe(true)
    const { cautions, heldFeet } = horse.check(draftOf({ findings: [finding('puncture', 'sole', 2)] }))
    expect(cautions[0]).toMatchObject({ isNew: true, caution: { level: 'stop', foot: 'LH' } })
    expect(cautions.slice(1).map(({ caution }) => caution.code)).toEqual(
      expect.arrayContaining(before.map(({ caution }) => caution.code)),
    )
    expect(heldFeet).toContain('LH')
  })

  it('are those of the assessment at the desk, also of a phone whose day is behind', () => {
    const draft = draftOf({ date: '2026-06-25', findings: [finding('puncture', 'sole', 2)] })
    const horse = opened()
    const { path, text } = horse.written(draft)
    const { casebook } = readCasebook(
      memoryFolder({ ...files, 'practice.md': practiceText, [path]: text }),
      '2026-06-25',
    )
    const [read] = casebook?.horses ?? []
    const desk = read && casebook ? assess(read, casebook.practice, '2026-06-25').cautions : []
    expect(new Set(horse.check(draft).cautions.map(({ caution }) => caution.code))).toEqual(
      new Set(desk.filter(({ standing }) => standing).map(({ code }) => code)),
    )
  })
})

describe('what is known of a horse', () => {
  it('is what the form shows', () => {
    const { knowledge } = opened({
      'juno/2026-06-01.md':
        '---\nfindings:\n  LH: ["thrush, frog, 2"]\n  RF: ["crack, toe, 3"]\ngrow-out: {LF: ["nail holes, toe, 20 mm"]}\ncomfort: {surfaces: {gravel: short}}\ncare: [Pick out daily]\n---\n',
    })
    expect(knowledge).toMatchObject({
      units: 'mm',
      feetOrder: ['LF', 'RF', 'LH', 'RH'],
      openFindings: [
        { foot: 'RF', what: 'crack', grade: 3, date: '2026-06-01' },
        { foot: 'LH', what: 'thrush', grade: 2 },
      ],
      features: [{ foot: 'LF', feature: 'nail holes', distance: 20 }],
      lastCare: ['Pick out daily'],
      usualDays: 22,
      surfaces: ['gravel'],
    })
    expect(knowledge.features[0]?.expectedNow).toBeGreaterThan(20)
    expect(knowledge.last).toContainEqual({
      measure: 'toe-length',
      foot: 'LF',
      stage: 'after',
      value: 85,
      date: '2026-05-10',
    })
  })

  it('is nothing where practice.md or horse.md cannot be read', () => {
    const { knowledge } = opened()
    const part = { id: 'nell', files: {}, pictures: [], knowledge }
    expect(openHorse({ practiceFile: practiceText, asOf: today }, part, today)).toBeNull()
  })

  it('has what is followed further down the wall on a later day, never past its end', () => {
    const more = {
      'juno/2026-06-01.md':
        '---\nbefore: {toe length: {LF: 90}}\ngrow-out: {LF: ["nail holes, toe, 20 mm"]}\n---\n',
    }
    const [on, weeks, years] = [today, '2026-07-20', '2029-06-20'].map(
      (day) => opened(more, day).knowledge.features[0]?.expectedNow ?? 0,
    )
    expect(weeks).toBeCloseTo(
      (on ?? 0) + (30 / 30.4375) * (opened(more).knowledge.features[0]?.ratePerMonth ?? 0),
    )
    expect(years).toBe(opened(more).knowledge.features[0]?.wallLength)
  })
})
