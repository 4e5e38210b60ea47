import { createHash } from 'node:crypto'
import { armor, Decrypter } from 'age-encryption'
import { describe, expect, it } from 'vitest'
import { checksum } from '../../../src/editions/lock/checksum.ts'
import { lockPage, markOf, workFactor } from '../../../src/editions/lock/lock.ts'

const quick = 8
const words = 'abacus abdomen abdominal abide abiding ability'
const key = { passphrase: words, token: '0707070707070707', secret: '0909090909090909' }
const page = '<!doctype html><p>Zoë stands well.</p>'

describe('the lock', () => {
  it('is opened by the library on its own, and gives the page', async () => {
    const { armored } = await lockPage(page, key, null, quick)
    const decrypter = new Decrypter()
    decrypter.addPassphrase(words)
    expect(await decrypter.decrypt(armor.decode(armored), 'text')).toBe(page)
  })

  it('is an age file with one scrypt recipient of the work factor given', async () => {
    const { armored } = await lockPage(page, key, null, quick)
    const head = Buffer.from(armor.decode(armored)).toString('latin1').split('\n')
    expect(head[0]).toBe('age-encryption.org/v1')
    expect(head[1]).toMatch(/^-> scrypt [A-Za-z0-9+/]{22} 8$/)
    expect(head[3]).toMatch(/^--- /)
    expect(workFactor).toBe(17)
  })

  it('does not open with other words', async () => {
    const { armored } = await lockPage(page, key, null, quick)
    const decrypter = new Decrypter()
    decrypter.addPassphrase(`${words}s`)
    await expect(decrypter.decrypt(armor.decode(armored))).rejects.toThrow('no identity matched')
  })

  it('shows nothing of the page or the passphrase in what is kept', async () => {
    const kept = JSON.stringify(await lockPage(page, key, null, quick))
    for (const word of [...words.split(' '), 'Zoë', 'stands']) expect(kept).not.toContain(word)
  })

  it('is known again by a mark that says nothing without the secret, nor whether two have the same words', async () => {
    const { armored: _, ...kept } = await lockPage(page, key, null, quick)
    expect(kept.mark).toBe(markOf(key))
    const others = [
      { ...key, secret: '1111111111111111' },
      { ...key, token: '1111111111111111' },
    ]
    for (const other of others) expect(markOf(other)).not.toBe(kept.mark)
    const quickly = createHash('sha256').update(words).digest('hex')
    expect(JSON.stringify(kept)).not.toMatch(new RegExp(`${quickly}|${key.secret}`))
  })

  it('is kept while page and passphrase stay, and made anew when either changes', async () => {
    const first = await lockPage(page, key, null, quick)
    expect(await lockPage(page, key, first, quick)).toBe(first)
    for (const again of [
      await lockPage(`${page} `, key, first, quick),
      await lockPage(page, { ...key, passphrase: `${words} x` }, first, quick),
      await lockPage(page, key, first, quick + 1),
    ]) {
      expect(again.armored).not.toBe(first.armored)
    }
  })

  it('is made anew where the locked part no longer is what it was', async () => {
    const first = await lockPage(page, key, null, quick)
    for (const armored of [first.armored.replace('AGE', 'EGA'), first.armored.slice(0, -60), 'nothing']) {
      expect((await lockPage(page, key, { ...first, armored }, quick)).armored).not.toBe(armored)
    }
  })

  it('is random: the same page locked twice is two different files', async () => {
    const [a, b] = [await lockPage(page, key, null, quick), await lockPage(page, key, null, quick)]
    expect(a.armored).not.toBe(b.armored)
  })
})

describe('checksum', () => {
  it('is CRC-32: the check value of its published parameters', () => {
    expect(checksum(Buffer.from('123456789'))).toBe('cbf43926')
    expect(checksum(new Uint8Array())).toBe('00000000')
  })
})
