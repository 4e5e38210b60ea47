import type { Diagnostic } from './diagnostic.ts'

/** A stretch of a file's text: offsets of its first character and of the one after its last. */
export interface Spot {
  readonly start: number
  readonly end: number
}

interface Advice {
  readonly expected?: string
  readonly fix?: string
}

/** Gathers what is wrong with one file; a place is given by offsets and turned into line and column here. */
export interface Report {
  readonly file: string
  error(code: string, spot: Spot | null, message: string, advice?: Advice): void
  warning(code: string, spot: Spot | null, message: string, advice?: Advice): void
  /** A place that a command left to be filled in. */
  gap(spot: Spot, message: string): void
  readonly diagnostics: readonly Diagnostic[]
}

export function reportOn(file: string, text: string): Report {
  const diagnostics: Diagnostic[] = []
  let starts: readonly number[] | null = null
  const add = (
    level: Diagnostic['level'],
    code: string,
    spot: Spot | null,
    message: string,
    advice: Advice,
  ): void => {
    diagnostics.push({
      code,
      level,
      file,
      ...(spot ? placeOf(text, lineStarts(), spot) : nowhere),
      message,
      expected: advice.expected ?? null,
      fix: advice.fix ?? null,
    })
  }
  const lineStarts = () => {
    starts ??= startsOfLines(text)
    return starts
  }
  return {
    file,
    diagnostics,
    error: (code, spot, message, advice = {}) => add('error', code, spot, message, advice),
    warning: (code, spot, message, advice = {}) => add('warning', code, spot, message, advice),
    gap: (spot, message) => add('gap', 'not-filled-in', spot, message, {}),
  }
}

type Placed = Pick<Diagnostic, 'line' | 'column' | 'endColumn' | 'sourceLine'>
const nowhere: Placed = { line: null, column: null, endColumn: null, sourceLine: null }

function startsOfLines(text: string): readonly number[] {
  const starts = [0]
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
  return starts
}

/** Line and columns, one-based, counted in UTF-16 units; a spot over several lines is shown on its first. */
function placeOf(text: string, starts: readonly number[], spot: Spot): Placed {
  const start = Math.min(spot.start, text.length)
  let line = 1
  for (let above = starts.length; above - line > 0; ) {
    const middle = (line + above + 1) >> 1
    if ((starts[middle - 1] ?? 0) <= start) line = middle
    else above = middle - 1
  }
  const lineStart = starts[line - 1] ?? 0
  const lineEnd = (starts[line] ?? text.length + 1) - 1
  const column = start - lineStart + 1
  return {
    line,
    column,
    endColumn: Math.max(column + 1, Math.min(spot.end, lineEnd) - lineStart + 1),
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
