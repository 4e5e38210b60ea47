import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { growdown } from './run.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const text = (path: string) => readFileSync(join(folder, path), 'utf8')

describe('growdown add', () => {
  it('starts a casebook, a horse and a visit, and check names what is left to fill in', async () => {
    expect((await growdown(folder, 'add', 'casebook', 'mine')).out).toContain('practice.md written')
    expect((await growdown(folder, 'add', 'horse', 'juno', '--casebook', 'mine')).status).toBe(0)
    expect(
      (await growdown(folder, 'add', 'visit', 'juno', '--casebook', 'mine', '--date', '2026-03-14')).status,
    ).toBe(0)
    expect(text('mine/juno/2026-03-14.md')).toContain('toe length: [_, _, _, _]')
    const checked = await growdown(folder, 'check', 'mine', '--as-of', '2026-03-14')
    expect(checked.out).toContain('to fill in: Toe length is not yet filled in')
    expect(checked.out).toMatch(/^0 problems, \d+ warnings in 3 files$/m)
    expect(checked.status).toBe(0)
  })

  it('never replaces a file', async () => {
    await growdown(folder, 'add', 'casebook', 'mine')
    await growdown(folder, 'add', 'horse', 'juno', '--casebook', 'mine')
    writeFileSync(join(folder, 'mine/juno/horse.md'), '---\nname: Juno\n---\n')
    const again = await growdown(folder, 'add', 'horse', 'juno', '--casebook', 'mine')
    expect(again.status).toBe(1)
    expect(again.err).toContain('juno/horse.md is there already and was left as it is.')
    expect(text('mine/juno/horse.md')).toBe('---\nname: Juno\n---\n')
  })

  it('gives a second visit of a day the next letter', async () => {
    cpSync(resolve('tests/casebooks/good-plain'), join(folder, 'cases'), { recursive: true })
    const added = await growdown(folder, 'add', 'visit', 'juno', '--date', '2026-02-16', '--second')
    expect(added.out).toContain('cases/juno/2026-02-16-b.md written')
  })

  it('fills in what spoken notes say of a visit', async () => {
    cpSync(resolve('tests/casebooks/good-plain'), join(folder, 'cases'), { recursive: true })
    writeFileSync(
      join(folder, 'notes.txt'),
      'Left fore, toe length ninety-eight before the trim. The wind was awful.',
    )
    const added = await growdown(
      folder,
      'add',
      'visit',
      'juno',
      '--date',
      '2026-03-23',
      '--from',
      'notes.txt',
    )
    expect(added.status).toBe(0)
    expect(text('cases/juno/2026-03-23.md')).toContain('toe length: [98, _, _, _]')
    expect(text('cases/juno/2026-03-23.md')).toContain('The wind was awful.')
    expect((await growdown(folder, 'check', '--as-of', '2026-03-23')).status).toBe(0)
    const wrong = await growdown(folder, 'add', 'visit', 'juno', '--date', '2026-03-24', '--from', 'none.txt')
    expect(wrong.err).toContain('There is no file none.txt here.')
    expect(wrong.status).toBe(2)
  })

  it('says what is wrong with what it was asked', async () => {
    await growdown(folder, 'add', 'casebook', 'mine')
    const wrong = (...args: string[]) => growdown(folder, 'add', ...args, '--casebook', 'mine')
    expect((await wrong('horse', 'Old Juno')).err).toContain('Perhaps: growdown add horse old-juno')
    expect((await wrong('horse', '../out')).status).toBe(2)
    expect((await wrong('visit', 'nobody')).err).toContain(
      'There is no horse nobody. Start it: growdown add horse nobody',
    )
    expect((await wrong('rider', 'x')).err).toContain('Expected casebook, horse or visit.')
    expect((await wrong('visit')).err).toContain('Say which')
  })
})

describe('growdown import and export', () => {
  it('give the same readings back, file for file', async () => {
    cpSync(resolve('cases/practice.md'), join(folder, 'cases/practice.md'))
    const table = (
      await growdown(resolve('.'), 'export', 'cases', '--format', 'csv', '--as-of', '2026-11-25')
    ).out
    const entered = (csv: string) => csv.split('\n').filter((line) => /,entered$/.test(line))
    writeFileSync(join(folder, 'table.csv'), table)
    const imported = await growdown(folder, 'import', 'table.csv')
    expect(imported.err).toContain(
      'left out: heel balance follows from other readings and is worked out again',
    )
    expect(imported.status).toBe(0)
    const back = (await growdown(folder, 'export', '--format', 'csv', '--as-of', '2026-11-25')).out
    expect(entered(back)).toEqual(entered(table))
    expect(entered(back).length).toBeGreaterThan(1000)
    const again = await growdown(folder, 'import', 'table.csv')
    expect(again.status).toBe(0)
    expect(again.out).toMatch(/ 0 files written, 0 written anew, \d+ already so, 0 left as they were$/m)
  })

  it('report a line that is not understood, and refuse what is no table', async () => {
    await growdown(folder, 'add', 'casebook', 'cases')
    writeFileSync(
      join(folder, 'table.csv'),
      'horse,date,foot,measure,value\njuno,yesterday,LF,toe length,98\n',
    )
    const imported = await growdown(folder, 'import', 'table.csv')
    expect(imported.err).toContain('table.csv:2: "yesterday" is not a date')
    expect(imported.status).toBe(1)
    expect((await growdown(folder, 'import', 'none.csv')).status).toBe(2)
    writeFileSync(join(folder, 'latin.csv'), Buffer.from([0x68, 0xe9, 0x0a]))
    expect((await growdown(folder, 'import', 'latin.csv')).err).toContain('is not UTF-8 text')
  })

  it('print a schema that the printed result meets', async () => {
    const { Ajv2020 } = await import('ajv/dist/2020.js')
    const schema = JSON.parse((await growdown(resolve('.'), 'export', '--format', 'schema')).out)
    const result = JSON.parse((await growdown(resolve('.'), 'export', 'cases', '--as-of', '2026-11-25')).out)
    const ajv = new Ajv2020({ validateFormats: false })
    expect(ajv.validate(schema, result), JSON.stringify(ajv.errors)).toBe(true)
    expect(result.horses).toHaveLength(10)
    expect(ajv.validate(schema, { ...result, version: 1 })).toBe(false)
  })
})
