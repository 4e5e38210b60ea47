/** A page holds stretches of a hundred thousand signs of one kind; no pattern may walk them over and over. */
import { expect, it } from 'vitest'
import { patternsIn } from '../../src/identity/patterns.ts'
import { findDates } from '../../src/identity/written-dates.ts'

it.each([' ', '1', 'A', 'a', '1 ', '1.', 'A1', '- ', '/', '@', 'a.', '12/', '1.234 ', '\n'])(
  'reads a long stretch of %j in one walk',
  (sign) => {
    const text = `Toe 98.123${sign.repeat(Math.ceil(100_000 / sign.length))}`
    const before = performance.now()
    patternsIn(text)
    findDates(text)
    expect(performance.now() - before).toBeLessThan(3000)
  },
)
