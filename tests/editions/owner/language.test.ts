import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { armor, Decrypter } from 'age-encryption'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { parse } from 'yaml'
import { armoredIn } from '../../../src/editions/owner/locked-page.ts'
import { english, german } from '../../english.ts'
import { casebook, type Trial, trial } from '../kit.ts'

let at: Trial
beforeEach(() => {
  at = trial()
})
afterEach(() => at.done())

const practiceFile = (change: (text: string) => string) =>
  at.write('practice.md', change(casebook['practice.md'] ?? ''))

/** The page that anyone may see, and the one inside. */
async function pagesOf(owner: string): Promise<{ readonly locked: string; readonly inside: string }> {
  const { passphrase, token } = parse(readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8'))[owner]
  const locked = readFileSync(join(at.site, 'owners', token, 'index.html'), 'utf8')
  const decrypter = new Decrypter()
  decrypter.addPassphrase(passphrase)
  return { locked, inside: await decrypter.decrypt(armor.decode(armoredIn(locked) ?? ''), 'text') }
}

async function expectLanguage(owner: string, tag: 'en' | 'de'): Promise<void> {
  const words = tag === 'de' ? german.owner : english.owner
  const { locked, inside } = await pagesOf(owner)
  for (const page of [locked, inside]) expect(page).toContain(`<html lang="${tag}">`)
  expect(locked).toContain(words.locked.head)
  expect(inside).toContain(words.ringHead)
  expect(inside).toContain(words.careHead)
}

it("is the practice's, and each owner's own where practice.md says so", async () => {
  practiceFile((text) => text.replace('{name: Ada Kestrel}', '{name: Ada Kestrel, language: de}'))
  await at.build(['owner'])
  await expectLanguage('kestrel', 'de')
  await expectLanguage('fenwick', 'en')

  practiceFile((text) =>
    text
      .replace('units: mm\n', 'units: mm\nlanguage: de\n')
      .replace('{name: Ada Kestrel}', '{name: Ada Kestrel, language: en}'),
  )
  await at.build(['owner'])
  await expectLanguage('kestrel', 'en')
  await expectLanguage('fenwick', 'de')
})

it("leaves the practice's pages and the portfolio in English", async () => {
  practiceFile((text) => text.replace('units: mm\n', 'units: mm\nlanguage: de\n'))
  await at.build(['practice', 'portfolio'])
  for (const path of ['practice/index.html', 'practice/zoe/index.html', 'portfolio/index.html'])
    expect(readFileSync(join(at.site, path), 'utf8')).toContain('<html lang="en">')
})
