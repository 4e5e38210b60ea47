/**
 * One thing found wrong while reading, as data. `print.ts` turns it into words with a caret;
 * nothing else formats one.
 */
export interface Diagnostic {
  /** Stable name of the rule, `reading-out-of-range`. */
  readonly code: string
  /** `gap`: a place left unfilled in a file that a command made; counts as a warning. */
  readonly level: 'error' | 'warning' | 'gap'
  /** Path within the casebook, forward slashes. */
  readonly file: string
  /** One-based; null when the whole file is meant. */
  readonly line: number | null
  readonly column: number | null
  /** One-based column after the last character of the place. */
  readonly endColumn: number | null
  /** The offending line as it stands in the file, for the caret. */
  readonly sourceLine: string | null
  /** What is wrong, one sentence with the actual text. */
  readonly message: string
  /** What was expected. */
  readonly expected: string | null
  /** The likely fix, in words that can be typed. */
  readonly fix: string | null
}
