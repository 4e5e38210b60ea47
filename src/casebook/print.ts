import { controlsShown } from './control-characters.ts'
import type { Diagnostic } from './diagnostic.ts'

/** Most of a line that is shown; a longer one is cut to the part around the caret. */
const lineWidth = 100

/** A diagnostic as lines for a terminal: place, what is wrong, the line with a caret, expected, likely fix or what to do. */
export function printDiagnostic(diagnostic: Diagnostic): string {
  const { file, line, column, level } = diagnostic
  const place = [file, line, column].filter((part) => part !== null).join(':')
  const lines = [`${place}  ${level === 'gap' ? 'to fill in' : level}: ${diagnostic.message}`]
  if (diagnostic.sourceLine !== null && line !== null) lines.push(...sourceLines(diagnostic, line))
  if (diagnostic.expected !== null) lines.push(`      expected: ${diagnostic.expected}`)
  if (diagnostic.fix !== null) lines.push(`    likely fix: ${diagnostic.fix}`)
  if (diagnostic.advice !== null) lines.push(`    what to do: ${diagnostic.advice}`)
  return lines.map(onOneLine).join('\n')
}

function sourceLines(diagnostic: Diagnostic, line: number): readonly string[] {
  const source = diagnostic.sourceLine ?? ''
  const start = Math.max(0, (diagnostic.column ?? 1) - 1)
  const length = Math.max(1, (diagnostic.endColumn ?? start + 2) - 1 - start)
  const from = start + length > lineWidth ? Math.max(0, start - 20) : 0
  const shown = source.slice(from, from + lineWidth)
  const gutter = String(line).padStart(6)
  const before = onOneLine(shown.slice(0, start - from))
  const marked = onOneLine(shown.slice(start - from, start - from + length))
  return [
    `${gutter} | ${shown}`,
    `${' '.repeat(6)} | ${before.replace(/[^\t]/gu, ' ')}${'^'.repeat(Math.max(1, marked.length))}`,
  ]
}

/** Nothing from a file may steer the terminal, or look like a line of ours. */
const onOneLine = (text: string): string => controlsShown(text).replaceAll('\n', '\\u000a')
