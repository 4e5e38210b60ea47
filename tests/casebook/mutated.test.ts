/**
 * Whatever is done to a case file, it is read without an exception. The short run takes 600 damaged files; how long text
 * may take is asked in growth.test.ts.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { CasebookFiles } from '../../src/casebook/memory-folder.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { assess } from '../../src/trend/assess.ts'
import { runs } from '../runs.ts'
import { memoryFolder } from './memory-folder.ts'
import { mutated, randomFrom } from './mutate.ts'

const asOf = '2026-11-27'

const roots = [join(import.meta.dirname, '../../cases'), join(import.meta.dirname, '../casebooks')]

const originals = roots.flatMap((root) =>
  readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.md'))
    .sort()
    .map((path) => ({ path, bytes: readFileSync(join(root, path)) })),
)

const sound = {
  'practice.md': readFileSync(join(roots[0] ?? '', 'practice.md')),
  'juno/horse.md': '---\nname: Juno\nalias: Fern\nconsent: {portfolio: yes, given: 2026-01-12}\n---\n',
  'juno/2026-01-12.md': '---\nbefore: {toe length: [98, 96, 90, 91], toe angle: [44, 45, 48, 47]}\n---\n',
  'juno/2026-02-16.md': '---\nbefore: {toe length: [97, 95, 89, 90]}\nfindings: {LF: [flare, toe, 1]}\n---\n',
}

/** A sound casebook in which the file stands where one of its kind does. */
function casebookWith(path: string, bytes: Uint8Array): CasebookFiles {
  const place = path.endsWith('practice.md')
    ? 'practice.md'
    : path.endsWith('horse.md')
      ? 'juno/horse.md'
      : 'juno/2026-02-16.md'
  return { ...sound, [place]: bytes }
}

function readAll(files: CasebookFiles): void {
  const { casebook, diagnostics } = readCasebook(memoryFolder(files), asOf)
  if (casebook !== null) for (const horse of casebook.horses) assess(horse, casebook.practice, asOf)
  for (const { message } of diagnostics) if (message === '') throw new Error('a diagnostic says nothing')
}

describe('mutated case files', () => {
  const count = runs(600, 100_000)

  it(`are read and assessed without an exception: ${count} of them`, () => {
    expect(originals.length).toBeGreaterThan(100)
    const troubles: string[] = []
    for (let seed = 1; seed <= count; seed++) {
      const random = randomFrom(seed)
      const original = originals[Math.floor(random() * originals.length)]
      if (original === undefined) continue
      try {
        readAll(casebookWith(original.path, mutated(original.bytes, random)))
      } catch (error) {
        troubles.push(`seed ${seed}, ${original.path}: ${error instanceof Error ? error.stack : error}`)
      }
    }
    expect(troubles).toEqual([])
  }, 1_800_000)
})
