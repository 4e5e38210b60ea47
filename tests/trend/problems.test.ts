import { describe, expect, it } from 'vitest'
import type { WrittenProblem } from '../../src/casebook/model.ts'
import { addDays } from '../../src/hoof/dates.ts'
import { type Foot, feet } from '../../src/hoof/feet.ts'
import { assess } from '../../src/trend/assess.ts'
import { buildHorse, type HorseSketch, practice, type VisitSketch } from './build-horse.ts'

const dayOf = (i: number) => addDays('2026-01-05', i * 35)
const assessed = (sketch: HorseSketch, asOf = '2026-12-31') => assess(buildHorse(sketch), practice(), asOf)
const problems = (sketch: HorseSketch, asOf?: string) => assessed(sketch, asOf).problems

const written = (
  text: string,
  about: WrittenProblem['about'],
  named: readonly Foot[] = ['LF'],
): WrittenProblem => ({ feet: named, text, about })
const angles = (values: readonly number[], foot: Foot = 'LF'): readonly VisitSketch[] =>
  values.map((value, i) => ({ date: dayOf(i), after: { 'toe-angle': { [foot]: value } } }))
const toes = { 'toe-angle': { LF: { low: 50, high: 54 }, RF: { low: 50, high: 54 } } }

describe('problems as written', () => {
  it('stand in their order, with what is known of each, and keep their words', () => {
    const found = problems({
      targets: toes,
      problems: [
        written('ring at the toe', { kind: 'grow-out', what: 'ring', place: 'toe' }),
        written('LF toe angle', { kind: 'measure', measure: 'toe-angle' }),
        written('LF flare', { kind: 'finding', what: 'flare', place: null }),
        written('afraid of the hose', { kind: 'words' }, feet),
      ],
      visits: [
        {
          date: dayOf(0),
          after: { 'toe-angle': 45, 'toe-length': 85 },
          findings: ['LF flare, medial quarter, 2', 'LF flare, lateral quarter, 1', 'RF flare, toe, 3'],
          growOut: ['LF ring, toe, 20', 'RF ring, toe, 20'],
        },
        { date: dayOf(1), findings: ['LF flare, medial quarter, 1'] },
      ],
    })
    expect(found.map(({ text, foot, from }) => [text, foot, from])).toEqual([
      ['ring at the toe', 'LF', 'written'],
      ['LF toe angle', 'LF', 'written'],
      ['LF flare', 'LF', 'written'],
      ['afraid of the hose', null, 'written'],
    ])
    expect(found[0]?.about).toMatchObject({ growOut: [{ foot: 'LF', feature: 'ring' }] })
    expect(found[1]?.about).toMatchObject({ trend: { foot: 'LF', measure: 'toe-angle' } })
    // The gravest grade of each visit that speaks of it, whatever the place where none was named.
    expect(found[2]?.about).toMatchObject({ course: [{ grade: 2 }, { grade: 1 }] })
    expect(found.map(({ closedOn }) => closedOn)).toEqual([null, null, null, null])
  })

  it('of several feet are of those of which something is known, else stand once by their name', () => {
    const visits = angles([45, 46])
    const about = { kind: 'measure', measure: 'toe-angle' } as const
    expect(problems({ visits, problems: [written('toes', about, feet)] }).map(({ foot }) => foot)).toEqual([
      'LF',
    ])
    const unread = { kind: 'measure', measure: 'sulcus-depth' } as const
    expect(problems({ visits, problems: [written('sulcus', unread, feet)] })).toMatchObject([
      { foot: 'LF', about: { trend: null }, closedOn: null },
    ])
  })

  it('keep the engine from choosing any', () => {
    const visits = angles([40, 41, 42, 43])
    const only = problems({ targets: toes, visits, problems: [written('words', { kind: 'words' })] })
    expect(only.map(({ from }) => from)).toEqual(['written'])
  })

  it('of a measure are closed by the first of the last readings in the band, once the level is there', () => {
    const about = { kind: 'measure', measure: 'toe-angle' } as const
    const targets = { 'toe-angle': { LF: { low: 50, high: null } } }
    const closedOn = (values: readonly number[]) =>
      problems({ targets, visits: angles(values), problems: [written('toe', about)] })[0]?.closedOn
    expect(closedOn([46, 48, 50.5, 52, 52, 52])).toBe(dayOf(2))
    expect(closedOn([46, 51, 49, 52, 52, 52, 52])).toBe(dayOf(3))
    expect(closedOn([46, 47, 48, 49])).toBeNull()
    // In the band by one reading is not there yet.
    expect(closedOn([44, 45, 46, 51])).toBeNull()
  })

  it('of a finding are closed by grade 0, and open again with the next grade', () => {
    const closedOn = (...grades: readonly number[]) =>
      problems({
        problems: [written('flare', { kind: 'finding', what: 'flare', place: 'toe' })],
        visits: grades.map((grade, i) => ({ date: dayOf(i), findings: [`LF flare, toe, ${grade}`] })),
      })[0]?.closedOn
    expect(closedOn(2, 1, 0)).toBe(dayOf(2))
    expect(closedOn(2, 0, 1)).toBeNull()
    expect(closedOn(2, 1)).toBeNull()
  })

  it('of what grows down are closed when all of its range is past', () => {
    const sketch: HorseSketch = {
      problems: [written('ring', { kind: 'grow-out', what: 'ring', place: null })],
      visits: [{ date: dayOf(0), after: { 'toe-length': 85 }, growOut: ['LF ring, toe, 70'] }],
    }
    const { growOut } = assessed(sketch)
    expect(growOut[0]?.state).toBe('grown out')
    expect(problems(sketch)[0]?.closedOn).toBe(growOut[0]?.latest)
    expect(problems(sketch, growOut[0]?.date ?? '')[0]?.closedOn).toBeNull()
  })

  it('are not closed while a foot is held, or gets worse again', () => {
    const about = { kind: 'measure', measure: 'toe-angle' } as const
    const visits = angles([52, 52, 52, 52])
    const held = [...visits.slice(0, 3), { ...visits[3], date: dayOf(3), findings: ['LF drainage, toe, 2'] }]
    const closed = (of: readonly VisitSketch[]) =>
      problems({ targets: toes, visits: of, problems: [written('toe', about)] }, dayOf(3))[0]?.closedOn
    expect(closed(visits)).toBe(dayOf(0))
    expect(closed(held)).toBeNull()
  })
})

describe('problems that the engine chooses', () => {
  it('are grave findings and those that got worse, the gravest first', () => {
    const found = problems({
      visits: [
        {
          date: dayOf(0),
          findings: ['RH flare, toe, 2', 'LF wall separation, toe, 3', 'LF ring, toe, 0', 'LH chip, toe, 1'],
        },
        { date: dayOf(1), findings: ['RF bruise, sole, 1', 'LF ring, toe, 1', 'LF wall separation, toe, 2'] },
      ],
    })
    expect(found.map(({ foot, from, text, about }) => [foot, from, text, about.kind])).toEqual([
      ['LF', 'chosen', null, 'finding'],
      ['RH', 'chosen', null, 'finding'],
      ['LF', 'chosen', null, 'finding'],
    ])
    expect(found.map(({ about }) => about.kind === 'finding' && about.what)).toEqual([
      'wall separation',
      'flare',
      'ring',
    ])
  })

  it('leave out what is gone, what is mild and still, and what a caution speaks of already', () => {
    const visits = (grade: number): readonly VisitSketch[] => [
      { date: dayOf(0), findings: ['LF flare, toe, 2', 'RF chip, toe, 1', `LH drainage, toe, ${grade}`] },
      { date: dayOf(1), findings: ['LF flare, toe, 0', 'RF chip, toe, 1'] },
    ]
    const { problems: chosen, cautions } = assessed({ visits: visits(2) })
    expect(cautions.some(({ code, standing }) => code === 'drainage' && standing)).toBe(true)
    expect(chosen).toEqual([])
  })

  it('then what is off target: what clearly moves before what does not, the furthest first', () => {
    const visits = Array.from(
      { length: 8 },
      (_, i): VisitSketch => ({
        date: dayOf(i),
        after: {
          'toe-angle': { LF: 40 + i, RF: 44, LH: 47, RH: 52 },
          'toe-length': { LF: 90, RF: 100 - 2 * i },
        },
      }),
    )
    const band = { low: 50, high: 54 }
    const long = { low: null, high: 70 }
    const { problems: found, trends } = assessed({
      targets: {
        'toe-angle': { LF: band, RF: band, LH: band, RH: band },
        'toe-length': { LF: long, RF: long },
      },
      visits,
    })
    const clear = trends.filter(({ isClear }) => isClear).map(({ foot, measure }) => `${foot} ${measure}`)
    expect(clear).toEqual(expect.arrayContaining(['LF toe-angle', 'RF toe-length']))
    expect(
      found.map(({ foot, about }) => `${foot} ${about.kind === 'measure' ? about.measure : about.kind}`),
    ).toEqual(['RF toe-length', 'LF toe-angle', 'LF toe-length', 'RF toe-angle', 'LH toe-angle'])
  })

  it('are five at the most, and none of a horse that is well', () => {
    const places = ['toe', 'medial toe', 'lateral toe', 'medial quarter', 'lateral quarter', 'bars']
    const findings = places.map((place) => `LF flare, ${place}, 2`)
    expect(problems({ visits: [{ date: dayOf(0), findings }] })).toHaveLength(5)
    expect(problems({ visits: angles([45, 46, 45]) })).toEqual([])
    expect(problems({ visits: [] })).toEqual([])
  })
})
