import { describe, expect, it } from 'vitest'
import { atomsOf } from '../../src/spoken/atoms.ts'
import { codeAt, numberAt } from '../../src/spoken/numbers.ts'
import { wordsOf } from '../../src/spoken/words.ts'

/** All numbers of a text, in order. */
function numbersOf(text: string): readonly number[] {
  const atoms = atomsOf(wordsOf(text))
  const found: number[] = []
  for (let at = 0; at < atoms.length; ) {
    const number = codeAt(atoms, at) === null ? numberAt(atoms, at) : null
    if (number) found.push(number.value)
    at = codeAt(atoms, at) ?? number?.end ?? at + 1
  }
  return found
}

describe('numbers as they are said', () => {
  it.each([
    ['ninety-eight', [98]],
    ['ninety eight', [98]],
    ['ninety, eight', [90, 8]],
    ['ninety eight ninety six', [98, 96]],
    ['a hundred and two', [102]],
    ['hundred and three', [103]],
    ['one hundred and one point five', [101.5]],
    ['a hundred and two and a half', [102.5]],
    ['two hundred and ten', [210]],
    ['three hundred and sixty-two', [362]],
    ['eleven hundred', [1100]],
    ['one oh four', [104]],
    ['one ten', [110]],
    ['one twenty-five', [125]],
    ['one, ten', [1, 10]],
    ['forty-four and a half', [44.5]],
    ['three and five eighths', [3.625]],
    ['three five eighths', [3.625]],
    ['three and three quarter inches', [3.75]],
    ['two and an eighth', [2.125]],
    ['three and three sixteenths', [3.1875]],
    ['a quarter inch', [0.25]],
    ['five eighths of an inch', [0.625]],
    ['half an inch', [0.5]],
    ['nine point eight centimetres', [9.8]],
    ['one point two five', [1.25]],
    ['fifty-one point five', [51.5]],
    ['thirty, thirty-one', [30, 31]],
    ['fifty one fifty', [51, 50]],
    ['98mm 9.8 9,8', [98, 9.8, 9.8]],
    ['3 5/8 in', [3.625]],
    ['3-5/8 in', [3.625]],
    ['3½ inches', [3.5]],
    ['1,100 pounds', [1100]],
    ['98, 96, 91 and 90', [98, 96, 91, 90]],
    ['zero, one, zero, two', [0, 1, 0, 2]],
  ])('%s', (text, values) => {
    expect(numbersOf(text)).toEqual(values)
  })

  it.each([
    'a quarter crack',
    'quarter past',
    'half way',
    'to the left',
    'won the race for it',
    'eighth of May',
    'five/eight',
  ])('%s is not taken for a fraction', (text) => {
    expect(numbersOf(text).filter((value) => !Number.isInteger(value))).toEqual([])
  })

  it.each([
    'oh one six three two nine six oh one two three',
    'oh one six three two, nine six oh, one two three',
    'oh seven seven double oh nine hundred, four five six',
    '01632 960 123',
    '0163 2960123',
    'four four seven one',
    '981000001234567',
  ])('%s is a code and holds no number', (text) => {
    expect(numbersOf(text)).toEqual([])
  })
})
