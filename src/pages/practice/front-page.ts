/** The practice's front page: what needs doing, what changed, every horse, how past forecasts held. */
import type { Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { CautionLevel } from '../../trend/assessment.ts'
import { type OwnerAddress, ownerAddresses } from '../owner/addresses.ts'
import { cautionLevels } from '../shared/caution-lines.ts'
import { type Formatter, formatter } from '../shared/format.ts'
import type { PageView } from '../shared/page.ts'
import type { PageShell } from '../shared/shell.ts'
import type { HorseSummary } from '../shared/summary.ts'
import type { Words } from '../words/index.ts'
import { type Link, shellOf } from './horse-case.ts'
import { filterTags } from './summary.ts'

export interface FrontPage {
  readonly w: Words
  readonly page: PageShell
  readonly heading: string
  readonly lead: string
  /** `stop` and `vet`, then `mind` folded away. */
  readonly urgent: readonly FrontCaution[]
  readonly mind: readonly FrontCaution[]
  readonly mindHead: string
  readonly overdue: readonly DueLine[]
  readonly soon: readonly DueLine[]
  readonly hasDue: boolean
  readonly changes: readonly ChangeLine[]
  /** Beyond the newest, folded away. */
  readonly olderChanges: readonly ChangeLine[]
  readonly olderHead: string
  readonly forecasts: { readonly text: string; readonly how: string | null }
  readonly horses: readonly HorseLine[]
  readonly filters: readonly { readonly tag: string; readonly text: string }[]
  readonly broken: readonly { readonly id: string; readonly text: string }[]
  /** Whose locked page stands where. */
  readonly addresses: readonly OwnerAddress[]
  readonly about: string
}

interface FrontCaution {
  readonly level: CautionLevel
  readonly word: string
  readonly horse: Link
  readonly items: readonly { readonly text: string; readonly date: string | null }[]
  /** How many more the horse's own page has. */
  readonly more: string | null
}

interface DueLine {
  readonly horse: Link
  readonly text: string
}

interface ChangeLine {
  readonly horse: Link
  readonly date: string
  readonly changes: readonly string[]
}

interface HorseLine {
  readonly horse: Link
  readonly owner: string | null
  readonly state: string
  readonly last: string
  readonly flag: { readonly level: string; readonly text: string } | null
  /** What the search looks in, lower case. */
  readonly find: string
  /** Space between tags. */
  readonly tags: string
}

/** Horses whose last changes are shown open. */
const newestChanges = 8
/** Visits due within this many days are named. */
const soonDays = 14

export function frontPage(
  practice: Practice,
  summaries: readonly HorseSummary[],
  broken: readonly { readonly id: string; readonly problems: number }[],
  asOf: PlainDate,
  tokens: Readonly<Record<string, string>>,
): PageView {
  const format = formatter(practice.units)
  const { words } = format
  const w = words.practice.front
  const cautions = frontCautions(summaries, format)
  const due = dueLines(summaries, format)
  const changes = changeLines(summaries, format)
  const mind = cautions.filter(({ level }) => level === 'mind')
  const model: FrontPage = {
    w: words,
    page: shellOf(practice, words, format.date(asOf), {
      title: practice.name,
      at: 'front',
      scripts: ['filter'],
    }),
    heading: practice.name,
    lead: w.lead(summaries.length, format.date(asOf)),
    urgent: cautions.filter(({ level }) => level !== 'mind'),
    mind,
    mindHead: w.more(mind.reduce((sum, { items }) => sum + items.length, 0)),
    ...due,
    hasDue: due.overdue.length + due.soon.length > 0,
    changes: changes.slice(0, newestChanges),
    olderChanges: changes.slice(newestChanges),
    olderHead: w.older(changes.length - newestChanges),
    forecasts: heldText(summaries, format),
    horses: summaries
      .toSorted((a, b) => a.name.localeCompare(b.name, words.base.lang))
      .map((one) => horseLine(one, format)),
    filters: filterTags.map((tag) => ({ tag, text: w.filterTags[tag] })),
    broken: broken.map(({ id, problems }) => ({ id, text: w.brokenOf(problems) })),
    addresses: ownerAddresses(practice, summaries, tokens),
    about: practice.body,
  }
  return { path: 'index.html', template: 'practice/index', model }
}

const linkTo = ({ id, name }: HorseSummary): Link => ({ text: name, href: `${id}/index.html` })

/** So many lines of cautions stand on the front page for one horse; its own page has them all. */
const linesPerHorse = 2

/** Gravest first, then the latest; a horse stands once for each level, with two lines in all. */
function frontCautions(summaries: readonly HorseSummary[], format: Formatter): readonly FrontCaution[] {
  const { front, horse } = format.words.practice
  const shown = summaries.map((one) => ({ one, lines: one.cautions.slice(0, linesPerHorse) }))
  return cautionLevels.flatMap((level) =>
    shown
      .map(({ one, lines }) => ({ one, lines, here: lines.filter((line) => line.level === level) }))
      .filter(({ here }) => here.length > 0)
      .toSorted((a, b) => (b.here[0]?.date ?? '').localeCompare(a.here[0]?.date ?? ''))
      .map(({ one, lines, here }) => ({
        level,
        word: horse.flagged[level],
        horse: linkTo(one),
        items: here.map(({ text, date, folded }) => ({
          text,
          date: folded > 0 ? null : format.date(date),
        })),
        // Said once, below the horse's last line here.
        more:
          lines.at(-1) === here.at(-1) && one.cautions.length > lines.length
            ? front.moreCautions(one.cautions.length - lines.length)
            : null,
      })),
  )
}

const changeLines = (summaries: readonly HorseSummary[], format: Formatter): readonly ChangeLine[] =>
  summaries
    .filter(({ changes }) => changes.length > 0)
    .toSorted((a, b) => (b.lastVisit ?? '').localeCompare(a.lastVisit ?? ''))
    .map((one) => ({
      horse: linkTo(one),
      date: format.words.practice.front.changesAt(format.date(one.lastVisit ?? '')),
      changes: one.changes,
    }))

function dueLines(
  summaries: readonly HorseSummary[],
  format: Formatter,
): Pick<FrontPage, 'overdue' | 'soon'> {
  const w = format.words.practice.front
  const due = summaries
    .flatMap((one) =>
      one.due === null || one.overdueDays === null ? [] : [{ one, due: one.due, past: one.overdueDays }],
    )
    .toSorted((a, b) => b.past - a.past)
  return {
    overdue: due
      .filter(({ past }) => past > 0)
      .map(({ one, due: date, past }) => ({
        horse: linkTo(one),
        text: w.overdue(format.date(date), format.span(past)),
      })),
    soon: due
      .filter(({ past }) => past <= 0 && past >= -soonDays)
      .toSorted((a, b) => b.past - a.past)
      .map(({ one, due: date, past }) => ({
        horse: linkTo(one),
        text: past === 0 ? w.dueToday : w.dueOn(format.date(date), format.span(-past)),
      })),
  }
}

function heldText(summaries: readonly HorseSummary[], { words }: Formatter): FrontPage['forecasts'] {
  const w = words.practice.front
  const made = summaries.reduce((sum, { backtest }) => sum + backtest.made, 0)
  const held = summaries.reduce((sum, { backtest }) => sum + backtest.held, 0)
  return made === 0
    ? { text: w.forecastsNone, how: null }
    : { text: w.forecastsHeld(held, made), how: w.forecastsHow }
}

function horseLine(one: HorseSummary, format: Formatter): HorseLine {
  const { front, horse } = format.words.practice
  const level = cautionLevels.find((it) => one.cautions.some((caution) => caution.level === it))
  return {
    horse: linkTo(one),
    owner: one.owner,
    state: one.state,
    last: one.lastVisit === null ? front.neverSeen : front.last(format.date(one.lastVisit)),
    flag: level === undefined || level === 'mind' ? null : { level, text: horse.flagged[level] },
    find: [one.name, one.owner ?? '', one.state, ...one.tags].join(' ').toLowerCase(),
    tags: one.tags.filter((tag) => (filterTags as readonly string[]).includes(tag)).join(' '),
  }
}
