import { describe, expect, it } from 'vitest'
import { lockPage } from '../../../src/editions/lock/lock.ts'
import { armoredSize, filledUp, padded, step } from '../../../src/editions/lock/padding.ts'

const key = { passphrase: 'one two three four', token: 't', secret: 's' }

describe('the size of a locked page', () => {
  it.each([0, 1, 2, 3, 47, 48, 49, 1000, 65_535, 65_536, 65_537, 131_072, 200_001])(
    'is known before %i bytes are locked',
    async (length) => {
      for (const factor of [8, 10]) {
        const { armored } = await lockPage('x'.repeat(length), key, null, factor)
        expect(armored.length).toBe(armoredSize(length, factor))
      }
    },
  )

  it('comes in steps, and within a step every page has the same', async () => {
    const outer = 41_234
    const sizes = new Map<number, Set<number>>()
    for (const length of [10, 500, 3_000, 20_000, 49_000, 90_000, 97_000, 180_000]) {
      const full = padded('x'.repeat(length), outer, 8)
      const { armored } = await lockPage(full, key, null, 8)
      const total = filledUp('o'.repeat(outer) + armored).length
      expect(total % step).toBe(0)
      sizes.set(total, (sizes.get(total) ?? new Set()).add(full.length))
    }
    expect([...sizes.keys()]).toEqual([step, 2 * step, 3 * step, 5 * step])
    for (const inside of sizes.values()) expect(inside.size).toBe(1)
  })

  it('leaves only a few bytes to be filled up after locking', () => {
    for (let outer = 30_000; outer < 30_200; outer++) {
      const total = outer + armoredSize(padded('page', outer, 17).length, 17)
      expect(step - total).toBeLessThan(32)
      expect(step - total).toBeGreaterThanOrEqual(0)
    }
  })

  it('counts letters of several bytes as what they are', async () => {
    const full = padded('ë'.repeat(20_000), 1000, 8)
    const { armored } = await lockPage(full, key, null, 8)
    expect(step - (1000 + armored.length)).toBeLessThan(32)
  })
})
