/**
 * The headings of a body, and the lines of its paragraphs that may be meant as headings, as the CommonMark parser finds
 * them. Blocks are known before what stands within a line is looked at, so the parser is spared that (links, emphasis)
 * but for headings and such lines.
 */
import type { Nodes, Paragraph } from 'mdast'
import { toString as plainTextOf } from 'mdast-util-to-string'
import remarkFrontmatter from 'remark-frontmatter'
import remarkParse from 'remark-parse'
import { unified } from 'unified'
import type { TextRange } from './report.ts'

interface Block extends TextRange {
  /** Its text without marks, as a reader of the page sees it. */
  readonly words: string
  /** Whether it stands in a list or a quotation. */
  readonly nested: boolean
}

export interface Heading extends Block {
  /** 1 to 6. */
  readonly level: number
  /** Whether a line under it makes it one. */
  readonly underlined: boolean
}

export interface Line extends Block {
  /** Whether it stands out: nothing but emphasised words, or a paragraph of its own. */
  readonly standsOut: boolean
}

/** What stands within a line. */
const withinLines = [
  ...['attention', 'autolink', 'characterEscape', 'characterReference', 'codeText', 'hardBreakEscape'],
  ...['htmlText', 'labelEnd', 'labelStartImage', 'labelStartLink'],
]

const blocks = unified()
  .use(remarkParse)
  .use(remarkFrontmatter, ['yaml'])
  .data('micromarkExtensions', [{ disable: { null: withinLines } }])
  .freeze()
const whole = unified().use(remarkParse).freeze()

/** The block at the head of every case file, here with nothing in it: what follows is read as the body it is. */
const head = '---\n---\n'

export interface Blocks {
  readonly headings: readonly Heading[]
  readonly lines: readonly Line[]
}

/** Headings in their order, and short lines that name a reader; offsets within the body. */
export function blocksOf(body: string): Blocks {
  const headings: Heading[] = []
  const lines: Line[] = []
  const visit = (node: Nodes, nested: boolean): void => {
    if (node.type === 'heading') {
      const range = rangeOf(node)
      const source = body.slice(range.start, range.end)
      const underlined = !source.startsWith('#')
      headings.push({ ...range, nested, level: node.depth, words: headingWords(source), underlined })
    } else if (node.type === 'paragraph') lines.push(...namingLines(node, nested, body))
    else if ('children' in node)
      for (const child of node.children) visit(child, nested || containers.has(node.type))
  }
  visit(blocks.parse(head + body), false)
  return { headings, lines }
}

const containers: ReadonlySet<string> = new Set(['blockquote', 'list'])

const rangeOf = ({ position }: Nodes): TextRange => ({
  start: (position?.start.offset ?? head.length) - head.length,
  end: (position?.end.offset ?? head.length) - head.length,
})

/** What the parser says a heading's text is; as written, if it is no heading by itself. */
function plainText(source: string): string {
  // A line before it makes a byte order mark at its start what it is anywhere else: a character.
  const { children } = whole.parse(`\n${source}`)
  const [only] = children
  return only?.type === 'heading' && children.length === 1 ? plainTextOf(only) : source
}

/** The parser need not be asked what letters, figures and blanks between the marks of a heading say. */
const headingWords = (source: string): string =>
  /^#+[ \t]+([\p{L}\p{N} ]+)$/u.exec(source)?.[1] ?? plainText(source)

/** The lines of a paragraph that name a reader, without the marks of the quotations that they stand in. */
function namingLines(paragraph: Paragraph, nested: boolean, body: string): readonly Line[] {
  const range = rangeOf(paragraph)
  const source = body.slice(range.start, range.end)
  if (!/owner|teach/i.test(source)) return []
  const found: Line[] = []
  let start = range.start
  const written = source.split('\n')
  for (const line of written) {
    const text = line.replace(/^[ \t]*(?:>[ \t]?)+/, '')
    const from = start + line.length - text.length
    if (text.length < 80 && /owner|teach/i.test(text))
      found.push({
        start: from,
        end: from + text.trimEnd().length,
        nested,
        ...lineOf(text, written.length === 1),
      })
    start += line.length + 1
  }
  return found
}

function lineOf(source: string, alone: boolean): Pick<Line, 'words' | 'standsOut'> {
  const tree = whole.parse(source.trim())
  const [paragraph] = tree.children
  const parts = paragraph?.type === 'paragraph' ? paragraph.children : []
  const emphasised = parts.length === 1 && (parts[0]?.type === 'strong' || parts[0]?.type === 'emphasis')
  return { words: plainTextOf(tree), standsOut: alone || emphasised }
}
