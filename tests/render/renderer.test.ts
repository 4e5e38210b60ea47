import { describe, expect, it } from 'vitest'
import { precompile } from '../../scripts/precompile.mjs'
import { createRenderer, type Templates } from '../../src/render/renderer.ts'
import { english } from '../english.ts'
import { elementsOf, idsOf, named, textOf } from './read-html.ts'
import { distribution, findings, level, side, sole, trend, wall } from './samples.ts'

/** As the bundle has them. */
function compiled(sources: ReadonlyMap<string, string>): Templates {
  const module = { exports: {} }
  new Function('module', precompile(sources))(module)
  return module.exports
}

const templates = compiled(
  new Map([
    ['partials/layout', '<main>{{title}}{{> @partial-block}}</main>'],
    ['partials/photos/pair', '<b>{{name}}</b>'],
    ['pages/practice/note', '{{#> layout}}{{> photos/pair}}{{markdown body below=3}}{{/layout}}'],
    [
      'pages/practice/list',
      '{{#each items}}{{#if (eq this "b")}}[{{this}}]{{/if}}{{/each}}{{join items ", "}}',
    ],
    ['pages/practice/data', '<script type="application/json">{{json data}}</script>'],
    [
      'pages/practice/figures',
      '{{#each charts}}{{figure this}}{{/each}}{{#each drawings}}{{drawing this}}{{/each}}',
    ],
  ]),
)
const renderer = createRenderer(templates, english)
const render = (template: string, model: object) => renderer.render({ path: 'x.html', template, model })

const everything = {
  charts: [trend(), trend('heel-balance', { baseline: 'zero' }), findings(9), findings(20), distribution],
  drawings: [
    side,
    sole('LF', [
      { what: 'flare', place: 'toe', grade: 2, sign: '1' },
      { what: 'bruise', place: 'sole', grade: 1, sign: '2' },
      { what: 'wall separation', place: 'white line', grade: 3, sign: '3' },
    ]),
    wall,
    level('RH', -6),
    { kind: 'measure', measure: 'toe-angle', description: 'Front wall to the ground' },
  ],
}

describe('templates', () => {
  it('finds partials by their path and escapes text', async () => {
    const html = await render('practice/note', { title: '<T> & "q"', name: "O'x", body: '# Head' })
    expect(html).toBe('<main>&lt;T&gt; &amp; &quot;q&quot;<b>O&#x27;x</b><h4>Head</h4></main>')
  })

  it('compares and joins', async () => {
    expect(await render('practice/list', { items: ['a', 'b', '<c>'] })).toBe('[b]a, b, &lt;c&gt;')
  })

  it('puts data into a script that it cannot end', async () => {
    const data = { text: '</script><!--\u2028' }
    const html = await render('practice/data', { data })
    expect(html.match(/<\/script>/g)).toHaveLength(1)
    expect(JSON.parse(html.slice(html.indexOf('>') + 1, html.lastIndexOf('<')))).toEqual(data)
  })

  it('names page, template and place of what the view does not hold', async () => {
    await expect(render('practice/note', { title: 't', name: 'n' })).rejects.toThrow(
      'x.html (template pages/practice/note): "body" not defined, line 1',
    )
  })

  it.each([
    ['{{#each visitz}}{{/each}}', 'visitz'],
    ['{{#if (eq feet.lf 1)}}{{/if}}', 'lf'],
    ['{{markdown text below=levl}}', 'levl'],
  ])('minds the arguments in %s', async (source, name) => {
    const strict = createRenderer(compiled(new Map([['pages/p', `\n${source}`]])), english)
    const model = { text: 'x', feet: {}, visits: [], none: null }
    await expect(strict.render({ path: 'p.html', template: 'p', model })).rejects.toThrow(
      `p.html (template pages/p): "${name}" not defined, line 2`,
    )
  })

  it('takes null and false for values', async () => {
    const lenient = createRenderer(
      compiled(new Map([['pages/p', '{{#if none}}x{{else}}y{{/if}}{{#each no}}x{{else}}z{{/each}}']])),
      english,
    )
    expect(await lenient.render({ path: 'p.html', template: 'p', model: { none: null, no: false } })).toBe(
      'yz',
    )
  })

  it('names a template that is not there', async () => {
    await expect(render('practice/none', {})).rejects.toThrow(
      'x.html: there is no template pages/practice/none',
    )
  })
})

describe('what steers the reader of a page', () => {
  /** Every control character but tab and line ends; embeddings, overrides and isolates. */
  const steering = [
    ...Array.from({ length: 0xa0 }, (_, code) => code).filter(
      (code) => (code < 0x20 || code > 0x7e) && ![0x09, 0x0a, 0x0d].includes(code),
    ),
    ...[0x202a, 0x202b, 0x202c, 0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069],
  ]
  const raw = String.fromCodePoint(...steering)
  const steers = (html: string) => [...html].filter((sign) => steering.includes(sign.codePointAt(0) ?? 0))

  it('reaches it from no text, no attribute and no data', async () => {
    const html = await render('practice/note', { title: `a${raw}b`, name: `c${raw}d`, body: `e${raw}f` })
    expect(steers(html)).toEqual([])
    expect(html).toMatch(/^<main>ab<b>cd<\/b><p>e\ufffd?f<\/p><\/main>$/)
    const data = await render('practice/data', { data: { text: `a${raw}\tb\r\nc` } })
    expect(data).toBe('<script type="application/json">{"text":"a\\tb\\r\\nc"}</script>')
  })

  it.each(steering)('reaches it through no reference of Markdown: %i', async (code) => {
    const [decimal, hex] = [`&#${code};`, `&#x${code.toString(16)};`]
    const body = `a${decimal}b${hex}c [d${hex}e](http://x.example/${hex} "f${hex}g") ![h${hex}i](j) \`k${hex}l\`\n\n<i>m${hex}</i>\n`
    const html = await render('practice/note', { title: '', name: '', body })
    expect(steers(html)).toEqual([])
    const [paragraph] = named(html, 'p')
    expect(paragraph && textOf(paragraph).replaceAll('\ufffd', '')).toContain('abc de')
    // What is shown as it was written is a reference to the reader and not to the browser.
    expect(html).toContain(`&#x26;#x${code.toString(16)};`)
  })

  it('reaches it from no chart and no drawing', async () => {
    const html = await render('practice/figures', {
      charts: [trend(`t`, { title: `a${raw}b`, description: `c${raw}d`, valueTitle: `e${raw}f` })],
      drawings: [{ ...sole('LF', []), unread: `g${raw}h` }],
    })
    expect(steers(html)).toEqual([])
    for (const text of ['ab', 'cd', 'ef', 'gh']) expect(html).toContain(text)
  })

  it('leaves marks and joiners that names are spelt with', async () => {
    const names = [
      '\u05d9\u05d5\u05e0\u05d5\u200f (12)',
      '\u0645\u06cc\u200c\u062e\u0648',
      '\u0915\u094d\u200d\u0937',
      'a\u200eb',
    ]
    for (const name of names) {
      expect(await render('practice/note', { title: name, name: '', body: name })).toBe(
        `<main>${name}<b></b><p>${name}</p></main>`,
      )
    }
  })
})

describe('figures on a page', () => {
  it('have unique ids, and refer to ids that are there', async () => {
    const { ids, used } = idsOf(await render('practice/figures', everything))
    expect(new Set(ids).size).toBe(ids.length)
    expect(used.length).toBeGreaterThan(20)
    expect(ids).toEqual(expect.arrayContaining([...used]))
  })

  it('carry no style and no script, which the content security policy forbids', async () => {
    const html = await render('practice/figures', everything)
    for (const { tagName, properties } of elementsOf(html)) {
      expect(['style', 'script', 'foreignObject', 'image']).not.toContain(tagName)
      if (tagName === 'use') expect(properties.href).toMatch(/^#/)
      expect(Object.keys(properties).filter((name) => name === 'style' || /^on/i.test(name))).toEqual([])
    }
  })

  it('each state the finding, say it in words and give the data as a table', async () => {
    const figures = named(await render('practice/figures', everything), 'figure')
    expect(figures).toHaveLength(9)
    for (const figure of figures) {
      const { id } = figure.properties
      const text = textOf(figure)
      expect(text).toContain(`Finding of ${id}`)
      expect(text).toContain(`What ${id} shows`)
      expect(text).toContain('All readingsmm14 Oct 2596')
    }
  })

  it('name every picture', async () => {
    const html = await render('practice/figures', everything)
    const pictures = named(html, 'svg').filter(({ properties }) => properties.role === 'img')
    expect(pictures.length).toBeGreaterThan(12)
    for (const { properties } of pictures) {
      expect(properties.ariaLabel ?? properties.ariaLabelledBy).toBeTruthy()
      expect(properties.viewBox).toMatch(/^0 0 \d/)
    }
  })

  it('escape what they say', async () => {
    const evil = { title: '<img src=x onerror=alert(1)>', description: '"><script>', valueTitle: '<b>' }
    const html = await render('practice/figures', { charts: [trend('t', evil)], drawings: [] })
    expect(named(html, 'img')).toEqual([])
    expect(named(html, 'script')).toEqual([])
    expect(named(html, 'b')).toEqual([])
  })

  it('are the same bytes from a renderer of its own', async () => {
    const view = { path: 'x.html', template: 'practice/figures', model: everything }
    expect(await createRenderer(templates, english).render(view)).toBe(await renderer.render(view))
  })
})
