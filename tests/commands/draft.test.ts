import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { growdown } from './run.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  cpSync(resolve('tests/casebooks/good-plain'), join(folder, 'cases'), { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true }))

const lay = (name: string, text: string | Uint8Array) => writeFileSync(join(folder, name), text)
const read = (path: string) => readFileSync(join(folder, path), 'utf8')

const said = 'Left fore toe length ninety-eight. Toe angle forty-four or forty-six. She was good.\n'

describe('growdown draft', () => {
  it('writes a draft beside the other visits, which passes check', async () => {
    lay('notes.txt', said)
    const ran = await growdown(folder, 'draft', 'juno', 'notes.txt', '--date', '2026-05-20')
    expect(ran).toMatchObject({ status: 0 })
    expect(ran.out).toContain(`${join('cases', 'juno', '2026-05-20.md')} written`)
    expect(ran.out).toContain('To settle: 1, at the top of the draft')
    const draft = read('cases/juno/2026-05-20.md')
    expect(draft).toContain('toe length: {LF: 98}')
    expect(draft).toContain('# 1. Which is it: toe angle? "Toe angle forty-four or forty-six."')
    expect(draft).toContain('She was good.')
    expect((await growdown(folder, 'check', '--as-of', '2026-06-01')).status).toBe(0)
  })

  it('prints it and writes nothing, where asked to', async () => {
    lay('notes.vtt', 'WEBVTT\n\n00:07.000 --> 00:09.000\nLeft fore toe length 98.\n')
    const ran = await growdown(folder, 'draft', 'juno', 'notes.vtt', '--date', '2026-05-20', '--print')
    expect(ran.status).toBe(0)
    expect(ran.out).toMatch(/^---\n/)
    expect(ran.out).toContain('# LF "Left fore toe length 98." 00:07')
    expect(existsSync(join(folder, 'cases/juno/2026-05-20.md'))).toBe(false)
  })

  it('never replaces a file: what stands there stays, and the draft is a second visit of the day', async () => {
    lay('notes.txt', said)
    await growdown(folder, 'draft', 'juno', 'notes.txt', '--date', '2026-05-20')
    const first = read('cases/juno/2026-05-20.md')
    lay('more.srt', '1\n00:00:01,000 --> 00:00:02,000\nRight fore toe length 96.\n')
    const ran = await growdown(folder, 'draft', 'juno', 'more.srt', '--date', '2026-05-20')
    expect(ran.status).toBe(0)
    expect(ran.err).toContain('juno/2026-05-20.md is there already')
    expect(read('cases/juno/2026-05-20.md')).toBe(first)
    expect(read('cases/juno/2026-05-20-b.md')).toContain('toe length: {RF: 96}')
  })

  it('knows what earlier visits left open', async () => {
    const visit = '---\ndate: 2026-05-01\nfindings:\n  LH:\n    - thrush, central sulcus, 2\n---\n'
    lay('cases/juno/2026-05-01.md', visit)
    lay('notes.txt', 'Left hind. No thrush.')
    const ran = await growdown(folder, 'draft', 'juno', 'notes.txt', '--date', '2026-05-20', '--print')
    expect(ran.out).toContain('- thrush, central sulcus, 0')
  })

  it('works on where an older file of the horse has an error, and says so', async () => {
    lay('cases/juno/2026-05-01.md', '---\ndate: 2026-05-01\nbefore:\n  toe lenth: {LF: 90}\n---\n')
    lay('notes.txt', said)
    const ran = await growdown(folder, 'draft', 'juno', 'notes.txt', '--date', '2026-05-20')
    expect(ran.status).toBe(0)
    expect(ran.err).toContain('The files of juno hold errors (growdown check)')
  })

  it('says what is wrong with how it was used', async () => {
    lay('notes.txt', said)
    lay('notes.docx', said)
    lay('latin.txt', Uint8Array.of(0x4c, 0xe9))
    lay('long.txt', 'horse '.repeat(60_000))
    for (const [args, words] of [
      [['nobody', 'notes.txt'], 'There is no horse nobody.'],
      [['juno', 'nowhere.txt'], 'There is no file nowhere.txt here.'],
      [['juno', 'notes.docx'], 'Expected a file that ends in .txt, .vtt or .srt.'],
      [['juno', 'latin.txt'], 'latin.txt is not UTF-8 text.'],
      [['juno', 'long.txt'], 'notes are read up to'],
      [['juno', 'notes.txt', '--date', '2026-02-30'], '--date 2026-02-30 is no calendar date.'],
    ] as const) {
      const ran = await growdown(folder, 'draft', ...args)
      expect(ran.status, args.join(' ')).toBe(2)
      expect(ran.err).toContain(words)
    }
  })
})
