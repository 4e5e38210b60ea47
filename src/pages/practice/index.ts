import type { Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Formatter } from '../shared/format.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import type { PageView } from '../shared/page.ts'
import type { HorseSummary } from '../shared/summary.ts'
import { fieldSheet } from './field-sheet.ts'
import { frontPage } from './front-page.ts'
import { handOver } from './hand-over.ts'
import { openCase } from './horse-case.ts'
import { horsePage } from './horse-page.ts'
import { measuresPage } from './measures-page.ts'
import { referencePage } from './reference-page.ts'
import { summaryOf } from './summary.ts'
import { visitPage } from './visit-page.ts'

/** Every page of one horse, one at a time, for they are large: its own, all measures, one a visit, hand-over, field sheet. */
export function* presentHorse(input: HorseInput): Generator<PageView> {
  const of = openCase(input)
  yield horsePage(of)
  yield measuresPage(of)
  for (const visit of of.visits) yield visitPage(of, visit)
  yield handOver(of)
  yield fieldSheet(of)
}

/** What the front page keeps of a horse. */
export const summarise = (input: HorseInput): HorseSummary => summaryOf(openCase(input))

/**
 * The front page, and the reference page. `broken` names horses whose files hold errors, `tokens` the folder of each
 * owner's page by owner id.
 */
export const presentFront = (
  practice: Practice,
  summaries: readonly HorseSummary[],
  broken: readonly { readonly id: string; readonly problems: number }[],
  asOf: PlainDate,
  tokens: Readonly<Record<string, string>>,
  format: Formatter,
): readonly PageView[] => [
  frontPage(practice, summaries, broken, asOf, tokens, format),
  referencePage(practice, asOf, format),
]
