import type { Horse, Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Assessment } from '../../trend/assessment.ts'
import type { PageView } from '../page.ts'
import type { Pictures } from '../pictures.ts'
import type { HorseSummary } from '../summary.ts'

export interface HorseInput {
  readonly horse: Horse
  readonly assessment: Assessment
  readonly practice: Practice
  readonly pictures: Pictures
}

/** Every page of one horse: its own, one a visit, hand-over, field sheet. */
export function presentHorse(_input: HorseInput): readonly PageView[] {
  throw new Error('to be written')
}

/** What the front page keeps of a horse. */
export function summarise(_input: HorseInput): HorseSummary {
  throw new Error('to be written')
}

/** The front page, and the reference page. `broken` names horses whose files hold errors. */
export function presentFront(
  _practice: Practice,
  _summaries: readonly HorseSummary[],
  _broken: readonly { readonly id: string; readonly problems: number }[],
  _asOf: PlainDate,
): readonly PageView[] {
  throw new Error('to be written')
}
