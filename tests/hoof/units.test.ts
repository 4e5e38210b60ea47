import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  fromMillimetres,
  parseAngle,
  parseHeight,
  parseLength,
  parseNumber,
  parseWeight,
  toKilograms,
  toMillimetres,
  toPounds,
} from '../../src/hoof/units.ts'

const mm = (text: string) => parseLength(text, 'mm')?.mm ?? null

describe('a length', () => {
  it.each([
    ['98', 98],
    ['98 mm', 98],
    ['98mm', 98],
    ['98.5', 98.5],
    ['98,5', 98.5],
    ['98,5 mm', 98.5],
    ['9.8 cm', 98],
    ['9,8cm', 98],
    ['3.75 in', 95.25],
    ['3 5/8 in', 92.075],
    ['3 5/8"', 92.075],
    ['3-5/8"', 92.075],
    ['3⅝"', 92.075],
    ['3½ inches', 88.9],
    ['3 5/8”', 92.075],
    ['3 5/8″', 92.075],
    ["3 5/8''", 92.075],
    ['5/8 in', 15.875],
    ['-2', -2],
    ['−2 mm', -2],
    ['.5 cm', 5],
    ['98\u00A0mm', 98],
    ['98 MM', 98],
  ])('%s is %d mm', (text, expected) => {
    expect(mm(text)).toBe(expected)
  })

  it.each([
    '',
    'mm',
    'ninety',
    '98 m',
    '98 feet',
    '98°',
    '3 5/0 in',
    '3 9/8 in',
    '1.2.3',
    '98 mm 4',
    '1e3',
    '0x10',
    'Infinity',
    'NaN',
    '98 %',
  ])('%j is none', (text) => {
    expect(parseLength(text, 'mm')).toBeNull()
  })

  it('takes a bare number in the unit of the practice, and says so', () => {
    expect(parseLength('9.8', 'cm')).toEqual({ mm: 98, amount: 9.8, unit: 'cm', unitWritten: false })
    expect(parseLength('3 5/8', 'in')).toEqual({ mm: 92.075, amount: 3.625, unit: 'in', unitWritten: false })
    expect(parseLength('98 mm', 'in')).toEqual({ mm: 98, amount: 98, unit: 'mm', unitWritten: true })
  })

  it('comes back from every unit as it went in', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.constantFrom('mm', 'cm', 'in'),
        (value, unit) => {
          expect(fromMillimetres(toMillimetres(value, unit), unit)).toBeCloseTo(value, 9)
        },
      ),
    )
  })

  it('reads what is written of it, in every unit, with point or comma', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 99_999 }),
        fc.constantFrom('mm', 'cm', 'in'),
        fc.constantFrom('.', ','),
        (hundredths, unit, mark) => {
          const text = `${(hundredths / 100).toFixed(2).replace('.', mark)} ${unit}`
          expect(parseLength(text, 'mm')?.mm).toBeCloseTo(toMillimetres(hundredths / 100, unit), 9)
        },
      ),
    )
  })

  it('reads every fraction of an inch by its parts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.constantFrom(2, 4, 8, 16, 32),
        fc.nat(31),
        (whole, bottom, raw) => {
          const top = raw % bottom
          const expected = (whole + top / bottom) * 25.4
          expect(parseLength(`${whole} ${top}/${bottom} in`, 'mm')?.mm).toBeCloseTo(expected, 9)
        },
      ),
    )
  })

  it('never throws and never gives a value that is no number', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = parseLength(text, 'mm')
        expect(read === null || Number.isFinite(read.mm)).toBe(true)
      }),
    )
  })
})

describe('an angle, a plain number', () => {
  it.each([
    ['44', 44],
    ['44.5', 44.5],
    ['44,5', 44.5],
    ['44 deg', 44],
    ['44°', 44],
    ['44 °', 44],
    ['44 degrees', 44],
  ])('%s is %d degrees', (text, expected) => {
    expect(parseAngle(text)).toBe(expected)
  })

  it('has no other unit', () => {
    expect(parseAngle('44 mm')).toBeNull()
    expect(parseNumber('0,67')).toBe(0.67)
    expect(parseNumber('0.67 mm')).toBeNull()
  })
})

describe('a height', () => {
  it.each([
    ['14.2 hh', 147.32],
    ['14.2hh', 147.32],
    ['14 hh', 142.24],
    ['15 hands', 152.4],
    ['14.2 1/2 hh', 148.59],
    ['148 cm', 148],
    ['1.48 m', 148],
    ['58 in', 147.32],
    ['58"', 147.32],
  ])('%s is %d cm', (text, expected) => {
    expect(parseHeight(text)).toBeCloseTo(expected, 9)
  })

  it('is not read where a hand would have more than 4 inches, or the unit is missing', () => {
    expect(parseHeight('14.4 hh')).toBeNull()
    expect(parseHeight('14.25 hh')).toBeNull()
    expect(parseHeight('14.2')).toBeNull()
    expect(parseHeight('148')).toBeNull()
  })
})

describe('a weight', () => {
  it('is read in kilograms and pounds, thousands with a comma', () => {
    expect(parseWeight('505 kg')).toBe(505)
    expect(parseWeight('505kg')).toBe(505)
    expect(parseWeight('1100 lb')).toBeCloseTo(498.951607, 6)
    expect(parseWeight('1,100 lbs')).toBeCloseTo(498.951607, 6)
    expect(parseWeight('505,5 kg')).toBe(505.5)
  })

  it('is not read without its unit', () => {
    expect(parseWeight('505')).toBeNull()
  })

  it('comes back from pounds as it went in', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 2000, noNaN: true }), (kg) => {
        expect(toKilograms(toPounds(kg))).toBeCloseTo(kg, 9)
      }),
    )
  })
})
