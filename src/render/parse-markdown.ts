/**
 * CommonMark with GitHub's extensions, each loaded into the parser only where its signs occur: ordinary notes need none
 * or tables alone, and the extension for bare addresses, which looks at every letter, doubles the time of a parse.
 * The tree is that of the parser with all of them.
 */
import type { Nodes, Root } from 'mdast'
import type { Extension as TreeExtension } from 'mdast-util-from-markdown'
import { gfmAutolinkLiteralFromMarkdown } from 'mdast-util-gfm-autolink-literal'
import { gfmFootnoteFromMarkdown } from 'mdast-util-gfm-footnote'
import { gfmStrikethroughFromMarkdown } from 'mdast-util-gfm-strikethrough'
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table'
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item'
import { gfmAutolinkLiteral } from 'micromark-extension-gfm-autolink-literal'
import { gfmFootnote } from 'micromark-extension-gfm-footnote'
import { gfmStrikethrough } from 'micromark-extension-gfm-strikethrough'
import { gfmTable } from 'micromark-extension-gfm-table'
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item'
import type { Extension as SyntaxExtension } from 'micromark-util-types'
import remarkParse from 'remark-parse'
import { unified } from 'unified'

interface GitHubExtension {
  readonly syntax: SyntaxExtension
  readonly tree: TreeExtension
}

export type ParseMarkdown = (text: string) => Root

/** A parser whose extensions are made once. */
export function createParser(): ParseMarkdown {
  /** Each with signs of which one stands in every text that it changes. */
  const bySigns: readonly (GitHubExtension & { readonly signs: RegExp })[] = [
    // The line under a table's head: a single column may have a colon for all bars.
    { signs: /\||:-|-:/, syntax: gfmTable(), tree: gfmTableFromMarkdown() },
    // A single one changes what may stand beside stars.
    { signs: /~/, syntax: gfmStrikethrough({ singleTilde: false }), tree: gfmStrikethroughFromMarkdown() },
    { signs: /\[[\sx]\]/i, syntax: gfmTaskListItem(), tree: gfmTaskListItemFromMarkdown() },
    { signs: /\[\^/, syntax: gfmFootnote(), tree: gfmFootnoteFromMarkdown() },
  ]
  const bareAddresses: GitHubExtension = {
    syntax: gfmAutolinkLiteral(),
    tree: gfmAutolinkLiteralFromMarkdown(),
  }
  const all: readonly GitHubExtension[] = [bareAddresses, ...bySigns]
  /** By the extensions loaded: few sets ever occur. */
  const parsers = new Map<string, ParseMarkdown>()
  const parseWith = (extensions: readonly GitHubExtension[], text: string): Root => {
    const key = extensions.map((one) => all.indexOf(one)).join()
    const parse = parsers.get(key) ?? parserWith(extensions)
    parsers.set(key, parse)
    return parse(text)
  }
  return (text) => {
    const needed: readonly GitHubExtension[] = bySigns.filter(({ signs }) => signs.test(text))
    const tree = parseWith(needed, text)
    // An address is bare only where it would else be text: that of a link or of code is none.
    return saysAddress(tree) ? parseWith([bareAddresses, ...needed], text) : tree
  }
}

const parserWith = (extensions: readonly GitHubExtension[]): ParseMarkdown => {
  const processor = unified()
    .use(remarkParse)
    .data(
      'micromarkExtensions',
      extensions.map(({ syntax }) => syntax),
    )
    .data(
      'fromMarkdownExtensions',
      extensions.map(({ tree }) => tree),
    )
    .freeze()
  return (text) => processor.parse(text)
}

const address = /https?:\/\/|www\.|@/i

/** Whether an address of the web or of mail stands in plain text, or in what describes a picture. */
function saysAddress(node: Nodes): boolean {
  if (node.type === 'text') return address.test(node.value)
  if ('alt' in node) return address.test(node.alt ?? '')
  return 'children' in node && node.children.some(saysAddress)
}
