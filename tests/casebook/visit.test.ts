/** A visit as a practitioner writes it, with what is forgiven. */
import { describe, expect, it } from 'vitest'
import { readOne, readVisitBlock, told } from './read-one.ts'

const sound = (block: string, parts = {}) => {
  const read = readVisitBlock(block, parts)
  expect(told(read)).toEqual([])
  return read.visit
}

const values = (block: string, parts = {}) =>
  Object.fromEntries(
    (sound(block, parts)?.readings ?? []).map(({ stage, foot, measure, value }) => [
      `${stage} ${measure} ${foot}`,
      value,
    ]),
  )

describe('readings', () => {
  it('stand in a list of four, in any unit, with ~ for a foot not read', () => {
    expect(
      values('before:\n  toe length:   [98, 9.6 cm, 3 5/8 in, ~]\n  toe angle:    [44, 45 deg, 48°, 47.5]'),
    ).toEqual({
      'before toe-length LF': 98,
      'before toe-length RF': 96,
      'before toe-length LH': 92.075,
      'before toe-angle LF': 44,
      'before toe-angle RF': 45,
      'before toe-angle LH': 48,
      'before toe-angle RH': 47.5,
    })
  })

  it('stand in a map of feet, in any case and in words', () => {
    expect(values('after:\n  heel medial: {lh: 30, Right hind: 31, near-fore: 32}')).toEqual({
      'after heel-medial LH': 30,
      'after heel-medial RH': 31,
      'after heel-medial LF': 32,
    })
  })

  it('stand below each other', () => {
    expect(
      values(
        'before:\n  toe length:\n    LF: 98,5\n    RF: 3 5/8"\n  width:\n    - 120\n    - 121\n    -\n    - null',
      ),
    ).toEqual({
      'before toe-length LF': 98.5,
      'before toe-length RF': 92.075,
      'before width LF': 120,
      'before width RF': 121,
    })
  })

  it('have measure names with spaces or hyphens, in any case', () => {
    expect(
      Object.keys(values('before: {Toe-Length: {LF: 98}, HEEL ANGLE: {LF: 40}, groove_apex: {LF: 9}}')),
    ).toEqual(['before toe-length LF', 'before heel-angle LF', 'before groove-apex LF'])
  })

  it('take a bare number in the unit of the practice', () => {
    const practice = '---\npractice: P\nunits: in\nowners: {abel: Abel}\n---\n'
    expect(values('before: {toe length: [3 5/8, 3.75, 95 mm, 9.5 cm]}', { practice })).toEqual({
      'before toe-length LF': 92.075,
      'before toe-length RF': 95.25,
      'before toe-length LH': 95,
      'before toe-length RH': 95,
    })
  })

  it('stand twice for a foot that was read twice, and count as their mean', () => {
    const twice = (block: string, parts = {}) =>
      Object.fromEntries(
        (sound(block, parts)?.readings ?? []).map((one) => [one.foot, [one.value, one.twice]]),
      )
    expect(twice('before: {toe length: [98 and 97, 96, 98 mm & 9.6 cm, ~]}')).toEqual({
      LF: [97.5, [98, 97]],
      RF: [96, undefined],
      LH: [97, [98, 96]],
    })
    expect(
      twice('before: {toe length: {LF: 9.8 and 9.6 cm, RF: 98 mm and 97 mm, LH: 9.8 cm and 97}}'),
    ).toEqual({
      LF: [97, [98, 96]],
      RF: [97.5, [98, 97]],
      LH: [97.5, [98, 97]],
    })
    expect(twice('before: {toe angle: {LF: 44 and 45 deg, RF: "44° AND 46°"}}')).toEqual({
      LF: [44.5, [44, 45]],
      RF: [45, [44, 46]],
    })
    const practice = '---\npractice: P\nunits: in\nowners: {abel: Abel}\n---\n'
    const inches = { LF: [(92.075 + 88.9) / 2, [92.075, 88.9]] }
    expect(twice('before: {toe length: {LF: 3 5/8 and 3 1/2 in}}')).toEqual(inches)
    expect(twice('before: {toe length: {LF: 3 5/8" and 3 1/2"}}')).toEqual(inches)
    expect(twice('before: {toe length: {LF: 3 5/8 & 3 1/2}}', { practice })).toEqual(inches)
  })

  it('that stand twice are both held against what can be, and against each other', () => {
    const read = readVisitBlock('before: {toe angle: {LF: 44 and 95, RF: 44 and 54}}')
    expect(told(read)).toEqual([
      'reading-impossible juno/2026-01-12.md:2 A toe angle of 95° at LF cannot be.',
      'readings-apart juno/2026-01-12.md:2 The two readings of toe angle at RF, 44° and 54°, are 10° apart.',
    ])
    expect(read.diagnostics.map(({ column, expected }) => [column, expected])).toEqual([
      [33, '30 to 75°'],
      [41, 'two readings of one foot within 8.4°'],
    ])
  })

  it('follow the order of feet that practice.md or the visit sets', () => {
    const practice = '---\npractice: P\nfeet: [RF, LF, RH, LH]\nowners: {abel: Abel}\n---\n'
    expect(values('before: {toe length: [91, 92, 93, 94]}', { practice })).toMatchObject({
      'before toe-length RF': 91,
    })
    const visit = sound(
      'before: {toe length: [91, 92, 93, 94]}\ncomfort: {digital pulse: [0, 1, 2, 3]}\nfeet: [LH, RH, LF, RF]',
      { practice },
    )
    expect(visit?.readings[0]).toMatchObject({ foot: 'LH', value: 91 })
    expect(visit?.comfort.digitalPulse).toEqual({ LH: 0, RH: 1, LF: 2, RF: 3 })
  })

  it('may be zero where a depth can be', () => {
    expect(values('before: {sulcus depth: [0, 0, 2, 1]}')['before sulcus-depth LF']).toBe(0)
  })
})

describe('findings', () => {
  const findings = (lines: string) => sound(`findings:\n  LF:\n${lines}`)?.findings

  it('are what, where, grade and then any words', () => {
    expect(
      findings('    - separation, toe, 2, opened about 5 mm, bleeding\n    - flare, medial quarter, 1'),
    ).toEqual([
      { foot: 'LF', what: 'wall separation', place: 'toe', grade: 2, words: 'opened about 5 mm, bleeding' },
      { foot: 'LF', what: 'flare', place: 'medial quarter', grade: 1, words: null },
    ])
  })

  it.each([
    ['Flares, Medial-Quarter, 2', 'flare', 'medial quarter', 2],
    ['cracks, quarter medial, severe', 'crack', 'medial quarter', 3],
    ['nail holes, toe, 0', 'nail hole', 'toe', 0],
    ['bruises, sole, mild', 'bruise', 'sole', 1],
    ['bruising of old, sole, 1', null, null, null],
    ['abscess, inner heel, resolved', 'abscess', 'medial heel', 0],
    ['old abscess, inner heel, 1', 'old abscess', 'medial heel', 1],
    ['Seedy toe, toe, 3', 'white-line disease', 'toe', 3],
    ['white line disease, toe, 3', 'white-line disease', 'toe', 3],
    ['pus, heel bulbs, 2', 'drainage', 'heel bulbs', 2],
    ['puncture, 2', 'puncture', 'whole foot', 2],
    ['abscess, severe', 'abscess', 'whole foot', 3],
    ['chalk toe, toe, 1', 'chalk toe', 'toe', 1],
    ['Contracted Heel, whole foot, 2', 'contracted heels', 'whole foot', 2],
    ['thrush, sulcus central, grade 3', 'thrush', 'central sulcus', 3],
  ])('%s', (line, what, place, grade) => {
    const read = readVisitBlock(`findings: {LF: ["${line}"]}`)
    if (what === null) expect(read.diagnostics[0]?.code).toBe('finding-unknown')
    else expect(read.visit?.findings).toEqual([{ foot: 'LF', what, place, grade, words: null }])
  })

  it('read a line in brackets as the one finding it is, and a single line without a dash', () => {
    expect(sound('findings: {LF: [flare, toe, 2], RF: "thrush, frog, 1"}')?.findings).toEqual([
      { foot: 'LF', what: 'flare', place: 'toe', grade: 2, words: null },
      { foot: 'RF', what: 'thrush', place: 'frog', grade: 1, words: null },
    ])
  })

  it('put the caret under the very word that is not known', () => {
    const read = readVisitBlock('findings:\n  LF:\n    - flare, medial quartr, 2')
    expect(read.diagnostics[0]).toMatchObject({
      code: 'place-unknown',
      line: 4,
      column: 14,
      endColumn: 27,
      sourceLine: '    - flare, medial quartr, 2',
      message: '"medial quartr" is not a known place on the foot.',
      fix: 'medial quarter',
    })
  })
})

describe('what is followed, felt and seen', () => {
  it('reads grow-out lines, any word for what', () => {
    expect(
      sound(
        'grow-out:\n  LF:\n    - Nail holes, toe, 42 mm\n    - the dark ring, medial quarter, 1 5/8 in\n    - ring, toe, 12,5',
      )?.growOut,
    ).toEqual([
      { foot: 'LF', what: 'nail holes', place: 'toe', distance: 42 },
      { foot: 'LF', what: 'the dark ring', place: 'medial quarter', distance: 41.275 },
      { foot: 'LF', what: 'ring', place: 'toe', distance: 12.5 },
    ])
  })

  it('reads comfort, body and stance', () => {
    const visit = sound(
      'comfort:\n  lameness: {LF: 1, by: Vet}\n  obel: II\n  landing: [Heel, flat, ~, toe]\n  digital-pulse: [none, 1, clear, 3]\n  surfaces: {Sand: easy, deep gravel: Careful}\n  hoof testers: {LF: [toe, 2], RF: sole 1, LH: 0}\n  painkillers: 2026-01-10\n  onset: 2026-01-08\nbody: {weight: "1,100 lb", condition: 5.5, crest: 2}\nstance: {LF: toe-out, RF: Square, LH: "leaning back, since Tuesday, worse", RH: toe-in}\ncleared: {LF: 2026-01-11, all: 2026-01-02}',
    )
    expect(visit?.comfort).toEqual({
      lameness: { LF: 1 },
      lamenessBy: 'vet',
      obel: 2,
      landing: { LF: 'heel', RF: 'flat', RH: 'toe' },
      digitalPulse: { LF: 0, RF: 1, LH: 2, RH: 3 },
      surfaces: { sand: 'easy', 'deep gravel': 'careful' },
      hoofTesters: {
        LF: { place: 'toe', grade: 2 },
        RF: { place: 'sole', grade: 1 },
        LH: { place: 'whole foot', grade: 0 },
      },
      painkillers: '2026-01-10',
      onset: '2026-01-08',
    })
    expect(visit?.bodyState.weightKg).toBeCloseTo(498.95, 2)
    expect(visit?.bodyState).toMatchObject({ condition: 5.5, crest: 2 })
    expect(visit?.stance).toEqual({
      LF: { position: 'toe-out', words: null },
      RF: { position: 'straight', words: null },
      LH: { position: 'leaning back', words: 'since Tuesday, worse' },
      RH: { position: 'toe-in', words: null },
    })
    expect(visit?.cleared).toEqual({ feet: { LF: '2026-01-11' }, all: '2026-01-02' })
  })

  it('takes one stance for all feet, and none that the scale does not know', () => {
    expect(Object.keys(sound('stance: leaning back')?.stance ?? {})).toEqual(['LF', 'RF', 'LH', 'RH'])
    expect(readVisitBlock('stance: {LF: leening back, RF: odd}').diagnostics).toMatchObject([
      { code: 'value-form', fix: 'leaning back' },
      { code: 'value-form', fix: null },
    ])
  })

  it('refuses an all-clear from after the visit, and one that is no day', () => {
    expect(readVisitBlock('cleared: {LF: 2026-12-30}').diagnostics[0]?.code).toBe('cleared-late')
    expect(readVisitBlock('cleared: yes').diagnostics[0]?.code).toBe('value-form')
  })

  it('reads care as plain lines, also with a colon in them', () => {
    expect(
      sound('findings: {LF: [flare, toe, 1]}\ncare:\n  - Pick out LF daily\n  - Left fore: keep dry\n  -')
        ?.care,
    ).toEqual(['Pick out LF daily', 'Left fore: keep dry'])
    expect(sound('findings: {LF: [flare, toe, 1]}\ncare: Keep dry')?.care).toEqual(['Keep dry'])
  })

  it('keeps text that YAML would take for something else', () => {
    const visit = sound('footing: no\nfindings: {LF: [flare, toe, 1]}\ncare: [on, off, yes, 1e3]')
    expect(visit?.footing).toBe('no')
    expect(visit?.care).toEqual(['on', 'off', 'yes', '1e3'])
  })
})

describe('dates', () => {
  const next = (text: string) => sound(`findings: {LF: [flare, toe, 1]}\nnext visit: ${text}`)?.nextVisit

  it.each([
    ['in 5 weeks', '2026-02-16'],
    ['5 weeks', '2026-02-16'],
    ['in a week', '2026-01-19'],
    ['in six weeks', '2026-02-23'],
    ['35 days', '2026-02-16'],
    ['in 2 months', '2026-03-14'],
    ['2026-02-20', '2026-02-20'],
    ['~', null],
  ])('next visit %s', (text, expected) => {
    expect(next(text)).toBe(expected)
  })

  it('takes the date from the file name where the file gives none', () => {
    expect(sound('findings: {LF: [flare, toe, 1]}')?.date).toBe('2026-01-12')
  })

  it.each([
    ['2026-02-30', null],
    ['2026-1-12', '2026-01-12'],
    ['2026/01/12', '2026-01-12'],
    ['12.1.2026', '2026-01-12'],
    ['12 January 2026', '2026-01-12'],
    ['January 12, 2026', '2026-01-12'],
    // Read as dates, these would not be those of the file's name.
    ['31/01/2026', null],
    ['13.1.2026', null],
    ['2026-01-12T10:00:00Z', '2026-01-12'],
    ['01/12/2026', null],
    ['yesterday', null],
  ])('%s is no date', (text, fix) => {
    const [first] = readVisitBlock(`date: ${text}`).diagnostics
    expect(first).toMatchObject({ code: 'value-form', line: 2, column: 7, fix })
    expect(first?.expected).toBe('a date that exists, year-month-day: 2026-03-14')
  })

  it('orders two visits of one day by their letter', () => {
    const visit = '---\nfindings: {LF: [flare, toe, 1]}\n---\n'
    const { horse, diagnostics } = readOne({
      visits: { '2026-01-12-b': visit, '2026-01-12': visit, '2026-01-11': visit },
    })
    expect(diagnostics).toEqual([])
    expect(horse?.visits.map(({ id, date }) => [id, date])).toEqual([
      ['2026-01-11', '2026-01-11'],
      ['2026-01-12', '2026-01-12'],
      ['2026-01-12-b', '2026-01-12'],
    ])
  })
})

describe('photos', () => {
  const files = { 'juno/photos/lf-side.jpg': 'x' }

  it('name a file that lies in the horse folder', () => {
    expect(
      sound(
        'photos:\n  - {file: photos/lf-side.jpg, foot: lf, view: Lateral, stage: before, caption: On arrival}',
        { files },
      )?.photos,
    ).toEqual([
      {
        file: 'photos/lf-side.jpg',
        foot: 'LF',
        view: 'lateral',
        stage: 'before',
        caption: 'On arrival',
        landmarks: null,
      },
    ])
    expect(sound('photos: {file: ./photos/lf-side.jpg}', { files })?.photos).toEqual([
      { file: 'photos/lf-side.jpg', foot: null, view: 'other', stage: null, caption: null, landmarks: null },
    ])
  })

  it('may name a picture twice where it shows two feet from the front', () => {
    const fronts = ['LF', 'RF'].map((foot) => `{file: photos/lf-side.jpg, foot: ${foot}, view: front}`)
    expect(sound(`photos: [${fronts.join(', ')}]`, { files })?.photos.map(({ foot }) => foot)).toEqual([
      'LF',
      'RF',
    ])
  })

  it.each([
    ['lf-side.jpg', 'photos/lf-side.jpg'],
    ['photos/lf-sid.jpg', 'photos/lf-side.jpg'],
    ['photos/tail.jpg', null],
  ])('%s is missing', (file, fix) => {
    const read = readVisitBlock(`photos: [{file: ${file}}]`, { files })
    expect(read.diagnostics[0]).toMatchObject({
      code: 'photo-missing',
      message: `There is no picture "${file}" in the horse's folder.`,
      expected: 'photos/lf-side.jpg',
      fix,
    })
  })
})

describe('all problems at once', () => {
  it('reports every one of a file, errors before warnings, each with its place', () => {
    const read = readVisitBlock(
      'footng: soft\nbefore:\n  toe length: [98, ninety, 96, 9.5]\n  toe angel: [44, 45, 46, 47]\nafter:\n  toe angle: [440, 45, 46, 47]',
    )
    expect(told(read)).toEqual([
      'key-unknown juno/2026-01-12.md:2 "footng" is not a key of a visit.',
      'value-form juno/2026-01-12.md:4 Toe length RF: "ninety" cannot be read.',
      'measure-unknown juno/2026-01-12.md:5 "toe angel" is not a measure.',
      'reading-impossible juno/2026-01-12.md:7 A toe angle of 440° at LF cannot be. It looks like a lost decimal point.',
      'reading-unlikely juno/2026-01-12.md:4 A toe length of 9.5 mm at RH is unlikely. It looks like centimetres.',
    ])
    expect(read.horse).toBeNull()
  })
})
