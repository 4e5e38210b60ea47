/** Which file is what, gaps left by templates, and how a diagnostic is printed. */
import { describe, expect, it } from 'vitest'
import type { Diagnostic } from '../../src/casebook/diagnostic.ts'
import { printDiagnostic } from '../../src/casebook/print.ts'
import { readCasebook, readHorse, readPractice } from '../../src/casebook/read.ts'
import { memoryFolder } from './memory-folder.ts'
import { horseText, practiceText, readVisitBlock, told } from './read-one.ts'

describe('files in no known place', () => {
  const stray = (path: string) =>
    readPractice(
      memoryFolder({ 'practice.md': practiceText, 'juno/horse.md': horseText, [path]: 'x' }),
      '2026-06-01',
    ).diagnostics

  it.each([
    ['juno/2026-3-4.md', 'juno/2026-03-04.md'],
    ['juno/20260304.md', 'juno/2026-03-04.md'],
    ['juno/2026-03-14 (2).md', 'juno/2026-03-14-b.md'],
    ['juno/2026-03-14-2.md', 'juno/2026-03-14-b.md'],
    ['juno/visits/2026-03-14.md', 'juno/2026-03-14.md'],
    ['juno/Horse.md', 'juno/horse.md'],
  ])('%s could go to %s', (path, fix) => {
    expect(stray(path)).toMatchObject([
      {
        code: 'stray-file',
        level: 'warning',
        file: path,
        fix: `rename it to ${fix}`,
        change: { kind: 'rename', from: path, to: fix },
        message: `"${path}" lies in no place where a case file is looked for, so it is not read.`,
      },
    ])
  })

  it.each([
    ['2026-01-12.md', '<horse>/2026-01-12.md'],
    ['horse.md', '<horse>/horse.md'],
  ])('%s could go to %s, of which horse nobody knows', (path, place) => {
    expect(stray(path)).toMatchObject([{ code: 'stray-file', fix: null, advice: `move it to ${place}` }])
  })

  it.each([
    'juno/photos/lf.jpg',
    'bill.pdf',
    'passphrases.yaml',
    '.git/notes.md',
    'juno/.horse.md.swp',
    '.trash/juno/horse.md',
    'juno/horse.md~',
    'notes.txt',
  ])('%s is left alone', (path) => {
    expect(stray(path)).toEqual([])
  })

  it('names a folder that cannot be a horse', () => {
    const read = readCasebook(
      memoryFolder({ 'practice.md': practiceText, 'Big Bay/horse.md': horseText }),
      '2026-06-01',
    )
    expect(read.diagnostics).toMatchObject([
      { code: 'horse-folder', level: 'error', fix: 'rename the folder to big-bay' },
    ])
    expect(read.casebook?.horses).toEqual([])
  })

  it('a folder of visits without horse.md is a horse with an error', () => {
    const folder = memoryFolder({
      'practice.md': practiceText,
      'nell/2026-01-12.md': '---\nfindings: {LF: [flare, toe, 1]}\n---\n',
    })
    const { practice, horseIds } = readPractice(folder, '2026-06-01')
    expect(horseIds).toEqual(['nell'])
    expect(practice && readHorse(folder, 'nell', practice, '2026-06-01')).toMatchObject({
      horse: null,
      diagnostics: [{ code: 'horse-missing', message: 'The folder nell has visits but no horse.md.' }],
    })
  })

  it('does not take one horse for another whose name it begins with', () => {
    const folder = memoryFolder({
      'practice.md': practiceText,
      'juno/horse.md': horseText,
      'juno-b/horse.md': horseText.replace('Juno', 'Juno the second'),
      'juno-b/2026-01-12.md': '---\nfindings: {LF: [flare, toe, 1]}\n---\n',
    })
    const { casebook } = readCasebook(folder, '2026-06-01')
    expect(casebook?.horses.map(({ id, visits }) => [id, visits.length])).toEqual([
      ['juno', 0],
      ['juno-b', 1],
    ])
  })
})

describe('a place left to be filled in', () => {
  it.each([
    ['footing: ?', 'Footing is not yet filled in.'],
    ["footing: '?'", 'Footing is not yet filled in.'],
    ['footing: _', 'Footing is not yet filled in.'],
    ['before: {toe length: [_, 98, _, ~]}', 'Toe length is not yet filled in for LF and LH.'],
    [
      'grow-out:\n  LF:\n    - nail holes, toe, _   # 42 mm last time',
      'Grow out LF: nail holes is not yet filled in.',
    ],
    ['before: {toe length: [?, 98, ?, ~]}', 'Toe length is not yet filled in for LF and LH.'],
    ['before: {toe length: {LF: ?, RF: 98}}', 'Toe length is not yet filled in for LF.'],
    ['before:\n  toe length: ?', 'Toe length is not yet filled in.'],
    ['before:\n  toe length:\n    LF: ?   # 98 last time', 'Toe length is not yet filled in for LF.'],
    ['before: ?', 'Before is not yet filled in.'],
    ['next visit: ?', 'Next visit is not yet filled in.'],
    ['care:\n  - ?', 'A line of care is not yet filled in.'],
    ['findings:\n  LF:\n    - flare, toe, ?', 'Findings LF: flare is not yet filled in.'],
    ['grow-out:\n  LF:\n    - nail holes, toe, ?', 'Grow out LF: nail holes is not yet filled in.'],
    ['comfort: {lameness: {LF: ?, by: vet}}', 'Lameness is not yet filled in for LF.'],
    ['body: {weight: ?}', 'Weight is not yet filled in.'],
    ['date: ?', 'Date is not yet filled in.'],
  ])('%s', (block, message) => {
    const read = readVisitBlock(`${block}\nstance: {LF: straight}`)
    expect(read.diagnostics.map((one) => [one.level, one.code, one.message])).toEqual([
      ['gap', 'not-filled-in', message],
    ])
    expect(read.visit?.readings.every((reading) => reading.value === 98) ?? false).toBe(true)
  })

  it('is only a lone question mark', () => {
    expect(readVisitBlock('footing: soft?\ncare: [Is it dry?]\nstance: {LF: straight}').diagnostics).toEqual(
      [],
    )
    expect(readVisitBlock('footing: what, ?\nstance: {LF: straight}').visit?.footing).toBe('what, ?')
  })
})

describe('printing', () => {
  const diagnostic: Diagnostic = {
    code: 'measure-unknown',
    level: 'error',
    file: 'juno/2026-01-12.md',
    line: 12,
    column: 3,
    endColumn: 13,
    sourceLine: '  toe lenght: [98, 96, 95, 94]',
    message: '"toe lenght" is not a measure.',
    expected: 'a measure',
    fix: 'toe length',
    change: null,
    advice: null,
  }

  it('shows the place, the line with a caret, what was expected and the likely fix', () => {
    expect(printDiagnostic(diagnostic)).toBe(
      [
        'juno/2026-01-12.md:12:3  error: "toe lenght" is not a measure.',
        '    12 |   toe lenght: [98, 96, 95, 94]',
        '       |   ^^^^^^^^^^',
        '      expected: a measure',
        '    likely fix: toe length',
      ].join('\n'),
    )
  })

  it('shows a whole file without a line', () => {
    expect(
      printDiagnostic({
        ...diagnostic,
        line: null,
        column: null,
        endColumn: null,
        sourceLine: null,
        expected: null,
        fix: null,
      }),
    ).toBe('juno/2026-01-12.md  error: "toe lenght" is not a measure.')
  })

  it('keeps tabs under tabs, so that the caret stands right', () => {
    const printed = printDiagnostic({
      ...diagnostic,
      sourceLine: '\ttoe lenght: 1',
      column: 2,
      endColumn: 12,
    })
    expect(printed.split('\n')[2]).toBe('       | \t^^^^^^^^^^')
  })

  it('cuts a long line to the part around the caret', () => {
    const sourceLine = `${'a'.repeat(500)} here ${'b'.repeat(500)}`
    const [, line = '', caret = ''] = printDiagnostic({
      ...diagnostic,
      sourceLine,
      column: 502,
      endColumn: 506,
    }).split('\n')
    expect(line.length).toBeLessThan(120)
    expect(line.slice(caret.indexOf('^'), caret.indexOf('^') + 4)).toBe('here')
  })

  it('lets nothing from a file steer the terminal', () => {
    const printed = printDiagnostic({
      ...diagnostic,
      file: 'juno/\u001b]0;y\u0007.md',
      sourceLine: 'a\u001b[2Jb\u202ec\rd',
      message: 'x\nNothing is wrong.\u009b2K',
      column: 8,
      endColumn: 9,
    })
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(printed).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u0080-\u009f\u202a-\u202e]/)
    expect(printed.split('\n').slice(0, 3)).toEqual([
      'juno/\\u001b]0;y\\u0007.md:12:8  error: x\\u000aNothing is wrong.\\u009b2K',
      '    12 | a\\u001b[2Jb\\u202ec\\u000dd',
      `       | ${' '.repeat('a\\u001b[2Jb\\u202e'.length)}^`,
    ])
  })

  it('shows a control character that is itself the place', () => {
    const [, line = '', caret = ''] = printDiagnostic({
      ...diagnostic,
      sourceLine: 'ab\u202ec',
      column: 3,
      endColumn: 4,
    }).split('\n')
    expect(line.slice(caret.indexOf('^'), caret.lastIndexOf('^') + 1)).toBe('\\u202e')
  })

  it('orders errors before warnings, then by file and line', () => {
    const read = readVisitBlock(
      'footing: soft\nbefore:\n  toe length: [9.5, 96, 95, 94]\n  toe angel: [1, 2, 3, 4]',
    )
    expect(told(read).map((one) => one.split(' ')[0])).toEqual(['measure-unknown', 'reading-unlikely'])
  })
})
