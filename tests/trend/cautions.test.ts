import { describe, expect, it } from 'vitest'
import { assess } from '../../src/trend/assess.ts'
import { type Caution, type CautionCode, cautionCodes } from '../../src/trend/assessment.ts'
import { wordsSay } from '../../src/trend/cautions/findings.ts'
import { rules } from '../../src/trend/cautions/index.ts'
import { buildHorse, type HorseSketch, practice, type VisitSketch } from './build-horse.ts'

const days = ['2026-01-05', '2026-02-09', '2026-03-16', '2026-04-20']
type Sketch = Omit<VisitSketch, 'date'>

function cautionsOf(visits: readonly Sketch[], horse: Omit<HorseSketch, 'visits'> = {}, asOf?: string) {
  const dated = visits.map((visit, i) => ({ date: days[i] ?? '', ...visit }))
  return assess(buildHorse({ ...horse, visits: dated }), practice(), asOf ?? dated.at(-1)?.date ?? '')
    .cautions
}
const standing = (cautions: readonly Caution[]): readonly CautionCode[] =>
  cautions.filter((one) => one.standing).map(({ code }) => code)

/** For each code: visits that fire it, and visits like them that do not. */
const cases: Readonly<
  Record<CautionCode, readonly [fires: readonly Sketch[], silent: readonly (readonly Sketch[])[]]>
> = {
  'lameness-severe': [[{ comfort: { lameness: { LF: 4 } } }], [[{ comfort: { lameness: { LF: 3 } } }]]],
  'pulse-bounding': [
    [{ comfort: { digitalPulse: { RH: 3 } } }],
    [[{ comfort: { digitalPulse: { RH: 2, LF: 2 } } }]],
  ],
  'pulse-both-fores': [
    [{ comfort: { digitalPulse: { LF: 2, RF: 2 } } }],
    [[{ comfort: { digitalPulse: { LF: 2, RF: 1 } } }], [{ comfort: { digitalPulse: { LH: 2, RH: 2 } } }]],
  ],
  drainage: [[{ findings: ['LF drainage, toe, 1'] }], [[{ findings: ['LF drainage, toe, 0'] }]]],
  'heat-with-lameness': [
    [{ findings: ['LF heat, whole foot, 1'], comfort: { lameness: { LF: 1 } } }],
    [
      [{ findings: ['LF heat, whole foot, 1'] }],
      [{ findings: ['LF heat, whole foot, 1'], comfort: { lameness: { LF: 0, RF: 1 } } }],
      [{ comfort: { lameness: { LF: 1 } } }],
    ],
  ],
  puncture: [
    [{ findings: ['LF puncture, frog, 1'] }],
    [[{ findings: ['LF puncture, frog, 0'] }], [{ findings: ['LF nail hole, lateral quarter, 1'] }]],
  ],
  'sole-depth-critical': [[{ before: { 'sole-depth': 6.5 } }], [[{ before: { 'sole-depth': 7 } }]]],
  'unwilling-to-move': [
    [{ comfort: { surfaces: { gravel: 'careful' } } }, { comfort: { surfaces: { gravel: 'unwilling' } } }],
    [[{ comfort: { surfaces: { gravel: 'careful', sand: 'easy' } } }]],
  ],
  'lameness-moderate': [
    [{ comfort: { lameness: { LF: 2 } } }],
    [[{ comfort: { lameness: { LF: 1 } } }], [{ comfort: { lameness: { LF: 4 } } }]],
  ],
  'lameness-rising': [
    [{ comfort: { lameness: { LF: 0 } } }, {}, { comfort: { lameness: { LF: 1 } } }],
    [
      [{ comfort: { lameness: { LF: 1 } } }, { comfort: { lameness: { LF: 1 } } }],
      [{ comfort: { lameness: { LF: 1 } } }],
    ],
  ],
  'nail-in-white-line-tender': [
    [{ findings: ['LF nail in white line, medial quarter, 1', 'LF tenderness, sole, 1'] }],
    [
      [{ findings: ['LF nail in white line, medial quarter, 1'] }],
      [{ findings: ['LF nail in white line, medial quarter, 1', 'RF tenderness, sole, 1'] }],
    ],
  ],
  'crack-full-thickness': [
    [{ findings: ['LF crack, toe, 2, full thickness, incomplete'] }],
    [
      [{ findings: ['LF crack, toe, 2, part thickness, does not move'] }],
      [{ findings: ['LF crack, toe, 2'] }],
    ],
  ],
  'thrush-severe': [[{ findings: ['LF thrush, frog, 3'] }], [[{ findings: ['LF thrush, frog, 2'] }]]],
  'sulcus-split-deep': [
    [{ findings: ['LF sulcus split, central sulcus, 2, runs deep into the bulbs'] }],
    [[{ findings: ['LF sulcus split, central sulcus, 2'] }]],
  ],
  'crest-high': [[{ body: { crest: 3 } }], [[{ body: { crest: 2 } }]]],
  swelling: [[{ findings: ['LF swelling, coronet, 1'] }], [[{ findings: ['LF swelling, coronet, 0'] }]]],
  'proud-flesh': [
    [{ findings: ['LF proud tissue, coronet, 1'] }],
    [[{ findings: ['LF proud tissue, coronet, 0'] }]],
  ],
  'finding-worsening': [
    [
      { findings: ['LF flare, toe, 1'] },
      { findings: ['LF flare, toe, 2'] },
      { findings: ['LF flare, toe, 3'] },
    ],
    [
      [{ findings: ['LF flare, toe, 1'] }, { findings: ['LF flare, toe, 2'] }],
      [
        { findings: ['LF flare, toe, 1'] },
        { findings: ['LF flare, toe, 2'] },
        { findings: ['LF flare, toe, 2'] },
      ],
      [
        { findings: ['LF flare, toe, 1'] },
        { findings: ['RF flare, toe, 2'] },
        { findings: ['LF flare, toe, 3'] },
      ],
    ],
  ],
  'sole-flat': [[{ findings: ['LF flat sole, sole, 1'] }], [[{ findings: ['LF flat sole, sole, 0'] }]]],
  'sole-thin': [
    [{ findings: ['LF thin sole, sole, 1'] }],
    [[{ before: { 'sole-depth': 15 } }], [{ before: { 'groove-apex': 1 } }]],
  ],
  'toe-shortened-much': [
    [{ before: { 'toe-length': 100 }, after: { 'toe-length': 89.5 } }],
    [[{ before: { 'toe-length': 100 }, after: { 'toe-length': 90 } }], [{ before: { 'toe-length': 100 } }]],
  ],
  'heels-lowered-much': [
    [{ before: { 'heel-lateral': 40 }, after: { 'heel-lateral': 33.5 } }],
    [[{ before: { 'heel-lateral': 40 }, after: { 'heel-lateral': 34 } }]],
  ],
  'toe-angle-changed-much': [
    [{ before: { 'toe-angle': 46 }, after: { 'toe-angle': 50.5 } }],
    [[{ before: { 'toe-angle': 46 }, after: { 'toe-angle': 50 } }]],
  ],
  'pair-uneven-after-trim': [
    [{ after: { 'toe-angle': { LH: 55, RH: 49 } } }],
    [[{ after: { 'toe-angle': { LH: 55, RH: 50 } } }], [{ before: { 'toe-angle': { LH: 55, RH: 49 } } }]],
  ],
  'condition-high': [[{ body: { condition: 7 } }], [[{ body: { condition: 6 } }]]],
  'visit-overdue': [[], []],
}

const levels: Readonly<Record<CautionCode, Caution['level']>> = {
  'lameness-severe': 'stop',
  'pulse-bounding': 'stop',
  'pulse-both-fores': 'stop',
  drainage: 'stop',
  'heat-with-lameness': 'stop',
  puncture: 'stop',
  'sole-depth-critical': 'stop',
  'unwilling-to-move': 'stop',
  'lameness-moderate': 'vet',
  'lameness-rising': 'vet',
  'nail-in-white-line-tender': 'vet',
  'crack-full-thickness': 'vet',
  'thrush-severe': 'vet',
  'sulcus-split-deep': 'vet',
  'crest-high': 'vet',
  swelling: 'vet',
  'proud-flesh': 'vet',
  'finding-worsening': 'vet',
  'sole-flat': 'mind',
  'sole-thin': 'mind',
  'toe-shortened-much': 'mind',
  'heels-lowered-much': 'mind',
  'toe-angle-changed-much': 'mind',
  'pair-uneven-after-trim': 'mind',
  'condition-high': 'mind',
  'visit-overdue': 'mind',
}

describe.each(cautionCodes.filter((code) => code !== 'visit-overdue'))('%s', (code) => {
  const [fires, silent] = cases[code]

  it('stands where it should, at its level, on its foot', () => {
    const caution = cautionsOf(fires).find((one) => one.code === code && one.standing)
    expect(caution?.level).toBe(levels[code])
    expect(caution?.date).toBe(days[fires.length - 1])
    const wide = [
      'pulse-both-fores',
      'unwilling-to-move',
      'crest-high',
      'condition-high',
      'pair-uneven-after-trim',
    ]
    if (wide.includes(code)) expect(caution?.foot).toBeNull()
    else expect(caution?.foot).not.toBeNull()
  })

  it('is silent just short of it', () => {
    for (const visits of silent) expect(standing(cautionsOf(visits))).not.toContain(code)
  })

  it('stands on through a visit that does not speak of it', () => {
    expect(standing(cautionsOf([...fires, {}]))).toContain(code)
  })
})

describe('every code', () => {
  it('has one rule, but for the overdue visit, which is no matter of a visit', () =>
    expect(rules.map(({ code }) => code).toSorted()).toEqual(
      cautionCodes.filter((code) => code !== 'visit-overdue').toSorted(),
    ))
})

describe('a caution is over', () => {
  it.each<[CautionCode, readonly Sketch[], Sketch]>([
    ['drainage', [{ findings: ['LF drainage, toe, 2'] }], { findings: ['LF drainage, toe, 0'] }],
    ['drainage', [{ findings: ['LF drainage, toe, 2'] }], { findings: ['LF flare, toe, 1'] }],
    ['puncture', [{ findings: ['LF puncture, sole, 2'] }], { findings: ['LF puncture, sole, 0'] }],
    ['lameness-severe', [{ comfort: { lameness: { LF: 4 } } }], { comfort: { lameness: { LF: 1 } } }],
    [
      'lameness-rising',
      [{ comfort: { lameness: { LF: 0 } } }, { comfort: { lameness: { LF: 1 } } }],
      { comfort: { lameness: { LF: 1 } } },
    ],
    [
      'pulse-both-fores',
      [{ comfort: { digitalPulse: { LF: 2, RF: 2 } } }],
      { comfort: { digitalPulse: { LF: 1 } } },
    ],
    [
      'heat-with-lameness',
      [{ findings: ['LF heat, whole foot, 1'], comfort: { lameness: { LF: 2 } } }],
      { comfort: { lameness: { LF: 0 } } },
    ],
    [
      'unwilling-to-move',
      [{ comfort: { surfaces: { sand: 'unwilling' } } }],
      { comfort: { surfaces: { sand: 'short' } } },
    ],
    ['crest-high', [{ body: { crest: 4 } }], { body: { crest: 2 } }],
    [
      'toe-shortened-much',
      [{ before: { 'toe-length': 100 }, after: { 'toe-length': 85 } }],
      { before: { 'toe-length': 93 }, after: { 'toe-length': 86 } },
    ],
  ])('%s, once a later visit speaks of the matter and it is fine', (code, before, after) => {
    const cautions = cautionsOf([...before, after])
    expect(standing(cautions)).not.toContain(code)
    // It stays in the history.
    expect(cautions.some((one) => one.code === code && !one.standing)).toBe(true)
  })

  it('not by a visit that speaks of another foot', () => {
    const cautions = cautionsOf([{ findings: ['LF drainage, toe, 2'] }, { findings: ['RF flare, toe, 1'] }])
    expect(standing(cautions)).toContain('drainage')
  })

  it('not by a second unwilling visit: it stands from the first', () => {
    const surfaces = { gravel: 'unwilling' }
    const cautions = cautionsOf([{ comfort: { surfaces } }, { comfort: { surfaces } }])
    expect(cautions.filter(({ code }) => code === 'unwilling-to-move')).toMatchObject([
      { date: '2026-01-05', standing: true },
    ])
  })
})

describe('other ways to the same caution', () => {
  it.each<[CautionCode, Sketch]>([
    ['crack-full-thickness', { findings: ['LF crack, toe, 1, bleeds at the coronet'] }],
    ['crack-full-thickness', { findings: ['LF crack, toe, 1, part thickness, moves when loaded'] }],
    ['sulcus-split-deep', { findings: ['LF sulcus split, heel bulbs, 1'] }],
    ['sulcus-split-deep', { findings: ['LF sulcus split, central sulcus, 3'] }],
    ['nail-in-white-line-tender', { findings: ['LF nail in white line, toe, 1, tender to pressure'] }],
    ['sole-thin', { before: { 'sole-depth': 14 } }],
    ['sole-thin', { before: { 'groove-apex': 0 } }],
    ['puncture', { findings: ['LF puncture, central sulcus, 1'] }],
    ['heels-lowered-much', { before: { 'heel-medial': 40 }, after: { 'heel-medial': 32 } }],
    ['unwilling-to-move', { comfort: { obel: 3 } }],
  ])('%s: %j', (code, visit) => expect(standing(cautionsOf([visit]))).toContain(code))

  it('a flat sole said in horse.md stands at the latest visit', () => {
    const cautions = cautionsOf([{}, {}], {
      trimLimits: { sole: { LF: 'flat', RF: 'cupped' }, mostPerTrim: null },
    })
    expect(cautions).toMatchObject([{ code: 'sole-flat', foot: 'LF', date: '2026-02-09', standing: true }])
  })

  it('a flat sole that was found and is said in horse.md too is one caution', () => {
    const cautions = cautionsOf([{ findings: ['LF flat sole, sole, 2'] }], {
      trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
    })
    expect(cautions).toMatchObject([{ code: 'sole-flat', facts: { by: 'finding', grade: 2 } }])
  })

  it('heels lowered much are one caution a foot, of the heel that lost more', () => {
    const before = { 'heel-medial': 40, 'heel-lateral': 40 }
    const cautions = cautionsOf([{ before, after: { 'heel-medial': 33, 'heel-lateral': 32 } }])
    expect(cautions).toMatchObject([
      { code: 'heels-lowered-much', facts: { measure: 'heel-lateral', step: -8 } },
    ])
  })

  it('a nail that goes into the wall is no puncture of the sole', () => {
    expect(standing(cautionsOf([{ findings: ['LF puncture, lateral quarter, 1'] }]))).not.toContain(
      'puncture',
    )
  })
})

describe('an overdue visit', () => {
  it('is said from the fifteenth day past the planned one', () => {
    expect(standing(cautionsOf([{ nextVisit: '2026-02-02' }], {}, '2026-02-16'))).toEqual([])
    expect(cautionsOf([{ nextVisit: '2026-02-02' }], {}, '2026-02-17')).toMatchObject([
      { code: 'visit-overdue', level: 'mind', date: '2026-02-02', facts: { days: 15 }, standing: true },
    ])
  })

  it('counts from the trim cycle where the visit named no day', () => {
    expect(standing(cautionsOf([{}], {}, '2026-02-23'))).toEqual([])
    expect(standing(cautionsOf([{}], {}, '2026-02-24'))).toEqual(['visit-overdue'])
  })
})

describe('order', () => {
  it('is stop, vet, mind', () => {
    const cautions = cautionsOf([
      {
        body: { condition: 8, crest: 4 },
        comfort: { lameness: { LF: 5 } },
        findings: ['RH swelling, coronet, 1'],
      },
    ])
    expect(cautions.map(({ level }) => level)).toEqual(['stop', 'vet', 'vet', 'mind'])
  })
})

describe('wordsSay', () => {
  it.each([
    ['bleeds', true],
    ['no bleeding, does not move', false],
    ['part thickness but moves', true],
    ["doesn't move", false],
    ['never bled; moves', true],
    [null, false],
  ])('%j: %s', (words, said) => expect(wordsSay(words, /\bble(?:e?d)|\bmov(?:e|es)/i)).toBe(said))
})
