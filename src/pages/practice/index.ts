import type { Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { PracticeLessons } from '../../trend/model/practice.ts'
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
import { officePage } from './office-page.ts'
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

/** What the pages over all horses keep of one. */
export const summarise = (input: HorseInput): HorseSummary => summaryOf(openCase(input))

/** What the pages over all horses are made from. */
export interface PracticeInput {
  readonly practice: Practice
  readonly summaries: readonly HorseSummary[]
  /** Horses whose files hold errors. */
  readonly broken: readonly { readonly id: string; readonly problems: number }[]
  readonly asOf: PlainDate
  /** The folder of each owner's page, by owner id. */
  readonly tokens: Readonly<Record<string, string>>
  readonly lessons: PracticeLessons
}

/** Front page, office page, measures and sources. */
export const presentFront = (
  { practice, summaries, broken, asOf, tokens, lessons }: PracticeInput,
  format: Formatter,
): readonly PageView[] => [
  frontPage(practice, summaries, broken, asOf, format),
  officePage(practice, summaries, asOf, tokens, format),
  referencePage(practice, lessons, asOf, format),
]
