/** What of a case file reaches no page for others: drafts, problems, and who works in the practice. */
import { readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { armor, Decrypter } from 'age-encryption'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { armoredIn } from '../../src/editions/owner/locked-page.ts'
import { casebook, reviewed, type Trial, trial } from './kit.ts'

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
    expect(page('index.html')).toContain('Last seen 16 February 2026')
    expect(diagnostics.filter(({ code }) => code === 'draft').map(({ file, line }) => [file, line])).toEqual([
      [path, 2],
    ])
  })

  it('is not asked about before the portfolio is published', async () => {
    const asked = async () =>
      (await reviewed(at.casebook, '2026-03-01', true)).cases.flatMap(({ items }) =>
        items.map(({ item }) => item.file),
      )
    at.write(path, draft)
    expect(await asked()).not.toContain(path)
    at.write(path, visit)
    expect(await asked()).toContain(path)
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

describe('what the case is about, and who took the readings', () => {
  const kept: Readonly<Record<string, readonly [string, string]>> = {
    'practice.md': ['owners:', 'people: {tib: {name: Ilse Brandtholm}, tom: Tom Eckholt}\nowners:'],
    'zoe/horse.md': [
      'kind: cob',
      'kind: cob\nproblems: [forging at the trot, RH heel balance, LF thrush, Brandtholm says sole is thin]',
    ],
    'zoe/2026-01-12.md': ['date: 2026-01-12', 'date: 2026-01-12\nby: tib'],
  }
  const writeKept = () => {
    for (const [file, [from, to]] of Object.entries(kept))
      at.write(file, (casebook[file] ?? '').replace(from, to))
  }

  it("change nothing in the owner's page, and no word of them comes into the portfolio", async () => {
    await at.build(everything)
    const owner = await ownersPage()
    writeKept()
    const { diagnostics } = await at.build(everything)
    expect(diagnostics.filter(({ file }) => file in kept)).toEqual([])
    expect(await ownersPage()).toBe(owner)
    const cases = [...portfolioFiles().values()].join()
    expect(cases).not.toMatch(/forging|trot|Brandtholm|Tib/i)
    // Measures and findings of the vocabulary say what a case is about.
    expect(cases).toContain('Heel balance')
  })

  it('are taken out of teaching text, and searched for once they have left', async () => {
    writeKept()
    const taught = (casebook['may/2026-01-12.md'] ?? '').replace(
      'May came',
      'Tib and Mr Eckholt measured; May came',
    )
    at.write('may/2026-01-12.md', taught)
    expect((await at.build(everything)).refusals).toEqual([])
    expect([...portfolioFiles().values()].join()).not.toMatch(/Tib|Eckholt/)
    expect([...portfolioFiles().values()].join()).toContain('someone of the practice')
    at.write('practice.md', casebook['practice.md'] ?? '')
    at.write('zoe/2026-01-12.md', casebook['zoe/2026-01-12.md'] ?? '')
    const { refusals } = await at.build(everything)
    expect(refusals.flatMap(({ hits }) => hits.map(({ kind, text }) => [kind, text]))).toContainEqual([
      'former name',
      'Eckholt',
    ])
  })
})
