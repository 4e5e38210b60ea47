import { describe, expect, it } from 'vitest'
import { kindNamed, sexNamed } from '../../src/pages/portfolio/kind.ts'

describe('the kind of a horse', () => {
  it.each([
    ['cob cross', 150, 'cob'],
    ['riding pony cross', 145, 'pony'],
    ['Cart horse cross', 160, 'draught'],
    ['light draught', 157, 'draught'],
    ['sport horse cross', 165, 'horse'],
    ['Connemara cross', 147, 'pony'],
    ['native pony cross, filly foal', null, 'pony'],
    ['mammoth donkey', 140, 'donkey'],
    ['a mule', null, 'mule'],
    ['Marsh Warmblood', 165, 'horse'],
    ['Marsh Warmblood', 148, 'pony'],
    [null, 120, 'pony'],
    ['Marsh Warmblood', null, null],
    [null, null, null],
  ] as const)('of %j, %s cm, is %s', (recorded, height, kind) => {
    expect(kindNamed(recorded, height)).toBe(kind)
  })
})

describe('the sex of a horse', () => {
  it.each([
    ['mare', 'mare'],
    ['Filly', 'mare'],
    ['gelding', 'gelding'],
    ['colt, gelded at two', 'gelding'],
    ['entire', 'stallion'],
    ['colt', 'stallion'],
    ['Zoë of Thistledown', null],
    [null, null],
  ] as const)('of %j is %s', (recorded, sex) => {
    expect(sexNamed(recorded)).toBe(sex)
  })
})
