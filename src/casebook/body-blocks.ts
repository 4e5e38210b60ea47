/**
 * The headings of a body, and the lines of its paragraphs that may be meant as headings, as the CommonMark parser finds
 * them. The parser is stopped when it knows the blocks: what stands within a line (links, emphasis) is parsed for
 * headings and such lines alone.
 */
import { fromMarkdown } from 'mdast-util-from-markdown'
import { toString as plainTextOf } from 'mdast-util-to-string'
import { parse, preprocess } from 'micromark'
import { subtokenize } from 'micromark-util-subtokenize'
import type { Event, Token } from 'micromark-util-types'
import type { Spot } from './report.ts'

interface Block extends Spot {
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

/** Headings in their order, and short lines that name a reader; offsets within the body. */
export function blocksOf(body: string): {
  readonly headings: readonly Heading[]
  readonly lines: readonly Line[]
} {
  const headings: Heading[] = []
  const lines: Line[] = []
  const events = eventsOf(body)
  const open: string[] = []
  events.forEach(([step, token], i) => {
    const { type } = token
    if (step === 'exit') {
      open.pop()
      return
    }
    const block = () => ({ ...spotOf(token), nested: open.some((around) => containers.has(around)) })
    const source = () => sourceOf(token, body)
    if (type === 'atxHeading') {
      const level = sourceOf(events[i + 1]?.[1] ?? token, body).length
      headings.push({ ...block(), level, words: headingWords(source()), underlined: false })
    } else if (type === 'setextHeading') {
      const level = source().trimEnd().endsWith('=') ? 1 : 2
      headings.push({ ...block(), level, words: plainText(source()), underlined: true })
    } else if (type === 'chunkText' && open.at(-1) === 'paragraph' && mayNameReader(source())) {
      const alone = events[i - 1]?.[1].type === 'paragraph' && events[i + 2]?.[1].type === 'paragraph'
      lines.push({ ...block(), ...lineOf(source(), alone) })
    }
    open.push(type)
  })
  return { headings, lines }
}

/** A line before the body makes a byte order mark at its start what it is anywhere else: a character. */
const before = '\n'

function eventsOf(body: string): readonly Event[] {
  const events = parse()
    .document()
    .write(preprocess()(before + body, undefined, true))
  // The first round finds the blocks in lists and quotations; later ones would find what stands within lines.
  subtokenize(events)
  return events
}

const containers: ReadonlySet<string> = new Set(['blockQuote', 'listOrdered', 'listUnordered'])

const spotOf = ({ start, end }: Token): Spot => ({
  start: start.offset - before.length,
  end: end.offset - before.length,
})

const sourceOf = ({ start, end }: Token, body: string): string =>
  body.slice(start.offset - before.length, end.offset - before.length)

/** What the parser says a heading's text is; as written, if it is no heading by itself. */
function plainText(source: string): string {
  const { children } = fromMarkdown(before + source)
  const [only] = children
  return only?.type === 'heading' && children.length === 1 ? plainTextOf(only) : source
}

/** The parser need not be asked what letters, figures and blanks between the marks of a heading say. */
const headingWords = (source: string): string =>
  /^#+[ \t]+([\p{L}\p{N} ]+)$/u.exec(source)?.[1] ?? plainText(source)

const mayNameReader = (source: string): boolean => source.length < 80 && /owner|teach/i.test(source)

function lineOf(source: string, alone: boolean): Pick<Line, 'words' | 'standsOut'> {
  const tree = fromMarkdown(source.trim())
  const [paragraph] = tree.children
  const parts = paragraph?.type === 'paragraph' ? paragraph.children : []
  const emphasised = parts.length === 1 && (parts[0]?.type === 'strong' || parts[0]?.type === 'emphasis')
  return { words: plainTextOf(tree), standsOut: alone || emphasised }
}
