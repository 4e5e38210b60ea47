/**
 * One file's bytes to its two parts: the block between two lines of `---`, and the body. gray-matter splits; its
 * engines, one of which would run a block marked `js`, are all replaced by one that does nothing.
 */
import matter from 'gray-matter'
import type { CasebookFolder, FolderEntry } from './folder.ts'
import { type Report, reportOn } from './report.ts'
import { quote } from './words.ts'

/** Largest case file that is read. A long visit is 4 KiB. */
export const maxFileBytes = 256 * 1024

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
  const report = reportOn(entry.path, text)
  return { file: split(text, report), report }
}

function readText(folder: CasebookFolder, entry: FolderEntry): string | Report {
  const report = reportOn(entry.path, '')
  if (entry.kind === 'link') {
    report.error('link', null, `${entry.path} is a link, and links are never followed.`, {
      expected: 'a file of its own',
      fix: 'replace the link by a copy of the file',
    })
    return report
  }
  if (entry.kind !== 'file') {
    report.error('not-a-file', null, `${entry.path} is not a plain file.`, { expected: 'a text file' })
    return report
  }
  if (entry.size > maxFileBytes) return tooLarge(report, entry.size)
  let bytes: Uint8Array
  try {
    bytes = folder.read(entry.path)
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem)
    report.error('unreadable', null, `The file cannot be read: ${why.replace(/\.$/, '')}.`)
    return report
  }
  if (bytes.length > maxFileBytes) return tooLarge(report, bytes.length)
  return decode(bytes, entry.path)
}

function tooLarge(report: Report, size: number): Report {
  report.error('file-too-large', null, `The file is ${Math.ceil(size / 1024)} KiB long.`, {
    expected: `at most ${maxFileBytes / 1024} KiB`,
    fix: 'keep the notes of one visit in one file, and pictures in the folder photos',
  })
  return report
}

/** UTF-8 with or without a byte-order mark, any line ends. */
function decode(bytes: Uint8Array, path: string): string | Report {
  const wrong = (text: string, at: number, message: string): Report => {
    const report = reportOn(path, text)
    report.error('not-utf-8', at < 0 ? null : { start: at, end: at + 1 }, message, {
      expected: 'plain text in UTF-8',
      fix: 'save the file again as UTF-8 in your editor',
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
  return nul === -1 ? text : wrong(text, nul, 'A zero byte stands here, so this is no text file.')
}

const oneLineEnd = (text: string): string => (text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text)

/** What gray-matter would do with a block by its language: nothing at all. What the block says is read in written.ts. */
const inert = { parse: () => ({}), stringify: () => '' }
const engines = { yaml: inert, json: inert, javascript: inert, js: inert, coffee: inert }

/** Where the block ends and the body begins. A file without a block is all body. */
function split(text: string, report: Report): CaseFile | null {
  if (!matter.test(text)) {
    if (!/^\s+---[ \t]*$/m.test(text.slice(0, 200)) || !text.trimStart().startsWith('---')) {
      return { report, text, blockStart: 0, blockEnd: 0, bodyStart: 0 }
    }
    report.error('block-start', { start: 0, end: 1 }, 'Something stands before the first --- line.', {
      expected: 'the file begins with ---',
      fix: 'remove the empty lines or spaces at the top',
    })
    return null
  }
  const firstLine = text.slice(0, lineEnd(text, 0))
  const language = matter.language(text).name
  if (language !== '' && language !== 'yaml') {
    report.error(
      'block-language',
      { start: 0, end: firstLine.trimEnd().length },
      `${quote(firstLine)} is not accepted.`,
      { expected: '--- alone on the line. Nothing in a case file is ever run', fix: '---' },
    )
    return null
  }
  const block = matter(text, { language: 'yaml', engines }).matter
  const close = text.indexOf(block, 3) + block.length + 1
  const closeEnd = lineEnd(text, close)
  if (close >= text.length || text.slice(close, closeEnd).trimEnd() !== '---') {
    const spot = close >= text.length ? { start: 0, end: 3 } : { start: close, end: closeEnd }
    const message =
      close >= text.length
        ? 'The block that begins here is not closed.'
        : 'The block ends with more than ---.'
    report.error('block-end', spot, message, {
      expected: 'a second line of ---',
      fix: 'put --- on a line of its own after the last key',
    })
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

/** Offset of the line feed that ends the line at `from`, or of the end of the text. */
function lineEnd(text: string, from: number): number {
  const end = text.indexOf('\n', from)
  return end === -1 ? text.length : end
}
