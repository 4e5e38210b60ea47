import { describe, expect, it } from 'vitest'
import { makePassphrase, weakPassphrase } from '../../../src/editions/lock/passphrases.ts'
import { isWeak } from '../../../src/editions/lock/strength.ts'

describe('a passphrase', () => {
  it.each([
    'qwertyuiopasdfgh',
    'password password',
    'Bella2015Bella2015',
    'letmein letmein letmein',
    'the big horse',
  ])('%s is weak', (passphrase) => {
    expect(isWeak(passphrase)).toBe(true)
  })

  it('is never weak where the program made it', () => {
    for (let n = 0; n < 60; n++) expect(isWeak(makePassphrase())).toBe(false)
  })

  it('is warned of with what to do, in words that do not hold it', () => {
    const { level, message, expected, advice } = weakPassphrase('kestrel')
    expect([level, message, expected]).toEqual([
      'warning',
      'the passphrase of kestrel could be guessed by whoever has the page and patience',
      'at least 60 bits, as six words drawn by chance have',
    ])
    expect(advice).toMatch(/^delete its line, and the next build makes six words; then upload the page/)
  })
})
