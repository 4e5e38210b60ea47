/** The practice's office page: news of the last visits, how past forecasts held, owners' addresses, about the practice. */
import type { Practice } from '../../../casebook/model.ts'
import type { PlainDate } from '../../../hoof/dates.ts'
import { falseDiscoveries } from '../../../trend/trends.ts'
import type { Formatter } from '../../shared/format.ts'
import type { PageView } from '../../shared/page.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { HorseSummary } from '../../shared/summary.ts'
import type { Words } from '../../words/index.ts'
import { type Link, shellOf } from '../case/horse-case.ts'
import { type OwnerAddress, ownerAddresses } from './owner-addresses.ts'

export interface OfficePage {
  readonly w: Words
  readonly page: PageShell
  readonly news: readonly NewsOfHorse[]
  /** Beyond the newest, folded away. */
  readonly older: readonly NewsOfHorse[]
  readonly olderHead: string
  /** How much of the news is expected to be chance; null where no measure moves. */
  readonly byChance: string | null
  readonly record: { readonly text: string; readonly open: string | null }
  /** Whose locked page is where. */
  readonly addresses: readonly OwnerAddress[]
  readonly about: string
}

interface NewsOfHorse {
  readonly horse: Link
  readonly date: string
  readonly sentences: readonly string[]
}

/** Horses whose news is shown open. */
const newest = 8

export function officePage(
  practice: Practice,
  summaries: readonly HorseSummary[],
  asOf: PlainDate,
  tokens: Readonly<Record<string, string>>,
  format: Formatter,
): PageView {
  const { words } = format
  const w = words.practice.office
  const news = newsOf(summaries, format)
  const moving = summaries.reduce((sum, one) => sum + one.news.moving, 0)
  const model: OfficePage = {
    w: words,
    page: shellOf(practice, words, format.date(asOf), { title: w.title(practice.name), at: 'office' }),
    news: news.slice(0, newest),
    older: news.slice(newest),
    olderHead: w.older(news.length - newest),
    byChance: moving === 0 ? null : w.byChance(moving, Math.round(moving * falseDiscoveries)),
    record: recordOf(summaries, format),
    addresses: ownerAddresses(practice, summaries, tokens),
    about: practice.body,
  }
  return { path: 'office.html', template: 'practice/office', model }
}

const newsOf = (summaries: readonly HorseSummary[], format: Formatter): readonly NewsOfHorse[] =>
  summaries
    .map((one) => ({ one, sentences: [...one.news.findings, ...one.news.moves] }))
    .filter(({ sentences }) => sentences.length > 0)
    .toSorted((a, b) => (b.one.lastVisit ?? '').localeCompare(a.one.lastVisit ?? ''))
    .map(({ one, sentences }) => ({
      horse: { text: one.name, href: `${one.id}/index.html` },
      date: format.words.practice.office.visitOf(format.date(one.lastVisit ?? '')),
      sentences,
    }))

/** Over all horses; a range without an end is counted apart, and never as one that held. */
function recordOf(summaries: readonly HorseSummary[], { words }: Formatter): OfficePage['record'] {
  const w = words.practice.office
  const sum = (of: (one: HorseSummary['backtest']) => number) =>
    summaries.reduce((total, { backtest }) => total + of(backtest), 0)
  const [made, held, open] = [sum((one) => one.made), sum((one) => one.held), sum((one) => one.open)]
  return {
    text: made === 0 ? w.recordNone : w.recordHeld(held, made),
    open: open === 0 ? null : w.recordOpen(open),
  }
}
