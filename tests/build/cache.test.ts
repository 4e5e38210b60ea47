/**
 * Whatever becomes of what the tool keeps between builds, the site is what a fresh build makes. The short run does each
 * damage to every kept file of two visits to two horses at once.
 */
import { chmodSync, lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Diagnostic } from '../../src/casebook/diagnostic.ts'
import { type Trial, trial } from '../editions/kit.ts'
import { isLong, runs } from '../runs.ts'
import { contents, pages } from './kit.ts'

let at: Trial
/** The site as a fresh build makes it, but for the locked pages, which are random. */
let fresh: Record<string, string>
/** What each build says of a portfolio of two cases. */
let said: readonly Diagnostic[]

const plain = (site: string) =>
  Object.fromEntries(Object.entries(pages(site)).filter(([path]) => !locked.test(path)))
const locked = /^(?:owners|yard)\/\w+\/(?:index\.html|worker\.js)$/

const build = async () =>
  (await at.buildUnread(['practice', 'yard', 'owner', 'portfolio'], '2026-11-25')).diagnostics

/** Files of the demo by path: those of its own folder, and those of some horses. */
const demo = (...horses: readonly string[]) =>
  Object.fromEntries(
    ['practice.md', 'approvals.txt', ...horses.flatMap(filesOf)].map((path) => [
      path,
      readFileSync(join('cases', path)),
    ]),
  )

/** What is kept of many visits is kept of a few. */
const visits = runs(2, 100)

function filesOf(horse: string): readonly string[] {
  const files = readdirSync(join('cases', horse), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => relative('cases', join(parentPath, name)))
  const isVisit = (path: string) => /\d{4}-\d\d-\d\d\.md$/.test(path)
  return [...files.filter((path) => !isVisit(path)), ...files.filter(isVisit).sort().slice(-visits)]
}

const work = (path = '') => join(at.root, '.growdown', path)

/** Whether it is one more name of a file of the site. */
const isLink = (path: string) => path.startsWith(join('site', 'kept'))

/** Every file that is kept, by path. */
const kept = (): readonly string[] =>
  readdirSync(work(), { recursive: true, encoding: 'utf8' })
    .filter((path) => lstatSync(work(path)).isFile() && !isLink(path))
    .sort()

beforeAll(async () => {
  // Two horses are enough to keep something of every kind.
  at = trial(demo('whimbrel', 'dunlin'))
  said = await build()
  expect(said).toMatchObject([
    {
      level: 'warning',
      file: 'dunlin/horse.md',
      message: expect.stringMatching(
        /^In the portfolio no more cases are told alike than Hornbeam and Medlar/,
      ),
    },
  ])
  fresh = plain(at.site)
}, 120_000)
afterAll(() => at.done())

/** Builds after a damage: nothing is said of it, and nothing is left of it. */
async function mends(): Promise<void> {
  expect(await build()).toEqual(said)
  expect(plain(at.site)).toEqual(fresh)
}

/** So that a build has something to make out of what is kept. */
function touchCasebook(): void {
  const file = join(at.casebook, 'practice.md')
  const text = readFileSync(file, 'utf8')
  writeFileSync(file, text.endsWith('\n\n') ? text.slice(0, -1) : `${text}\n`)
}

describe('a file that the tool keeps', () => {
  const kindOf = (path: string) => path.replace(/[\w-]{32,}/g, 'name')
  const damages: Readonly<Record<string, (path: string, bytes: Buffer, other: string) => void>> = {
    'a letter flipped': (path, bytes) => {
      const at = Math.floor(bytes.length / 2)
      bytes[at] = (bytes[at] ?? 0) ^ 1
      writeFileSync(path, bytes)
    },
    'cut short': (path, bytes) => writeFileSync(path, bytes.subarray(0, Math.floor(bytes.length / 2))),
    emptied: (path) => writeFileSync(path, ''),
    'exchanged with another': (path, bytes, other) => {
      writeFileSync(path, readFileSync(other))
      writeFileSync(other, bytes)
    },
    'made a folder': (path) => {
      rmSync(path)
      mkdirSync(path)
    },
  }

  it('is of every kind there is', () => {
    expect([...new Set(kept().map(kindOf))].sort()).toEqual([
      '.gitignore',
      'site/fragments/name',
      'site/lock',
      'site/pictures/name.jpg',
      'site/pictures/name.json',
      'site/pictures/name.webp',
      'site/state.json',
    ])
  })

  /** All at once; in a long run one kind at a time as well. */
  const rounds = (): readonly (readonly string[])[] => {
    const kinds = [...new Set(kept().map(kindOf))]
    return [kinds, ...(isLong ? kinds.map((kind) => [kind]) : [])]
  }

  function damage(how: string, kinds: readonly string[]): void {
    const paths = kept()
    for (const [index, path] of paths.entries()) {
      // Where a folder stands in the place of these two, the build says so.
      const isSaid = how === 'made a folder' && /gitignore$|lock$/.test(path)
      if (isSaid || !kinds.includes(kindOf(path)) || !lstatSync(work(path)).isFile()) continue
      const others = paths.filter((other) => other !== path && lstatSync(work(other)).isFile())
      const other = others[(index * 7) % others.length] ?? path
      damages[how]?.(work(path), readFileSync(work(path)), work(other))
    }
  }

  it.each(Object.keys(damages))(
    'is made again where every one was %s',
    async (how) => {
      for (const kinds of rounds()) {
        for (const change of isLong ? [() => {}, touchCasebook] : [touchCasebook]) {
          damage(how, kinds)
          change()
          await mends()
        }
      }
    },
    300_000,
  )
})

describe('what is kept', () => {
  it('is for the eyes of this account alone', async () => {
    for (const path of ['', ...readdirSync(work(), { recursive: true, encoding: 'utf8' })]) {
      const stat = lstatSync(work(path))
      // Their folders let nobody in.
      if (!(stat.isFile() && isLink(path))) expect([path, stat.mode & 0o077]).toEqual([path, 0])
    }
    chmodSync(work(), 0o755)
    await mends()
    expect(lstatSync(work()).mode & 0o777).toBe(0o700)
  })

  it('leaves pages and pictures that others may be given', () => {
    for (const path of readdirSync(at.site, { recursive: true, encoding: 'utf8' })) {
      const isList = path === '.made.json'
      expect([path, lstatSync(join(at.site, path)).mode & 0o044]).toEqual([path, isList ? 0 : 0o044])
    }
  })

  it('tells nothing by which a passphrase could be tried', () => {
    const words = [
      ...readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8').matchAll(/passphrase: (.+)/g),
    ]
    expect(words.length).toBeGreaterThan(1)
    const all = Object.values(contents(work())).join('\n')
    const secret = /Secret of builds: (\S+)/.exec(
      readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8'),
    )?.[1]
    for (const hidden of [secret, ...words.map(([, passphrase]) => passphrase)])
      expect(all).not.toContain(hidden)
  })

  it('is warned of where others can read the passphrases', async () => {
    const file = join(at.casebook, 'passphrases.yaml')
    chmodSync(file, 0o644)
    const warning = (await build()).find(({ file: of }) => of === 'passphrases.yaml')
    expect(warning?.level).toBe('warning')
    expect(warning?.message).toContain(
      'other accounts of this machine can read this file, and with it every owner',
    )
    expect(JSON.stringify(warning)).toContain('chmod 600 passphrases.yaml')
    chmodSync(file, 0o600)
  })
})
