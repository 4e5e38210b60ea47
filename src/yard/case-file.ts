/** A draft as the case file that a person could have written, and where each of its fields stands in it. */
import type { Practice } from '../casebook/model.ts'
import type { YardDraft } from './draft.ts'
import type { YardField } from './field.ts'

export interface YardCaseFile {
  /** `juno/2026-11-27.md`, or with the next letter that is free. */
  readonly path: string
  readonly text: string
  /** By line and column. */
  readonly places: readonly FieldPlace[]
}

/** A stretch of a line, one-based, the end after its last character, and the field that it came from. */
export interface FieldPlace {
  readonly line: number
  readonly column: number
  readonly endColumn: number
  readonly field: YardField
}

/**
 * Pure, and the same text for the same draft. It stays a draft (`draft: yes`) while the person says that it is not
 * finished or a question is open.
 * @param taken paths of the horse's visits that are there already; another visit of that day gets the next letter
 */
export function caseFileOf(
  _draft: YardDraft,
  _practice: Pick<Practice, 'feetOrder'>,
  _taken: ReadonlySet<string> = new Set(),
): YardCaseFile {
  throw new Error('not written yet')
}

/** The field that stands at a place of the text, or nearest before it on its line; null where none does. */
export function fieldAt(_places: readonly FieldPlace[], _line: number, _column: number): YardField | null {
  throw new Error('not written yet')
}
