import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { diskFolder } from '../../../src/build/disk/source-folder.ts'
import { sharedBuffer } from '../../../src/build/disk/staging.ts'

let root: string
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'growdown-disk-'))
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

function put(path: string, text = 'text'): void {
  mkdirSync(join(root, path, '..'), { recursive: true })
  writeFileSync(join(root, path), text)
}

const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes)

describe('a casebook on the disk', () => {
  it('lists every file by its path, sorted, with its size', () => {
    put('juno/horse.md', 'four')
    put('practice.md')
    put('juno/photos/lf.jpg')
    expect(
      diskFolder(root)
        .list()
        .map(({ path, kind, size }) => [path, kind, size]),
    ).toEqual([
      ['juno/horse.md', 'file', 4],
      ['juno/photos/lf.jpg', 'file', 4],
      ['practice.md', 'file', 4],
    ])
  })

  it('leaves out dotfiles, git and installed packages', () => {
    for (const path of ['.git/config', '.DS_Store', 'juno/.horse.md.swp', 'node_modules/x/readme.md', 'a.md'])
      put(path)
    expect(
      diskFolder(root)
        .list()
        .map(({ path }) => path),
    ).toEqual(['a.md'])
  })

  it('lists a link as a link, to a file, to a folder or to nothing, and never follows it', () => {
    put('juno/horse.md')
    const outside = mkdtempSync(join(tmpdir(), 'growdown-outside-'))
    writeFileSync(join(outside, 'secret.md'), 'secret')
    symlinkSync(join(outside, 'secret.md'), join(root, 'juno/2026-03-14.md'))
    symlinkSync(outside, join(root, 'willow'))
    symlinkSync('nowhere', join(root, 'broken.md'))
    symlinkSync('..', join(root, 'juno/loop'))
    const folder = diskFolder(root)
    expect(folder.list().map(({ path, kind }) => [path, kind])).toEqual([
      ['broken.md', 'link'],
      ['juno/2026-03-14.md', 'link'],
      ['juno/horse.md', 'file'],
      ['juno/loop', 'link'],
      ['willow', 'link'],
    ])
    for (const path of ['juno/2026-03-14.md', 'willow/secret.md', 'broken.md']) {
      expect(() => folder.read(path)).toThrow(`${path} could not be read: it is no file of this casebook`)
    }
    rmSync(outside, { recursive: true })
  })

  it('does not follow a file that became a link after it was listed', () => {
    put('juno/horse.md')
    put('target.md', 'secret')
    const folder = diskFolder(root)
    folder.list()
    rmSync(join(root, 'juno/horse.md'))
    symlinkSync(join(root, 'target.md'), join(root, 'juno/horse.md'))
    expect(() => folder.read('juno/horse.md')).toThrow('juno/horse.md could not be read: it is a link')
  })

  it('reads nothing outside, however the path is written', () => {
    put('practice.md', 'inside')
    const folder = diskFolder(root)
    expect(text(folder.read('practice.md'))).toBe('inside')
    for (const path of ['../practice.md', '/etc/hostname', 'juno/../practice.md', './practice.md', '']) {
      expect(() => folder.read(path)).toThrow('it is no file of this casebook')
    }
  })

  it('lists what is neither file nor folder and does not read it', () => {
    execFileSync('mkfifo', [join(root, 'pipe.md')])
    const folder = diskFolder(root)
    expect(folder.list()).toMatchObject([{ path: 'pipe.md', kind: 'other' }])
    expect(() => folder.read('pipe.md')).toThrow('it is no file of this casebook')
  })

  it('says plainly that a file went away, or that there is no such folder', () => {
    put('juno/horse.md')
    const folder = diskFolder(root)
    folder.list()
    rmSync(join(root, 'juno/horse.md'))
    expect(() => folder.read('juno/horse.md')).toThrow('juno/horse.md could not be read: it is not there')
    const gone = join(root, 'gone')
    expect(() => diskFolder(gone).list()).toThrow(`${gone} could not be read: it is not there`)
  })
})

describe('one buffer for the bytes of all pages', () => {
  it('gives what a buffer of its own would, for texts of any length and alphabet', () => {
    const encode = sharedBuffer()
    const texts = [
      '',
      'hoof',
      '\u2212 \u00e9 \u6d77 \ud83d\udc34',
      '\u6d77'.repeat(2 ** 20),
      '\u6d77'.repeat(2 ** 20 + 1),
      'a',
    ]
    for (const each of texts) expect(Buffer.compare(encode(each), Buffer.from(each))).toBe(0)
  })
})
