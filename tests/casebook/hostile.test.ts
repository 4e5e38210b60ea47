/** Files that mean harm, or look as if they did: each gets a message, and nothing else happens. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CasebookFolder } from '../../src/casebook/folder.ts'
import { limits } from '../../src/casebook/limits.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { memoryFolder } from './memory-folder.ts'
import { horseText, practiceText, readOne, readVisitBlock, told } from './read-one.ts'

const marked = globalThis as { executed?: boolean }
const visit = (text: string) => readOne({ visits: { '2026-01-12': text } })

describe('nothing in a case file runs', () => {
  it.each(['js', 'javascript', 'json', 'coffee', 'coffeescript', 'cson', 'toml', 'JS', ' js '])(
    '---%s is refused',
    (language) => {
      delete marked.executed
      const read = visit(`---${language}\n(globalThis.executed = true, { footing: 'soft' })\n---\n`)
      expect(read.horse).toBeNull()
      expect(read.diagnostics[0]?.message).toContain('is not accepted')
      expect(read.diagnostics[0]?.expected).toContain('Nothing in a case file is ever run')
      expect(marked.executed).toBeUndefined()
    },
  )

  it('---yaml is the plain block', () => {
    expect(
      visit('---yaml\nfooting: soft\nfindings: {LF: [flare, toe, 1]}\n---\n').horse?.visits[0]?.footing,
    ).toBe('soft')
  })

  it.each([
    '!!js/function "function () { globalThis.executed = true }"',
    '!!js/regexp /a/',
    '!!python/object:os.system {}',
    '!!binary aGVsbG8=',
    '!!set {a, b}',
    '!<tag:yaml.org,2002:str> x',
    '!!str x',
    '! x',
  ])('the tag in %s is refused', (value) => {
    delete marked.executed
    const read = readVisitBlock(`footing: ${value}`)
    expect(read.horse).toBeNull()
    expect(read.diagnostics[0]).toMatchObject({ code: 'yaml-tag', line: 2 })
    expect(read.diagnostics[0]?.message).toContain('is a tag, and tags are not allowed')
    expect(marked.executed).toBeUndefined()
  })
})

describe('nothing in a case file grows', () => {
  it('refuses an alias bomb before it is built', () => {
    const levels = Array.from({ length: 30 }, (_, level) =>
      level === 0
        ? 'a0: &a0 [x, x, x, x, x, x, x, x, x]'
        : `a${level}: &a${level} [${Array(9)
            .fill(`*a${level - 1}`)
            .join(', ')}]`,
    )
    const read = readVisitBlock(levels.join('\n'))
    expect(told(read)).toEqual([
      'yaml-alias juno/2026-01-12.md:2 "&a0" is a reference to another place, and references are not allowed.',
    ])
  })

  it('refuses a merge key, as a key like any other that is not known', () => {
    expect(told(readVisitBlock('<<: {footing: soft}'))[0]).toBe(
      'key-unknown juno/2026-01-12.md:2 "<<" is not a key of a visit.',
    )
  })

  it('refuses deep nesting', () => {
    const read = readVisitBlock(`footing: ${'['.repeat(5000)}${']'.repeat(5000)}`)
    expect(told(read)).toEqual([
      'block-form juno/2026-01-12.md:2 Lists and keys are too deep inside each other.',
    ])
  })

  it('refuses an enormous file by its size, and never reads it', () => {
    const inner = memoryFolder({
      'practice.md': practiceText,
      'juno/horse.md': horseText,
      'juno/2026-01-12.md': '',
    })
    const folder: CasebookFolder = {
      list: () =>
        inner
          .list()
          .map((entry) => (entry.path.includes('2026') ? { ...entry, size: 3 * 1024 ** 3 } : entry)),
      read: (path) => {
        if (path.includes('2026')) throw new Error('was read')
        return inner.read(path)
      },
    }
    const { diagnostics } = readCasebook(folder, '2026-06-01')
    expect(diagnostics).toHaveLength(1)
    expect(diagnostics[0]).toMatchObject({
      code: 'file-too-large',
      level: 'error',
      expected: 'at most 256 KiB',
    })
  })

  it('refuses a file that grew after it was listed', () => {
    const inner = memoryFolder({
      'practice.md': practiceText,
      'juno/horse.md': horseText,
      'juno/2026-01-12.md': 'x'.repeat(limits.fileBytes + 1),
    })
    const folder: CasebookFolder = {
      list: () => inner.list().map((entry) => ({ ...entry, size: 10 })),
      read: inner.read,
    }
    expect(readCasebook(folder, '2026-06-01').diagnostics.map((one) => one.code)).toEqual(['file-too-large'])
  })

  it('reads a file full of the worst that fits the limit before the test has to end', () => {
    const worst = [
      `footing: ${'a'.repeat(250_000)}`,
      `care:\n${'- x\n'.repeat(60_000)}`,
      `${Array.from({ length: 20_000 }, (_, index) => `key ${index}: x`).join('\n')}`,
      `before: {${'toe length: [1, 2, 3, 4], '.repeat(9000)}}`,
      `findings: {LF: [${'"flare, toe, 9", '.repeat(15_000)}]}`,
      `${'['.repeat(18)}${'?, '.repeat(80_000)}`,
      `footing: "${'\\u0041'.repeat(40_000)}"`,
      // Where the parser gives up, the slip is looked for in the text: no search may go over it again and again.
      `footing: a${' '.repeat(250_000)}b: c`,
      `footing: [1]${' '.repeat(250_000)}x: y`,
      `footing: a${' '.repeat(250_000)}? b: c`,
      `before:\n  toe length: [${','.repeat(250_000)}]`,
      `before: [${'-,'.repeat(120_000)}]`,
      `footing: [${' #'.repeat(120_000)}]`,
      `footing: ${'a: b, '.repeat(40_000)}`,
      `${'\u00a0a: b\n'.repeat(40_000)}`,
      `${Array.from({ length: 30_000 }, (_, index) => `footng${index}:`).join('\n')}`,
      `findings:\n  LF:\n    - flare, toe, 2\n${'      crack, toe, 1\n'.repeat(12_000)}`,
      `care:\n${'  - keep #2 dry\n'.repeat(15_000)}`,
      `before:\n  toe length: {${'LF: 98,5, '.repeat(25_000)}RF: 1}`,
      'before:\n'.repeat(36_000),
    ]
    for (const block of worst) {
      expect(told(readVisitBlock(block)), block.slice(0, 40)).not.toEqual([])
    }
  })
})

describe('nothing in a case file reaches the program itself', () => {
  it.each(['__proto__', 'constructor', 'prototype'])('%s is refused as a key, at any depth', (key) => {
    const read = readVisitBlock(`${key}: {polluted: yes}\ncomfort:\n  surfaces: {${key}: easy}\n"${key}x": 1`)
    expect(told(read).slice(0, 2)).toEqual([
      `key-reserved juno/2026-01-12.md:2 "${key}" cannot be used as a key.`,
      `key-reserved juno/2026-01-12.md:4 "${key}" cannot be used as a key.`,
    ])
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })

  it.each(['toString', 'hasOwnProperty', 'valueOf'])(
    '%s is no key, foot, finding, owner or scale',
    (word) => {
      const read = readOne({
        horse: `---\nname: Juno\nowner: ${word}\n${word}: x\ntargets: {${word}: [1, 2]}\n---\n`,
        visits: {
          '2026-01-12': `---\n${word}: x\nbefore: {${word}: [1, 2, 3, 4], toe length: {${word}: 90}}\nfindings: {LF: ["${word}, toe, 1"]}\n---\n`,
        },
      })
      expect(read.horse).toBeNull()
      expect(read.diagnostics.map((one) => one.code).sort()).toEqual(
        [
          'finding-unknown',
          'foot-unknown',
          'key-unknown',
          'key-unknown',
          'measure-unknown',
          'measure-unknown',
          'owner-unknown',
        ].sort(),
      )
    },
  )
})

describe('text that is none', () => {
  const bytes = (...parts: readonly (string | number)[]) =>
    new Uint8Array(
      parts.flatMap((part) => (typeof part === 'number' ? [part] : [...new TextEncoder().encode(part)])),
    )

  it('names the line of a character that is not UTF-8', () => {
    const read = readOne({ files: { 'juno/2026-01-12.md': bytes('---\nfooting: m', 0xfc, 'hsam\n---\n') } })
    expect(read.horse).toBeNull()
    expect(read.diagnostics[0]).toMatchObject({
      code: 'not-utf-8',
      line: 2,
      column: 11,
      message: 'A character here is not in UTF-8.',
      advice: 'save the file again as UTF-8 in your editor',
    })
  })

  it('names UTF-16', () => {
    const read = readOne({ files: { 'juno/2026-01-12.md': bytes(0xff, 0xfe, 0x2d, 0, 0x2d, 0) } })
    expect(told(read)).toEqual(['not-utf-8 juno/2026-01-12.md: The file is in UTF-16.'])
  })

  it('refuses a zero byte', () => {
    const read = readOne({
      files: { 'juno/2026-01-12.md': bytes('---\nfooting: soft\n---\nnotes', 0, '\n') },
    })
    expect(told(read)).toEqual([
      'not-utf-8 juno/2026-01-12.md:4 There is a zero byte here, so this is no text file.',
    ])
  })

  it('refuses a control character in the block', () => {
    expect(told(readVisitBlock('footing: \u001b[31mred'))).toEqual([
      'block-form juno/2026-01-12.md:2 There is a character here that cannot be seen.',
    ])
  })

  it('forgives a byte-order mark and any line ends', () => {
    const text =
      '---\ndate: 2026-01-12\nfindings: {LF: [flare, toe, 1]}\n---\nNotes.\n\n## For the owner\n\nHello.\n'
    const plain = visit(text)
    expect(plain.diagnostics).toEqual([])
    expect(visit(`\uFEFF${text}`)).toEqual(plain)
    expect(visit(text.replaceAll('\n', '\r\n'))).toEqual(plain)
    expect(visit(text.replaceAll('\n', '\r'))).toEqual(plain)
  })
})

describe('nothing outside the casebook is read', () => {
  const folderThatTells = (links: readonly string[]) => {
    const read: string[] = []
    const inner = memoryFolder({ 'practice.md': practiceText, 'juno/horse.md': horseText }, { links })
    const files = inner.list().filter((entry) => !(entry.kind === 'file' && links.includes(entry.path)))
    return {
      read,
      folder: {
        list: () => files,
        read: (path: string) => {
          read.push(path)
          return inner.read(path)
        },
      },
    }
  }

  it.each(['juno/2026-01-12.md', 'juno/horse.md', 'practice.md'])(
    '%s as a link is an error and is not followed',
    (path) => {
      const { folder, read } = folderThatTells([path])
      const { casebook, diagnostics } = readCasebook(folder, '2026-06-01')
      expect(casebook?.horses ?? []).toEqual([])
      expect(diagnostics[0]).toMatchObject({ code: 'link', level: 'error', file: path })
      expect(diagnostics[0]?.message).toBe(`${path} is a link, and links are never followed.`)
      expect(read).not.toContain(path)
    },
  )

  it('a link that may lead to a whole folder is told of', () => {
    const { folder, read } = folderThatTells(['nell'])
    const { diagnostics } = readCasebook(folder, '2026-06-01')
    expect(diagnostics.map((one) => `${one.level} ${one.message}`)).toContain(
      'warning "nell" is a link; links are never followed, so what it points to is not read.',
    )
    expect(read).toEqual(['practice.md', 'juno/horse.md'])
  })

  it.each([
    '../secret.jpg',
    'photos/../../secret.jpg',
    '/etc/passwd',
    'C:\\x.jpg',
    'photos\\x.jpg',
    'https://example.org/x.jpg',
    'file:///x.jpg',
  ])('a photo may not be %s', (file) => {
    const read = readVisitBlock(`photos: [{file: '${file}'}]`)
    expect(read.horse).toBeNull()
    expect(read.diagnostics[0]).toMatchObject({ code: 'photo-outside', line: 2 })
    expect(read.diagnostics[0]?.message).toContain("points out of the horse's folder")
  })

  it('a photo may not be a link, nor lie behind one', () => {
    for (const link of ['juno/photos/a.jpg', 'juno/photos']) {
      const read = readVisitBlock('photos: [{file: photos/a.jpg}]', { links: [link] })
      expect(read.diagnostics.map((one) => one.code)).toContain('link')
      expect(read.horse).toBeNull()
    }
  })
})

describe('whatever the bytes are', () => {
  it('a casebook is read without a throw, and a broken file stops its horse alone', () => {
    const line = fc.oneof(
      fc.string(),
      fc.constantFrom(
        '---',
        'before:',
        '  toe length: [98, 96, ',
        '  - flare, toe, 1',
        'date: ?',
        '? x',
        '- - - [',
        '"',
        "'",
        '{',
        '&a *a',
        '!!x',
        '\t',
        '|',
        '>-',
        '# x',
        '## For the owner',
      ),
    )
    const text = fc.array(line, { maxLength: 12 }).map((lines) => lines.join('\n'))
    fc.assert(
      fc.property(
        fc.oneof(
          text,
          text.map((body) => `---\n${body}\n---\n`),
          fc.uint8Array({ maxLength: 200 }),
        ),
        (content) => {
          const { casebook, diagnostics } = readCasebook(
            memoryFolder({
              'practice.md': practiceText,
              'juno/horse.md': horseText,
              'juno/2026-01-12.md': content,
              'nell/horse.md': '---\nname: Nell\nowner: abel\n---\n',
              'nell/2026-01-12.md': '---\nbefore: {toe length: [98, 96, 95, 94]}\n---\n',
            }),
            '2026-06-01',
          )
          const broken = diagnostics.some((one) => one.level === 'error')
          expect(casebook?.horses.map((horse) => horse.id)).toEqual(broken ? ['nell'] : ['juno', 'nell'])
          for (const one of diagnostics) {
            expect(one.message).not.toBe('')
            expect(one.file).toBe('juno/2026-01-12.md')
            if (one.column !== null && one.endColumn !== null)
              expect(one.endColumn).toBeGreaterThan(one.column)
          }
        },
      ),
      { numRuns: 1500 },
    )
  })
})
