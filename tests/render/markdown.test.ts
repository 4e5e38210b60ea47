import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createMarkdown } from '../../src/render/markdown.ts'
import { elementsOf } from './read-html.ts'

const render = createMarkdown()

describe('a body of Markdown', () => {
  it('shows raw HTML as the text that was written and leaves comments out', () => {
    expect(render('a <b>bold</b> word <!-- for me -->', 2)).toBe('<p>a &#x3C;b>bold&#x3C;/b> word </p>')
    expect(render('<script>alert(1)</script>', 2)).toBe('<p>&#x3C;script>alert(1)&#x3C;/script></p>')
    expect(render('<!-- hidden\nnote -->', 2)).toBe('')
  })

  it.each([
    '[x](javascript:alert(1))',
    '[x](JaVaScRiPt:alert(1))',
    '[x](data:text/html,hi)',
    '[x](vbscript:x)',
    '[x](../secret.md)',
    '[x](//elsewhere.example)',
    '[x](#top)',
  ])('takes the target from %s', (text) => {
    expect(render(text, 2)).toBe('<p><a>x</a></p>')
  })

  it('keeps links to the web, mail and telephone', () => {
    expect(render('[x](https://farrier.example "t")', 2)).toBe(
      '<p><a href="https://farrier.example" title="t" rel="noopener noreferrer">x</a></p>',
    )
    expect(render('[x](mailto:a@b.example)', 2)).toBe('<p><a href="mailto:a@b.example">x</a></p>')
    expect(render('[x](tel:+15550100)', 2)).toBe('<p><a href="tel:+15550100">x</a></p>')
  })

  it('loads no picture', () => {
    expect(render('![left fore](photos/lf.jpg)', 2)).toBe('<p>left fore</p>')
    expect(render('![](https://farrier.example/a.png)', 2)).toBe(
      '<p><a href="https://farrier.example/a.png" rel="noopener noreferrer">https://farrier.example/a.png</a></p>',
    )
  })

  it('nests headings below the page heading without a gap', () => {
    expect(render('### A\n\n# B\n\n#### C\n\n## D', 2)).toBe('<h3>A</h3>\n<h3>B</h3>\n<h4>C</h4>\n<h4>D</h4>')
    expect(render('# A\n\n## B\n\n### C', 5)).toBe('<h6>A</h6>\n<h6>B</h6>\n<h6>C</h6>')
  })

  it('reads tables, tasks and struck text', () => {
    expect(render('- [x] done\n- [ ] open', 2)).toBe(
      '<ul>\n<li>\u2611 done</li>\n<li>\u2610 open</li>\n</ul>',
    )
    expect(render('~~old~~', 2)).toBe('<p><del>old</del></p>')
    expect(render('|a|b|\n|-|-:|\n|1|2|', 2)).toContain('<th scope="col" class="align-right">b</th>')
  })

  it('gives no ids, so that two bodies can stand on one page', () => {
    const html = render('text[^1]\n\n[^1]: note', 2)
    expect(html).toContain('note')
    expect(html).not.toContain('id=')
  })

  it('is safe for any text, and the same whatever was rendered before', () => {
    const piece = fc.constantFrom(
      ...[
        '<',
        '>',
        '"',
        "'",
        '&',
        '[',
        ']',
        '(',
        ')',
        '!',
        '#',
        '|',
        '-',
        '\n',
        '\n\n',
        ' ',
        '`',
        '~',
        '*',
        '^',
        ':',
      ],
      ...[
        'javascript:',
        'data:',
        'https://a.b',
        'onload=',
        '<svg/onload=x>',
        '<a href="x">',
        'script',
        'word',
        '&#106;',
      ],
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const text = pieces.join('')
        const html = render(text, 2)
        for (const { tagName, properties } of elementsOf(html)) {
          expect(['script', 'svg', 'img', 'iframe', 'style', 'input']).not.toContain(tagName)
          for (const [name, value] of Object.entries(properties)) {
            expect(['href', 'title', 'rel', 'start', 'scope', 'className']).toContain(name)
            if (name === 'href') expect(value).toMatch(/^(?:https?|mailto|tel):/i)
          }
        }
        expect(createMarkdown()(text, 2)).toBe(html)
      }),
      { numRuns: 150 },
    )
  })
})
