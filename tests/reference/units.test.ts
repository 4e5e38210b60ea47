/**
 * The definitions of the units, exact by agreement:
 * inch and pound: international yard and pound agreement of 1 July 1959 (yard 0.9144 m, pound 0.45359237 kg), as
 * stated in NIST Handbook 44, Appendix C (figures from memory, exact by definition);
 * hand: 4 inches, 101.6 mm (the same appendix).
 */
import { describe, expect, it } from 'vitest'
import {
  inchesPerHand,
  kgPerPound,
  mmPerInch,
  parseHeight,
  parseLength,
  parseWeight,
  toKilograms,
  toMillimetres,
} from '../../src/hoof/units.ts'

describe('units by definition', () => {
  it('has an inch of exactly 25.4 mm, a 36th of a yard of 0.9144 m', () => {
    expect(mmPerInch).toBe(25.4)
    expect(toMillimetres(36, 'in')).toBe(914.4)
    expect(parseLength('1 in', 'mm')?.mm).toBe(25.4)
    expect(parseLength('3 5/8 in', 'mm')?.mm).toBe(92.075)
  })

  it('has a hand of 4 inches, 10.16 cm', () => {
    expect(inchesPerHand).toBe(4)
    expect(parseHeight('1 hh')).toBeCloseTo(10.16, 10)
    expect(parseHeight('14.2 hh')).toBeCloseTo(58 * 2.54, 10)
  })

  it('has a pound of exactly 0.45359237 kg, and a hundredweight of 112 lb of 50.80234544 kg', () => {
    expect(kgPerPound).toBe(0.45359237)
    expect(parseWeight('1 lb')).toBe(0.45359237)
    expect(toKilograms(112)).toBeCloseTo(50.80234544, 10)
  })
})
