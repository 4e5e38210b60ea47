import { describe, expect, it } from 'vitest'
import { finderOf } from '../../src/identity/finder.ts'
import { type HorseIdentity, identifiersOf } from '../../src/identity/identifiers.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { fold } from '../../src/identity/words.ts'
import { findDates } from '../../src/identity/written-dates.ts'

const contacts = { practice: null, vet: { name: null, phone: null } }

const own = ownWords(['Frog width and toe length'], [{ says: (n: number) => `May be ${n}` }])
const horse = (name: string, more: Partial<HorseIdentity> = {}): HorseIdentity => ({
  id: 'h1x',
  name,
  owner: null,
  vet: { name: null, phone: null },
  privateWords: [],
  files: [],
  dates: [],
  ...more,
})
const finds = (name: string, text: string, more: Partial<HorseIdentity> = {}) =>
  finderOf(identifiersOf([horse(name, more)], { owners: [], people: [], contacts }, own).identifiers)
    .find(text)
    .map((found) => found.text)

describe('identifiers', () => {
  it('are whole words: a name within a word is none', () => {
    expect(finds('Rosa', 'Rosacea, Rosa and rosary')).toEqual(['Rosa'])
  })

  it('stand out beside digits, signs and underscores', () => {
    expect(finds('Juno', 'img_juno2.jpg, /JUNO/, juno-lf, "juno"')).toEqual(['juno', 'JUNO', 'juno', 'juno'])
  })

  it('are searched for as a page holds them: no control character, and none that turns text, is in it', () => {
    for (const name of ['Ju\u0007no', '\u001bJuno\u009b', 'Ju\u202eno', 'Ju\u2066no\u2069'])
      expect(finds(name, 'so Juno stood'), name).toEqual(['Juno'])
  })

  it('are found with any accents, ligatures and width', () => {
    expect(finds('Søren Æsir', 'Soren Aesir, SØREN ÆSIR, ＳＯＲＥＮ æsir')).toContain('Soren Aesir')
    expect(fold('Ｚoë')).toBe('zoe')
    expect(fold('Straße')).toBe('strasse')
  })

  it('of several words are found with other signs between, in one word, and by each rare part', () => {
    const found = finds('Marlow Quist', 'marlow-quist; MarlowQuist; Marlow\n  Quist; old Quist')
    expect(found).toEqual(expect.arrayContaining(['marlow-quist', 'MarlowQuist', 'Marlow\n  Quist', 'Quist']))
  })

  it('are found when the possessive lost its apostrophe', () => {
    expect(finds('Juno', 'Junos frog')).toEqual(['Junos'])
  })

  it('that are everyday words are found by their capital, and listed', () => {
    expect(finds('May', 'it may be; May was lame; MAY')).toEqual(['May', 'MAY'])
    const { exceptions } = identifiersOf([horse('May')], { owners: [], people: [], contacts }, own)
    expect(exceptions).toContainEqual({
      kind: 'name of a horse',
      text: 'May',
      reason: 'everyday word, searched with its capital',
    })
  })

  it('that the tool itself prints are everyday words too', () => {
    expect(finds('Frog', 'the frog, Frog')).toEqual(['Frog'])
  })

  it('of an everyday id are found as part of a path only', () => {
    const text = 'star/index.html, a star, class="star", href="star", ../star/x, 1/2 star'
    expect(finds('Quill', text, { id: 'star' })).toEqual(['star', 'star', 'star'])
  })

  it('of a picture are its whole name, and its stem where that tells something', () => {
    expect(finds('Quill', 'IMG_4711 and img-4711.jpg', { files: ['IMG_4711.jpg'] })).toEqual(
      expect.arrayContaining(['IMG_4711', 'img-4711.jpg']),
    )
    expect(finds('Quill', 'frog and frog.jpg', { files: ['frog.jpg', 'lf-hock.jpg', 'P3.jpg'] })).toEqual([])
  })

  it('name parts that are everyday words are listed, never silent', () => {
    const { exceptions } = identifiersOf(
      [horse('Old Quist of Ty', { id: 'quist-1' })],
      { owners: [], people: [], contacts },
      own,
    )
    expect(exceptions.map(({ text, reason }) => `${text}: ${reason}`)).toEqual([
      'old (Old Quist of Ty): everyday word, searched with its capital',
      'ty (Old Quist of Ty): two letters, searched with its capital',
    ])
  })
})

describe('written dates', () => {
  it.each([
    ['2026-03-14', ['2026-03-14']],
    ['20260314', ['2026-03-14']],
    ['2026/3/14', ['2026-03-14']],
    ['14 March 2026', ['2026-03-14']],
    ['14th of March, 2026', ['2026-03-14']],
    ['14 Mar 26', ['2026-03-14']],
    ['14-Mar-2026', ['2026-03-14']],
    ['March 14th, 2026', ['2026-03-14']],
    ['Mar. 14 2026', ['2026-03-14']],
    ['14/03/2026', ['2026-03-14']],
    ['3/14/26', ['2026-03-14']],
    ['3/4/2026', ['2026-04-03', '2026-03-04']],
  ])('reads %j', (text, dates) => {
    expect(findDates(`on ${text}, so`).flatMap((found) => found.dates)).toEqual(dates)
  })

  it('reads a day without a year and a month without a day', () => {
    expect(findDates('on 14 March')[0]).toMatchObject({ monthDay: '03-14', dates: [] })
    expect(findDates('on May 3rd')[0]).toMatchObject({ monthDay: '05-03' })
    expect(findDates('in March 2026')[0]).toMatchObject({ month: '2026-03', monthDay: null })
  })

  it.each(['0.20260314', '2 may do', '1.5.2', 'M12.5,3.2L14.1,9', '2026-13-45', '3 5/8 in', '3.14.15'])(
    'reads no date in %j',
    (text) => {
      expect(findDates(text)).toEqual([])
    },
  )
})
