/**
 * The privacy rule: private unless a heading says otherwise. The short run draws 500 and 1,000 bodies besides the kinds
 * that are written out.
 */
import fc from 'fast-check'
import { toString as plainTextOf } from 'mdast-util-to-string'
import remarkParse from 'remark-parse'
import { unified } from 'unified'
import { describe, expect, it } from 'vitest'
import { mayHoldSection, readBody } from '../../src/casebook/body.ts'
import { blocksOf } from '../../src/casebook/body-blocks.ts'
import { reportOn } from '../../src/casebook/report.ts'
import { runs } from '../runs.ts'

function read(text: string) {
  const report = reportOn('juno/2026-01-12.md', text)
  const { diagnostics } = report
  return { ...readBody(text, 0, report), diagnostics, warnings: diagnostics.map((one) => one.message) }
}

describe('a body by reader', () => {
  it('is private without a heading', () => {
    expect(read('Notes.\n\n## Details\n\nfor the owner: nothing')).toMatchObject({
      own: 'Notes.\n\n## Details\n\nfor the owner: nothing',
      forOwner: null,
      forTeaching: null,
    })
  })

  it('opens a section by its heading, up to the next of the same or a higher level', () => {
    const text =
      'Mine.\n\n## For the owner\n\nYours.\n\n### Feet\n\nStill yours.\n\n## Bills\n\nMine again.\n\n## For teaching\n\nAll.\n\n# End\n\nMine.'
    expect(read(text)).toMatchObject({
      own: 'Mine.\n\n## Bills\n\nMine again.\n\n# End\n\nMine.',
      forOwner: 'Yours.\n\n### Feet\n\nStill yours.',
      forTeaching: 'All.',
      warnings: [],
    })
  })

  it.each([
    '## For the owner',
    '## FOR THE OWNER',
    '## for the  owner ',
    '## For the owner ##',
    '##\tFor the owner',
    '##   For the owner',
    '   ## For the owner',
    '## For the &#111;wner',
    '## **For the owner**',
    '## *For* the owner',
    '## For the [owner](https://owner.example)',
    'For the\nowner\n---',
  ])('%j opens the section', (heading) => {
    expect(read(`${heading}\n\nYours.`)).toMatchObject({ own: '', forOwner: 'Yours.' })
  })

  it('reads an underlined second-level heading', () => {
    expect(read('Mine.\n\nFor the owner\n-------------\n\nYours.\n\nBills\n---\n\nMine.')).toMatchObject({
      own: 'Mine.\n\nBills\n---\n\nMine.',
      forOwner: 'Yours.',
    })
  })

  it.each([
    ['a first-level heading', '# For the owner'],
    ['a third-level heading', '### For the owner'],
    ['an underlined first-level heading', 'For the owner\n======'],
    ['a code block', '```\n## For the owner\n```'],
    ['a code block in tildes', '~~~ md\n## For the owner\n~~~'],
    ['a code block that never closes', '```\n## For the owner'],
    ['an indented code block', '    ## For the owner'],
    ['a quotation', '> ## For the owner'],
    ['a list', '- ## For the owner'],
    ['a list item that goes on', '- one\n\n  ## For the owner'],
    ['an HTML comment', '<!--\n## For the owner\n-->'],
    ['an HTML block', '<pre>\n## For the owner\n</pre>'],
    ['no space after the marks', '##For the owner'],
    ['an escaped mark', '\\## For the owner'],
    ['other words', '## For the owner and others'],
    ['other words in a comment', '## For the <!-- no --> owner'],
    ['a byte order mark before the marks', '\uFEFF## For the owner'],
    ['plain words', 'For the owner'],
  ])('%s opens none', (_, text) => {
    expect(read(`${text}\n\nSecret.`)).toMatchObject({ forOwner: null, forTeaching: null })
    expect(read(`${text}\n\nSecret.`).own).toContain('Secret.')
  })

  it('puts two sections for the same reader together', () => {
    expect(read('## For the owner\n\nOne.\n\n## Mine\n\n## For the owner\n\nTwo.').forOwner).toBe(
      'One.\n\nTwo.',
    )
  })

  it('has no section where the heading stands alone', () => {
    expect(read('## For the owner\n\n## For teaching\n\nx')).toMatchObject({
      forOwner: null,
      forTeaching: 'x',
    })
  })

  it('does not let a heading in a code block end a section', () => {
    expect(read('## For the owner\n\n```\n## Bills\n```\n\nYours.').forOwner).toBe(
      '```\n## Bills\n```\n\nYours.',
    )
  })
})

describe('what is nearly a heading for others', () => {
  it.each([
    ['## For the owners', '## For the owner'],
    ['## For the onwer', '## For the owner'],
    ['## For owner', '## For the owner'],
    ['## To the owner', '## For the owner'],
    ['## For the owner:', '## For the owner'],
    ['# For the owner', '## For the owner'],
    ['### For teaching', '## For teaching'],
    ['##For the owner', '## For the owner'],
    ['**For the owner**', '## For the owner'],
    ['**For teaching:**', '## For teaching'],
    ['*For the owner*', '## For the owner'],
    ['For the owner:', '## For the owner'],
    ['For the owner', '## For the owner'],
  ])('%s: named, and right once the fix is in its place', (line, fix) => {
    const text = `Mine.\n\n${line}\n\nYours.`
    const { diagnostics, own } = read(text)
    expect(own).toContain('Yours.')
    expect(diagnostics).toMatchObject([{ code: 'heading-nearly', line: 3, column: 1, fix }])
    const fixed = read(text.replace(line, fix))
    expect(fixed.warnings).toEqual([])
    expect(fixed.forOwner ?? fixed.forTeaching).toBe('Yours.')
  })

  it.each([
    ['a line among others', 'Mine.\n**For the owner**\nYours.'],
    ['a line with its text under it', 'For the owner:\nYours.'],
    ['a line moved far in', 'Mine.\n     For the owner:\n\nYours.'],
  ])('%s: named with a fix', (_, text) => {
    const [named] = read(text).diagnostics
    expect(named?.fix).toBe('## For the owner')
    const fixed = text.replace(/.*For the owner.*/, named?.fix ?? '')
    expect(read(fixed)).toMatchObject({ forOwner: 'Yours.', warnings: [] })
  })

  it.each([
    ['in a list', '- ## For the owner\n\n  Yours.'],
    ['a line in a list', '- For the owner:\n  - Yours.'],
    ['in a quotation', '> ## For the owner\n>\n> Yours.'],
    ['underlined as a first-level heading', 'For the owner\n=====\n\nYours.'],
    ['with other words', '## For the owner and others\n\nYours.'],
    ['the reader alone', '## Owner\n\nYours.'],
  ])('%s: named, without a fix that would not do', (_, text) => {
    const { diagnostics, forOwner } = read(text)
    expect(forOwner).toBeNull()
    expect(diagnostics).toMatchObject([
      { code: 'heading-nearly', expected: '## For the owner, at the margin', fix: null },
    ])
  })

  it('says whether what follows is private', () => {
    expect(read('## For the owners\n\nx').warnings).toEqual([
      'The heading "for the owners" opens no section for others, so what follows stays private.',
    ])
    expect(read('- ## For the owner\n').warnings).toEqual([
      'The heading "for the owner" in a list or quotation opens no section for others, so what follows stays private.',
    ])
    expect(read('## For the owner\n\nx\n\nFor teaching:\ny').warnings).toEqual([
      'The line "for teaching:" opens no section for others.',
    ])
  })

  it.each([
    '## For the horse',
    'I left this note\nfor the owner\non the door.',
    'This is for the owner.',
    '## The vet\n\nHe rang the owner.',
    '```\nFor the owner:\n```',
  ])('%j is none', (text) => {
    expect(read(text).warnings).toEqual([])
  })
})

describe('the blocks of a body', () => {
  const parser = unified().use(remarkParse).freeze()
  /** Headings that stand on the page itself, by the parser run to its end. */
  const byWholeParser = (body: string) =>
    parser
      .parse(`\n${body}`)
      .children.flatMap((node) =>
        node.type === 'heading'
          ? [
              [
                node.depth,
                plainTextOf(node),
                (node.position?.start.offset ?? 0) - 1,
                (node.position?.end.offset ?? 0) - 1,
              ],
            ]
          : [],
      )

  const line = fc.constantFrom(
    '## For the owner',
    '## For teaching',
    '## Bills',
    '# Top',
    '### Sub',
    '##',
    '## For the owner ##',
    '## For the &#111;wner',
    '## F*or* the `owner`',
    '## For the [owner][x]',
    '## For the own\\er',
    'For the owner',
    '**For the owner**',
    '##For the owner',
    '- item',
    '  more',
    '1. one',
    '> quoted',
    '> ## For the owner',
    'plain words',
    '',
    '    indented',
    '| a | b |',
    '|---|---|',
    '* * *',
    '[x]: y "t',
    '\\',
    '`code',
    '**',
    '- [ ] todo',
    '#hash',
    '####### seven',
    'break\u2028## For the owner',
    '## For the\u2028owner',
    '## \\#',
    '\tcode',
    '\t## Moved',
    '>',
    '-',
    '\uFEFF## For the owner',
    '## For the owner\r## Bills',
    '## For the owner\r',
  )
  const swallowing = fc.constantFrom(
    '```',
    '~~~',
    '<!--',
    '-->',
    '<div>',
    '---',
    '===',
    ' ## For the owner',
    '   ## Bills',
    '  ```',
  )
  const body = fc
    .array(fc.oneof({ weight: 6, arbitrary: line }, { weight: 1, arbitrary: swallowing }), { maxLength: 14 })
    .map((lines) => lines.join('\n'))

  it('have the headings that the parser finds when it is run to its end', () => {
    fc.assert(
      fc.property(body, (text) => {
        const found = blocksOf(text).headings.filter(({ nested }) => !nested)
        // What would only be a link by a definition elsewhere, or no heading by itself, stays as written, so private.
        const words = (said: string) =>
          said.replace(/\[x\]|[[\]]|[\n\r] *[-=]+\s*$/g, '').replace(/\s+/g, ' ')
        expect(found.map(({ level, words: said, start, end }) => [level, words(said), start, end])).toEqual(
          byWholeParser(text).map(([level, said, ...spot]) => [level, words(String(said)), ...spot]),
        )
      }),
      { numRuns: runs(500, 20_000) },
    )
  })

  it('are asked for wherever there may be a section', () => {
    const letters = fc.constantFrom(...'for the owner', ...'for teaching')
    const marked = fc.constantFrom(
      '&#111;',
      '&#x77;',
      '*',
      '_',
      '**',
      '\\',
      '`',
      '[',
      '](x)',
      '<b>',
      'owner',
      'teach',
    )
    const words = fc.oneof(
      fc.constantFrom(
        'For the owner',
        'for  teaching',
        'For the &#111;wner',
        'For the o*wn*er',
        'F`or` the o[wn](x)er',
      ),
      fc
        .array(fc.oneof({ weight: 5, arbitrary: letters }, { weight: 1, arbitrary: marked }))
        .map((all) => all.join('')),
    )
    const heading = fc.oneof(
      words.map((said) => `## ${said}`),
      words.map((said) => `## ${said} ##`),
      words.map((said) => `${said}\n---`),
      words.map((said) => `${said}\n  -  `),
    )
    fc.assert(
      fc.property(fc.array(fc.oneof(heading, line), { maxLength: 6 }), (lines) => {
        const text = lines.join('\n')
        if (mayHoldSection(text)) return
        const readers = byWholeParser(text).map(([, said]) =>
          String(said).replace(/\s+/g, ' ').trim().toLowerCase(),
        )
        expect(readers).not.toContain('for the owner')
        expect(readers).not.toContain('for teaching')
      }),
      { numRuns: runs(1000, 50_000) },
    )
    expect(mayHoldSection('Stood well, **no** heat.\n\n## Feet\n\n- [x](https://notes.example)')).toBe(false)
  })
})
