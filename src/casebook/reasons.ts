/**
 * Why the block at the head of a file cannot be read, in words for the person who wrote it. The parser says where it
 * gave up; the slip usually stands on that line or the one before, and only a few slips are common.
 */
import type { Spot } from './report.ts'
import { quote } from './words.ts'

export interface Reason {
  readonly spot: Spot
  readonly message: string
  readonly expected?: string
  readonly fix?: string
}

interface Line extends Spot {
  readonly text: string
}

/** The likeliest slip behind the parser's words, with its place as offsets in `block`. */
export function plainReason(parserWords: string, block: string, position: number): Reason {
  const here = lineAt(block, Math.min(position, block.length))
  const before = lineBefore(block, here)
  if (parserWords.includes('maxDepth')) {
    return { spot: point(position), message: 'Lists and keys stand too deep inside each other.' }
  }
  if (parserWords.includes('tab characters')) {
    return {
      spot: { start: here.start - (here.text.length - here.text.trimStart().length), end: here.start },
      message: 'This line is moved in with a tab.',
      expected: 'spaces',
      fix: 'replace the tab by two spaces',
    }
  }
  if (parserWords.includes('non-printable')) {
    return {
      spot: point(position),
      message: 'A character that cannot be seen stands here.',
      fix: 'remove it',
    }
  }
  return (
    openBracket(block, position, parserWords) ??
    (before && /^\s*$|deficient|expected/.test(here.text.slice(0, position - here.start) + parserWords)
      ? lineSlip(before)
      : null) ??
    lineSlip(here) ??
    (before ? lineSlip(before) : null) ??
    indentation(here, before) ?? {
      spot: point(position),
      message: `The block cannot be read from here on: ${parserWords}.`,
      expected: 'lines of `key: value`, lists in [ ] or with dashes',
    }
  )
}

const point = (position: number): Spot => ({ start: position, end: position + 1 })

function lineAt(block: string, position: number): Line {
  const start = block.lastIndexOf('\n', position - 1) + 1
  const newline = block.indexOf('\n', position)
  const end = newline === -1 ? block.length : newline
  const text = block.slice(start, end)
  return { start: start + (text.length - text.trimStart().length), end: start + text.trimEnd().length, text }
}

function lineBefore(block: string, line: Line): Line | null {
  let end = block.lastIndexOf('\n', line.start - 1)
  while (end > 0) {
    const found = lineAt(block, end - 1)
    if (found.text.trim() !== '' && !found.text.trimStart().startsWith('#')) return found
    end = block.lastIndexOf('\n', end - 1)
  }
  return null
}

const closes: Readonly<Record<string, string>> = { '[': ']', '{': '}' }

/** A bracket that is still open where the parser stopped, or closed by the wrong one. Quoted text is passed over. */
function openBracket(block: string, position: number, parserWords: string): Reason | null {
  if (!/deficient|flow collection|end of the stream within a flow/.test(parserWords)) return null
  const open: number[] = []
  const bare = block
    .slice(0, position + 1)
    .replace(/"(?:[^"\\\n]|\\.)*"|'[^'\n]*'|(?<=^|\s)#.*$/gm, (text) => ' '.repeat(text.length))
  for (let at = 0; at < bare.length; at++) {
    const sign = bare[at] ?? ''
    if (sign === '[' || sign === '{') open.push(at)
    if (sign !== ']' && sign !== '}') continue
    const start = open.pop()
    const wanted = start === undefined ? undefined : closes[bare[start] ?? '']
    if (start !== undefined && wanted !== undefined && wanted !== sign) {
      return {
        spot: point(at),
        message: `What begins with ${bare[start]} ends with ${sign}.`,
        expected: wanted,
        fix: `write ${wanted} here`,
      }
    }
  }
  const last = open.at(-1)
  if (last === undefined) return null
  const sign = bare[last] ?? '['
  return {
    spot: { start: last, end: lineAt(block, last).end },
    message: `What begins with ${sign} is not closed.`,
    expected: closes[sign] ?? ']',
    fix: `write ${closes[sign]} at its end`,
  }
}

/** Slips that show on one line alone. */
function lineSlip(line: Line): Reason | null {
  const keyed = /^(\s*(?:- +)?)([^\s:#"'[{][^:]*):( *)(.*)$/.exec(line.text)
  if (!keyed) {
    if (!/^\s*[-\w]/.test(line.text) || /^\s*- /.test(line.text) || line.text.includes(':')) return null
    return {
      spot: line,
      message: `${quote(line.text)} is no line of a key and a value.`,
      expected: '`key: value`',
      fix: 'put a colon and a space after the key',
    }
  }
  const [, indent = '', key = '', space = '', value = ''] = keyed
  const start =
    line.start - (line.text.length - line.text.trimStart().length) + indent.length + key.length + 1
  const spot = { start: start + space.length, end: line.end }
  const unquoted = value.replace(/(?<=\s)#.*$/, '').trimEnd()
  if (space === '' && value !== '') {
    return { spot, message: 'A space is missing after the colon.', fix: `${key}: ${unquoted}` }
  }
  if (/^[@`%*&!|>]/.test(value)) {
    return {
      spot,
      message: `A text cannot begin with ${value[0]} unless it stands in quotes.`,
      fix: `${key}: "${unquoted.replaceAll('"', "'")}"`,
    }
  }
  if (/^["']/.test(value)) {
    const mark = value[0] ?? '"'
    const closed =
      unquoted.length > 1 && unquoted.endsWith(mark) && unquoted.slice(1, -1).indexOf(mark) === -1
    if (closed) return null
    const other = mark === '"' ? "'" : '"'
    const forgotten = unquoted.lastIndexOf(mark) === 0
    return {
      spot,
      message: 'The text begins with a quote mark that does not close at its end.',
      fix: `${key}: ${forgotten ? unquoted + mark : other + unquoted.replaceAll(other, '') + other}`,
    }
  }
  if (/: /.test(value) && !/^[[{]/.test(value)) {
    return {
      spot,
      message: 'This line has a second colon, so it is not clear where the value begins.',
      expected: 'text with a colon in quotes',
      fix: `${key}: "${unquoted.replaceAll('"', "'")}"`,
    }
  }
  if (/^[[{]/.test(value) && !/[\]}]$/.test(unquoted)) {
    return {
      spot,
      message: 'Something stands after the closing bracket.',
      fix: 'end the line at the bracket',
    }
  }
  return null
}

function indentation(here: Line, before: Line | null): Reason | null {
  if (!before || here.text.trim() === '') return null
  const depth = (line: Line) => line.text.length - line.text.trimStart().length
  if (depth(here) === depth(before)) return null
  const way = depth(here) > depth(before) ? 'further in' : 'further out'
  return {
    spot: here,
    message: `This line stands ${way} than the line before it, and fits no line above.`,
    expected: 'lines that belong together begin in the same column',
    fix: `begin it in column ${depth(before) + 1}, or in that of the key it belongs to`,
  }
}
