/**
 * A body by reader. The privacy rule of the whole tool: private unless a heading says otherwise. Only a second-level
 * heading `For the owner` or `For teaching` opens a section for others; it runs to the next heading of the same or a
 * higher level. A heading inside a code block, a quotation, a list or HTML is none.
 */
import remarkFrontmatter from 'remark-frontmatter'
import remarkParse from 'remark-parse'
import { unified } from 'unified'
import type { Body } from './model.ts'
import type { Report, TextRange } from './report.ts'
import { nearest, quote } from './words.ts'

interface Heading extends TextRange {
  /** 1 to 6. */
  readonly level: number
  readonly words: string
}

const readers = ['for the owner', 'for teaching'] as const
type Reader = (typeof readers)[number]

/** Sections of `text` from `bodyStart` on. A heading that only nearly opens a section is warned of: it stays private. */
export function readBody(text: string, bodyStart: number, report: Report): Body {
  const body = text.slice(bodyStart)
  if (!/owner|teach/i.test(body)) return { own: body.trim(), forOwner: null, forTeaching: null }
  const headings = headingsOf(text, bodyStart)
  const sections: Record<Reader, string[]> = { 'for the owner': [], 'for teaching': [] }
  const own: string[] = []
  let from = 0
  headings.forEach((heading, index) => {
    const reader = heading.level === 2 ? readers.find((name) => name === heading.words) : undefined
    if (!reader) {
      warnOfNearly(heading, heading.start < from, bodyStart, report)
      return
    }
    const next = headings.slice(index + 1).find((later) => later.level <= 2)
    const end = next?.start ?? body.length
    own.push(body.slice(from, heading.start))
    sections[reader].push(body.slice(heading.end, end).trim())
    from = end
  })
  own.push(body.slice(from))
  return {
    own: joined(own) ?? '',
    forOwner: joined(sections['for the owner']),
    forTeaching: joined(sections['for teaching']),
  }
}

const joined = (parts: readonly string[]): string | null =>
  parts
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .join('\n\n') || null

function warnOfNearly(heading: Heading, inSection: boolean, bodyStart: number, report: Report): void {
  const meant = readers.find((name) => name === heading.words) ?? nearest(heading.words, readers)
  if (!meant) return
  const wanted = `## ${meant.replace('for', 'For')}`
  report.warning(
    'heading-nearly',
    { start: bodyStart + heading.start, end: bodyStart + heading.end },
    `The heading ${quote(heading.words)} opens no section for others${inSection ? '' : ', so what follows stays private'}.`,
    { expected: wanted, fix: wanted },
  )
}

/** All headings that stand on the page itself, in order; offsets within the body. */
export function headingsOf(text: string, bodyStart: number): readonly Heading[] {
  const body = text.slice(bodyStart)
  return needsParser(body) ? parsedHeadings(text, bodyStart) : scannedHeadings(body)
}

/**
 * Whether the body holds anything that can hide or make a heading other than a plain `## ` line at the margin: fences,
 * HTML, underlined headings, headings moved in. A line at the margin ends every list and quotation, so without these
 * a line scan finds what the parser finds, at a hundredth of its time.
 */
const needsParser = (body: string): boolean =>
  /(?:^|\n)(?: {0,3}(?:```|~~~|<|=+[ \t]*(?:\n|$)|-+[ \t]*(?:\n|$))|[ \t]+#)/.test(body)

/** By line. Exported for the test that holds it against the parser. */
export function scannedHeadings(body: string): readonly Heading[] {
  const headings: Heading[] = []
  let start = 0
  for (const line of body.split('\n')) {
    const match = line.startsWith('#') ? /^(#{1,6})(?:[ \t]+(.*))?$/s.exec(line) : null
    if (match) {
      const words = (match[2] ?? '').trimEnd().replace(/(?<=^|[ \t])#+$/, '')
      headings.push({
        start,
        end: start + line.length,
        level: match[1]?.length ?? 1,
        words: plainWords(words),
      })
    }
    start += line.length + 1
  }
  return headings
}

/** By CommonMark, over the whole file, so that the block at its head is known for what it is. */
export function parsedHeadings(text: string, bodyStart: number): readonly Heading[] {
  const tree = unified().use(remarkParse).use(remarkFrontmatter, ['yaml']).parse(text)
  const headings: Heading[] = []
  for (const node of tree.children) {
    if (node.type !== 'heading') continue
    const start = node.position?.start.offset
    const end = node.position?.end.offset
    const first = node.children[0]?.position?.start.offset
    const last = node.children.at(-1)?.position?.end.offset
    if (start === undefined || end === undefined || start < bodyStart) continue
    const words = first === undefined || last === undefined ? '' : text.slice(first, last)
    headings.push({
      start: start - bodyStart,
      end: end - bodyStart,
      level: node.depth,
      words: plainWords(words),
    })
  }
  return headings
}

const plainWords = (words: string): string => words.replace(/\s+/g, ' ').trim().toLowerCase()
