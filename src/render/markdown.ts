/**
 * Markdown of case files to HTML that is safe on any page.
 *
 * - Raw HTML is never HTML on the page: it is shown as the text that was written. HTML comments are left out.
 * - Links keep only http, https, mailto and tel. Others, relative ones too, lose their target: the file that
 *   they name is not part of a built site.
 * - No picture is loaded from a body: its description stands in its place, as a link where the address is on the web.
 * - No ids, so that several bodies can stand on one page. Headings nest below the page's own.
 */
import type { Element, ElementContent, Root, RootContent } from 'hast'
import rehypeSanitize, { type Options as Schema } from 'rehype-sanitize'
import rehypeStringify from 'rehype-stringify'
import remarkRehype from 'remark-rehype'
import { unified } from 'unified'
import { createParser } from './parse-markdown.ts'

/** Markdown to HTML. `below` is the level of the page heading that the text stands under, 1 to 5. */
export type MarkdownRenderer = (text: string, below: number) => string

/** Everything that a body may hold. */
const schema: Schema = {
  tagNames: [
    ...['p', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'blockquote', 'ul', 'ol', 'li', 'pre', 'code', 'hr', 'br'],
    ...['em', 'strong', 'del', 'a', 'sup', 'section', 'table', 'thead', 'tbody', 'tr', 'th', 'td'],
  ],
  attributes: {
    a: ['href', 'title', 'rel'],
    ol: ['start'],
    th: ['className', 'scope'],
    td: ['className'],
  },
  protocols: { href: ['http', 'https', 'mailto', 'tel'] },
  strip: ['script'],
}

/** A renderer with its own processors, made once and used for every body. */
export function createMarkdown(): MarkdownRenderer {
  const handlers = {
    html: (_state: unknown, node: { value: string }, parent: { type: string } | undefined) =>
      rawHtmlAsText(node.value, flowParents.has(parent?.type ?? 'root')),
  }
  const toHtml = unified()
    .use(remarkRehype, { handlers })
    .use(() => tame)
    .use(rehypeSanitize, schema)
    .use(rehypeStringify)
    .freeze()
  const parse = createParser()
  return (text, below) => {
    const tree = toHtml.runSync(parse(text)) as Root
    nestHeadings(tree, nesting(below))
    return toHtml.stringify(tree)
  }
}

/** Where a piece of HTML stands between blocks and not within a line. */
const flowParents: ReadonlySet<string> = new Set(['root', 'blockquote', 'listItem', 'footnoteDefinition'])

function rawHtmlAsText(html: string, isBlock: boolean): ElementContent[] {
  const value = html.replace(/<!--[\s\S]*?(?:-->|$)/g, '')
  const text: ElementContent = { type: 'text', value }
  if (value.trim() === '') return []
  return isBlock ? [{ type: 'element', tagName: 'p', properties: {}, children: [text] }] : [text]
}

/** Replaces what may not stand as it is, before the sanitiser has the last word. */
function tame(tree: Root): void {
  tameChildren(tree)
}

function tameChildren(parent: Root | Element): void {
  const children: RootContent[] = []
  for (const child of parent.children as RootContent[]) {
    if (child.type !== 'element') {
      children.push(child)
      continue
    }
    tameChildren(child)
    children.push(...tamed(child))
  }
  parent.children = children as ElementContent[]
}

function tamed(element: Element): readonly RootContent[] {
  const { tagName, properties } = element
  if (tagName === 'img') return [pictureAsText(properties)]
  if (tagName === 'input') return [{ type: 'text', value: properties.checked ? '\u2611' : '\u2610' }]
  if (tagName === 'a') return 'dataFootnoteBackref' in properties ? [] : [tameLink(element)]
  // The heading that the footnote extension adds is in English and meant for screen readers alone.
  if (tagName === 'h2' && properties.id === 'footnote-label') return []
  if (tagName === 'th' || tagName === 'td') {
    const { align } = properties
    element.properties = {
      ...(tagName === 'th' ? { scope: 'col' } : {}),
      ...(typeof align === 'string' ? { className: [`align-${align}`] } : {}),
    }
  }
  return [element]
}

const isWebAddress = (address: unknown): address is string =>
  typeof address === 'string' && /^https?:\/\//i.test(address)

function pictureAsText(properties: Element['properties']): ElementContent {
  const { src, alt } = properties
  const text: ElementContent = { type: 'text', value: typeof alt === 'string' ? alt : '' }
  if (!isWebAddress(src)) return text
  if (text.value === '') text.value = src
  return { type: 'element', tagName: 'a', properties: { href: src, rel: outwardRel }, children: [text] }
}

const outwardRel = ['noopener', 'noreferrer']

function tameLink(link: Element): Element {
  const { href, title } = link.properties
  const kept = typeof href === 'string' && /^(?:https?|mailto|tel):/i.test(href)
  link.properties = kept
    ? { href, ...(title ? { title } : {}), ...(isWebAddress(href) ? { rel: outwardRel } : {}) }
    : {}
  return link
}

function nestHeadings(tree: Root, heading: (level: number) => string): void {
  for (const node of tree.children) {
    if (node.type !== 'element' || !/^h[1-6]$/.test(node.tagName)) continue
    node.tagName = heading(Number(node.tagName[1]))
  }
}

/** Gives headings, as they come, the levels that their nesting asks for, none skipped, the outermost one below the page's. */
function nesting(below: number): (level: number) => string {
  const open: number[] = []
  return (level) => {
    while ((open.at(-1) ?? 0) >= level) open.pop()
    open.push(level)
    return `h${Math.min(6, below + open.length)}`
  }
}
