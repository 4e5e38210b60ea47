/**
 * A body by reader. The privacy rule of the whole tool: private unless a heading says otherwise. Only a second-level
 * heading `For the owner` or `For teaching` opens a section for others; it runs to the next heading of the same or a
 * higher level. A heading inside a code block, a quotation, a list or HTML opens none.
 * What is a heading, and what it says, is for the CommonMark parser alone to tell.
 */
import { distance } from 'fastest-levenshtein'
import { blocksOf, type Heading, type Line } from './body-blocks.ts'
import { isBodyWithinLimits } from './body-limits.ts'
import type { Body } from './model.ts'
import type { Report } from './report.ts'
import { quote } from './words.ts'

const readers = ['for the owner', 'for teaching'] as const
type Reader = (typeof readers)[number]

interface Section {
  readonly reader: Reader
  readonly heading: Heading
  /** Offset of the character after the section's last. */
  readonly end: number
}

const noBody: Body = { own: '', forOwner: null, forTeaching: null }

/** Sections of `text` from `bodyStart` on. What only nearly opens a section is warned of: it stays private. */
export function readBody(text: string, bodyStart: number, report: Report): Body {
  if (!isBodyWithinLimits(text, bodyStart, report)) return noBody
  const body = text.slice(bodyStart)
  if (!mayHoldSection(body)) return { own: body.trim(), forOwner: null, forTeaching: null }
  const { headings, lines } = blocksOf(body)
  const sections = sectionsOf(headings, body.length)
  const place = { body, bodyStart, sections }
  const opening = new Set(sections.map(({ heading }) => heading))
  for (const heading of headings) if (!opening.has(heading)) warnOfHeading(heading, place, report)
  for (const line of lines) warnOfLine(line, place, report)

  const own: string[] = []
  let from = 0
  for (const { heading, end } of sections) {
    own.push(body.slice(from, heading.start))
    from = end
  }
  own.push(body.slice(from))
  const sectionsFor = (wanted: Reader) =>
    sections.filter(({ reader }) => reader === wanted).map(({ heading, end }) => body.slice(heading.end, end))
  return {
    own: joined(own) ?? '',
    forOwner: joined(sectionsFor('for the owner')),
    forTeaching: joined(sectionsFor('for teaching')),
  }
}

/**
 * Whether there is anything to ask the parser about. A heading's text, where it is not that of our words letter for
 * letter, has been written with marks or entities, or has a line of `=` or `-` under it. The last looks for slips.
 */
export const mayHoldSection = (body: string): boolean =>
  /owner|teach|(?<![^\n])[^#\n]*#[^\n]*[&*_[<`\\]|[-=][ \t]*$|(?<![^\n])[^\w\n]*(?:for|to)\b/im.test(body)

const joined = (parts: readonly string[]): string | null =>
  parts
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .join('\n\n') || null

function sectionsOf(headings: readonly Heading[], bodyEnd: number): readonly Section[] {
  // Only a heading of these levels opens or closes one.
  const high = headings.filter(({ nested, level }) => !nested && level <= 2)
  return high.flatMap((heading, index) => {
    const words = folded(heading.words)
    const reader = heading.level === 2 ? readers.find((name) => name === words) : undefined
    return reader === undefined ? [] : [{ reader, heading, end: high[index + 1]?.start ?? bodyEnd }]
  })
}

const folded = (words: string): string => words.replace(/\s+/g, ' ').trim().toLowerCase()

interface Place {
  readonly body: string
  readonly bodyStart: number
  readonly sections: readonly Section[]
}

function warnOfHeading(heading: Heading, place: Place, report: Report): void {
  const meant = meantBy(heading.words)
  // More or fewer words than ours may be meant as they stand, so no fix is likely.
  const words = folded(heading.words)
  const named = meant ?? readers.find((name) => words.includes(name) || (words && name.endsWith(` ${words}`)))
  if (named === undefined) return
  const fixable = meant !== undefined && !heading.underlined
  warn('heading', heading, named, fixable, place, report)
}

function warnOfLine(line: Line, place: Place, report: Report): void {
  const meant = meantBy(line.words)
  // Any sentence may break before or after our words; a line that is meant as a heading looks like one.
  if (meant === undefined || !(line.standsOut || /^#|:\s*$/.test(line.words))) return
  warn('line', line, meant, true, place, report)
}

/** Whether a place lies within one of the sections, which stand in their order. */
function isInSection(start: number, sections: readonly Section[]): boolean {
  let [low, high] = [0, sections.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sections[middle]?.heading.start ?? 0) < start) low = middle + 1
    else high = middle
  }
  return start < (sections[low - 1]?.end ?? 0)
}

function warn(
  what: 'heading' | 'line',
  { start, end, words, nested }: Heading | Line,
  meant: Reader,
  fixable: boolean,
  { body, bodyStart, sections }: Place,
  report: Report,
): void {
  const inSection = isInSection(start, sections)
  const wanted = `## ${meant.replace('for', 'For')}`
  const isFixed = fixable && !nested && /(?:^|[\n\r]) {0,3}$/.test(body.slice(Math.max(0, start - 4), start))
  report.warning(
    'heading-nearly',
    { start: bodyStart + start, end: bodyStart + end },
    `The ${what} ${quote(folded(words))}${nested ? ' in a list or quotation' : ''} opens no section for others` +
      `${inSection ? '' : ', so what follows stays private'}.`,
    { expected: `${wanted}${isFixed ? '' : ', at the margin'}`, ...(isFixed ? { fix: wanted } : {}) },
  )
}

/** By how many letters a slip may differ from our words. */
const slip = 2

/** Words without the signs at their end that a heading may have. */
function withoutEnd(words: string): string {
  let end = words.length
  while (end > 0 && /[\s#:.]/.test(words[end - 1] ?? '')) end--
  return words.slice(0, end)
}

/** Which reader some words mean to name and nothing besides: `For owner`, `To the owner:`, `##For the onwer`. */
function meantBy(words: string): Reader | undefined {
  const bare = folded(withoutEnd(words.replace(/^\s*#+/, '')))
  const said = bare
    .replace(/^to /, 'for ')
    .replace(/^for (?=owners?$)/, 'for the ')
    .replace(/^for the (?=teaching$)/, 'for ')
  return readers.find((name) => distance(name, said) <= slip)
}
