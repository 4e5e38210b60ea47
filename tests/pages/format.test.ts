import { describe, expect, it } from 'vitest'
import { formatIn } from '../english.ts'

describe('numbers on pages', () => {
  it('shows a length in the unit of the practice', () => {
    expect(formatIn('mm').length(98.24)).toBe('98 mm')
    expect(formatIn('mm').length(98.3)).toBe('98.5 mm')
    expect(formatIn('cm').length(98.2)).toBe('9.8 cm')
    expect(formatIn('in').length(3.625 * 25.4)).toBe('3 5/8 in')
    expect(formatIn('in').length(0.25 * 25.4)).toBe('1/4 in')
    expect(formatIn('in').length(25.4)).toBe('1 in')
  })

  it('signs a change with a true minus and leaves zero bare', () => {
    const format = formatIn('mm')
    expect(format.change('toe-length', -9)).toBe('\u22129 mm')
    expect(format.change('toe-angle', 2.5)).toBe('+2.5°')
    expect(format.change('heel-balance', -0.1)).toBe('0 mm')
    expect(format.measure('heel-balance', -6)).toBe('\u22126 mm')
    expect(format.measure('frog-ratio', 0.667)).toBe('0.67')
  })

  it('writes dates and spans in words', () => {
    const format = formatIn('mm')
    expect(format.date('2026-03-04')).toBe('4 March 2026')
    expect(format.shortDate('2026-03-04')).toBe('4 Mar 26')
    expect(format.span(1)).toBe('1 day')
    expect(format.span(35)).toBe('5 weeks')
    expect(format.span(152)).toBe('5 months')
  })

  it('writes every month and list the same, whatever tables the platform has', () => {
    const { date, shortDate, month, monthOf, list, weekdays } = formatIn('mm')
    const names = 'January February March April May June July August September October November December'
    for (const [i, name] of names.split(' ').entries()) {
      const day = `2026-${String(i + 1).padStart(2, '0')}-09`
      const texts = [date(day), shortDate(day), month(day), monthOf(day)]
      expect(texts).toEqual([`9 ${name} 2026`, `9 ${name.slice(0, 3)} 26`, name, `${name} 2026`])
    }
    const lists = [[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(list)
    expect(lists).toEqual(['', 'a', 'a and b', 'a, b and c'])
    expect(weekdays).toEqual(['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'])
  })
})
