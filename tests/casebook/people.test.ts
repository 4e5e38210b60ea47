/** Who works in the practice, and who took the readings of a visit. */
import { describe, expect, it } from 'vitest'
import { readPractice } from '../../src/casebook/read.ts'
import { memoryFolder } from './memory-folder.ts'
import { readVisitBlock, told } from './read-one.ts'

const practiceWith = (people: string) =>
  `---\npractice: P\nowners: {abel: {name: Abel Moor}}\n${people}\n---\n`
const peopleOf = (people: string) => {
  const { practice, diagnostics } = readPractice(
    memoryFolder({ 'practice.md': practiceWith(people) }),
    '2026-06-01',
  )
  expect(diagnostics).toEqual([])
  return practice?.people
}
const by = (written: string, people = 'people: {ilse: {name: Ilse Brandt}, tom: Tom Ek, Ada: Ada Ek}') =>
  readVisitBlock(`by: ${written}\nbefore: {toe length: {LF: 98}}`, { practice: practiceWith(people) })

describe('people', () => {
  it('are nobody where practice.md does not say', () => {
    expect(peopleOf('units: mm')).toEqual([])
  })

  it.each([
    'people: [Ilse, Tom Ek]',
    'people:\n  - Ilse\n  - Tom Ek',
    'people:\n  - Ilse\n  - tom ek: Tom Ek',
  ])('%s: names alone', (people) => {
    expect(peopleOf(people)).toEqual([
      { id: 'ilse', name: 'Ilse' },
      { id: 'tom-ek', name: 'Tom Ek' },
    ])
  })

  it('have short names where wanted', () => {
    expect(peopleOf('people: {ilse: {name: Ilse Brandt}, Tom: Tom Ek}')).toEqual([
      { id: 'ilse', name: 'Ilse Brandt' },
      { id: 'tom', name: 'Tom Ek' },
    ])
  })

  it('may have a name in any script', () => {
    expect(peopleOf('people: [Zoë, 李]')).toEqual([
      { id: 'zoë', name: 'Zoë' },
      { id: '李', name: '李' },
    ])
  })
})

describe('by', () => {
  it.each([
    ['ilse', 'ilse'],
    ['Ilse', 'ilse'],
    ['Ilse Brandt', 'ilse'],
    ['tom ek', 'tom'],
    ['ADA', 'ada'],
  ])('%s: a person of the practice', (written, id) => {
    const read = by(written)
    expect(told(read)).toEqual([])
    expect(read.visit?.by).toBe(id)
  })

  it('is found by a first name that only one has', () => {
    expect(by('Tom', 'people: [Ilse Brandt, Tom Ek]').visit?.by).toBe('tom-ek')
    expect(told(by('Tom', 'people: [Tom Brandt, Tom Ek]'))).toEqual([
      'person-unknown juno/2026-01-12.md:2 "Tom" is not among the people of practice.md.',
    ])
  })

  it('must name one of them, so that every name is known to be hidden', () => {
    const read = by('Zoe', 'units: mm')
    expect(read.horse).toBeNull()
    expect(read.diagnostics.map(({ message, advice }) => [message, advice])).toEqual([
      ['"Zoe" is not among the people of practice.md.', 'add the name in practice.md: people: [Zoe]'],
    ])
  })

  it('is null where the visit does not say', () => {
    expect(readVisitBlock('before: {toe length: {LF: 98}}').visit?.by).toBeNull()
  })
})

describe('draft', () => {
  const draft = (line: string) => readVisitBlock(`${line}\nbefore: {toe length: {LF: 98}}`)

  it.each(['yes', 'true', 'Y'])('%s: the visit waits, and the check says so', (word) => {
    const read = draft(`draft: ${word}`)
    expect(told(read)).toEqual([
      'draft juno/2026-01-12.md:2 This visit is a draft: the pages of the practice alone show it.',
    ])
    expect(read.visit?.draft).toBe(true)
  })

  it('is no draft without the line, or with a no', () => {
    expect(draft('footing: soft').visit?.draft).toBe(false)
    expect(draft('draft: no').visit?.draft).toBe(false)
  })

  it.each(['draft:', 'draft: ~', 'draft: _', 'draft: ?'])('%s: still waits', (line) => {
    expect(draft(line).visit?.draft).toBe(true)
  })

  it('stops the horse where the answer cannot be read', () => {
    expect(draft('draft: later').horse).toBeNull()
  })
})
