/** Diagnostics as a command shows them. */
import type { Diagnostic } from '../casebook/diagnostic.ts'
import { printDiagnostic } from '../casebook/print.ts'

/** All of them, a blank line between each; empty text when there is none. */
export const printAll = (diagnostics: readonly Diagnostic[]): string =>
  diagnostics.map((diagnostic) => `${printDiagnostic(diagnostic)}\n\n`).join('')

type Levelled = Pick<Diagnostic, 'level'>

export const problemsIn = (diagnostics: readonly Levelled[]): number =>
  diagnostics.filter(({ level }) => level === 'error').length

/** `3 problems, 2 warnings`. */
export function countText(diagnostics: readonly Levelled[]): string {
  const problems = problemsIn(diagnostics)
  return `${counted(problems, 'problem')}, ${counted(diagnostics.length - problems, 'warning')}`
}

/** `1 horse`, `2 horses`. */
export const counted = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`
