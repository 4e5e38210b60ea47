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
  /** The likely fix, in words that can be typed. Given only with a `change`: where applying it makes the line right. */
  readonly fix: string | null
  /** What applying the fix does; null where nothing can be said for sure. */
  readonly change: Change | null
  /** What to do where no fix can be given for sure, in words. */
  readonly advice: string | null
}

/** A fix as data, so that an editor can apply it and a test can hold it to its word. */
export type Change =
  | {
      readonly kind: 'edit'
      /** Replacements in the file, in order, none over another. */
      readonly edits: readonly Edit[]
    }
  | {
      /** Another name for the file or its folder; both are paths within the casebook. */
      readonly kind: 'rename'
      readonly from: string
      readonly to: string
    }

/** A stretch of the file, one-based, the end after its last character, and the text that takes its place. */
export interface Edit {
  readonly line: number
  readonly column: number
  readonly endLine: number
  readonly endColumn: number
  readonly text: string
}
