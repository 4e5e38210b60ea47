import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type WarmListing, warmListing } from '../../../src/apps/preview/warm-listing.ts'
import { diskFolder } from '../../../src/build/disk/source-folder.ts'

let root: string
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'growdown-kept-'))
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

const at = (path: string) => join(root, path)

function put(path: string, text = 'text'): void {
  mkdirSync(dirname(at(path)), { recursive: true })
  writeFileSync(at(path), text)
}

const whole = () => diskFolder(root).list()
const looked = (listing: WarmListing) => [...listing.recheck()].filter((isOther) => isOther).length

/** Names of which one is the beginning of another, since they sort otherwise with what lies below them. */
const places = ['juno', 'juno-b', 'juno.md', 'pip', 'practice.md'] as const
const below = ['', '/horse.md', '/2026-03-14.md', '/photos/lf.jpg', '/photos', '/node_modules/x.md', '/.swp']

const path = fc.tuple(fc.constantFrom(...places), fc.constantFrom(...below)).map((parts) => parts.join(''))
const edit = fc.oneof(
  fc.record({ do: fc.constant('write' as const), path, text: fc.string({ maxLength: 3 }) }),
  fc.record({ do: fc.constantFrom('remove' as const, 'link' as const, 'folder' as const), path }),
  fc.record({ do: fc.constant('rename' as const), path, to: path }),
)

/** Does what can be done, and says which places may have changed. */
function carryOut(one: typeof edit extends fc.Arbitrary<infer T> ? T : never): readonly string[] {
  const touched = one.do === 'rename' ? [one.path, one.to] : [one.path]
  try {
    if (one.do === 'write') put(one.path, one.text)
    if (one.do === 'remove') rmSync(at(one.path), { recursive: true })
    if (one.do === 'link') symlinkSync('nowhere', at(one.path))
    if (one.do === 'folder') mkdirSync(at(one.path), { recursive: true })
    if (one.do === 'rename') renameSync(at(one.path), at(one.to))
  } catch {
    // A file where a folder is needed, or nothing there: then nothing changed.
  }
  return touched
}

describe('a kept listing', () => {
  it('equals a whole one after any edits, whether it was told of them or looked again', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ edit, isTold: fc.boolean() }), { maxLength: 30 }), (edits) => {
        rmSync(root, { recursive: true })
        mkdirSync(root)
        const listing = warmListing(root)
        listing.list()
        for (const { edit, isTold } of edits) {
          const touched = carryOut(edit)
          if (isTold) for (const path of touched) listing.invalidate(path)
          else looked(listing)
          expect(listing.list()).toEqual(whole())
          expect(looked(listing)).toBe(0)
        }
      }),
      { numRuns: 200, seed: 20260601 },
    )
  })

  it('keeps what it was not told of, so that not every file is looked at', () => {
    put('juno/horse.md')
    put('pip/horse.md')
    const listing = warmListing(root)
    const before = listing.list()
    put('juno/horse.md', 'longer text')
    put('pip/horse.md', 'longer text')
    listing.invalidate('pip/horse.md')
    expect(listing.list()).toEqual([before[0], whole()[1]])
    expect(looked(listing)).toBe(1)
    expect(listing.list()).toEqual(whole())
  })

  it('sees a folder that came or went without being told', () => {
    put('juno/horse.md')
    const listing = warmListing(root)
    listing.list()
    put('pip/horse.md')
    expect(listing.list()).toEqual(whole())
    rmSync(at('juno'), { recursive: true })
    expect(listing.list()).toEqual(whole())
  })

  it.each(['', '..', 'JUNO/horse.md', 'gone.md'])(
    'looks everywhere when told of %j, which it cannot place',
    (path) => {
      put('juno/horse.md')
      const listing = warmListing(root)
      listing.list()
      put('juno/horse.md', 'longer text')
      listing.invalidate(path)
      expect(listing.list()).toEqual(whole())
    },
  )

  it('stays in doubt when it could not look', () => {
    put('juno/horse.md')
    const listing = warmListing(root)
    listing.list()
    put('juno/horse.md', 'longer text')
    listing.invalidate('juno/horse.md')
    const away = `${root}-away`
    renameSync(root, away)
    expect(() => listing.list()).toThrow(`${root} could not be read: it is not there`)
    renameSync(away, root)
    expect(existsSync(away)).toBe(false)
    expect(listing.list()).toEqual(whole())
  })
})
