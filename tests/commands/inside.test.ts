/** Commands given inside a casebook are about that casebook, and the guide that starts one is true. */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { growdown, viaNpm } from './run.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const asOf = ['--as-of', '2026-06-01']
const copyTo = (place: string) =>
  cpSync(resolve('tests/casebooks/good-plain'), join(folder, place), { recursive: true })

describe('inside a casebook', () => {
  it.each([
    ['its own folder', '.', 'Casebook: mine (.)'],
    ["a horse's folder", 'juno', 'Casebook: mine (..)'],
    ['the folder of pictures', 'juno/photos', `Casebook: mine (${join('..', '..')})`],
  ])('%s: check and export take it and say so', async (_, within, said) => {
    copyTo('mine')
    const place = join(folder, 'mine', within)
    const checked = await growdown(place, 'check', ...asOf)
    expect(checked.err).toBe(`${said}\n`)
    expect(checked.out).toBe('0 problems, 0 warnings in 4 files\n')
    const exported = await growdown(place, 'export', ...asOf)
    expect(JSON.parse(exported.out).horses).toHaveLength(1)
  })

  it('a folder cases beside practice.md changes nothing', async () => {
    copyTo('mine')
    copyTo('mine/cases')
    expect((await growdown(join(folder, 'mine'), 'check', ...asOf)).err).toBe('Casebook: mine (.)\n')
  })

  it('a casebook cases below wins over one further up', async () => {
    copyTo('mine')
    copyTo('mine/work/cases')
    const checked = await growdown(join(folder, 'mine/work'), 'check', ...asOf)
    expect(checked.err).toBe('Casebook: cases\n')
  })

  it('add and import write into it, from a folder of a horse too', async () => {
    copyTo('mine')
    const added = await growdown(join(folder, 'mine/juno'), 'add', 'horse', 'nell')
    expect(added.out).toBe(`${join('..', 'nell', 'horse.md')} written\n`)
    expect(existsSync(join(folder, 'mine/nell/horse.md'))).toBe(true)
    writeFileSync(
      join(folder, 'mine/table.csv'),
      'horse,date,foot,measure,value\nrook,2026-03-14,LF,toe length,98\n',
    )
    expect((await growdown(join(folder, 'mine'), 'import', 'table.csv')).status).toBe(0)
    expect(existsSync(join(folder, 'mine/rook/2026-03-14.md'))).toBe(true)
  })

  it('build puts the site beside it, and mark finds its pictures by their path in it', async () => {
    copyTo('mine')
    const built = await growdown(join(folder, 'mine/juno'), 'build', ...asOf)
    expect(built.out).toContain(`Open ${join('..', '..', 'site', 'practice', 'index.html')}`)
    expect(existsSync(join(folder, 'site/practice/juno/index.html'))).toBe(true)
    const marked = await growdown(join(folder, 'mine/juno'), 'mark', 'juno/photos/lf-side.jpg')
    expect(marked.err).not.toContain('There is no picture')
  })

  it('a folder that is named is taken, and nothing more is said', async () => {
    copyTo('mine')
    copyTo('other')
    expect((await growdown(join(folder, 'mine'), 'check', '../other', ...asOf)).err).toBe('')
  })

  it('outside of any, without a folder cases, it says what is missing', async () => {
    const checked = await growdown(folder, 'check')
    expect(checked.status).toBe(2)
    expect(checked.err).toContain('no practice.md in this folder or one above it, and no folder cases')
  })
})

describe('the guide of a new casebook', () => {
  /** The commands that the steps of the guide give, in order. */
  const commandsOf = (guide: string) =>
    [...guide.matchAll(/^ +\d\. growdown (.+?) {2,}/gm)].map((match) => (match[1] ?? '').split(' '))

  it('gives commands that work as they stand', async () => {
    const started = await growdown(folder, 'add', 'casebook', 'mine')
    expect(started.out).toContain(`What to do next is in ${join('mine', 'guide.txt')}; first: cd mine`)
    const mine = join(folder, 'mine')
    const commands = commandsOf(readFileSync(join(mine, 'guide.txt'), 'utf8'))
    expect(commands.map(([name]) => name)).toEqual(['add', 'add', 'check', 'build'])
    for (const command of commands) {
      const ran = await growdown(mine, ...command)
      expect(ran, command.join(' ')).toMatchObject({ status: 0 })
      expect(ran.err).toContain('Casebook: mine (.)')
    }
    expect(existsSync(join(mine, 'juno/horse.md'))).toBe(true)
    expect(existsSync(join(folder, 'site/practice/juno/index.html'))).toBe(true)
  })

  it('tells the truth about a checkout: npm goes there and the command stays here', async () => {
    mkdirSync(join(folder, 'mine'))
    await growdown(folder, 'add', 'casebook', 'mine')
    const ran = viaNpm(join(folder, 'mine'), 'add', 'horse', 'juno')
    expect(ran.out).toContain(join('juno', 'horse.md'))
    expect(ran.err).toContain(`Casebook: mine (.)`)
    expect(existsSync(join(folder, 'mine/juno/horse.md'))).toBe(true)
  })
})
