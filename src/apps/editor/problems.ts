/** What `check` says of a file, as an editor shows it, and its likely fixes as edits. */
import {
  type CodeAction,
  CodeActionKind,
  DiagnosticSeverity,
  type Diagnostic as Problem,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver/node'
import type { Change, Diagnostic } from '../../casebook/diagnostic.ts'

const severities = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  gap: DiagnosticSeverity.Information,
} as const

export function problemOf(diagnostic: Diagnostic): Problem {
  const { level, code, message, expected, fix, advice } = diagnostic
  return {
    range: rangeOf(diagnostic),
    severity: severities[level],
    code,
    source: 'growdown',
    message: [
      message,
      ...(expected === null ? [] : [`Expected: ${expected}`]),
      ...(fix === null ? [] : [`Likely fix: ${fix}`]),
      ...(advice === null ? [] : [`What to do: ${advice}`]),
    ].join('\n'),
  }
}

/** The whole file is meant where no line is: its first sign stands for it. */
function rangeOf({ line, column, endColumn }: Diagnostic): Range {
  const at = { line: (line ?? 1) - 1, character: (column ?? 1) - 1 }
  return {
    start: at,
    end: { line: at.line, character: Math.max(at.character, (endColumn ?? column ?? 2) - 1) },
  }
}

/**
 * The likely fixes of what is wrong in a stretch of a file.
 *
 * @param uriOf address of a path within the casebook
 * @param canRename whether the editor can give a file another name
 */
export function fixesIn(
  diagnostics: readonly Diagnostic[],
  range: Range,
  uriOf: (path: string) => string,
  canRename: boolean,
): readonly CodeAction[] {
  return diagnostics.flatMap((one) => {
    const edit = one.change && touches(rangeOf(one), range) ? editOf(one, one.change, uriOf, canRename) : null
    if (!edit || one.fix === null) return []
    return [
      {
        title: one.change?.kind === 'rename' ? capital(one.fix) : `Likely fix: ${oneLine(one.fix)}`,
        kind: CodeActionKind.QuickFix,
        diagnostics: [problemOf(one)],
        isPreferred: true,
        edit,
      },
    ]
  })
}

function editOf(
  { file }: Diagnostic,
  change: Change,
  uriOf: (path: string) => string,
  canRename: boolean,
): WorkspaceEdit | null {
  if (change.kind === 'edit') {
    const edits = change.edits.map(({ line, column, endLine, endColumn, text }) => ({
      range: {
        start: { line: line - 1, character: column - 1 },
        end: { line: endLine - 1, character: endColumn - 1 },
      },
      newText: text,
    }))
    return { changes: { [uriOf(file)]: edits } }
  }
  if (!canRename) return null
  return { documentChanges: [{ kind: 'rename', oldUri: uriOf(change.from), newUri: uriOf(change.to) }] }
}

const isBefore = (one: Range['start'], other: Range['start']): boolean =>
  one.line < other.line || (one.line === other.line && one.character < other.character)

/** A cursor anywhere on the line counts, since nobody puts it on the very word. */
const touches = (problem: Range, asked: Range): boolean =>
  !isBefore(asked.end, { line: problem.start.line, character: 0 }) && problem.end.line >= asked.start.line

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)
const oneLine = (text: string): string => text.replaceAll(/\s+/g, ' ')
