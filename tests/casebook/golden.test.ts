/**
 * Small casebooks on disk and what reading them must print. `expected.txt` is written by hand or looked through line
 * by line; nothing regenerates it.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { printDiagnostic } from '../../src/casebook/print.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { diskFolder } from './disk-folder.ts'

const root = join(import.meta.dirname, '../casebooks')
const asOf = '2026-06-01'

describe('a fixture casebook prints what it must', () => {
  for (const name of readdirSync(root).sort()) {
    it(name, () => {
      const { casebook, diagnostics } = readCasebook(diskFolder(join(root, name)), asOf)
      const printed = diagnostics.map((one) => `${printDiagnostic(one)}\n`).join('\n')
      expect(printed).toBe(readFileSync(join(root, name, 'expected.txt'), 'utf8'))
      if (name.startsWith('good-')) {
        expect(casebook?.horses.length).toBeGreaterThan(0)
        expect(diagnostics.filter((one) => one.level !== 'gap')).toEqual([])
      } else {
        expect(diagnostics.length).toBeGreaterThan(0)
      }
    })
  }
})
