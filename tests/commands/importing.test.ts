import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { growdown } from './run.ts'

let folder: string
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  await growdown(folder, 'add', 'casebook', 'cases')
  writeFileSync(join(folder, 'cases/practice.md'), '---\npractice: P\nunits: in\n---\n')
})
afterEach(() => rmSync(folder, { recursive: true }))

const text = (path: string) => readFileSync(join(folder, 'cases', path), 'utf8')
const isThere = (path: string) => existsSync(join(folder, 'cases', path))
const write = (path: string, content: string) => writeFileSync(join(folder, 'cases', path), content)
const importing = (table: string, ...options: string[]) => {
  writeFileSync(join(folder, 'yard.csv'), table)
  return growdown(folder, 'import', 'yard.csv', ...options)
}
const header = 'Horse,Date,LF toe length (in),LF toe angle'
const march = 'Juno,14/03/2026,3.5,45'
const april = 'Juno,18/04/2026,3 5/8,46'

describe('growdown import', () => {
  it('writes a wide table with its own units, and check has nothing to say of the readings', async () => {
    const imported = await importing(`${header}\n${march}\n${april}\n`)
    expect(imported.err).not.toContain('yard.csv')
    expect(imported.out).toContain(
      '4 readings understood, 0 lines not understood, 0 left out, 3 files written',
    )
    expect(imported.status).toBe(0)
    expect(text('juno/2026-03-14.md')).toMatch(
      /^---\ndate: 2026-03-14\nbefore:\n {2}toe length: \{LF: 3\.5 in\}\n {2}toe angle: \{LF: 45\}\n# imported from yard\.csv; .*\n---\n$/,
    )
    const checked = (await growdown(folder, 'check', '--as-of', '2026-06-01')).out
    expect(checked).not.toContain('2026-03-14.md')
    expect(checked).toMatch(/^0 problems/m)
  })

  it('writes nothing where something is not understood, unless the rest is asked for', async () => {
    const table = `${header}\n${march}\nJuno,18/04/2026,long,46\n`
    const refused = await importing(table)
    expect(refused.err).toContain('yard.csv:3: LF toe length: "long" is not a number')
    expect(refused.err).toContain('Nothing was written. Mend what is named above and import again')
    expect(refused.out).toContain('0 files written')
    expect(refused.status).toBe(1)
    expect(isThere('juno')).toBe(false)
    const partial = await importing(table, '--partial')
    expect(partial.status).toBe(1)
    expect(text('juno/2026-04-18.md')).toContain('toe angle: {LF: 46}')
    expect(text('juno/2026-04-18.md')).not.toContain('toe length')
  })

  it('asks how dates are meant, and takes the answer', async () => {
    const table = `${header}\nJuno,03/04/2026,3.5,45\n`
    const asked = await importing(table)
    expect(asked.err).toContain('say --dates dd/mm or --dates mm/dd')
    expect(asked.status).toBe(1)
    expect((await importing(table, '--dates', 'mm/dd')).status).toBe(0)
    expect(isThere('juno/2026-03-04.md')).toBe(true)
    expect((await importing(table, '--dates', 'yy')).status).toBe(2)
  })

  it('takes a mended table over what it wrote from it before', async () => {
    await importing(`${header}\n${march}\n${april}\n`)
    const again = await importing(`${header}\n${march}\n${april.replace('46', '47')}\n`)
    expect(again.out).toContain('cases/juno/2026-04-18.md written anew\n')
    expect(again.out).toContain('0 files written, 1 written anew, 2 already so, 0 left as they were')
    expect(again.status).toBe(0)
    expect(text('juno/2026-04-18.md')).toContain('toe angle: {LF: 47}')
    expect((await importing(`${header}\n${march}\n${april.replace('46', '47')}\n`)).out).toContain(
      '3 already so',
    )
  })

  it('never replaces what a person changed, and names it', async () => {
    await importing(`${header}\n${march}\n${april}\n`)
    const mine = text('juno/2026-03-14.md').replace('toe angle: {LF: 45}', 'toe angle: {LF: 45.5}')
    write('juno/2026-03-14.md', mine)
    write('juno/horse.md', '---\nname: Juno\nkind: cob\n---\n')
    const table = `${header}\n${march.replace('45', '44')}\n${april.replace('46', '47')}\n`
    const refused = await importing(table)
    expect(refused.err).toContain(
      'cases/juno/2026-03-14.md was changed since it was imported: left as it is.',
    )
    expect(refused.err).toContain('Nothing was written.')
    expect(refused.status).toBe(1)
    expect(text('juno/2026-04-18.md')).toContain('46')
    const partial = await importing(table, '--partial')
    expect(partial.status).toBe(1)
    expect(text('juno/2026-03-14.md')).toBe(mine)
    expect(text('juno/2026-04-18.md')).toContain('47')
    expect(text('juno/horse.md')).toBe('---\nname: Juno\nkind: cob\n---\n')
  })

  it('knows a file again whose line ends another system changed', async () => {
    await importing(`${header}\n${march}\n`)
    write('juno/2026-03-14.md', text('juno/2026-03-14.md').replaceAll('\n', '\r\n'))
    expect((await importing(`${header}\n${march.replace('45', '44')}\n`)).status).toBe(0)
    expect(text('juno/2026-03-14.md')).toContain('{LF: 44}')
  })

  it('replaces no file of another table, of a person, or behind a link', async () => {
    await importing(`${header}\n${march}\n`)
    writeFileSync(join(folder, 'other.csv'), `${header}\n${march.replace('45', '44')}\n`)
    expect((await growdown(folder, 'import', 'other.csv')).err).toContain(
      'juno/2026-03-14.md was imported from yard.csv',
    )
    write('juno/2026-04-18.md', '---\nfooting: sand\n---\n')
    expect((await importing(`${header}\n${march}\n${april}\n`)).err).toContain(
      '2026-04-18.md is there already and is no file of an import',
    )
    writeFileSync(join(folder, 'secret.md'), text('juno/2026-03-14.md'))
    symlinkSync(join(folder, 'secret.md'), join(folder, 'cases/juno/2026-05-01.md'))
    const linked = await importing(`${header}\n${march}\nJuno,01/05/2026,3.5,40\n`)
    expect(linked.err).toContain('juno/2026-05-01.md is a link')
    expect(linked.status).toBe(1)
    expect(readFileSync(join(folder, 'secret.md'), 'utf8')).toContain('{LF: 45}')
  })

  it('names a visit that was mended away and deletes nothing', async () => {
    await importing(`${header}\n${march}\n${april}\n`)
    const again = await importing(`${header}\n${march}\nJuno,19/04/2026,3 5/8,46\n`)
    expect(again.err).toContain(
      'cases/juno/2026-04-18.md was imported from this table, which no longer has it: delete it if it was mended away.',
    )
    expect(again.status).toBe(1)
    expect(isThere('juno/2026-04-18.md')).toBe(true)
    expect(isThere('juno/2026-04-19.md')).toBe(true)
  })
})
