/**
 * Why the block at the head of a file cannot be read, in words for the person who wrote it. The parser says where it
 * gave up; the slip usually stands on that line or the one before, and only a few slips are common.
 */
import type { SpotEdit, TextRange } from './report.ts'
import { withColon } from './slips.ts'
import { quote } from './words.ts'

/** All places are offsets in the block. */
export interface Reason {
  readonly range: TextRange
  readonly message: string
  readonly expected?: string
  readonly fix?: { readonly words: string; readonly edits: readonly SpotEdit[] }
  readonly advice?: string
}

interface Line extends TextRange {
  readonly text: string
}

/** The likeliest slip behind the parser's words. */
export function plainReason(parserWords: string, block: string, position: number): Reason {
  const here = lineAt(block, Math.min(position, block.length))
  const before = lineBefore(block, here)
  if (parserWords.includes('maxDepth')) {
    return { range: point(position), message: 'Lists and keys are too deep inside each other.' }
  }
  if (parserWords.includes('tab characters')) return tabs(here, block)
  if (parserWords.includes('non-printable')) {
    return {
      range: point(position),
      message: 'There is a character here that cannot be seen.',
      fix: { words: 'remove it', edits: [{ ...point(position), text: '' }] },
    }
  }
  return (
    emptyPlace(here, block) ??
    openBracket(block, position, parserWords) ??
    (before && /^\s*$|deficient|expected/.test(here.text.slice(0, position - here.start) + parserWords)
      ? lineSlip(before, here, lineBefore(block, before))
      : null) ??
    lineSlip(here, null, before) ??
    (before ? lineSlip(before, here, lineBefore(block, before)) : null) ??
    indentation(here, before) ?? {
      range: point(position),
      message: `The block cannot be read from here on: ${parserWords}.`,
      expected: 'lines of `key: value`, lists in [ ] or with dashes',
    }
  )
}

const point = (position: number): TextRange => ({ start: position, end: position + 1 })
const depth = (line: Line): number => line.text.length - line.text.trimStart().length
/** Where the line itself begins; its range begins at its first letter. */
const lineStart = (line: Line): number => line.start - depth(line)

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

/** Tabs seldom come alone: all lines that begin with one are put right together. */
function tabs(here: Line, block: string): Reason {
  const edits = [...block.matchAll(/^[ \t]*\t[ \t]*/gm)].map((match) => ({
    start: match.index,
    end: match.index + match[0].length,
    text: match[0].replaceAll('\t', '  '),
  }))
  return {
    range: { start: lineStart(here), end: here.start },
    message: 'This line is moved in with a tab.',
    expected: 'spaces',
    fix: { words: 'replace each tab by two spaces', edits },
  }
}

/** The sign is looked for before what stands around it: the other way, long runs of spaces take for ever. */
const loneDash = /[-\u2013\u2014](?<=[[,:][ \t]*.)(?=[ \t]*[,\]}])/g

/** Two commas with nothing between, or a dash for a reading that was not taken. */
function emptyPlace(here: Line, block: string): Reason | null {
  const start = lineStart(here)
  const line = block.slice(start, here.end)
  const [dash, ...others] = line.matchAll(loneDash)
  if (dash) {
    const edits = [dash, ...others].map(({ index }) => ({
      ...point(start + index),
      text: '~',
    }))
    return {
      range: point(start + dash.index),
      message: 'A lone dash cannot be in a list.',
      expected: '~ for what was not read',
      fix: { words: '~', edits },
    }
  }
  const commas = /(?<=[[,])[ \t]*,/.exec(line)
  if (!commas) return null
  const at = start + commas.index
  const places = (/\[([^[\]]*)\]/.exec(line)?.[1] ?? '').split(',')
  const filled = places.map((place) => place.trim() || '~').join(', ')
  return {
    range: { start: at, end: at + commas[0].length },
    message: 'There are two commas here with nothing between them.',
    expected: 'one comma between two values; ~ for what was not read',
    ...(places.length === 4
      ? { fix: { words: `[${filled}]`, edits: [{ ...insideBrackets(line, start), text: filled }] } }
      : places.filter((place) => place.trim() !== '').length === 4
        ? { fix: { words: 'remove one comma', edits: [{ start: at, end: at + commas[0].length, text: '' }] } }
        : { advice: 'remove one comma, or write ~ between them' }),
  }
}

function insideBrackets(line: string, start: number): TextRange {
  const list = /\[([^[\]]*)\]/.exec(line)
  const from = start + (list?.index ?? 0) + 1
  return { start: from, end: from + (list?.[1] ?? '').length }
}

const closes: Readonly<Record<string, string>> = { '[': ']', '{': '}' }

/** A bracket that is still open where the parser stopped, or closed by the wrong one. Quoted text is passed over. */
function openBracket(block: string, position: number, parserWords: string): Reason | null {
  if (!/deficient|flow collection|flow mapping|end of the stream within a flow/.test(parserWords)) return null
  const open: number[] = []
  const bare = blanked(block.slice(0, position + 1))
  for (let at = 0; at < bare.length; at++) {
    const sign = bare[at] ?? ''
    if (sign === '[' || sign === '{') open.push(at)
    if (sign !== ']' && sign !== '}') continue
    const start = open.pop()
    const wanted = start === undefined ? undefined : closes[bare[start] ?? '']
    if (start !== undefined && wanted !== undefined && wanted !== sign) {
      return {
        range: point(at),
        message: `What begins with ${bare[start]} ends with ${sign}.`,
        expected: wanted,
        fix: { words: `write ${wanted} here`, edits: [{ ...point(at), text: wanted }] },
      }
    }
  }
  const last = open.at(-1)
  if (last === undefined) return null
  const sign = bare[last] ?? '['
  const line = lineAt(block, last)
  return (
    cutByRemark(block, last, line, sign) ?? {
      range: { start: last, end: line.end },
      message: `What begins with ${sign} is not closed.`,
      expected: closes[sign] ?? ']',
      fix: {
        words: `write ${closes[sign]} at its end`,
        edits: [{ start: contentEnd(line), end: contentEnd(line), text: closes[sign] ?? ']' }],
      },
    }
  )
}

const withinQuotes = /"(?:[^"\\\n]|\\.)*(?:"|$)|'[^'\n]*'|(?<=^|\s)#.*$/gm
const withinSingleQuotes = /'[^'\n]*'|(?<=^|\s)#.*$/gm
const spaces = (text: string) => ' '.repeat(text.length)

/** Quoted text and remarks as spaces. A mark that is not closed on its line opens no text. */
const blanked = (block: string): string =>
  block.replace(withinQuotes, (text) =>
    text.startsWith('"') && !/[^\\](?:\\\\)*"$/.test(text)
      ? text.replace(withinSingleQuotes, spaces)
      : spaces(text),
  )

/** Where the line ends without its remark. */
const contentEnd = (line: Line): number =>
  lineStart(line) + line.text.replace(/(?<=\s)#.*$/, '').trimEnd().length

/** A ` #` inside brackets makes a remark of the rest of the line, its closing bracket too. */
function cutByRemark(block: string, open: number, line: Line, sign: string): Reason | null {
  const hash = /[ \t]#/.exec(block.slice(open, line.end))
  const at = open + (hash?.index ?? 0) + 1
  const rest = block.slice(at, line.end)
  let closing = rest.length
  while (/[\]}\s]/.test(rest[closing - 1] ?? '')) closing--
  if (!hash || !rest.slice(closing).includes(closes[sign] ?? ']')) return null
  const before = block.slice(open, at)
  const valueStart = open + Math.max(...['[', '{', ',', ':'].map((mark) => before.lastIndexOf(mark))) + 1
  const spaces = /^\s*/.exec(block.slice(valueStart, at))?.[0].length ?? 0
  const range = { start: valueStart + spaces, end: at + closing }
  const value = block.slice(range.start, range.end)
  const isOne = !/["\\]/.test(value) && !block.slice(at, range.end).includes(',')
  return {
    range: { start: at, end: line.end },
    message: `From the # on, this line counts as a remark, so what begins with ${sign} is not closed.`,
    expected: 'text with a # in quotes',
    ...(isOne
      ? { fix: { words: `"${value}"`, edits: [{ ...range, text: `"${value}"` }] } }
      : { advice: 'put the text with the # in quotes' }),
  }
}

const dashed = (line: Line): boolean => /^\s*- /.test(line.text)

/** Slips that show on one line, held against the line before it and the one that the parser had come to. */
function lineSlip(line: Line, next: Line | null, before: Line | null): Reason | null {
  const keyed = /^(\s*(?:- +)?)([^\s:#"'[{][^:]*):( *)(.*)$/.exec(line.text)
  if (!keyed) return keyless(line, next, before)
  const [, indent = '', key = '', space = '', value = ''] = keyed
  const start = lineStart(line) + indent.length + key.length + 1
  const range = { start: start + space.length, end: line.end }
  const unquoted = value.replace(/(?<=\s)#.*$/, '').trimEnd()
  const valueEnd = range.start + unquoted.length
  const instead = (text: string) => ({
    words: `${key}: ${text}`,
    edits: [{ start, end: valueEnd, text: ` ${text}` }],
  })
  if (space === '' && value !== '') {
    return { range, message: 'A space is missing after the colon.', fix: instead(unquoted) }
  }
  if (/^[@`%*&!|>]/.test(value)) {
    return {
      range,
      message: `A text cannot begin with ${value[0]} unless it is in quotes.`,
      fix: instead(`"${unquoted.replaceAll('"', "'")}"`),
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
      range,
      message: 'The text begins with a quote mark that does not close at its end.',
      fix: instead(forgotten ? unquoted + mark : other + unquoted.replaceAll(other, '') + other),
    }
  }
  if (/: /.test(value) && !/^[[{]/.test(value)) return secondColon(range, unquoted, instead)
  if (/^[[{]/.test(value) && !/[\]}]$/.test(unquoted)) return afterBracket(range, unquoted, instead)
  return null
}

type Instead = (text: string) => NonNullable<Reason['fix']>

/** `LF: 98, RF: 96` wants braces; a sentence with a colon wants quotes. */
function secondColon(range: TextRange, value: string, instead: Instead): Reason {
  const isMap = /^[\w ]+:[^,:]+(?:,[\w ]+:[^,:]+)+$/.test(value)
  return {
    range,
    message: 'This line has a second colon, so it is not clear where the value begins.',
    expected: isMap ? 'several values of one key in { }' : 'text with a colon in quotes',
    fix: instead(isMap ? `{${value}}` : `"${value.replaceAll('"', "'")}"`),
  }
}

/** A unit after a list goes to each of its numbers; anything else becomes a remark. */
function afterBracket(range: TextRange, value: string, instead: Instead): Reason | null {
  const match = /^(\[[^[\]]*\]|\{[^{}]*\})(?:\s([^:]+)|\s*(mm|cm|in|"|deg|\u00b0))$/.exec(value)
  const [, list = '', words, unit] = match ?? []
  const tail = (words ?? unit ?? '').trim()
  const message = 'There is something after the closing bracket.'
  if (!match) return { range, message, advice: 'end the line at the bracket' }
  const isUnit = /^(?:mm|cm|in|"|deg|\u00b0)$/.test(tail) && list.startsWith('[')
  const numbers = list.slice(1, -1).split(',')
  const withUnit = numbers.map((one) => (/^\s*[\d. /]+$/.test(one) ? `${one.trim()} ${tail}` : one.trim()))
  return {
    range,
    message,
    fix: instead(isUnit ? `[${withUnit.join(', ')}]` : `${list}  # ${tail.replace(/^#\s*/, '')}`),
  }
}

/** A line without a colon: a dash is missing where its neighbours have one, else the colon. */
function keyless(line: Line, next: Line | null, before: Line | null): Reason | null {
  if (!/^\s*[-\w]/.test(line.text) || dashed(line) || line.text.includes(':')) return null
  const beside = [before, next].find((one) => one && dashed(one))
  if (beside && depth(beside) === depth(line)) {
    const fix = {
      words: `- ${line.text.trim()}`,
      edits: [{ start: line.start, end: line.start, text: '- ' }],
    }
    const dashAlone = /^-\S/.test(line.text.trim())
    return {
      range: line,
      message: dashAlone ? 'A space is missing after the dash.' : 'A dash is missing before this line.',
      expected: 'each line of a list begins with a dash and a space',
      fix: dashAlone
        ? {
            words: `- ${line.text.trim().slice(1)}`,
            edits: [{ start: line.start, end: line.start + 1, text: '- ' }],
          }
        : fix,
    }
  }
  return {
    range: line,
    message: `${quote(line.text)} is no line of a key and a value.`,
    expected: '`key: value`',
    ...colonFix(line, next),
  }
}

/** Where a list, a number or a deeper line follows it, the end of the key is plain to see. */
function colonFix(line: Line, next: Line | null): Pick<Reason, 'fix' | 'advice'> {
  const advice = 'put a colon and a space after the key'
  const text = line.text.trim()
  if (next && depth(next) > depth(line)) {
    return { fix: { words: `${text}:`, edits: [{ start: line.end, end: line.end, text: ':' }] } }
  }
  const words = withColon(text)
  return words === null
    ? { advice }
    : { fix: { words, edits: [{ start: line.start, end: line.end, text: words }] } }
}

function indentation(here: Line, before: Line | null): Reason | null {
  if (!before || here.text.trim() === '') return null
  if (depth(here) === depth(before)) return null
  const way = depth(here) > depth(before) ? 'further in' : 'further out'
  return {
    range: here,
    message: `This line is ${way} than the line before it, and fits no line above.`,
    expected: 'lines that belong together begin in the same column',
    advice: `begin it in column ${depth(before) + 1}, or in that of the key it belongs to`,
  }
}
