/** Reads finished HTML again with parse5, so that tests see what a browser would. */
import type { Element, Nodes } from 'hast'
import rehypeParse from 'rehype-parse'
import { unified } from 'unified'

const parser = unified().use(rehypeParse, { fragment: true }).freeze()

const below = (node: Nodes): readonly Element[] =>
  'children' in node
    ? node.children.flatMap((child) => (child.type === 'element' ? [child, ...below(child)] : []))
    : []

/** Every element of a piece of HTML, in order. */
export const elementsOf = (html: string): readonly Element[] => below(parser.parse(html))

export const named = (html: string, tagName: string): readonly Element[] =>
  elementsOf(html).filter((element) => element.tagName === tagName)

export const textOf = (node: Nodes): string =>
  node.type === 'text' ? node.value : 'children' in node ? node.children.map(textOf).join('') : ''

/** Ids in order, and ids that something refers to: labels, descriptions, paint, clips. */
export function idsOf(html: string): { readonly ids: readonly string[]; readonly used: readonly string[] } {
  const ids: string[] = []
  const used: string[] = []
  for (const { properties } of elementsOf(html)) {
    if (properties.id !== undefined) ids.push(String(properties.id))
    for (const name of ['ariaLabelledBy', 'ariaDescribedBy'] as const) {
      const value = properties[name]
      if (value !== undefined)
        used.push(...(Array.isArray(value) ? value : String(value).split(' ')).map(String))
    }
    for (const value of Object.values(properties)) {
      used.push(...[...String(value).matchAll(/url\(#([^)]+)\)/g)].map((match) => match[1] ?? ''))
    }
  }
  return { ids, used }
}
