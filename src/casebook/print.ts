import type { Diagnostic } from './diagnostic.ts'

/** A diagnostic as lines for a terminal: place, what is wrong, the line with a caret, expected, likely fix. */
export function printDiagnostic(_diagnostic: Diagnostic): string {
  throw new Error('to be written')
}
