import { describe, expect, it } from 'vitest'
import { formatIn } from '../english.ts'

const mm = formatIn('mm')

describe('finer numbers on pages', () => {
  it('keeps the sign of half a millimetre', () => {
    expect(mm.change('heel-balance', -0.5)).toBe('\u22120.5 mm')
    expect(mm.change('heel-balance', 0.5)).toBe('+0.5 mm')
    expect(mm.changeFigure('toe-length', -8)).toBe('\u22128')
    expect(mm.changeFigure('toe-length', 0.2)).toBe('0')
  })

  it('gives rates, limits and intervals one digit more than a reading', () => {
    expect(mm.fine('toe-angle', 4.155)).toBe('4.2°')
    expect(mm.fine('frog-ratio', 0.0836)).toBe('0.084')
    expect(mm.rate('toe-length', 8.44)).toBe('+8.4 mm a month')
    expect(mm.interval('toe-angle', -0.26, 1.8)).toBe('\u22120.3 to 1.8°')
    // Where both ends would read alike.
    expect(mm.interval('toe-length', -0.09, -0.054)).toBe('\u22120.09 to \u22120.05 mm')
    expect(formatIn('cm').fine('toe-length', 8.44)).toBe('0.84 cm')
    expect(formatIn('in').rate('toe-length', -8.4)).toBe('\u22120.33 in a month')
  })

  it('writes a band with an open side in words', () => {
    expect(mm.band('toe-angle', { low: 50, high: 54 })).toBe('50° to 54°')
    expect(mm.band('toe-length', { low: null, high: 84 })).toBe('up to 84 mm')
    expect(mm.band('frog-ratio', { low: 0.67, high: null })).toBe('0.67 or more')
    expect(mm.band('frog-ratio', { low: null, high: null })).toBe('')
  })

  it('names a month with its year', () => {
    expect(mm.monthOf('2026-05-14')).toBe('May 2026')
  })
})
