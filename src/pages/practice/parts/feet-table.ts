/** Tables with a column a foot: readings by visit, and what follows from them. */
import type { Foot } from '../../../hoof/feet.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'
import type { ShownReading } from '../case/shown-reading.ts'
import type { VerdictView } from '../case/verdict-view.ts'
import type { VisitCell } from './visit-table.ts'

/** What stands in a cell: words, a reading, a verdict, or what was read at both stages of a visit. */
export type FeetCell = { readonly text: string } | ShownReading | VerdictView | VisitCell

export interface FeetRow {
  readonly name: string
  /** One a foot, null where there is nothing; a single one says the same of every foot. */
  readonly cells: readonly (FeetCell | null)[]
}

export interface FeetTable {
  /** Unit of all figures; may be empty. */
  readonly corner: string
  readonly feet: readonly string[]
  readonly rows: readonly FeetRow[]
}

/** @param rows those of which no foot has anything are left out */
export const feetTable = (
  of: HorseCase,
  corner: string,
  feet: readonly Foot[],
  rows: readonly FeetRow[],
): FeetTable => ({
  corner,
  feet: feet.map((foot) => footTitle(of, foot)),
  rows: rows.filter(({ cells }) => cells.some((cell) => cell !== null)),
})

/** A row of words or figures; what is alike at every foot is said once. */
export function textRow({ words }: HorseCase, name: string, texts: readonly (string | null)[]): FeetRow {
  const [first] = texts
  const alike = texts.length > 1 && first != null && texts.every((text) => text === first)
  const told = alike ? [words.trend.allFeet(first)] : texts
  return { name, cells: told.map((text) => (text === null ? null : { text })) }
}
