import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { formerFinder, parseFormer, printFormer, withFormer } from '../../src/identity/former-names.ts'

const salt = () => '00112233aabbccdd'
const known = withFormer([], ['Zoë', 'Ada Quillfeather', 'Morning Star', 'Grace'], salt)
const found = (text: string, current: readonly string[] = []) =>
  formerFinder(known, current)(text).map(({ text: one }) => one)

describe('names that have left the casebook', () => {
  it('are kept as hashes that tell nobody who they were', () => {
    const text = printFormer(known)
    expect(text).not.toMatch(/zo|ada|quill|star|grace/i)
    const hash = createHash('sha256').update(`${salt()}\nzoe`).digest('hex').slice(0, 24)
    expect(text).toContain(`- ${salt()} 1 ${hash}\n`)
  })

  it('are found whatever the case and the accents, whole and by their parts', () => {
    expect(found('With zoe and Ada Quillfeather came quillfeather and ADA.')).toEqual([
      'zoe',
      'Ada Quillfeather',
      'quillfeather',
      'ADA',
    ])
  })

  it('that are everyday words are found by their capital inside a sentence', () => {
    expect(found('We saw Morning Star. The morning star rose with grace. Grace came to Grace.')).toEqual([
      'Morning Star',
      'Grace',
    ])
  })

  it('are left to the search in clear while they are in the casebook', () => {
    expect(found('Zoe and Ada Quillfeather', ['Zoë'])).toEqual(['Ada Quillfeather'])
  })

  it('stay once they have been seen, under the salt that is there', () => {
    const more = withFormer(known, ['Zoë', 'Tarkandrel'], () => 'ffffffffffffffff')
    expect(new Set(more.map((form) => form.salt))).toEqual(new Set([salt()]))
    expect(formerFinder(more, [])('Tarkandrel, Zoe').length).toBe(2)
    expect(withFormer(more, [], salt)).toEqual(more)
  })

  it('are read back as written, and two files are merged by their lines', () => {
    expect(parseFormer(printFormer(known))).toEqual({ former: known, strange: [] })
    const other = withFormer([], ['Tarkandrel'], () => 'ffffffffffffffff')
    const both = parseFormer(`${printFormer(known)}<<<<<<< mine\n${printFormer(other)}`)
    expect(both.strange).toEqual(['<<<<<<< mine'])
    expect(formerFinder(both.former, [])('Zoe, Tarkandrel').map(({ text }) => text)).toEqual([
      'Zoe',
      'Tarkandrel',
    ])
  })
})
