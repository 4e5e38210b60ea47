/** Copies that two machines, a file manager or a merge leave in a casebook, and visits that stand in two files. */
import { describe, expect, it } from 'vitest'
import { memoryFolder } from '../../src/casebook/memory-folder.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { draftOf, horseText, practiceText, visitText } from '../yard/kit.ts'

const base = {
  'practice.md': practiceText,
  'juno/horse.md': horseText,
  'juno/2026-05-10.md': visitText('2026-05-10'),
}
const told = (files: Readonly<Record<string, string>>) =>
  readCasebook(memoryFolder({ ...base, ...files }), '2026-06-20').diagnostics

describe('a copy that a program left', () => {
  it.each([
    ['juno/horse (conflicted copy 2026-11-27).md', 'juno/horse.md'],
    ["juno/horse (Ilse's conflicted copy 2026-11-27).md", 'juno/horse.md'],
    ["practice (Ilse's conflicted copy).md", 'practice.md'],
    ['juno/2026-05-10 (Case Conflict).md', 'juno/2026-05-10.md'],
    ['juno/2026-05-10.sync-conflict-20261127-101112-ABCDEFG.md', 'juno/2026-05-10.md'],
    ['juno/2026-05-10_conflict-20261127-101112.md', 'juno/2026-05-10.md'],
    ['juno/2026-05-10 (1).md', 'juno/2026-05-10.md'],
    ['juno/2026-05-10 - Copy.md', 'juno/2026-05-10.md'],
    ['juno/horse copy.md', 'juno/horse.md'],
    ['juno/Copy of horse.md', 'juno/horse.md'],
    ['juno/2026-05-10.md.orig', 'juno/2026-05-10.md'],
    ['juno/horse.md~HEAD', 'juno/horse.md'],
    ['juno/horse_LOCAL_4711.md', 'juno/horse.md'],
    ['juno/~$2026-05-10.docx', 'juno/2026-05-10.md'],
  ])('%s is named, with the file it is of', (path, of) => {
    const found = told({ [path]: 'x' })
    expect(found).toMatchObject([{ code: 'copy', level: 'warning', file: path, fix: null }])
    expect(found[0]?.message).toContain(of)
    expect(found[0]?.advice).toMatch(/^(?:compare the two|close it there)/)
  })

  it('of what is not there is given its name back', () => {
    const path = 'juno/2026-06-01 (conflicted copy 2026-11-27).md'
    expect(told({ [path]: visitText('2026-06-01') })).toMatchObject([
      { code: 'copy', change: { kind: 'rename', from: path, to: 'juno/2026-06-01.md' } },
    ])
  })

  it('that holds passphrases or approvals is named as well', () => {
    const found = told({
      'passphrases.yaml': '',
      'passphrases (conflicted copy 2026-11-27).yaml': '',
      'approvals.txt': '',
      'approvals (1).txt': '',
    })
    expect(found.map(({ code }) => code)).toEqual(['copy', 'copy'])
  })

  it('is told of once for a whole folder', () => {
    const copy = "juno (Ilse's conflicted copy 2026-11-27)"
    expect(told({ [`${copy}/horse.md`]: horseText, [`${copy}/2026-05-10.md`]: 'x' })).toMatchObject([
      { code: 'copy', level: 'error', message: expect.stringContaining('is a copy of juno') },
    ])
  })

  it.each([
    'juno/2026-05-10-b.md',
    'juno/photos/lf (1).jpg',
    'juno/photos/lf copy.jpg',
    'bill (1).pdf',
    'notes (conflicted copy 2026-11-27).txt',
    'juno/horse.md~',
  ])('is not seen in %s', (path) => {
    expect(told({ [path]: visitText('2026-05-10', 80) }).filter(({ code }) => code === 'copy')).toEqual([])
  })
})

describe('what a merge left in a file', () => {
  const left =
    '---\nbefore:\n<<<<<<< HEAD\n  toe length: [90, 89, 88, 87]\n=======\n  toe length: [91, 89, 88, 87]\n>>>>>>> other\n---\n'

  it('is one error, at its first line', () => {
    expect(told({ 'juno/2026-06-01.md': left })).toMatchObject([
      { code: 'merge-left', level: 'error', line: 3, message: expect.stringContaining('Two versions') },
    ])
    expect(told({ 'juno/2026-06-01.md': visitText('2026-06-01').concat(left.slice(4)) })).toMatchObject([
      { code: 'merge-left', line: expect.any(Number) },
    ])
  })

  it('is not seen in a row of signs', () => {
    expect(
      told({ 'juno/2026-06-01.md': `${visitText('2026-06-01', 96)}<<<<<<< so far\n\nHeading\n=======\n` }),
    ).toEqual([])
  })
})

describe('a visit in two files', () => {
  const twice = (a: string, b: string) =>
    told({ 'juno/2026-06-20.md': a, 'juno/2026-06-20-b.md': b }).filter(({ code }) => code === 'visit-twice')

  it('of one day with nearly the same readings is named, with what differs', () => {
    const one = visitText('2026-06-20', 96)
    const other = one
      .replace('[96, ', '[97, ')
      .replace('  toe angle: [48,', '  width: {LF: 120}\n  toe angle: [48,')
    expect(twice(one, other)).toMatchObject([
      {
        file: 'juno/2026-06-20-b.md',
        line: 2,
        level: 'warning',
        message:
          'This visit is written in 2026-06-20.md as well. There and here differ: toe length LF before (96 mm, 97 mm) and width LF before (120 mm here alone).',
      },
    ])
  })

  it('that came from one draft of the phone is named whatever it reads, and on whatever day', () => {
    const { id } = draftOf()
    const from = (text: string) => text.replace('before:', `yard: ${id}-1\nbefore:`)
    const found = told({
      'juno/2026-06-01.md': from(visitText('2026-06-01', 96)),
      'juno/2026-06-20.md': from(visitText('2026-06-20', 99)),
    })
    expect(found.map(({ code }) => code)).toContain('visit-twice')
  })

  it('is not seen in a second visit of the day, nor in two visits of two days that read alike', () => {
    expect(twice(visitText('2026-06-20', 96), visitText('2026-06-20', 91))).toEqual([])
    expect(twice(visitText('2026-06-20', 96), '---\nbefore: {toe length: {LF: 96, RF: 95}}\n---\n')).toEqual(
      [],
    )
    const alike = told({
      'juno/2026-06-01.md': visitText('2026-06-01', 92),
      'juno/2026-06-20.md': visitText('2026-06-20', 92),
    })
    expect(alike.map(({ code }) => code)).not.toContain('visit-twice')
  })
})
