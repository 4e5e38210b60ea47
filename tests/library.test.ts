/** The package as a library: what it gives on Node, and that its types hold for whoever imports it. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { packageRoot } from '../src/build/program.ts'
import * as library from '../src/library.ts'
import { asOf, casebookFiles, wholeExport } from './library-kit.ts'

const root = packageRoot()
const folder = mkdtempSync(join(tmpdir(), 'growdown-library-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the library', () => {
  it('reads a casebook given as texts, assesses it and exports it', () => {
    const result = library.exportShape.parse(JSON.parse(wholeExport(library)))
    expect(result.horses.map(({ name }) => name)).toEqual(['Juno'])
    const [toe] = result.horses[0]?.trends.filter((one) => one.foot === 'LF') ?? []
    expect(toe).toMatchObject({ measure: 'toe-length', n: 3, first: { value: 92 }, last: { value: 88 } })
  })

  it('reads the same from the disk', () => {
    for (const [path, text] of Object.entries(casebookFiles)) {
      mkdirSync(join(folder, 'cases', path, '..'), { recursive: true })
      writeFileSync(join(folder, 'cases', path), text)
    }
    const onDisk = library.read(library.diskFolder(join(folder, 'cases')), asOf)
    expect(onDisk).toEqual(library.read(casebookFiles, asOf))
  })

  it('tells problems and throws none', () => {
    const { casebook, diagnostics } = library.read({ 'juno/horse.md': '---\nnaem: Juno\n---\n' }, asOf)
    expect(casebook).toBeNull()
    expect(diagnostics.map((one) => library.printDiagnostic(one)).join('\n')).toContain('practice.md')
  })
})

describe('the package', () => {
  const { exports, files } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
  const targets = (value: unknown): readonly string[] =>
    typeof value === 'string' ? [value] : Object.values(value as object).flatMap(targets)

  it('holds every file that it exports', () => {
    const packed = (path: string) => files.some((one: string) => path === one || path.startsWith(`${one}/`))
    const own = targets(exports).map((path) => path.slice(2))
    expect(own.filter((path) => path !== 'package.json' && !packed(path))).toEqual([])
    for (const path of own.filter((one) => !one.endsWith('.d.ts')))
      expect(existsSync(join(root, path))).toBe(true)
  })

  it('has types that hold for a program that imports it, in either way of finding packages', () => {
    const tsc = join(root, 'node_modules', '.bin', 'tsc')
    const own = join(folder, 'node_modules', 'growdown')
    mkdirSync(own, { recursive: true })
    writeFileSync(join(own, 'package.json'), JSON.stringify({ name: 'growdown', type: 'module', exports }))
    symlinkSync(join(root, 'node_modules', 'zod'), join(folder, 'node_modules', 'zod'))
    execFileSync(tsc, ['-p', 'tsconfig.library.json', '--outDir', join(own, 'dist', 'types')], { cwd: root })
    writeFileSync(join(folder, 'package.json'), '{"type":"module"}')
    writeFileSync(join(folder, 'program.ts'), program)
    for (const ways of [
      ['NodeNext', 'NodeNext'],
      ['ESNext', 'Bundler'],
    ])
      expect(typeErrors(tsc, ways)).toBe('')
  })

  function typeErrors(tsc: string, [module = '', resolution = '']: readonly string[]): string {
    const options = ['--noEmit', '--strict', '--target', 'es2022', '--lib', 'es2023,dom', '--module', module]
    try {
      execFileSync(tsc, [...options, '--moduleResolution', resolution, 'program.ts'], { cwd: folder })
      return ''
    } catch (error) {
      return String((error as { readonly stdout?: Uint8Array }).stdout)
    }
  }
})

/** What holds, and what must not: a line marked so is an error where there is none. */
const program = `import { assess, diskFolder, type Export, exportOf, exportShape, read } from 'growdown'
import { read as readHere } from 'growdown/browser'

const { casebook } = read(diskFolder('cases'), '2026-11-27')
const assessments = casebook?.horses.map((horse) => assess(horse, casebook.practice, '2026-11-27')) ?? []
const result: Export = exportShape.parse(exportOf(assessments, '2026-11-27'))
result.horses[0]?.trends[0]?.verdict satisfies string | undefined
readHere({ 'practice.md': '' }, '2026-11-27').casebook?.practice.units satisfies 'mm' | 'cm' | 'in' | undefined
// @ts-expect-error a browser has no disk
import('growdown/browser').then(({ diskFolder: none }) => none)
// @ts-expect-error there is no such measure
casebook?.horses[0]?.visits[0]?.readings[0]?.measure satisfies 'hoof colour'
// @ts-expect-error a horse needs a practice
assess(1)
`
