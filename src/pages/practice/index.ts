import type { Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { PracticeLessons } from '../../trend/model/practice.ts'
import type { Formatter } from '../shared/format.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import type { PageView } from '../shared/page.ts'
import type { HorseSummary } from '../shared/summary.ts'
import { openCase } from './case/horse-case.ts'
import { horsePage } from './horse/horse-page.ts'
import { visitPage } from './horse/visit-page.ts'
import { measuresPage } from './measures/measures-page.ts'
import { frontPage } from './over-all/front-page.ts'
import { officePage } from './over-all/office-page.ts'
import { referencePage } from './over-all/reference-page.ts'
import { summaryOf } from './over-all/summary.ts'
import { fieldSheet } from './sheets/field-sheet.ts'
import { handOver } from './sheets/hand-over.ts'

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
