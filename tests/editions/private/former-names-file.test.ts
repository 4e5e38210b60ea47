import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  type FormerNamesFormat,
  keepFormerNames,
  namesInCasebook,
} from '../../../src/editions/private/former-names-file.ts'

/** A line a name, turned round; what is known stays in its place. */
const plain: FormerNamesFormat<readonly string[]> = {
  parseFormer: (text) => (text === null ? [] : text.split('\n').filter((line) => line !== '')),
  printFormer: (former) => former.map((line) => `${line}\n`).join(''),
  withFormer: (former, names) => [
    ...new Set([...former, ...names.map((name) => [...name].reverse().join(''))]),
  ],
}

let folder: string
const path = () => join(folder, 'former-names.yaml')
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-former-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

describe('the file of former names', () => {
  it("is made for its owner's eyes only, keeps whoever leaves, and stands still while nothing is new", () => {
    keepFormerNames(folder, ['Juno', 'Ada Kestrel'], plain)
    expect(statSync(path()).mode & 0o777).toBe(0o600)
    expect(keepFormerNames(folder, ['Quill'], plain)).toEqual(['onuJ', 'lertseK adA', 'lliuQ'])
    const before = statSync(path()).mtimeMs
    keepFormerNames(folder, ['Quill', 'Juno'], plain)
    expect(statSync(path()).mtimeMs).toBe(before)
    expect(readFileSync(path(), 'utf8')).toBe('onuJ\nlertseK adA\nlliuQ\n')
    expect(readdirSync(folder)).toEqual(['former-names.yaml'])
  })

  it('keeps what another build wrote meanwhile', () => {
    writeFileSync(path(), 'onuJ\n')
    let isFirst = true
    const slow: typeof plain = {
      ...plain,
      withFormer: (former, names, random) => {
        if (isFirst) writeFileSync(path(), 'onuJ\nnerW\n')
        isFirst = false
        return plain.withFormer(former, names, random)
      },
    }
    expect(keepFormerNames(folder, ['Quill'], slow)).toEqual(['onuJ', 'nerW', 'lliuQ'])
  })

  it('is not made for nobody', () => {
    keepFormerNames(folder, [], plain)
    expect(readdirSync(folder)).toEqual([])
  })

  it('is told each name of the casebook once, in one order', () => {
    const owners = [
      { id: 'b', name: 'Orla' },
      { id: 'a', name: 'Ada' },
    ]
    expect(namesInCasebook({ owners }, [{ name: 'Wren' }, { name: 'Ada' }])).toEqual(['Ada', 'Orla', 'Wren'])
  })
})
