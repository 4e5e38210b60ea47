/** What a case is about, as a practitioner writes it. */
import { describe, expect, it } from 'vitest'
import { readOne, told } from './read-one.ts'

const read = (problems: string, growOut = '') =>
  readOne({
    horse: `---\nname: Juno\nowner: abel\n${problems}\n---\n`,
    visits: {
      '2026-01-12': `---\nfooting: soft\nstance: [toe-out, ~, ~, ~]\n---\n`,
      '2026-02-16': `---\nstance: [toe-out, ~, ~, ~]\n${growOut}\n---\n`,
    },
  })

const sound = (problems: string, growOut = '') => {
  const result = read(problems, growOut)
  expect(told(result)).toEqual([])
  return result.horse?.problems
}
const one = (line: string, growOut = '') => sound(`problems:\n  - ${line}`, growOut)?.[0]

const all = ['LF', 'RF', 'LH', 'RH']

describe('problems', () => {
  it('are none where horse.md does not say', () => {
    expect(sound('kind: cob')).toEqual([])
  })

  it('keep their order and their words', () => {
    expect(
      sound(
        'problems:\n  - RH heel balance\n  - fores toe angle\n  - LF thrush\n  - LF nail holes\n  - will not stand for the smith',
        'grow-out: {LF: "nail holes, toe, 20 mm"}',
      ),
    ).toEqual([
      { feet: ['RH'], text: 'RH heel balance', about: { kind: 'measure', measure: 'heel-balance' } },
      { feet: ['LF', 'RF'], text: 'fores toe angle', about: { kind: 'measure', measure: 'toe-angle' } },
      { feet: ['LF'], text: 'LF thrush', about: { kind: 'finding', what: 'thrush', place: null } },
      { feet: ['LF'], text: 'LF nail holes', about: { kind: 'grow-out', what: 'nail holes', place: null } },
      { feet: all, text: 'will not stand for the smith', about: { kind: 'words' } },
    ])
  })

  it.each([
    ['all heel gap', all],
    ['heel gap', all],
    ['both hinds: heel gap', ['LH', 'RH']],
    ['Left fore Heel-Gap', ['LF']],
    ['near fore and RH, heel gap', ['LF', 'RH']],
    ['LF, RF heel gap', ['LF', 'RF']],
    ['LF/RF heel gap', ['LF', 'RF']],
    ['heel gap RH', ['RH']],
    ['heel gap, both fores', ['LF', 'RF']],
    ['heel gaps on the right hind', ['RH']],
    ['RH: heel gap', ['RH']],
  ])('%s: names its feet', (line, feet) => {
    expect(one(line)).toEqual({ feet, text: line, about: { kind: 'measure', measure: 'heel-gap' } })
  })

  it.each([
    ['LF thrush, central sulcus', 'thrush', 'central sulcus'],
    ['LF thrush in the central sulcus', 'thrush', 'central sulcus'],
    ['LF thrush, central sulcus, 2', 'thrush', 'central sulcus'],
    ['LF inner quarter flare', 'flare', 'medial quarter'],
    ['LF seedy toe', 'white-line disease', null],
    ['LF chalk toe', 'chalk toe', null],
    ['LF abscesses', 'abscess', null],
  ])('%s: a finding, and its place', (line, what, place) => {
    expect(one(line)?.about).toEqual({ kind: 'finding', what, place })
  })

  it('are of what grows out where the visits follow it at that foot', () => {
    const followed = 'grow-out: {LF: ["nail hole, toe, 20 mm", "old burn, lateral quarter, 30 mm"]}'
    expect(one('LF nail holes, toe', followed)?.about).toEqual({
      kind: 'grow-out',
      what: 'nail hole',
      place: 'toe',
    })
    expect(one('RH nail holes', followed)?.about).toEqual({ kind: 'finding', what: 'nail hole', place: null })
    expect(one('nail holes at the medial heel', followed)?.about.kind).toBe('finding')
    expect(one('RH old burns', followed)?.about).toEqual({ kind: 'grow-out', what: 'old burn', place: null })
    expect(one('LF old burn', '')?.about).toEqual({ kind: 'words' })
  })

  it('stand in any form of a list', () => {
    const feet = (problems: string) => sound(problems)?.map((problem) => [problem.feet, problem.about.kind])
    const two = [
      [['RH'], 'measure'],
      [['LF'], 'finding'],
    ]
    expect(feet('problems: [RH heel balance, LF thrush]')).toEqual(two)
    expect(feet('problems:\n  - RH: heel balance\n  - "LF thrush"')).toEqual(two)
    expect(feet('problems:\n  RH: heel balance\n  LF: thrush')).toEqual(two)
    expect(feet('problems:\n  RH: [heel balance]\n  LF:\n    - thrush')).toEqual(two)
    expect(feet('problems: RH heel balance')).toEqual(two.slice(0, 1))
  })

  it.each([
    'LF balance',
    'sulcus',
    'heel',
    'LH chronic thrush',
    'RF stumbles on gravel',
    'forging',
    'left him sore',
  ])('%s: free words, of which nothing is said', (line) => {
    expect(one(line)?.about).toEqual({ kind: 'words' })
  })

  it('are told of where one stands twice, and the first counts', () => {
    const result = read('problems: [LF thrush, RH heel gap, "left fore: thrush"]')
    expect(told(result)).toEqual([
      'written-twice juno/horse.md:4 The problem "left fore: thrush" is written twice.',
    ])
    expect(result.horse?.problems.map(({ text }) => text)).toEqual(['LF thrush', 'RH heel gap'])
  })

  it('name what was nearly right', () => {
    const result = read(
      'problems:\n  - RH heel balence\n  - LF old brun\n  - hidns toe angle',
      'grow-out: {LF: "old burn, toe, 20 mm"}',
    )
    expect(result.diagnostics.map(({ level, message, fix }) => [level, message, fix])).toEqual([
      ['warning', '"heel balence" is neither a measure nor a finding.', 'RH heel balance'],
      ['warning', '"old brun" is neither a measure nor a finding.', 'LF old burn'],
      ['warning', '"hidns" in the problem "hidns toe angle" is not a foot.', 'hinds toe angle'],
    ])
  })
})
