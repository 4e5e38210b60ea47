import { describe, expect, it } from 'vitest'
import { readCasebook, readPractice } from '../../src/casebook/read.ts'
import { memoryFolder } from './memory-folder.ts'
import { readOne, told } from './read-one.ts'

const visits = { '2026-01-12': '---\nbefore: {toe length: [98, 96, 95, 94]}\n---\n' }
const read = (block: string, parts = {}) => readOne({ horse: `---\n${block}\n---\n`, visits, ...parts })
const sound = (block: string, parts = {}) => {
  const result = read(block, parts)
  expect(told(result)).toEqual([])
  return result.horse
}
const juno = 'name: Juno\nowner: abel\n'

describe('horse.md', () => {
  it('reads a horse whole', () => {
    expect(
      sound(
        `${juno}kind: cob\nsex: mare\nborn: 2014\nheight: 14.2 hh\nweight: 505 kg\nstarted: 2026-01-12\nhistory: [Shod in front, no injuries]\nvet: {involved: yes, diagnosis: old laminitis}\nconsent: {Owner-Site: yes, portfolio: true, photos: on, given: 2026-01-12}\nalias: The grey cob\nprivate words: [Moor Farm]\ntargets: {toe angle: [50, 54]}\ntrim limits: {sole: {LF: flat}, most per trim: 1/16 in}`,
      ),
    ).toMatchObject({
      id: 'juno',
      name: 'Juno',
      owner: 'abel',
      kind: 'cob',
      sex: 'mare',
      born: '2014',
      heightCm: 147.32,
      weightKg: 505,
      started: '2026-01-12',
      history: ['Shod in front', 'no injuries'],
      vet: { involved: true, diagnosis: 'old laminitis' },
      consent: { ownerSite: true, portfolio: true, photos: true, given: '2026-01-12' },
      alias: 'The grey cob',
      privateWords: ['Moor Farm'],
      targets: { 'toe-angle': { LF: { low: 50, high: 54 }, RH: { low: 50, high: 54 } } },
      trimLimits: { sole: { LF: 'flat' }, mostPerTrim: 1.5875 },
      file: 'juno/horse.md',
    })
  })

  it('holds its defaults beside what is absent: no consent, no vet, no targets', () => {
    expect(sound(juno)).toMatchObject({
      kind: null,
      heightCm: null,
      history: [],
      vet: { involved: false, diagnosis: null },
      consent: { ownerSite: false, portfolio: false, photos: false, given: null },
      privateWords: [],
      targets: {},
      trimLimits: { sole: {}, mostPerTrim: null },
    })
  })

  it.each(['no', 'No', 'false', 'off', 'n', '~'])('portfolio: %s is no consent', (word) => {
    expect(sound(`${juno}consent: {portfolio: ${word}}`)?.consent.portfolio).toBe(false)
  })

  it('takes an answer that was forgotten for none, and says so', () => {
    const result = read(`${juno}consent: {portfolio: }`)
    expect(told(result)).toEqual(['not-filled-in juno/horse.md:4 Portfolio holds nothing.'])
    expect(result.horse?.consent.portfolio).toBe(false)
  })

  it('takes no unclear word for consent', () => {
    const result = read(`${juno}consent: {portfolio: maybe, photo: yes}`)
    expect(told(result)).toEqual([
      'value-form juno/horse.md:4 Portfolio: "maybe" cannot be read.',
      'key-unknown juno/horse.md:4 "photo" is not a key of consent.',
    ])
    expect(result.horse).toBeNull()
  })

  it('keeps names that look like something else', () => {
    expect(sound('name: No\nowner: abel')?.name).toBe('No')
    expect(sound('name: 007\nowner: abel')?.name).toBe('007')
    expect(sound('name: 2014-05-02\nowner: abel')?.name).toBe('2014-05-02')
  })

  it('reads the day of a hand-over, which is a day that has been, of a horse that has an owner', () => {
    expect(sound(juno)?.ownerSince).toBeNull()
    expect(sound(`${juno}Owner-Since: 2026-05-01`)?.ownerSince).toBe('2026-05-01')
    const said = (block: string) => told(read(block))
    expect(said(`${juno}owner since: May`)).toEqual([
      'value-form juno/horse.md:4 Owner since: "May" cannot be read.',
    ])
    expect(said(`${juno}owner since: 2026-07-01`)).toEqual([
      "date-in-future juno/horse.md:4 The hand-over, 2026-07-01, lies in the future: until then the owner's page shows no letter and no photograph.",
    ])
    expect(said(`${juno}born: 2019\nowner since: 2018-05-01`)).toContain(
      'owner-since-early juno/horse.md:5 The hand-over, 2018-05-01, lies before the birth of the horse, 2019.',
    )
    expect(said('name: Juno\nowner since: 2026-05-01')).toContain(
      'owner-since-alone juno/horse.md:3 A day of hand-over is given, but no owner.',
    )
  })

  it('needs a name', () => {
    expect(told(read('owner: abel'))).toEqual(['key-missing juno/horse.md: Name is missing.'])
  })

  it('knows its owner, by id or by the name that was meant', () => {
    expect(read('name: Juno\nowner: Abel Moor').diagnostics[0]).toMatchObject({
      code: 'owner-unknown',
      line: 3,
      column: 8,
      message: '"Abel Moor" is no owner in practice.md.',
      expected: 'one of: abel',
      fix: 'abel',
    })
    const nobody = read('name: Juno')
    expect(told(nobody)).toEqual([
      'owner-missing juno/horse.md: No owner is named, so this horse is on no owner site.',
    ])
    expect(nobody.horse?.owner).toBeNull()
  })

  it('asks for an alias and a day where there is consent', () => {
    expect(told(read(`${juno}consent: {portfolio: yes}`))).toEqual([
      'consent-undated juno/horse.md:4 Consent is noted without the day on which it was given.',
      'alias-missing juno/horse.md:4 The portfolio may show this horse, but it has no alias.',
    ])
  })

  it('has units for height and weight', () => {
    expect(read(`${juno}height: 14.2\nweight: 505`).diagnostics.map((one) => one.fix)).toEqual([
      '14.2 hh',
      '505 kg',
    ])
    expect(read(`${juno}height: 14.5 hh`).diagnostics[0]?.expected).toContain(
      'a hand has 4 inches, so .0 to .3',
    )
    expect(told(read(`${juno}weight: 5050 kg\nheight: 14.2 in`))).toEqual([
      'weight-unlikely juno/horse.md:4 A weight of 5050 kg is unlikely for a horse.',
      'height-unlikely juno/horse.md:5 A height of 36 cm is unlikely for a horse.',
    ])
  })
})

describe('targets', () => {
  const targets = (text: string, parts = {}) => sound(`${juno}targets: {${text}}`, parts)?.targets

  it('are a band for all feet or per foot, open sides as ~', () => {
    expect(targets('toe length: [~, 84]')).toMatchObject({
      'toe-length': { LF: { low: null, high: 84 }, RH: { low: null, high: 84 } },
    })
    expect(targets('Toe-Angle: {LF: [50, 54], rh: [52, ~]}')).toEqual({
      'toe-angle': { LF: { low: 50, high: 54 }, RH: { low: 52, high: null } },
    })
    expect(targets('toe angle: [[50, 54], [50, 54], ~, [52, 56]]')).toEqual({
      'toe-angle': { LF: { low: 50, high: 54 }, RF: { low: 50, high: 54 }, RH: { low: 52, high: 56 } },
    })
  })

  it('are in any unit, and may be of derived measures', () => {
    expect(
      targets(
        'toe length: [8 cm, 3 3/8 in], heel balance: [-2, 2 mm], frog ratio: [0.67, ~], heel gap: [~, 5°]',
      ),
    ).toMatchObject({
      'toe-length': { LF: { low: 80, high: 85.725 } },
      'heel-balance': { LF: { low: -2, high: 2 } },
      'frog-ratio': { LF: { low: 0.67, high: null } },
      'heel-gap': { LF: { low: null, high: 5 } },
    })
  })

  it('are read from words too', () => {
    expect(targets('toe angle: 50 to 54, heel angle: 45-50')).toMatchObject({
      'toe-angle': { LF: { low: 50, high: 54 } },
      'heel-angle': { LF: { low: 45, high: 50 } },
    })
  })

  it('begin with the lower side', () => {
    expect(read(`${juno}targets: {toe angle: [54, 50]}`).diagnostics[0]).toMatchObject({
      code: 'target-reversed',
      message: 'The target of toe angle begins at 54 and ends below it, at 50.',
      fix: '[50, 54]',
    })
  })

  it('are doubted in the wrong unit, once', () => {
    expect(told(read(`${juno}targets: {toe length: [8, 8.4]}`))).toEqual([
      'target-unlikely juno/horse.md:4 The target of toe length lies outside all that is likely.',
    ])
  })

  it.each([
    'toe angle: 52',
    'toe angle: [50, 52, 54]',
    'toe angle: [~, ~]',
    'toe angle: [fifty, 54]',
    'toe angle: {LF: 50}',
  ])('%s is no band', (text) => {
    const [first] = read(`${juno}targets: {${text}}`).diagnostics
    expect(first?.level).toBe('error')
    expect(['value-form', 'four-feet']).toContain(first?.code)
  })
})

describe('practice.md', () => {
  const practice = (block: string) => readOne({ practice: `---\n${block}\n---\nWe work slowly.\n`, visits })

  it('lets the horses be checked without it, but for what needs its units', () => {
    const result = practice('practice: P\nunits: m\nowners: {abel: Abel Moor}')
    expect(result.horse).toBeNull()
    expect(told(result)).toEqual(['value-form practice.md:3 Units: "m" cannot be read.'])
  })

  it('refuses an owner id that cannot be one', () => {
    expect(
      practice('practice: P\nowners: {Abel Moor: {name: Abel}, abel: {nam: Abel}}').diagnostics.map((one) => [
        one.code,
        one.fix,
      ]),
    ).toEqual([
      ['owner-id', 'abel-moor'],
      ['key-unknown', 'name'],
    ])
  })

  it('holds its defaults beside what is absent', () => {
    const read = readPractice(
      memoryFolder({ 'practice.md': '---\npractice: P\n---\nWe work slowly.\n' }),
      '2026-06-01',
    )
    expect(read).toEqual({
      practice: {
        name: 'P',
        units: 'mm',
        language: 'en',
        trimCycleDays: 35,
        feetOrder: ['LF', 'RF', 'LH', 'RH'],
        owners: [],
        people: [],
        localRules: null,
        contacts: { practice: null, vet: { name: null, phone: null } },
        portfolio: { time: 'weeks', hidesPractice: false, holdBackDays: 0 },
        terms: {},
        body: 'We work slowly.',
      },
      diagnostics: [],
      horseIds: [],
    })
  })

  it('reads what is said', () => {
    const text =
      '---\nPractice: P\nunits: inches\nlanguage: German\ntrim cycle: 6 weeks\nfeet: [rf, lf, rh, lh]\nowners: {abel: Abel Moor, ines: {name: Ines, language: en}}\nlocal rules: Ask first.\ncontacts: {practice: 01632 960000, vet: {name: Dr Penrose, phone: +44 1632 960001}}\nportfolio: {days: days, practice name: hidden, hold back: 6 weeks}\nterms: {Chalk-Toe: crumbling horn, seedy toe: mine}\n---\n'
    expect(readPractice(memoryFolder({ 'practice.md': text }), '2026-06-01').practice).toEqual({
      name: 'P',
      units: 'in',
      language: 'de',
      trimCycleDays: 42,
      feetOrder: ['RF', 'LF', 'RH', 'LH'],
      owners: [
        { id: 'abel', name: 'Abel Moor', language: null },
        { id: 'ines', name: 'Ines', language: 'en' },
      ],
      people: [],
      localRules: 'Ask first.',
      contacts: { practice: '01632 960000', vet: { name: 'Dr Penrose', phone: '+44 1632 960001' } },
      portfolio: { time: 'days', hidesPractice: true, holdBackDays: 42 },
      terms: { 'chalk toe': 'crumbling horn' },
      body: '',
    })
  })

  it('is missing with a message, and the horses are checked all the same', () => {
    const read = readCasebook(
      memoryFolder({ 'juno/horse.md': '---\nname: Juno\nowner: abel\ncolour: bay\n---\n' }),
      '2026-06-01',
    )
    expect(read.casebook).toBeNull()
    expect(read.diagnostics.map((one) => one.message)).toEqual([
      '"colour" is not a key of a horse.',
      'There is no practice.md in this folder.',
      'Juno has no visit yet.',
    ])
  })
})
