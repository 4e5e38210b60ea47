import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { growdown, growdownProcess } from './run.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const lay = (casebook: string, name = 'cases') =>
  cpSync(resolve('tests/casebooks', casebook), join(folder, name), { recursive: true })

describe('exit status', () => {
  it('is 0 for a clean casebook, 1 for problems in case files, 2 for wrong use', async () => {
    lay('good-plain')
    expect((await growdown(folder, 'check')).status).toBe(0)
    expect((await growdown(folder, 'build')).status).toBe(0)
    expect((await growdown(folder, 'export')).status).toBe(0)
    lay('bad-names', 'bad')
    expect((await growdown(folder, 'check', 'bad')).status).toBe(1)
    expect((await growdown(folder, 'build', 'bad')).status).toBe(1)
    expect((await growdown(folder, 'export', 'bad')).status).toBe(1)
    for (const wrong of [
      ['check', 'nowhere'],
      ['build', '--as-of', '2026-02-30'],
      ['build', '--edition', 'x'],
      ['fly'],
    ]) {
      expect((await growdown(folder, ...wrong)).status, wrong.join(' ')).toBe(2)
    }
  })

  it('is what the process ends with', () => {
    lay('good-plain')
    lay('bad-names', 'bad')
    const status = (...args: readonly string[]) => growdownProcess(folder, ...args).status
    expect([status('check'), status('check', 'bad'), status('fly')]).toEqual([0, 1, 2])
  })

  it('comes with words that say how to use it rightly', async () => {
    expect((await growdown(folder, 'check', 'nowhere')).err).toContain('There is no folder nowhere here.')
    lay('good-plain')
    expect((await growdown(folder, 'build', '--as-of', '2026-02-30')).err).toContain(
      '--as-of 2026-02-30 is no calendar date',
    )
    expect((await growdown(folder, 'build', '--out', 'cases/site')).err).toContain('lie in one another')
    expect((await growdown(folder, '--help')).out).toContain('Exit status: 0 clean')
    expect((await growdown(folder, 'build', '--help')).out).toContain('--edition')
  })
})

describe('growdown check', () => {
  it('tells the same problems as data', async () => {
    lay('bad-names')
    const { out } = await growdown(folder, 'check', '--format', 'json', '--as-of', '2026-06-01')
    const told = JSON.parse(out)
    expect(told.problems).toBeGreaterThan(0)
    expect(told.diagnostics[0]).toMatchObject({
      level: 'error',
      line: expect.any(Number),
      column: expect.any(Number),
    })
  })

  it('gives a likely fix as a change of the file', async () => {
    lay('good-plain')
    writeFileSync(
      join(folder, 'cases/juno/2026-04-01.md'),
      '---\nfootng: soft\nstance: {LF: straight}\n---\n',
    )
    const { out } = await growdown(folder, 'check', '--format', 'json', '--as-of', '2026-06-01')
    expect(JSON.parse(out).diagnostics).toMatchObject([
      {
        fix: 'footing',
        advice: null,
        change: {
          kind: 'edit',
          edits: [{ line: 2, column: 1, endLine: 2, endColumn: 7, text: 'footing' }],
        },
      },
    ])
  })
})

describe('growdown build', () => {
  it('builds every horse but the broken one, whose last pages stay', async () => {
    lay('good-plain')
    cpSync(join(folder, 'cases/juno'), join(folder, 'cases/pip'), { recursive: true })
    expect((await growdown(folder, 'build', '--as-of', '2026-06-01')).status).toBe(0)
    const last = readFileSync(join(folder, 'site/practice/pip/index.html'), 'utf8')
    writeFileSync(join(folder, 'cases/pip/2026-04-01.md'), '---\ntoe angle: 440\n---\n')
    writeFileSync(
      join(folder, 'cases/juno/2026-04-01.md'),
      '---\nbefore:\n  toe angle: [46, 46, 49, 48]\n---\n',
    )
    const built = await growdown(folder, 'build', '--as-of', '2026-06-01')
    expect(built.status).toBe(1)
    expect(built.err).toContain('pip/2026-04-01.md:2:1')
    expect(existsSync(join(folder, 'site/practice/juno/2026-04-01.html'))).toBe(true)
    expect(readFileSync(join(folder, 'site/practice/pip/index.html'), 'utf8')).toBe(last)
  })

  it('leaves the site as it was when practice.md cannot be used, and others’ files always', async () => {
    lay('good-plain')
    await growdown(folder, 'build', '--as-of', '2026-06-01')
    writeFileSync(join(folder, 'site/practice/mine.txt'), 'mine')
    const before = readFileSync(join(folder, 'site/practice/index.html'), 'utf8')
    writeFileSync(join(folder, 'cases/practice.md'), '---\nunits: furlongs\n---\n')
    const built = await growdown(folder, 'build', '--as-of', '2026-06-02')
    expect(built.status).toBe(1)
    expect(built.err).toContain('Nothing was published')
    expect(readFileSync(join(folder, 'site/practice/index.html'), 'utf8')).toBe(before)
    rmSync(join(folder, 'cases/juno'), { recursive: true })
    cpSync(resolve('tests/casebooks/good-plain/practice.md'), join(folder, 'cases/practice.md'))
    await growdown(folder, 'build', '--as-of', '2026-06-02')
    expect(existsSync(join(folder, 'site/practice/juno'))).toBe(false)
    expect(readFileSync(join(folder, 'site/practice/mine.txt'), 'utf8')).toBe('mine')
  })

  it('follows no link out of the casebook', async () => {
    lay('good-plain')
    writeFileSync(join(folder, 'secret.md'), '---\ndate: 2026-04-01\n---\nsecret words\n')
    symlinkSync(join(folder, 'secret.md'), join(folder, 'cases/juno/2026-04-01.md'))
    const built = await growdown(folder, 'check', '--as-of', '2026-06-01')
    expect(built.out).toContain('is a link, and links are never followed')
    expect(built.status).toBe(1)
  })

  it('runs no code that a case file holds', async () => {
    lay('good-plain')
    const mark = join(folder, 'ran')
    const code = `---js\n{ date: require('fs').writeFileSync(${JSON.stringify(mark)}, 'ran') }\n---\n`
    writeFileSync(join(folder, 'cases/juno/2026-04-01.md'), code)
    expect((await growdown(folder, 'build', '--as-of', '2026-06-01')).err).toContain(
      'Nothing in a case file is ever run',
    )
    expect(existsSync(mark)).toBe(false)
  })
})
