import type { Change, Diagnostic } from './diagnostic.ts'

/** A stretch of a file's text: offsets of its first character and of the one after its last. */
export interface TextRange {
  readonly start: number
  readonly end: number
}

/** A stretch of the file and what should stand there. */
export interface SpotEdit extends TextRange {
  readonly text: string
}

/** A likely fix: what is printed, and what it does to the file, or to the name of the file or its folder. */
export type Fix =
  | { readonly words: string; readonly edits: readonly SpotEdit[] }
  | { readonly words: string; readonly rename: { readonly from: string; readonly to: string } }

export interface Help {
  readonly expected?: string | undefined
  /**
   * Only where applying it makes the line right; a test applies every one. A bare text takes the place of
   * what is pointed at.
   */
  readonly fix?: string | Fix | null | undefined
  /** What to do, in words, where no fix is sure. */
  readonly advice?: string | null | undefined
}

/** Gathers what is wrong with one file; a place is given by offsets and turned into line and column here. */
export interface Report {
  readonly file: string
  error(code: string, range: TextRange | null, message: string, help?: Help): void
  warning(code: string, range: TextRange | null, message: string, help?: Help): void
  /** What stands in the file there. */
  textOf(range: TextRange): string
  /** Column of an offset, one-based. */
  columnOf(offset: number): number
  /** A place that a command left to be filled in. */
  gap(range: TextRange, message: string): void
  readonly diagnostics: readonly Diagnostic[]
}

/** @param already what was reported of the file before */
export function reportOn(file: string, text: string, already: readonly Diagnostic[] = []): Report {
  const diagnostics: Diagnostic[] = [...already]
  let starts: readonly number[] | null = null
  const add = (
    level: Diagnostic['level'],
    code: string,
    range: TextRange | null,
    message: string,
    help: Help,
  ): void => {
    const fix = fixOf(help.fix ?? null, range)
    diagnostics.push({
      code,
      level,
      file,
      ...(range ? placeOf(text, lineStarts(), range) : nowhere),
      message,
      expected: help.expected ?? null,
      fix: fix?.words ?? null,
      change: fix && changeOf(fix, text, lineStarts),
      advice: help.advice ?? null,
    })
  }
  const lineStarts = () => {
    starts ??= startsOfLines(text)
    return starts
  }
  return {
    file,
    diagnostics,
    textOf: ({ start, end }) => text.slice(start, end),
    columnOf: (offset) => positionOf(text, lineStarts(), offset).column,
    error: (code, range, message, help = {}) => add('error', code, range, message, help),
    warning: (code, range, message, help = {}) => add('warning', code, range, message, help),
    gap: (range, message) => add('gap', 'not-filled-in', range, message, {}),
  }
}

type Placed = Pick<Diagnostic, 'line' | 'column' | 'endColumn' | 'sourceLine'>
const nowhere: Placed = { line: null, column: null, endColumn: null, sourceLine: null }

function startsOfLines(text: string): readonly number[] {
  const starts = [0]
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
  return starts
}

function fixOf(fix: string | Fix | null, range: TextRange | null): Fix | null {
  if (typeof fix !== 'string') return fix
  return range && { words: fix, edits: [{ start: range.start, end: range.end, text: fix }] }
}

function changeOf(fix: Fix, text: string, starts: () => readonly number[]): Change {
  if ('rename' in fix) return { kind: 'rename', ...fix.rename }
  const edits = fix.edits.map(({ start, end, text: replacement }) => {
    const [from, to] = [start, end].map((offset) => positionOf(text, starts(), offset))
    return {
      line: from?.line ?? 1,
      column: from?.column ?? 1,
      endLine: to?.line ?? 1,
      endColumn: to?.column ?? 1,
      text: replacement,
    }
  })
  return { kind: 'edit', edits }
}

/** One-based, counted in UTF-16 units. */
function positionOf(
  text: string,
  starts: readonly number[],
  offset: number,
): { line: number; column: number } {
  const at = Math.min(offset, text.length)
  let line = 1
  for (let above = starts.length; above - line > 0; ) {
    const middle = (line + above + 1) >> 1
    if ((starts[middle - 1] ?? 0) <= at) line = middle
    else above = middle - 1
  }
  return { line, column: at - (starts[line - 1] ?? 0) + 1 }
}

/** A range over several lines is shown on its first. */
function placeOf(text: string, starts: readonly number[], range: TextRange): Placed {
  const { line, column } = positionOf(text, starts, range.start)
  const lineStart = starts[line - 1] ?? 0
  const lineEnd = (starts[line] ?? text.length + 1) - 1
  return {
    line,
    column,
    endColumn: Math.max(column + 1, Math.min(range.end, lineEnd) - lineStart + 1),
    sourceLine: text.slice(lineStart, lineEnd),
  }
}

const order = { error: 0, warning: 1, gap: 1 } as const

/** Errors before warnings, then by file, line and column. */
export function sortDiagnostics(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  return [...diagnostics].sort(
    (a, b) =>
      order[a.level] - order[b.level] ||
      (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
      (a.line ?? 0) - (b.line ?? 0) ||
      (a.column ?? 0) - (b.column ?? 0),
  )
}
