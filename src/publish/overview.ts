import type { PlainDate } from '../hoof/dates.ts'
import type { AllHorses } from './editions.ts'
import type { HorsePieces } from './pieces.ts'

/** What the pages over all horses need to know of each, by their pieces. */
export function overview(
  practice: AllHorses['practice'],
  pieces: HorsePieces['pieces'],
  asOf: PlainDate,
  tokens: AllHorses['tokens'],
): AllHorses {
  return {
    practice,
    tokens,
    asOf,
    cases: pieces.flatMap(([, { forOthers }]) => forOthers?.case ?? []),
    summaries: pieces.flatMap(([, { summary }]) => (summary === null ? [] : [summary])),
    broken: pieces.flatMap(([id, { summary, diagnostics }]) =>
      summary === null ? [{ id, problems: diagnostics.filter(({ level }) => level === 'error').length }] : [],
    ),
  }
}
