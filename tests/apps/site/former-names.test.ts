import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { keepFormerNames, namesInCasebook } from '../../../src/apps/site/former-names-on-disk.ts'
import { formerFinder } from '../../../src/identity/former-names.ts'

let folder: string
const path = () => join(folder, 'former-names.yaml')
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-former-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const foundIn = (text: string, current: readonly string[]) =>
  formerFinder(keepFormerNames(folder, current).former, current)(text).map((found) => found.text)

describe('the file of former names', () => {
  it("is made for its owner's eyes only, keeps whoever leaves, and tells nobody who they were", () => {
    keepFormerNames(folder, ['Junoquin', 'Ada Kestrelow'])
    expect(statSync(path()).mode & 0o777).toBe(0o600)
    expect(foundIn('Then Junoquin came from Ada Kestrelow.', ['Quillamy'])).toEqual([
      'Junoquin',
      'Ada Kestrelow',
    ])
    expect(readFileSync(path(), 'utf8')).not.toMatch(/juno|kestrel|quill/i)
    expect(readdirSync(folder)).toEqual(['former-names.yaml'])
  })

  it('stands still while nothing is new', () => {
    keepFormerNames(folder, ['Quillamy', 'Junoquin'])
    const before = statSync(path()).mtimeMs
    keepFormerNames(folder, ['Quillamy'])
    keepFormerNames(folder, ['Junoquin'])
    expect(statSync(path()).mtimeMs).toBe(before)
  })

  it('is left as it is where a line cannot be read, and that is told', () => {
    keepFormerNames(folder, ['Junoquin'])
    const text = `${readFileSync(path(), 'utf8')}<<<<<<< theirs\n`
    writeFileSync(path(), text)
    const { diagnostics } = keepFormerNames(folder, ['Quillamy'])
    expect(diagnostics.map(({ level, message }) => [level, message])).toEqual([
      ['warning', 'Lines of this file cannot be read: 1.'],
    ])
    expect(readFileSync(path(), 'utf8')).toBe(text)
    expect(foundIn('Junoquin', ['Quillamy'])).toEqual(['Junoquin'])
  })

  it('is not made for nobody', () => {
    keepFormerNames(folder, [])
    expect(readdirSync(folder)).toEqual([])
  })

  it('is told each name of the casebook once, in one order', () => {
    const owners = [
      { id: 'b', name: 'Orla', language: null },
      { id: 'a', name: 'Ada', language: null },
    ]
    expect(
      namesInCasebook({ owners, people: [{ id: 'c', name: 'Tib' }] }, [{ name: 'Wren' }, { name: 'Ada' }]),
    ).toEqual(['Ada', 'Orla', 'Tib', 'Wren'])
  })
})
