/** A draft of a visit stays with the practice: for others it has not happened. */
import { readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { armor, Decrypter } from 'age-encryption'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { reviewCasebook } from '../../src/apps/review/casebook-review.ts'
import { armoredIn } from '../../src/editions/owner/locked-page.ts'
import { casebook, type Trial, trial } from './kit.ts'

let at: Trial
beforeEach(() => {
  at = trial()
})
afterEach(() => at.done())

const everything = ['practice', 'owner', 'portfolio']
const path = 'zoe/2026-02-16.md'
const visit = `${casebook[path] ?? ''}
## For the owner

DRAFTED-LETTER to you.

## For teaching

Much drafted teaching.
`
const draft = visit.replace('---\n', '---\ndraft: yes\n')

async function ownersPage(): Promise<string> {
  const keys = parse(readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8')) as Record<
    string,
    { passphrase: string; token: string }
  >
  const { passphrase, token } = keys.kestrel ?? { passphrase: '', token: '' }
  const decrypter = new Decrypter()
  decrypter.addPassphrase(passphrase)
  const page = readFileSync(join(at.site, 'owners', token, 'index.html'), 'utf8')
  return decrypter.decrypt(armor.decode(armoredIn(page) ?? ''), 'text')
}

/** Pages and tables of the portfolio by path. */
const portfolioFiles = () =>
  new Map(
    readdirSync(join(at.site, 'portfolio'), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(?:html|csv)$/.test(name))
      .map((name) => [name, readFileSync(join(at.site, 'portfolio', name), 'utf8')]),
  )

describe('a draft of a visit', () => {
  it("leaves the owner's page and the portfolio as they would be without its file, down to each figure", async () => {
    at.write(path, draft)
    await at.build(everything)
    const [owner, cases] = [await ownersPage(), portfolioFiles()]
    expect(owner).not.toMatch(/DRAFTED|CARE-ZOE/)
    expect([...cases.values()].join()).not.toContain('drafted')
    rmSync(join(at.casebook, path))
    await at.build(everything)
    expect(await ownersPage()).toBe(owner)
    expect(portfolioFiles()).toEqual(cases)
  })

  it('stands on the pages of the practice, and the build says that it waits', async () => {
    at.write(path, draft)
    const { diagnostics } = await at.build(everything)
    const page = (name: string) => readFileSync(join(at.site, 'practice/zoe', name), 'utf8')
    expect(page('2026-02-16.html')).toContain('CARE-ZOE')
    expect(page('index.html')).toContain('last on 16 February 2026')
    expect(diagnostics.filter(({ code }) => code === 'draft').map(({ file, line }) => [file, line])).toEqual([
      [path, 2],
    ])
  })

  it('is not asked about before the portfolio is published', () => {
    const asked = () =>
      reviewCasebook(at.casebook, '2026-03-01', true).cases.flatMap(({ items }) =>
        items.map(({ item }) => item.file),
      )
    at.write(path, draft)
    expect(asked()).not.toContain(path)
    at.write(path, visit)
    expect(asked()).toContain(path)
  })

  it('is published once its line is deleted', async () => {
    at.write(path, draft)
    await at.build(everything)
    at.write(path, visit)
    await at.build(everything)
    expect(await ownersPage()).toContain('DRAFTED-LETTER')
    expect([...portfolioFiles().values()].join()).toContain('Much drafted teaching')
  })

  it('may be all that a horse has', async () => {
    for (const name of ['zoe/2026-01-12.md', path])
      at.write(name, (casebook[name] ?? '').replace('---\n', '---\ndraft: yes\n'))
    const { refusals, diagnostics } = await at.build(everything)
    expect([refusals, diagnostics.filter(({ level }) => level === 'error')]).toEqual([[], []])
    expect(await ownersPage()).not.toMatch(/LETTER-ZOE|CARE-ZOE/)
    expect([...portfolioFiles().keys()].join()).not.toContain('bramble')
  })
})
