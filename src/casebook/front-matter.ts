/**
 * One file's bytes to its two parts: the block between two lines of `---`, and the body. gray-matter splits; its
 * engines, one of which would run a block marked `js`, are all replaced by one that does nothing.
 */
import matter from 'gray-matter'
import type { CasebookFolder, FolderEntry } from './folder.ts'
import { limits } from './limits.ts'
import { type Report, reportOn, type TextRange } from './report.ts'
import { quote } from './words.ts'

export interface CaseFile {
  readonly report: Report
  /** The whole text with line feeds alone as line ends; offsets are counted in it. */
  readonly text: string
  /** The block between the --- lines, as offsets. */
  readonly blockStart: number
  readonly blockEnd: number
  /** Where the body begins. */
  readonly bodyStart: number
}

/** Reads and splits a file. On failure `file` is null and the report says why. */
export function openCaseFile(
  folder: CasebookFolder,
  entry: FolderEntry,
): { readonly file: CaseFile | null; readonly report: Report } {
  const text = readText(folder, entry)
  if (typeof text !== 'string') return { file: null, report: text }
  return openText(entry.path, text)
}

/** Splits the text of a file. */
export function openText(
  path: string,
  text: string,
): { readonly file: CaseFile | null; readonly report: Report } {
  const report = reportOn(path, text)
  return { file: split(text, report), report }
}

function readText(folder: CasebookFolder, entry: FolderEntry): string | Report {
  const report = reportOn(entry.path, '')
  if (entry.kind === 'link') {
    report.error('link', null, `${entry.path} is a link, and links are never followed.`, {
      expected: 'a file of its own',
      advice: 'replace the link by a copy of the file',
    })
    return report
  }
  if (entry.kind !== 'file') {
    report.error('not-a-file', null, `${entry.path} is not a plain file.`, { expected: 'a text file' })
    return report
  }
  if (entry.size > limits.fileBytes) return tooLarge(report, entry.size)
  let bytes: Uint8Array
  try {
    bytes = folder.read(entry.path)
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem)
    report.error('unreadable', null, `The file cannot be read: ${why.replace(/\.$/, '')}.`)
    return report
  }
  if (bytes.length > limits.fileBytes) return tooLarge(report, bytes.length)
  return decode(bytes, entry.path)
}

function tooLarge(report: Report, size: number): Report {
  report.error('file-too-large', null, `The file is ${Math.ceil(size / 1024)} KiB long.`, {
    expected: `at most ${limits.fileBytes / 1024} KiB`,
    advice: 'keep the notes of one visit in one file, and pictures in the folder photos',
  })
  return report
}

/** UTF-8 with or without a byte-order mark, any line ends. */
function decode(bytes: Uint8Array, path: string): string | Report {
  const wrong = (text: string, at: number, message: string): Report => {
    const report = reportOn(path, text)
    report.error('not-utf-8', at < 0 ? null : { start: at, end: at + 1 }, message, {
      expected: 'plain text in UTF-8',
      advice: 'save the file again as UTF-8 in your editor',
    })
    return report
  }
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    return wrong('', -1, 'The file is in UTF-16.')
  }
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    const shown = oneLineEnd(new TextDecoder('utf-8').decode(bytes))
    return wrong(shown, shown.indexOf('\uFFFD'), 'A character here is not in UTF-8.')
  }
  text = oneLineEnd(text)
  const nul = text.indexOf('\0')
  return nul === -1 ? text : wrong(text, nul, 'There is a zero byte here, so this is no text file.')
}

const oneLineEnd = (text: string): string => (text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text)

/** What gray-matter would do with a block by its language: nothing at all. What the block says is read in yaml-tree.ts. */
const inert = { parse: () => ({}), stringify: () => '' }
const engines = { yaml: inert, json: inert, javascript: inert, js: inert, coffee: inert }

/** True, and told, where a merge left both versions in the file, one below the other, for a person to choose. */
function isMergeLeft(text: string, report: Report): boolean {
  if (!text.includes('<<<<<<< ')) return false
  const left = /^<{7} [^\n]*$[\s\S]*?^={7}$[\s\S]*?^>{7}(?: |$)/m.exec(text)
  if (!left) return false
  const start = left.index
  report.error(
    'merge-left',
    { start, end: lineEnd(text, start) },
    'Two versions of these lines stand in the file, as a merge left them.',
    {
      expected: 'one of the two, or what is right of both',
      advice: 'settle the lines down to >>>>>>>, then delete the three lines of signs',
    },
  )
  return true
}

/** Where the block ends and the body begins. A file without a block is all body. */
function split(text: string, report: Report): CaseFile | null {
  if (isMergeLeft(text, report)) return null
  if (!matter.test(text)) return withoutBlock(text, report)
  const firstLine = text.slice(0, lineEnd(text, 0))
  const language = matter.language(text).name
  if (language !== '' && language !== 'yaml') {
    report.error(
      'block-language',
      { start: 0, end: firstLine.trimEnd().length },
      `${quote(firstLine)} is not accepted.`,
      {
        expected: '--- alone on the line. Nothing in a case file is ever run',
        fix: isKeyLine.test(language)
          ? `---\n${language}`
          : /^(?:ya?ml|js|json|javascript|coffee|toml|-+)\b|^-+$/.test(language)
            ? '---'
            : null,
      },
    )
    return null
  }
  const plain = onOneLine(text, firstLine.length + 1)
  const block = matter(plain, { language: 'yaml', engines }).matter
  const close = plain.indexOf(block, 3) + block.length + 1
  const closeEnd = lineEnd(text, close)
  if (close >= text.length || text.slice(close, closeEnd).trimEnd() !== '---') {
    reportEnd(text, close, report)
    return null
  }
  return {
    report,
    text,
    blockStart: Math.min(firstLine.length + 1, close),
    blockEnd: close,
    bodyStart: Math.min(closeEnd + 1, text.length),
  }
}

/**
 * Before gray-matter gives the block it looks for remarks, from each empty line on over all the others, which takes
 * minutes where there are very many. No line but those of `---` is its concern, so the others are joined.
 */
const onOneLine = (text: string, from: number): string =>
  text.slice(0, from) + text.slice(from).replace(/\n(?!---)|[\u2028\u2029]/g, ' ')

/** The block's end is missing, or is not quite `---`. */
function reportEnd(text: string, close: number, report: Report): void {
  const expected = 'a second line of ---'
  if (close < text.length) {
    const range = { start: close, end: lineEnd(text, close) }
    report.error('block-end', range, 'The block ends with more than ---.', { expected, fix: '---' })
    return
  }
  const nearly = nearlyDashes(text, lineEnd(text, 0) + 1)
  if (nearly) {
    report.error(
      'block-end',
      nearly,
      `${quote(text.slice(nearly.start, nearly.end))} does not end the block.`,
      {
        expected: '--- alone on the line: three hyphens',
        fix: '---',
      },
    )
    return
  }
  report.error('block-end', { start: 0, end: 3 }, 'The block that begins here is not closed.', {
    expected,
    advice: 'put --- on a line of its own after the last key',
  })
}

/** Lines of a key, as at the top of a block. */
const isKeyLine =
  /^(?:date|footing|feet|before|after|findings|grow-out|comfort|body|stance|photos|care|next visit|name|owner|kind|sex|born|height|weight|started|history|vet|consent|alias|targets|practice|units|language|trim cycle|owners|terms):(?:\s|$)/i

/** The first line from `from` on that looks like `---`: a long dash that a phone made of it, two hyphens, other signs. */
function nearlyDashes(text: string, from: number): TextRange | null {
  const match = /^[ \t]*(?:[\u2012-\u2015\u2500-]{1,10}|\*{3,10}|_{3,10}|={3,10}|- - -)[ \t]*$/m.exec(
    text.slice(from),
  )
  return match && { start: from + match.index, end: from + match.index + match[0].length }
}

/** Lines that may stand above the block by mistake. */
const mostLinesAbove = 10

/**
 * A file that does not begin with `---`. Nothing is wrong with one that is all body; but where a block was meant, all
 * that it says would be taken for notes, so that is an error.
 */
function withoutBlock(text: string, report: Report): CaseFile | null {
  const lines = text.split('\n', mostLinesAbove + 2)
  const first = lines.findIndex((line) => line.trim() !== '')
  if (first === -1) return allBody(text, report)
  const startOf = (index: number) => lines.slice(0, index).reduce((sum, line) => sum + line.length + 1, 0)
  const line = lines[first] ?? ''
  const range = { start: startOf(first), end: startOf(first) + line.trimEnd().length }
  const next = lines.slice(first + 1).find((one) => one.trim() !== '') ?? ''
  const dashes = lines.findIndex((one, index) => {
    const below = lines.slice(index + 1).find((later) => later.trim() !== '') ?? ''
    return one.trim() === '---' && (isKeyLine.test(below) || (index === first && below.includes(':')))
  })
  if (dashes !== -1) reportAbove(text, startOf(dashes), line, report)
  else if (nearlyDashes(line, 0) && isKeyLine.test(next)) {
    report.error('block-start', range, `${quote(line)} does not begin the block.`, {
      expected: '--- alone on the line: three hyphens',
      fix: { words: '---', edits: [{ start: 0, end: range.end, text: '---' }] },
    })
  } else if (isKeyLine.test(line.trimStart())) {
    const closes = /^---[ \t]*$/m.test(text)
    report.error('block-start', range, 'The line of --- above the keys is missing.', {
      expected: 'the file begins with ---',
      ...(closes
        ? { fix: { words: 'write --- above it', edits: [{ start: 0, end: range.start, text: '---\n' }] } }
        : { advice: 'put a line of --- above the first key, and one below the last' }),
    })
  } else return allBody(text, report)
  return null
}

const allBody = (text: string, report: Report): CaseFile => ({
  report,
  text,
  blockStart: 0,
  blockEnd: 0,
  bodyStart: 0,
})

/** Empty lines and spaces above the block can go; words go below it, where the notes are. */
function reportAbove(text: string, dashes: number, line: string, report: Report): void {
  const at = text.indexOf('---', dashes)
  const words = text.slice(0, dashes).trim()
  const close = /^---[ \t]*$/m.exec(text.slice(at + 3))
  const below = close ? Math.min(lineEnd(text, at + 3 + close.index) + 1, text.length) : null
  const start = words === '' ? 0 : text.indexOf(line)
  report.error(
    'block-start',
    { start, end: start + Math.max(1, line.trimEnd().length) },
    'There is something before the first --- line.',
    {
      expected: 'the file begins with ---',
      ...(words === ''
        ? {
            fix: {
              words: 'remove the empty lines or spaces at the top',
              edits: [{ start: 0, end: at, text: '' }],
            },
          }
        : below === null
          ? { advice: 'move it below the second --- line' }
          : {
              fix: {
                words: 'move it below the second --- line',
                edits: [
                  { start: 0, end: at, text: '' },
                  { start: below, end: below, text: `${text[below - 1] === '\n' ? '' : '\n'}${words}\n` },
                ],
              },
            }),
    },
  )
}

/** Offset of the line feed that ends the line at `from`, or of the end of the text. */
function lineEnd(text: string, from: number): number {
  const end = text.indexOf('\n', from)
  return end === -1 ? text.length : end
}
