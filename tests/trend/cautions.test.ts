import { describe, expect, it } from 'vitest'
import { addDays } from '../../src/hoof/dates.ts'
import { feet } from '../../src/hoof/feet.ts'
import { assess } from '../../src/trend/assess.ts'
import { type Caution, type CautionCode, cautionCodes } from '../../src/trend/assessment.ts'
import { graveDiagnosis } from '../../src/trend/cautions/body.ts'
import { wordsSay } from '../../src/trend/cautions/found.ts'
import { buildHorse, type HorseSketch, practice } from './build-horse.ts'
import { type SignRow, type Sketch, signTable } from './sign-table/index.ts'

const dayOf = (i: number) => addDays('2026-01-05', i * 35)

function assessed(visits: readonly Sketch[], horse: Omit<HorseSketch, 'visits'> = {}, asOf?: string) {
  const dated = visits.map((visit, i) => ({ date: dayOf(i), ...visit }))
  return assess(buildHorse({ ...horse, visits: dated }), practice(), asOf ?? dated.at(-1)?.date ?? '')
}
const cautionsOf = (...of: Parameters<typeof assessed>) => assessed(...of).cautions
const standing = (cautions: readonly Caution[]): readonly CautionCode[] =>
  cautions.filter((one) => one.standing).map(({ code }) => code)

const named = (row: SignRow) =>
  `${row.code}: ${JSON.stringify(row.horse?.vet?.diagnosis ?? row.raises.at(-1))}`

describe('the table of signs', () => {
  it('has every code', () =>
    expect([...new Set(signTable.map(({ code }) => code))].toSorted()).toEqual(
      cautionCodes.filter((code) => code !== 'visit-overdue').toSorted(),
    ))

  it.each(signTable.map((row) => [named(row), row] as const))('%s', (_, row) => {
    const { code, level, raises, shortOf, ends, keeps = [], horse, holds, wide } = row
    const raised = cautionsOf(raises, horse).find((one) => one.code === code && one.standing)
    expect(raised, 'raised').toBeDefined()
    expect(raised?.level).toBe(level)
    expect(raised?.foot === null).toBe(wide ?? false)
    const stands = (visits: readonly Sketch[]) =>
      cautionsOf(visits, horse).some((one) => one.code === code && one.standing)
    for (const visits of shortOf) expect(stands(visits), `short of it: ${JSON.stringify(visits)}`).toBe(false)
    for (const visit of keeps)
      expect(stands([...raises, visit]), `kept by ${JSON.stringify(visit)}`).toBe(true)
    expect(stands([...raises, {}]), 'silence').toBe(true)
    expect(stands([...raises, {}, {}, {}]), 'long silence').toBe(true)
    for (const visit of ends)
      expect(stands([...raises, visit]), `ended by ${JSON.stringify(visit)}`).toBe(false)
    const held = assessed(raises, horse).heldFeet
    expect(held.includes('LF') || held.includes('LH')).toBe(holds ?? false)
    expect(assessed([...raises, {}, {}], horse).heldFeet).toEqual(held)
  })

  it.each(signTable.filter(({ level }) => level !== 'mind').map((row) => [named(row), row] as const))(
    '%s, cleared by a vet',
    (_, { code, raises, horse }) => {
      const after = raises.length
      const clearing = (day: string): Sketch => ({ cleared: { all: day } })
      expect(standing(cautionsOf([...raises, clearing(dayOf(after))], horse))).not.toContain(code)
      // An all-clear from before it was found clears nothing.
      expect(standing(cautionsOf([...raises, clearing('2025-12-01')], horse))).toContain(code)
    },
  )
})

describe('a stop', () => {
  it('reads lower and stands, and says so', () => {
    const [first] = cautionsOf([{ comfort: { lameness: { LF: 4 } } }, { comfort: { lameness: { LF: 1 } } }])
    expect(first).toMatchObject({
      code: 'lameness-severe',
      facts: { grade: 4 },
      since: dayOf(0),
      date: dayOf(1),
      isLower: true,
      standing: true,
    })
  })

  it('is gone by the judge who found it, or by a vet, not by another', () => {
    const vets = { comfort: { lameness: { LF: 4 }, lamenessBy: 'vet' } }
    const by = (lamenessBy: string | null) => ({ comfort: { lameness: { LF: 0 }, lamenessBy } })
    expect(standing(cautionsOf([vets, by(null)]))).toContain('lameness-severe')
    expect(standing(cautionsOf([vets, by('practitioner')]))).toContain('lameness-severe')
    expect(standing(cautionsOf([vets, by('vet')]))).not.toContain('lameness-severe')
  })

  it('that a vet found is not gone because another saw it too', () => {
    const by = (lamenessBy: string | null, grade: number) => ({
      comfort: { lameness: { LF: grade }, lamenessBy },
    })
    expect(standing(cautionsOf([by('vet', 4), by(null, 4), by(null, 0)]))).toContain('lameness-severe')
  })

  it('is not gone by a grade judged under a painkiller that a later visit tells of', () => {
    const visits: readonly Sketch[] = [
      { comfort: { lameness: { LF: 4 } } },
      { comfort: { lameness: { LF: 0 } } },
      { comfort: { painkillers: '2026-02-08' } },
    ]
    expect(standing(cautionsOf(visits))).toContain('lameness-severe')
  })

  it('of heat with lameness does not hang on who judged last', () => {
    const vets: Sketch = { comfort: { lameness: { LF: 2 }, lamenessBy: 'vet' } }
    const owners: Sketch = {
      findings: ['LF heat, coronet, 1'],
      comfort: { lameness: { LF: 0 }, lamenessBy: 'owner' },
    }
    expect(standing(cautionsOf([vets, owners]))).toContain('heat-with-lameness')
  })

  it('is cleared foot by foot, and over a pair or the horse only by all of its feet', () => {
    const pulses = { comfort: { digitalPulse: { LF: 2, RF: 2 } } }
    const cleared = (...some: ('LF' | 'RF')[]): Sketch => ({
      cleared: { feet: Object.fromEntries(some.map((foot) => [foot, dayOf(1)])) },
    })
    expect(standing(cautionsOf([pulses, cleared('LF')]))).toContain('pulse-pair')
    expect(standing(cautionsOf([pulses, cleared('LF', 'RF')]))).not.toContain('pulse-pair')
  })

  it('comes again when a visit after the all-clear finds it again', () => {
    const drained: Sketch = { findings: ['LF drainage, toe, 1'] }
    const cautions = cautionsOf([drained, { cleared: { feet: { LF: dayOf(1) } } }, drained])
    expect(cautions.filter(({ code }) => code === 'drainage')).toMatchObject([
      { since: dayOf(2), standing: true },
      { since: dayOf(0), standing: false },
    ])
  })

  it('holds the feet that it is about, in a pair both, in the horse all four', () => {
    expect(assessed([{ findings: ['LF abscess, sole, 3'] }]).heldFeet).toEqual(['LF'])
    expect(assessed([{ comfort: { digitalPulse: { LH: 2, RH: 2 } } }]).heldFeet).toEqual(['LH', 'RH'])
    expect(assessed([{ comfort: { obel: 2 } }]).heldFeet).toEqual(feet)
  })

  it('leaves no target met: the position waits, and so does any date', () => {
    const target = { low: 50, high: 54 }
    const toe = (values: readonly [number, number, number], more: Sketch) => {
      const [first, second, third] = values.map((value) => ({ after: { 'toe-angle': value } }))
      return assessed([first ?? {}, second ?? {}, { ...third, ...more }], {
        targets: { 'toe-angle': { LF: target } },
      }).trends.find(({ measure }) => measure === 'toe-angle')
    }
    const positionOf = (more: Sketch) => toe([52, 52, 52], more)?.position
    expect(positionOf({})).toBe('on target')
    expect(positionOf({ findings: ['LF drainage, toe, 1'] })).toBe('held')
    expect(positionOf({ findings: ['RF drainage, toe, 1'] })).toBe('on target')
    expect(positionOf({ comfort: { lameness: { LF: 3 } } })).toBe('held')
    expect(positionOf({ comfort: { lameness: { LF: 2 } } })).toBe('on target')
    const off = toe([40, 41, 42], { findings: ['LF drainage, toe, 1'] })
    expect(off).toMatchObject({ position: 'off target', forecast: null })
    expect(toe([40, 41, 42], {})?.forecast).not.toBeNull()
  })
})

describe('silence', () => {
  it('is counted, and the day on which it was last spoken of is kept', () => {
    const [drainage] = cautionsOf([
      { findings: ['LH drainage, toe, 2'] },
      { findings: ['LH drainage, toe, 1'] },
      {},
      {},
    ])
    expect(drainage).toMatchObject({
      code: 'drainage',
      since: dayOf(0),
      date: dayOf(1),
      silentVisits: 2,
      standing: true,
    })
  })

  it('joins what two visits said: heat at one, lameness at the next', () => {
    const heat: Sketch = { findings: ['LF heat, toe, 1'] }
    expect(standing(cautionsOf([heat, { comfort: { lameness: { LF: 1 } } }]))).toContain('heat-with-lameness')
    expect(
      standing(
        cautionsOf([{ comfort: { digitalPulse: { LF: 2 } } }, { comfort: { digitalPulse: { RF: 2 } } }]),
      ),
    ).toContain('pulse-pair')
  })
})

describe('families', () => {
  it('say a matter once, at its gravest', () => {
    expect(standing(cautionsOf([{ comfort: { digitalPulse: { LF: 3, RF: 3 } } }]))).not.toContain(
      'pulse-clear',
    )
    expect(standing(cautionsOf([{ before: { 'sole-depth': 6 } }]))).toEqual(['sole-depth-critical'])
    expect(standing(cautionsOf([{ body: { condition: 9 } }]))).toEqual(['condition-very-high'])
  })
  it('come back when the graver one is over', () =>
    expect(standing(cautionsOf([{ body: { condition: 8 } }, { body: { condition: 7 } }]))).toEqual([
      'condition-high',
    ]))
})

describe('a finding', () => {
  it('gone from the whole foot is gone from every place', () =>
    expect(
      standing(
        cautionsOf([{ findings: ['LF thrush, frog, 3'] }, { findings: ['LF thrush, whole foot, 0'] }]),
      ),
    ).toEqual([]))
  it('written twice counts at its gravest', () =>
    expect(standing(cautionsOf([{ findings: ['LF abscess, sole, 0', 'LF abscess, sole, 2'] }]))).toEqual([
      'abscess',
    ]))
})

describe("a vet's diagnosis", () => {
  it.each([
    ['laminitis of both fore feet, raised insulin', { named: 'laminitis', isPast: false }],
    ['acute laminitis, old abscess healed', { named: 'laminitis', isPast: false }],
    ['old abscess, laminitis now', { named: 'laminitis', isPast: false }],
    ['abscess 2024, healed', { named: 'abscess', isPast: true }],
    ['fracture ruled out', { named: 'fracture', isPast: true }],
    ['no laminitis', { named: 'laminitis', isPast: true }],
    ['12 year old pony with laminitis', { named: 'laminitis', isPast: false }],
    ['infection not yet healed', { named: 'infection', isPast: false }],
    ['flexural deformity of the right coffin joint', null],
    ['old strain of the hock, sound', null],
    ['no history of laminitis', { named: 'laminitis', isPast: true }],
    ['laminitis (resolved)', { named: 'laminitis', isPast: true }],
    ['ruled out: laminitis, abscess', { named: 'laminitis', isPast: true }],
    ['white line disinfected daily', null],
    ['P3 has dropped', { named: 'sinking', isPast: false }],
    ['broken pedal bone', { named: 'fracture', isPast: false }],
    ['lamanitis', { named: 'laminitis', isPast: false }],
    ...[
      'acute laminitis without rotation',
      'laminitis no rotation',
      'laminitis, no improvement',
      'laminitis, not responding to treatment',
      'laminitis, no longer acute',
      'laminitis, insulin negative',
      'laminitis cannot be ruled out',
      'laminitis could not be excluded',
      'laminitis - yet to be ruled out',
      'acute on old laminitis',
      'old laminitis, now acute again',
      'laminitis, resolved 2020, back since March',
      'recurrent laminitis, previous episode 2023',
      'laminitis in an old pony',
      'laminitis, previously sound',
      'Laminitis, horse recovered from colic',
    ].map((text): [string, { named: string; isPast: boolean }] => [
      text,
      { named: 'laminitis', isPast: false },
    ]),
    ['abscess, no drainage', { named: 'abscess', isPast: false }],
    ['abscess not fully healed', { named: 'abscess', isPast: false }],
    ['abscess, partly healed', { named: 'abscess', isPast: false }],
    ['fracture of the pedal bone, not displaced', { named: 'fracture', isPast: false }],
  ])('%s', (text, found) => expect(graveDiagnosis(text)).toEqual(found))

  it('stands for a horse that nobody has visited yet', () => {
    const vet = {
      involved: true,
      diagnosis: 'acute laminitis',
      name: null,
      phone: null,
      date: '2026-01-02',
      feet: [],
    }
    const { cautions, heldFeet } = assessed([], { vet }, '2026-01-05')
    expect(cautions).toMatchObject([
      { code: 'vet-diagnosis', level: 'stop', standing: true, date: '2026-01-02' },
    ])
    expect(heldFeet).toEqual(feet)
    const undated = assessed([], { vet: { ...vet, date: null } }, '2026-01-05')
    expect(undated.cautions).toMatchObject([{ code: 'vet-diagnosis', date: '2026-01-05', visit: null }])
  })

  it('is covered by an all-clear of its day or later, on its feet', () => {
    const vet = {
      involved: true,
      diagnosis: 'abscess',
      name: null,
      phone: null,
      date: '2026-01-02',
      feet: ['LH' as const],
    }
    const clearedOn = (day: string) => cautionsOf([{}, { cleared: { feet: { LH: day } } }], { vet })
    expect(standing(clearedOn('2026-01-20'))).toEqual([])
    expect(standing(clearedOn('2026-01-01'))).toEqual(['vet-diagnosis'])
    expect(assessed([{}], { vet }).heldFeet).toEqual(['LH'])
  })
})

describe('other ways', () => {
  it('a flat sole said in horse.md stands at the latest visit', () => {
    const cautions = cautionsOf([{}, {}], {
      trimLimits: { sole: { LF: 'flat', RF: 'cupped' }, mostPerTrim: null },
    })
    expect(cautions).toMatchObject([{ code: 'sole-flat', foot: 'LF', date: dayOf(1), standing: true }])
  })

  it('heels lowered much are one caution a foot, of the heel that lost more', () => {
    const before = { 'heel-medial': 40, 'heel-lateral': 40 }
    expect(cautionsOf([{ before, after: { 'heel-medial': 33, 'heel-lateral': 32 } }])).toMatchObject([
      { code: 'heels-lowered-much', facts: { measure: 'heel-lateral', step: -8, limit: 6 } },
    ])
  })

  it('a tetanus vaccination within 24 months leaves nothing to ask', () => {
    const wound: Sketch = { findings: ['LF puncture, coronet, 1'] }
    expect(standing(cautionsOf([wound], { tetanus: '2024-02-01' }))).not.toContain('tetanus-not-covered')
    expect(standing(cautionsOf([wound], { tetanus: '2024-01-01' }))).toContain('tetanus-not-covered')
  })

  it('a horse that was unwilling before and is cleared is no news', () => {
    const unwilling: Sketch = { comfort: { surfaces: { stones: 'unwilling' } } }
    expect(standing(cautionsOf([unwilling, { cleared: { all: dayOf(1) } }, unwilling]))).toEqual([])
  })
})

describe('an overdue visit', () => {
  const one = [{ nextVisit: '2026-02-02' }]
  it('is said from the fifteenth day past the planned one', () => {
    expect(standing(cautionsOf(one, {}, '2026-02-16'))).toEqual([])
    expect(cautionsOf(one, {}, '2026-02-17')).toMatchObject([
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
        body: { condition: 7, crest: 4 },
        comfort: { lameness: { LF: 5 } },
        findings: ['RH swelling, coronet, 1'],
      },
    ])
    expect(cautions.filter((one) => one.standing).map(({ level }) => level)).toEqual([
      'stop',
      'vet',
      'vet',
      'mind',
    ])
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
