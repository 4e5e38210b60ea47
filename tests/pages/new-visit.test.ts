/** What a new visit asks for, and how much is typed until it is complete. */
import { describe, expect, it } from 'vitest'
import { readCasebook } from '../../src/casebook/read.ts'
import { startVisit } from '../../src/pages/starter/visit.ts'
import { assess } from '../../src/trend/assess.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { formatIn } from '../english.ts'

const practice = '---\npractice: Sandpiper\nowners:\n  kestrel: {name: Ada Kestrel}\n---\n'
const profile = (problems = '') => `---\nname: Juno\nowner: kestrel\nstarted: 2026-01-12\n${problems}---\n`
const visits = (texts: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(texts).map(([day, text]) => [`juno/${day}.md`, `---\n${text}---\n`]))

/** A new visit of a day, and what the reader says of a text that stands in its place. */
function newVisit(day: string, files: Readonly<Record<string, string>>, problems = '') {
  const all = { 'practice.md': practice, 'juno/horse.md': profile(problems), ...files }
  const { casebook, diagnostics } = readCasebook(memoryFolder(all), day)
  const [juno] = casebook?.horses ?? []
  if (!casebook || !juno) throw new Error(JSON.stringify(diagnostics))
  const text = startVisit(juno, assess(juno, casebook.practice, day), casebook.practice, day, formatIn('mm'))
  const check = (filled: string) =>
    readCasebook(memoryFolder({ ...all, [`juno/${day}.md`]: filled }), day).diagnostics.filter(
      ({ code }) => code !== 'no-visits',
    )
  return { text, check }
}

/** The block without its remarks. */
const asked = (text: string) =>
  text
    .split('\n---')[0]
    ?.split('\n')
    .slice(1)
    .map((line) => line.replace(/\s*#.*$/, ''))
    .filter((line) => line !== '')

describe('a first visit', () => {
  it('asks for readings, findings, something to follow and comfort, on few lines', () => {
    const { text, check } = newVisit('2026-03-14', {})
    expect(asked(text)).toEqual([
      'date: 2026-03-14',
      'before:',
      '  toe length: [_, _, _, _]',
      '  toe angle: [_, _, _, _]',
      '  heel medial: [_, _, _, _]',
      '  heel lateral: [_, _, _, _]',
      'after:',
      '  toe length: [_, _, _, _]',
      'findings:',
      '  LF: [_, _, _]',
      'grow-out:',
      '  LF: [_, _, _]',
      'comfort: {landing: [_, _, _, _], digital pulse: [_, _, _, _]}',
      'care: _',
      'next visit: in 5 weeks',
    ])
    expect([...new Set(check(text).map(({ level }) => level))]).toEqual(['gap'])
  })

  it('asks for what the case is about', () => {
    const problems =
      'problems: [RH frog ratio, fores sulcus depth, LF thrush, "RF crack, lateral quarter", LF nail holes]\n'
    const { text, check } = newVisit('2026-03-14', {}, problems)
    expect(asked(text)).toEqual(
      expect.arrayContaining([
        '  frog length: {RH: _}',
        '  frog width: {RH: _}',
        '  sulcus depth: {LF: _, RF: _}',
        '    - thrush, _, _',
        // Nothing is followed yet, so it is asked for as a finding.
        '    - nail hole, _, _',
        '  RF: [crack, lateral quarter, _]',
      ]),
    )
    expect([...new Set(check(text).map(({ level }) => level))]).toEqual(['gap'])
  })
})

const row = (values: string) => `before:\n  toe length: ${values}\n`

describe('a later visit', () => {
  it('asks for what two of the last three read, not for what was read once', () => {
    const { text } = newVisit(
      '2026-06-01',
      visits({
        '2026-01-12': `${row('[98, 96, 92, 91]')}  sole depth: [12, 12, 13, 13]\n`,
        '2026-02-16': `${row('[97, 96, 92, 91]')}  heel medial: {RH: 31}\n`,
        '2026-03-23': `${row('{LF: 96, RF: 95}')}  heel medial: {RH: 32}\n`,
        '2026-04-27': `${row('[95, 95, 91, 90]')}  width: [120, 121, 115, 116]\n`,
      }),
    )
    expect(asked(text)).toEqual([
      'date: 2026-06-01',
      'before:',
      '  toe length: [_, _, _, _]',
      '  heel medial: {RH: _}',
      'care: _',
      'next visit: in 5 weeks',
    ])
    expect(text).toContain('toe length: [_, _, _, _]         # 27 Apr 26, before: LF 95 mm')
  })

  it('asks about findings that are open, and names those that nobody spoke of lately', () => {
    const finding = (line: string) => `findings:\n  LF:\n    - ${line}\n`
    const files = visits({
      '2026-01-12': `${finding('ring, toe, 1')}    - drainage, toe, 1\n  RH:\n    - chip, toe, 1\n`,
      '2026-02-16': finding('flare, toe, 2'),
      '2026-03-23': finding('thrush, central sulcus, 2'),
      '2026-04-27': finding('flare, toe, 0'),
    })
    const { text } = newVisit('2026-06-01', files, 'problems: [RH chip]\n')
    // A stop stands on the drainage until somebody says that it is gone; the chip is what the case is about.
    expect(asked(text)).toEqual(
      expect.arrayContaining([
        '    - drainage, toe, _',
        '    - thrush, central sulcus, _',
        '  RH: [chip, toe, _]',
      ]),
    )
    expect(text).toContain('\n# open still, not spoken of lately: LF ring, toe, 1 (12 Jan 26)\n')
    expect(asked(text)?.join('\n')).not.toMatch(/ring|flare/)
  })

  it('stays on a screen after forty visits of a horse with much on its record', () => {
    const names = ['flare', 'ring', 'chip', 'bruise', 'thrush', 'crack', 'dish', 'scar', 'heat', 'flat sole']
    const files = Object.fromEntries(
      Array.from({ length: 40 }, (_, index) => {
        const day = new Date(Date.UTC(2022, 0, 1 + index * 35)).toISOString().slice(0, 10)
        const lines = (['LF', 'RF', 'LH', 'RH'] as const).map(
          (foot, at) => `  ${foot}:\n    - ${names[(index + at) % names.length]}, toe, 1\n`,
        )
        return [`juno/${day}.md`, `---\n${row('[98, 96, 92, 91]')}findings:\n${lines.join('')}---\n`]
      }),
    )
    const { text, check } = newVisit('2025-12-01', files)
    expect(text.split('\n').length).toBeLessThan(40)
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThan(400)
    expect(check(text).filter(({ level }) => level === 'error')).toEqual([])
  })
})

/** Signs put in and signs taken out on the shortest way from one text to the other. */
function strokes(from: string, to: string): number {
  let above = Array.from({ length: to.length + 1 }, () => 0)
  for (const sign of from) {
    const row = [0]
    for (let at = 1; at <= to.length; at++) {
      row.push(to[at - 1] === sign ? (above[at - 1] ?? 0) + 1 : Math.max(above[at] ?? 0, row[at - 1] ?? 0))
    }
    above = row
  }
  const kept = above.at(-1) ?? 0
  return from.length - kept + to.length - kept
}

/** Puts the values in for the blanks, in turn. */
function fill(text: string, values: readonly string[]): string {
  const [head = '', ...rest] = text.split(/(?<=[[ ])_(?=[\],} ]|$)/m)
  // The first blank stands in the remark that says what a blank is.
  return rest.reduce(
    (filled, part, index) => filled + (index === 0 ? '_' : (values[index - 1] ?? '?')) + part,
    head,
  )
}

describe('a complete visit of four feet', () => {
  const common = (tens: string, angle: string) =>
    `before:\n  toe length: [${tens}8, ${tens}6, ${tens}2, ${tens}1]\n  toe angle: [4${angle}, 4${angle}, 48, 47]\n  heel medial: [31, 32, 30, 36]\n  heel lateral: [30, 31, 30, 31]\nafter:\n  toe length: [90, 89, 86, 85]\n`
  const judged = (grade: number, distance: number) =>
    `findings:\n  LF:\n    - thrush, central sulcus, ${grade}\n  RH:\n    - flare, lateral quarter, ${grade}\ngrow-out:\n  LF:\n    - nail holes, toe, ${distance} mm\ncomfort:\n  landing: [toe, flat, heel, heel]\n  digital pulse: [1, 1, 0, 0]\n`
  const past = visits({
    '2026-01-12': common('9', '5') + judged(3, 30),
    '2026-02-16': common('9', '5').replace('98, 96', '97, 97') + judged(2, 40),
    '2026-03-23': common('9', '6') + judged(2, 50),
  })
  const problems = 'problems: [RH heel balance, fores toe angle, LF thrush, LF nail holes]\n'

  it('takes fewer than 150 strokes, deletions counted', () => {
    const { text, check } = newVisit('2026-04-27', past, problems)
    const filled = fill(text, [
      ...['97', '96', '91', '90', '47', '46', '48', '48', '31', '32', '30', '35', '30', '31', '31', '31'],
      ...['90', '88', '86', '84'],
      ...['1', '1', '60', 'flat', 'flat', 'heel', 'heel', '0', '0', '0', '0'],
      'Pick out LF daily',
    ])
    expect(check(filled)).toEqual([])
    expect(filled).not.toContain('[_')
    expect(strokes(text, filled)).toBeLessThan(150)
  })

  it('takes fewer than 150 strokes the first time too, where horse.md says what the case is about', () => {
    const { text, check } = newVisit('2026-01-12', {}, problems)
    const filled = fill(text, [
      ...['98', '96', '92', '91', '45', '45', '48', '47', '31', '32', '30', '36', '30', '31', '30', '31'],
      ...['90', '89', '86', '85'],
      ...[
        'frog',
        '2',
        'toe',
        '1',
        'nail holes',
        'toe',
        '42',
        'flat',
        'flat',
        'heel',
        'heel',
        '1',
        '1',
        '0',
        '0',
      ],
      'Pick out LF daily',
    ])
    expect(check(filled)).toEqual([])
    expect(strokes(text, filled)).toBeLessThan(150)
  })
})
