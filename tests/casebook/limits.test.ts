/** How much a case file may hold: all of it is read, and one more is told of with its place and a way out. */
import { describe, expect, it } from 'vitest'
import type { Diagnostic } from '../../src/casebook/diagnostic.ts'
import { limits } from '../../src/casebook/limits.ts'
import { readTable } from '../../src/casebook/table.ts'
import { type OneHorse, readOne } from './read-one.ts'

const letters = (count: number) => 'a'.repeat(count)
const horse = (lines: string): OneHorse => ({ horse: `---\nname: Juno\nowner: abel\n${lines}\n---\n` })
const named = (name: string): OneHorse => ({ horse: `---\nname: ${name}\nowner: abel\n---\n` })
const practice = (lines: string): OneHorse => ({
  practice: `---\npractice: Slow Hoof\nowners: {abel: {name: Abel Moor}}\n${lines}\n---\n`,
})
const visit = (block: string, body = ''): OneHorse => ({
  visits: { '2026-01-12': `---\n${block}\n---\n${body}` },
})
const notes = (body: string): OneHorse => visit('care: [x]', body)
const list = (count: number) => `[${Array.from({ length: count }, (_, i) => `x${i}`).join(', ')}]`
const terms = (count: number) => Array.from({ length: count }, (_, i) => `  strange thing ${i}: x`).join('\n')

type Case = readonly [
  what: string,
  made: (size: number) => OneHorse,
  most: number,
  code: string,
  line: number,
]

const cases: readonly Case[] = [
  ["letters of a horse's name", (n) => named(letters(n)), limits.name, 'too-long', 2],
  ['letters of an alias', (n) => horse(`alias: ${letters(n)}`), limits.name, 'too-long', 4],
  ['bytes of an alias', (n) => horse(`alias: ${'\u4e2d'.repeat(n / 3)}`), limits.aliasBytes, 'too-long', 4],
  [
    'bytes of an alias of joined letters',
    (n) => horse(`alias: ${'\ufb03'.repeat(n / 3)}`),
    limits.aliasBytes,
    'too-long',
    4,
  ],
  ['letters of a private word', (n) => horse(`private words: [${letters(n)}]`), limits.name, 'too-long', 4],
  ["letters of a vet's number", (n) => horse(`vet: {phone: ${letters(n)}}`), limits.name, 'too-long', 4],
  ['letters of a diagnosis', (n) => horse(`vet: {diagnosis: ${letters(n)}}`), limits.text, 'too-long', 4],
  ['lines of a history', (n) => horse(`history: ${list(n)}`), limits.entries, 'too-many', 4],
  [
    "letters of an owner's name",
    (n) => practice(`local rules: x\ncontacts: {vet: {name: ${letters(n)}}}`),
    limits.name,
    'too-long',
    5,
  ],
  ['letters of a term', (n) => practice(`terms: {${letters(n)}: x}`), limits.name, 'too-long', 4],
  ['terms', (n) => practice(`terms:\n${terms(n)}`), limits.entries, 'too-many', 5],
  ['letters of the footing', (n) => visit(`footing: ${letters(n)}`), limits.text, 'too-long', 2],
  [
    'letters of a key',
    (n) => visit(`comfort: {surfaces: {${letters(n)}: easy}}`),
    limits.name,
    'too-long',
    2,
  ],
  [
    'letters of who judged',
    (n) => visit(`comfort: {lameness: {LF: 1, by: ${letters(n)}}}`),
    limits.name,
    'too-long',
    2,
  ],
  [
    'letters of what is followed',
    (n) => visit(`grow-out:\n  LF:\n    - ${letters(n)}, toe, 4 mm`),
    limits.name,
    'too-long',
    4,
  ],
  ['letters of a line of care', (n) => visit(`care:\n  - x\n  - ${letters(n)}`), limits.text, 'too-long', 4],
  ['lines of care', (n) => visit(`care: ${list(n)}`), limits.entries, 'too-many', 2],
  ['signs of lists in a row', (n) => notes(`x\n\n${'- '.repeat(n)}a`), limits.containers, 'too-deep', 6],
  ['signs of quotations in a row', (n) => notes(`${'>'.repeat(n)} a`), limits.containers, 'too-deep', 4],
  [
    'signs of quotations with nothing after them',
    (n) => notes('>'.repeat(n)),
    limits.containers,
    'too-deep',
    4,
  ],
  ['columns of a list', (n) => notes(`- x\n${' '.repeat(n - 1)}- a`), limits.indent, 'too-deep', 5],
  [
    'lines together',
    (n) => notes('word\n'.repeat(n)),
    limits.linesTogether,
    'too-many',
    4 + limits.linesTogether,
  ],
  ['signs of emphasis together', (n) => notes('*'.repeat(n)), limits.marksTogether, 'too-many', 4],
  [
    'open brackets on lines together',
    (n) =>
      notes(
        '[['
          .repeat(8)
          .concat('\n')
          .repeat(n / 16),
      ),
    limits.marksTogether,
    'too-many',
    4 + limits.marksTogether / 16,
  ],
  [
    'underlined headings',
    (n) => notes('a\n=\n\n'.repeat(n)),
    limits.underlined,
    'too-many',
    5 + 3 * limits.underlined,
  ],
  [
    'cells of a table',
    (n) => notes(`a${'|a'.repeat(99)}\n-${'|-'.repeat(99)}\n${'x\n'.repeat(n / 100 - 1)}`),
    limits.tableCells,
    'too-many',
    5 + limits.tableCells / 100,
  ],
  ['letters of an address given once', (n) => notes(`[a]: ${letters(n)}`), limits.definition, 'too-long', 4],
  [
    'letters of its title',
    (n) => notes(`[a]:\n> b\n> "${letters(n / 2)}\n${letters(n / 2 - 3)}`),
    limits.definition,
    'too-long',
    7,
  ],
]

const problems = (parts: OneHorse): readonly Diagnostic[] =>
  readOne(parts).diagnostics.filter(({ level }) => level === 'error')

describe('the most that a case file may hold', () => {
  it.each(cases)('%s: so many are read, and more are told of', (_, made, most, code, line) => {
    expect(problems(made(most)).filter((one) => one.code.startsWith('too-'))).toEqual([])
    const [told, ...others] = problems(made(most + 100))
    expect(others).toEqual([])
    expect(told).toMatchObject({ code, line, expected: expect.stringMatching(/^at most [\d,]+/) })
    expect(told?.message).toMatch(/^[A-Z0-9].*\.$/)
    expect(told?.advice).not.toBeNull()
    expect(told?.column).toBeGreaterThan(0)
  })

  it('leaves room for names and notes as people write them', () => {
    const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
    const head = ['Date', 'Foot', 'Toe', 'Heel', 'Frog', 'Sole', 'Remark']
    const rows = Array.from({ length: 60 }, (_, i) =>
      row([
        `2026-01-${i}`,
        '**LF**',
        '98 mm',
        '36',
        '_wide_',
        '`12`',
        `[photo ${i}](https://notes.example/${i})`,
      ]),
    )
    const nested = Array.from(
      { length: 9 },
      (_, i) => `${'    '.repeat(i)}- Level ${i}, with *words* and a [link](x)`,
    )
    const tasks = Array.from({ length: 200 }, (_, i) => `- [ ] **Task ${i}**: _soon_`)
    const body = [
      'Notes\n=====',
      'A first paragraph of *some* words, which the owner read.\n\nFor LF: stood **well**.',
      row(head),
      row(head.map(() => '---')),
      ...rows,
      '',
      ...nested,
      '',
      ...tasks,
      '',
      '> > > A letter that was answered\n> > twice',
      '- - - - - - - - - - - - - - - - - - - - - - - -',
      '* * * * * * * * * * * * * * * * * * * * * * * *',
      `Name: ${'_'.repeat(60)}`,
      '[vet]: https://notes.example/a/rather/long/address?with=words "And a title"',
      Array.from({ length: 300 }, () => 'One of many sentences in a long paragraph.').join(' '),
    ].join('\n')
    const read = readOne({
      ...named('Wilhelmina Victoria of the Long Water Meadow'),
      visits: { '2026-01-12': `---\nfindings: {LF: [flare, toe, 1]}\n---\n${body}` },
    })
    expect(read.diagnostics).toEqual([])
    expect(read.horse?.visits[0]?.body.own).toBe(body)
  })

  it('refuses 1,500 signs of lists, an alias of 280 letters, and no other horse', () => {
    const { horse: juno, diagnostics } = readOne({
      ...notes(`${'- '.repeat(1500)}a`),
      files: {
        'nell/horse.md': `---\nname: Nell\nowner: abel\nalias: ${letters(280)}\nconsent: {portfolio: yes, given: 2026-01-12}\n---\n`,
        'opal/horse.md': '---\nname: Opal\nowner: abel\n---\n',
      },
    })
    expect(juno?.id).toBe('opal')
    expect(diagnostics.map(({ code }) => code)).not.toContain('alias-missing')
    expect(
      diagnostics.filter(({ level }) => level === 'error').map(({ code, file, line }) => [code, file, line]),
    ).toEqual([
      ['too-deep', 'juno/2026-01-12.md', 4],
      ['too-long', 'nell/horse.md', 4],
    ])
  })
})

describe('a table to be imported', () => {
  const header = 'horse,date,foot,measure,value\n'

  it('may not hold a line without an end, nor a name without one', () => {
    expect(readTable(`${header}${letters(2 * limits.rowBytes)}`, 'mm')).toMatchObject({
      readings: [],
      remarks: [{ line: 2, message: expect.stringContaining('the line is too long') }],
    })
    expect(readTable(`${header}${letters(101)},2026-01-12,LF,toe length,98`, 'mm').remarks).toMatchObject([
      { line: 2, message: "the horse's name has 101 letters: expected at most 100" },
    ])
  })

  it('says that a quote mark is not closed, or closed too early', () => {
    expect(readTable(`${header}juno,"2026-01-12,LF`, 'mm').remarks).toMatchObject([
      { line: 2, message: expect.stringContaining('a quote mark up to here is not closed') },
    ])
    expect(readTable(`${header}"juno"x,2026-01-12,LF,toe length,98`, 'mm').remarks).toMatchObject([
      { line: 2, message: expect.stringContaining('words follow a closing quote mark') },
    ])
  })
})
