/** Where a position stands in a case file: under which keys, and whether a key or a value belongs there. */
import { normal } from '../../casebook/words.ts'
import { bracketsIn, type Outline, parentOf, pathOf, type Row } from './outline.ts'

export interface Place {
  /** Keys down to here, as written; a number for a place in a list. */
  readonly path: readonly (string | number)[]
  readonly role: 'key' | 'value'
  /** The word at the position, on its line: from its first column to the one after its last. */
  readonly line: number
  readonly start: number
  readonly end: number
  /** The word as far as the position. */
  readonly typed: string
  readonly word: string
  /** Which part of a line with commas; 0 where there are none. */
  readonly part: number
  /** The whole line of a list, or the value of a key, up to its end. */
  readonly whole: string
  /** Keys that stand beside it already. */
  readonly taken: ReadonlySet<string>
  /** Whether it stands in brackets. */
  readonly isFlow: boolean
}

/** What stands at a line and column of the block, both zero-based; null outside of it and in a remark. */
export function placeAt(outline: Outline, line: number, column: number): Place | null {
  const { block, lines } = outline
  if (!block || line < block.from || line >= block.to) return null
  const text = lines[line] ?? ''
  const row = outline.rows.findLast((one) => one.line <= line) ?? null
  if (isRemark(text, column)) return null
  if (row && row.line < line && isOpen(outline, row, line)) return inValue(outline, row, line, column)
  if (row?.line === line && column >= row.valueAt && (row.key !== null || row.isItem))
    return inValue(outline, row, line, column)
  return atKey(outline, line, column)
}

/** A place for a key at the beginning of a line. */
function atKey(outline: Outline, line: number, column: number): Place | null {
  const text = outline.lines[line] ?? ''
  const lead = /^[ \t]*/.exec(text)?.[0].length ?? 0
  if (column < lead) return null
  const own = outline.rows.findLast((one) => one.line === line)
  const above = outline.rows.filter((one) => one.line < line)
  const start = own?.indent ?? lead
  const parent = own ? own.parent : parentOf(rowsOver(above), text.trim() === '' ? column : lead, false)
  const end = own?.key ? start + own.key.length : text.trimEnd().length
  if (column > Math.max(end, start) && own?.key) return null
  const beside = outline.rows.filter((one) => one.parent === parent && one.line !== line && one.key !== null)
  return {
    path: pathOf(parent),
    role: 'key',
    line,
    start,
    end: Math.max(end, column),
    typed: text.slice(start, column),
    word: text.slice(start, Math.max(end, start)),
    part: 0,
    whole: text.slice(start).trim(),
    taken: new Set(beside.map(({ key }) => normal(key ?? ''))),
    isFlow: false,
  }
}

/** The rows that the last of them stands under, itself included. */
function rowsOver(rows: readonly Row[]): Row[] {
  const over: Row[] = []
  for (let row = rows.at(-1) ?? null; row; row = row.parent) over.unshift(row)
  return over
}

interface Frame {
  readonly kind: '{' | '['
  key: string | null
  index: number
  readonly keys: string[]
}

/** A place after a colon or a dash. Brackets are followed from the beginning of the value. */
function inValue(outline: Outline, row: Row, line: number, column: number): Place {
  const frames: Frame[] = []
  let start = { line: row.line, column: row.valueAt }
  let part = 0
  const next = (at: number, column_: number) => {
    start = { line: at, column: column_ }
  }
  for (let at = row.line; at <= line; at++) {
    const text = outline.lines[at] ?? ''
    const from = at === row.line ? row.valueAt : 0
    if (at > row.line) next(at, 0)
    for (let i = from; i < (at === line ? column : text.length); i++) {
      const sign = text[i] ?? ''
      const frame = frames.at(-1)
      if (sign === '"' || sign === "'") {
        const close = text.indexOf(sign, i + 1)
        i = close === -1 ? text.length : close
      } else if (sign === '{' || sign === '[') {
        frames.push({ kind: sign, key: null, index: 0, keys: [] })
        next(at, i + 1)
      } else if ((sign === '}' || sign === ']') && frame) {
        frames.pop()
        next(at, i + 1)
      } else if (sign === ',') {
        if (frame) {
          frame.index++
          frame.key = null
        } else part++
        next(at, i + 1)
      } else if (
        sign === ':' &&
        frame?.kind === '{' &&
        frame.key === null &&
        /^:(?:\s|$)/.test(text.slice(i, i + 2))
      ) {
        frame.key = text.slice(start.line === at ? start.column : 0, i).trim()
        frame.keys.push(frame.key)
        next(at, i + 1)
      }
    }
  }
  const text = outline.lines[line] ?? ''
  const lead = /^\s*/.exec(text.slice(start.column))?.[0].length ?? 0
  const from = Math.min(start.column + lead, Math.max(column, start.column))
  const top = frames.at(-1)
  const isKey = top?.kind === '{' && top.key === null
  const end = from + wordLength(text.slice(from), isKey, top !== undefined)
  const keys = top?.kind === '{' ? [...top.keys, ...keysAfter(text.slice(column))] : []
  return {
    path: [
      ...pathOf(row),
      ...frames.flatMap((frame, index) => stepOf(frame, isKey && index === frames.length - 1)),
    ],
    role: isKey ? 'key' : 'value',
    line,
    start: from,
    end: Math.max(end, column),
    typed: text.slice(from, column),
    word: text.slice(from, end),
    part,
    whole: (outline.lines[row.line] ?? '').slice(row.valueAt).trim(),
    taken: new Set(keys.map(normal)),
    isFlow: frames.length > 0,
  }
}

function stepOf(frame: Frame, isKey: boolean): readonly (string | number)[] {
  if (frame.kind === '[') return [frame.index]
  return isKey || frame.key === null ? [] : [frame.key]
}

/** Keys further on in the same brackets, as far as the line goes. */
const keysAfter = (text: string): readonly string[] => {
  const inside = text.split(/[}\]]/)[0] ?? ''
  return [...inside.matchAll(/(?:^|,)\s*([^,:{[]+?)\s*:(?=\s|$)/g)].map((match) => match[1] ?? '')
}

/** Up to the comma, bracket, colon or remark that ends a word. */
function wordLength(text: string, isKey: boolean, isFlow: boolean): number {
  const end = isKey ? /[,}\]]|:(?=\s|$)|\s#|$/ : isFlow ? /[,}\]{[]|\s#|$/ : /,|\s#|$/
  return text.slice(0, text.search(end)).trimEnd().length
}

/** Whether the brackets that a row opens are still open at the beginning of a line. */
function isOpen(outline: Outline, row: Row, line: number): boolean {
  const between = [
    outline.lines[row.line]?.slice(row.valueAt) ?? '',
    ...outline.lines.slice(row.line + 1, line),
  ]
  return bracketsIn(between.join('\n')) > 0
}

function isRemark(text: string, column: number): boolean {
  const bare = text.replace(/"(?:[^"\\]|\\.)*"|'[^']*'/g, (quoted) => '"'.repeat(quoted.length))
  const at = /(?:^|\s)#/.exec(bare)
  return at !== null && at.index + at[0].length <= column
}

/** The parts of a line between its commas, with brackets round it or without. */
export const partsOf = (line: string): readonly string[] =>
  line
    .replace(/^\[/, '')
    .replace(/\].*$/, '')
    .split(',')
    .map((part) => part.trim())
