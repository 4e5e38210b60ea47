/**
 * A page holds stretches of a hundred thousand signs of one kind. A pattern that walks them over and over does not come
 * to its end within the time of a test.
 */
import { expect, it } from 'vitest'
import { patternsIn } from '../../src/identity/patterns.ts'
import { findDates } from '../../src/identity/written-dates.ts'

it.each([' ', '1', 'A', 'a', '1 ', '1.', 'A1', '- ', '/', '@', 'a.', '12/', '1.234 ', '\n'])(
  'reads a long stretch of %j in one walk',
  (sign) => {
    const text = `98.123${sign.repeat(Math.ceil(100_000 / sign.length))} post@stable.example, 3 May 2026`
    expect(patternsIn(text).map(({ text }) => text)).toContain('post@stable.example')
    expect(findDates(text)).toHaveLength(1)
  },
)
