/** The editions: which pages each has, of one horse and over all horses. The one list to extend. */
import type { Practice } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { portfolioPages } from '../pages/portfolio/pages.ts'
import type { CaseSummary } from '../pages/portfolio/view.ts'
import { presentFront, presentHorse } from '../pages/practice/index.ts'
import type { Formatter } from '../pages/shared/format.ts'
import type { HorseInput } from '../pages/shared/horse-input.ts'
import type { PageView } from '../pages/shared/page.ts'
import type { HorseSummary } from '../pages/shared/summary.ts'
import { visitsCalendar } from './calendar.ts'
import type { Edition, MadeFile } from './made.ts'

/** What is known of all horses once each is made. */
export interface AllHorses {
  readonly practice: Practice
  /** Of the horses without errors, by id. */
  readonly summaries: readonly HorseSummary[]
  /** Cases of the portfolio. */
  readonly cases: readonly CaseSummary[]
  readonly broken: readonly { readonly id: string; readonly problems: number }[]
  /** Folder of each owner's page, by owner id. */
  readonly tokens: Readonly<Record<string, string>>
  readonly asOf: PlainDate
}

export interface EditionPages {
  /** One by one, since a page is large. */
  ofHorse(input: HorseInput): Iterable<PageView>
  overAll(all: AllHorses, format: Formatter): readonly PageView[]
  /** Files over all horses that are no pages, paths within the edition. */
  files(all: AllHorses, format: Formatter): readonly MadeFile[]
}

const practice: EditionPages = {
  ofHorse: presentHorse,
  overAll: (all, format) =>
    presentFront(all.practice, all.summaries, all.broken, all.asOf, all.tokens, format),
  files: (all, format) => [
    { path: 'visits.ics', text: visitsCalendar(all.practice, all.summaries, all.asOf, format) },
  ],
}

/** Cases are made beside a horse's other pages, in for-others.ts: they need more than its view. */
const portfolio: EditionPages = {
  ofHorse: () => [],
  overAll: (all, format) => portfolioPages(all.practice, all.cases, format),
  files: () => [],
}

export const editions: Partial<Record<Edition, EditionPages>> = { practice, portfolio }
