/**
 * Whether a body stays within what the CommonMark parser reads in a time that grows with its length alone. That parser
 * goes over the lines between two empty ones again for each sign of emphasis, for each sign of a list or quotation
 * before them, and over all that stands before it for each underlined heading; a table has a cell in each column of
 * each line, and an address may be put in place of each of its names. So those are counted beforehand, and rather too
 * many than too few. What is refused here is written by no person.
 */
import { limits } from './limits.ts'
import type { Report } from './report.ts'

/** An address that is given once, for many links: what of it comes next, and its letters up to there. */
interface Address {
  readonly state: 'before it' | 'before its title' | 'in its title' | 'after it'
  readonly size: number
}

/** What has been counted up to a line. */
interface Tally {
  /** Signs of lists and quotations before this line, and the column of the last one. */
  containers: number
  column: number
  /** Since the last empty line. */
  lines: number
  marks: number
  /** Columns of the table that may stand here; 0 where there is none. */
  columns: number
  /** Whether a line began as that of an address does which is given once. */
  mayDefine: boolean
  /** The one that a line has come to. */
  address: Address | null
  /** Letters of the longest so far. */
  longest: number
  /** In the whole body. */
  underlined: number
  cells: number
}

const startOfBlock: Pick<Tally, 'lines' | 'marks' | 'columns' | 'mayDefine' | 'address' | 'longest'> = {
  lines: 0,
  marks: 0,
  columns: 0,
  mayDefine: false,
  address: null,
  longest: 0,
}
const startOfBody: Tally = { ...startOfBlock, containers: 0, column: 0, underlined: 0, cells: 0 }

/** True for a body within the limits; else the first line that exceeds one is told of. */
export function isBodyWithinLimits(text: string, bodyStart: number, report: Report): boolean {
  const tally = { ...startOfBody }
  for (let start = bodyStart; start < text.length; ) {
    const newline = text.indexOf('\n', start)
    const end = newline === -1 ? text.length : newline
    const line = text.slice(start, end)
    count(line, tally)
    const excess = excessIn(tally)
    if (excess !== null) {
      const { code, message, expected, advice } = excess
      report.error(code, { start, end }, message, { expected, advice })
      return false
    }
    if (isEmpty.test(line)) Object.assign(tally, startOfBlock)
    start = end + 1
  }
  return true
}

/** Nothing, or signs of quotations with nothing after them. */
const isEmpty = /^[ \t]*$|^ {0,3}(?:> ?)+[ \t]*$/
/** What the parser may hold for the beginning or end of something within a line; of emphasis each letter counts. */
const marks = /[*_~`[\]<]/g
const underline = /^(?:=+|-+)[ \t]*$/
const belowTableHead = /^[-:| \t]*$/

function count(line: string, tally: Tally): void {
  const { signs, column, rest } = leadOf(line)
  tally.containers = signs
  tally.column = column
  tally.lines++
  tally.marks += marksIn(line)
  if (tally.lines > 1 && underline.test(rest)) tally.underlined++
  if (rest.includes('-') && belowTableHead.test(rest))
    tally.columns = Math.max(tally.columns, rest.split('|').length)
  tally.cells += tally.columns
  tally.mayDefine ||= rest.startsWith('[') && !rest.startsWith('[^')
  if (tally.mayDefine) countAddress(rest, tally)
}

/** What describes a picture is looked through for pictures again, and an open remark up to the end of all. */
function marksIn(line: string): number {
  let count = line.match(marks)?.length ?? 0
  if (line.includes('![')) count += 3 * (line.split('![').length - 1)
  if (count > 0) count += 9 * (line.match(/<[!?]/g)?.length ?? 0)
  return count
}

/** Follows an address and its title from the `]:` before it over the lines together. */
function countAddress(rest: string, tally: Tally): void {
  const [before = '', ...after] = rest.split(']:')
  const found = after.map(addressIn)
  for (const one of tally.address === null ? found : [continued(tally.address, before), ...found]) {
    tally.address = one
    tally.longest = Math.max(tally.longest, tally.address?.size ?? 0)
  }
}

/** What a further line makes of an address. */
function continued({ state, size }: Address, line: string): Address | null {
  if (state === 'in its title') return { state, size: size + line.length + 1 }
  if (state === 'before it') return addressIn(line)
  return state === 'before its title' && /^["'(]/.test(line) ? addressIn(`x ${line}`) : null
}

/** An address and its title as far as a line shows them; null where the words are none, or the title ends. */
function addressIn(text: string): Address | null {
  const [, address = '', title = ''] = /^\s*(<[^<>]*>|\S*)\s*([\s\S]*)$/.exec(text) ?? []
  const size = address.length + title.length
  if (title === '') return { state: address === '' ? 'before it' : 'before its title', size }
  if (!/^["'(]/.test(title)) return null
  return { state: wholeTitle.test(title) ? 'after it' : 'in its title', size }
}

const wholeTitle = /^(?:"[^"\\]*"|'[^'\\]*'|\([^()\\]*\))\s*$/

const sign = /[ \t]*(?:>|[-+*](?=[ \t]|$)|\d{1,9}[.)](?=[ \t]|$))/y

/** The signs of lists and quotations before a line, and what follows them. */
function leadOf(line: string): {
  readonly signs: number
  readonly column: number
  readonly rest: string
} {
  const rule = startOfRule(line)
  let signs = 0
  let end = 0
  for (sign.lastIndex = 0; sign.test(line) && sign.lastIndex <= rule; signs++) end = sign.lastIndex
  const lead = line.slice(0, end)
  // A tab reaches at most over four columns.
  const column = lead.length + 3 * (lead.split('\t').length - 1)
  return { signs, column, rest: line.slice(end).trimStart() }
}

/** Where the stars or dashes of a rule across the page begin, which are no signs of lists; else where the line ends. */
function startOfRule(line: string): number {
  const mark = line.trimEnd().at(-1)
  if (mark !== '*' && mark !== '-') return line.length
  let start = line.length
  let count = 0
  for (; start > 0; start--) {
    const one = line[start - 1]
    if (one === mark) count++
    else if (one !== ' ' && one !== '\t') break
  }
  return count < 3 ? line.length : start
}

interface Excess {
  readonly code: string
  readonly message: string
  readonly expected: string
  readonly advice: string
}

/** The first limit that what was counted exceeds. */
function excessIn(tally: Tally): Excess | null {
  if (tally.containers > limits.containers || tally.column > limits.indent) {
    return {
      code: 'too-deep',
      message: 'Lists or quotations are too deep inside each other here.',
      expected: `at most ${limits.containers} of their signs in a row, moved in by at most ${limits.indent} columns`,
      advice: 'write the line with fewer signs before it',
    }
  }
  if (tally.lines > limits.linesTogether) {
    return {
      code: 'too-many',
      message: `${tally.lines} lines follow each other with no empty line between.`,
      expected: `at most ${limits.linesTogether}`,
      advice: 'put an empty line where something new begins',
    }
  }
  if (tally.marks > limits.marksTogether) {
    return {
      code: 'too-many',
      message: `${tally.marks} of the signs * _ ~ \` [ ] < follow each other with no empty line between.`,
      expected: `at most ${limits.marksTogether}`,
      advice: 'put an empty line where something new begins',
    }
  }
  if (tally.underlined > limits.underlined) {
    return {
      code: 'too-many',
      message: `${tally.underlined} headings are made by a line of = or - under them.`,
      expected: `at most ${limits.underlined}`,
      advice: 'write # before the words of a heading, or an empty line above the dashes',
    }
  }
  if (tally.cells > limits.tableCells) {
    return {
      code: 'too-many',
      message: `The tables up to here have ${tally.cells} cells.`,
      expected: `at most ${limits.tableCells}`,
      advice: 'keep a long table in a file of its own, outside the casebook',
    }
  }
  if (tally.longest > limits.definition) {
    return {
      code: 'too-long',
      message: 'The address that is given here once, for many links, is too long.',
      expected: `at most ${limits.definition} letters`,
      advice: 'shorten it, or put an empty line below it',
    }
  }
  return null
}
