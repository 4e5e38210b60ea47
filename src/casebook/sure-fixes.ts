/**
 * Holds every likely fix to its word: it is made on a copy of the file, the copy is read, and a fix that leaves the line
 * it changes wrong is not told. For a fix in the block the copy goes without the body, which takes far longer to read.
 */
import type { Change, Diagnostic, Edit } from './diagnostic.ts'

/**
 * How much text is read again for the fixes of one file; what is beyond that is told without its fix.
 */
const mostRead = { block: 96 * 1024, body: 16 * 1024 }
const mostTried = 40

/**
 * @param bodyStart where the body begins; beyond the text where that is not known
 * @param reread what would be told of the file if it held this text
 */
export function withSureFixes(
  diagnostics: readonly Diagnostic[],
  text: string,
  bodyStart: number,
  reread: (text: string) => readonly Diagnostic[],
): readonly Diagnostic[] {
  if (diagnostics.every(({ change }) => change?.kind !== 'edit')) return diagnostics
  const known = {
    names: new Set(diagnostics.map(nameOf)),
    codes: new Set(diagnostics.map(({ code }) => code)),
  }
  const block = text.slice(0, bodyStart)
  const bodyLine = block.split('\n').length
  const left = {
    block: Math.min(mostTried, Math.floor(mostRead.block / Math.max(1, text.length))),
    body: Math.min(mostTried, Math.floor(mostRead.body / Math.max(1, text.length - bodyStart))),
  }
  return diagnostics.map((one) => {
    if (one.change?.kind !== 'edit') return one
    const part = one.change.edits.some(({ line }) => line >= bodyLine) ? 'body' : 'block'
    const isSure =
      left[part]-- > 0 && makesRight(one, one.change, known, part === 'block' ? block : text, reread)
    return isSure ? one : { ...one, fix: null, change: null }
  })
}

const nameOf = ({ code, message }: Diagnostic): string => `${code} ${message}`

/**
 * Whether nothing is wrong any more with the lines that the fix writes, save what was wrong with them before. A warning
 * hides nothing, so its fix may bring up nothing new anywhere; an error may have hidden what stands on other lines, but
 * not that the block cannot be read.
 */
function makesRight(
  one: Diagnostic,
  { edits }: Extract<Change, { kind: 'edit' }>,
  known: { readonly names: ReadonlySet<string>; readonly codes: ReadonlySet<string> },
  text: string,
  reread: (text: string) => readonly Diagnostic[],
): boolean {
  const lines = linesWritten(edits)
  const after = reread(withEdits(text, edits))
  return after.every((other) => {
    const isThere = lines.has(other.line ?? 0)
    if (nameOf(other) === nameOf(one)) return other.line !== null && !isThere
    if (isThere) return known.names.has(nameOf(other))
    return other.code !== 'block-form' && (one.level === 'error' || known.codes.has(other.code))
  })
}

/** The text with the edits made. */
function withEdits(text: string, edits: readonly Edit[]): string {
  const starts = [0]
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
  const offset = (line: number, column: number) => (starts[line - 1] ?? text.length) + column - 1
  let result = ''
  let from = 0
  for (const edit of edits) {
    result += text.slice(from, offset(edit.line, edit.column)) + edit.text
    from = offset(edit.endLine, edit.endColumn)
  }
  return result + text.slice(from)
}

/** The numbers that the written lines have once the edits are made. */
function linesWritten(edits: readonly Edit[]): ReadonlySet<number> {
  const lines = new Set<number>()
  let moved = 0
  for (const { line, endLine, text } of edits) {
    const count = text.split('\n').length - 1
    for (let at = 0; at <= count; at++) lines.add(line + moved + at)
    moved += count - (endLine - line)
  }
  return lines
}
