/** The battery of slips: each is named, once, and every fix that is given is applied and found to be right. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Diagnostic } from '../../src/casebook/diagnostic.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { applyFix, type Files } from './apply-fix.ts'
import { memoryFolder } from './memory-folder.ts'
import { slips } from './slips/index.ts'

const asOf = '2026-06-01'
const check = (files: Files): readonly Diagnostic[] => readCasebook(memoryFolder(files), asOf).diagnostics

describe('a slip is named once, and its fix makes it right', () => {
  it.each(slips)('$name', ({ files, code, fixed }) => {
    const told = check(files)
    expect(told.map((one) => one.code)).toEqual([code])
    const [one] = told
    if (one?.change) {
      const after = applyFix(files, one)
      expect(after).toEqual(fixed)
      expect(check(after)).toEqual([])
    } else {
      expect(fixed).toBeNull()
    }
  })

  it('in a battery of so many slips, and so many fixes', () => {
    const fixes = slips.filter(({ fixed }) => fixed !== null)
    expect({ slips: slips.length, fixes: fixes.length }).toEqual({ slips: 437, fixes: 254 })
    expect(new Set(slips.map(({ files }) => JSON.stringify(files))).size).toBe(slips.length)
  })
})

describe('in the casebooks of many mistakes', () => {
  const root = join(import.meta.dirname, '../casebooks')

  /** A casebook's text files; a picture's bytes do not matter here. */
  const filesOf = (name: string): Files =>
    Object.fromEntries(
      readdirSync(join(root, name), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name !== 'expected.txt')
        .map((entry) => {
          const path = join(entry.parentPath, entry.name)
          return [path.slice(join(root, name).length + 1), readFileSync(path, 'utf8')]
        }),
    )

  const sameAs = (one: Diagnostic) => (other: Diagnostic) =>
    other.code === one.code && other.message === one.message && other.file === one.file

  it.each(readdirSync(root))('%s: a fix takes its own problem away and makes no other', (name) => {
    const files = filesOf(name)
    const before = check(files)
    for (const one of before) {
      expect(one.fix === null, one.message).toBe(one.change === null)
      if (one.change === null) continue
      const after = check(applyFix(files, one))
      expect(after.filter(sameAs(one)), one.message).toHaveLength(before.filter(sameAs(one)).length - 1)
      // What could not be read before may hold problems of its own, which come to light: not this one again.
      const again = after.filter(
        (other) => other.code === one.code && other.file === one.file && other.line === one.line,
      )
      expect(
        again.filter((other) => !before.some(sameAs(other))),
        one.message,
      ).toEqual([])
    }
  })
})
