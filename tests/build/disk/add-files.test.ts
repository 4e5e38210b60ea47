import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { addFiles } from '../../../src/build/disk/add-files.ts'

describe('addFiles', () => {
  let folder: string
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  })
  afterEach(() => rmSync(folder, { recursive: true }))

  it('writes what is new and leaves what stands there', () => {
    mkdirSync(join(folder, 'juno'))
    writeFileSync(join(folder, 'juno/horse.md'), 'mine')
    const added = addFiles(folder, [
      { path: 'juno/horse.md', text: 'new' },
      { path: 'juno/2026-03-14.md', text: 'visit' },
    ])
    expect(added).toEqual({ written: ['juno/2026-03-14.md'], kept: ['juno/horse.md'] })
    expect(readFileSync(join(folder, 'juno/horse.md'), 'utf8')).toBe('mine')
  })

  it('does not write through a link', () => {
    symlinkSync(tmpdir(), join(folder, 'juno'))
    expect(() => addFiles(folder, [{ path: 'juno/horse.md', text: 'x' }])).toThrow(
      'nothing is written through links',
    )
  })
})
