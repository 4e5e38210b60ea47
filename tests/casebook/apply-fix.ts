/** Does to a casebook what a diagnostic's likely fix says. */
import type { Diagnostic } from '../../src/casebook/diagnostic.ts'

export type Files = Readonly<Record<string, string>>

/** The files with the fix applied; throws when the fix cannot be applied as it stands. */
export function applyFix(files: Files, { file, change }: Diagnostic): Files {
  if (!change) throw new Error('there is no fix to apply')
  if (change.kind === 'rename') return renamed(files, change.from, change.to)
  const text = files[file] ?? ''
  let result = ''
  let from = 0
  for (const edit of change.edits) {
    const [start, end] = [
      offsetOf(text, edit.line, edit.column),
      offsetOf(text, edit.endLine, edit.endColumn),
    ]
    if (start < from || end < start) throw new Error('edits overlap or are out of order')
    result += text.slice(from, start) + edit.text
    from = end
  }
  return { ...files, [file]: result + text.slice(from) }
}

function offsetOf(text: string, line: number, column: number): number {
  const above = text.split('\n').slice(0, line - 1)
  return above.reduce((sum, one) => sum + one.length + 1, 0) + column - 1
}

/** A file, or all files of a folder. */
function renamed(files: Files, from: string, to: string): Files {
  return Object.fromEntries(
    Object.entries(files).map(([path, text]) => {
      if (path === from) return [to, text]
      return [path.startsWith(`${from}/`) ? `${to}${path.slice(from.length)}` : path, text]
    }),
  )
}
