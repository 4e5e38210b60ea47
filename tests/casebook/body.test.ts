/** The privacy rule: private unless a heading says otherwise. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { headingsOf, parsedHeadings, readBody, scannedHeadings } from '../../src/casebook/body.ts'
import { reportOn } from '../../src/casebook/report.ts'

function read(text: string) {
  const report = reportOn('juno/2026-01-12.md', text)
  return { ...readBody(text, 0, report), warnings: report.diagnostics.map((one) => one.message) }
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
    expect(read(text)).toEqual({
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
    ['emphasis', '## *For* the owner'],
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

  it('warns of a heading that is nearly one', () => {
    expect(read('## For the owners\n\nx').warnings).toEqual([
      'The heading "for the owners" opens no section for others, so what follows stays private.',
    ])
    expect(read('### For teaching\n\nx').warnings).toHaveLength(1)
    expect(read('## For the horse\n\nx').warnings).toEqual([])
  })

  it('does not let a heading in a code block end a section', () => {
    expect(read('## For the owner\n\n```\n## Bills\n```\n\nYours.').forOwner).toBe(
      '```\n## Bills\n```\n\nYours.',
    )
  })
})

describe('the line scan', () => {
  const line = fc.constantFrom(
    '## For the owner',
    '## For teaching',
    '## Bills',
    '# Top',
    '### Sub',
    '##',
    '## For the owner ##',
    '- item',
    '  more',
    '1. one',
    '> quoted',
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
    '>',
    '-',
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

  it('finds what the parser finds wherever it is trusted, and elsewhere the parser is asked', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof({ weight: 12, arbitrary: line }, { weight: 1, arbitrary: swallowing }), {
          maxLength: 14,
        }),
        (lines) => {
          const body = lines.join('\n')
          expect(headingsOf(body, 0).map(({ level, words }) => [level, words])).toEqual(
            parsedHeadings(body, 0).map(({ level, words }) => [level, words]),
          )
        },
      ),
      { numRuns: 3000 },
    )
  })

  it('is what reads a plain body', () => {
    const body = 'a\n\n## For the owner\n\nb\n'
    expect(headingsOf(body, 0)).toEqual(scannedHeadings(body))
    expect(headingsOf('```\n## x\n```', 0)).toEqual([])
  })
})
