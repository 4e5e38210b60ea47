/** The practice's front page: who is due, what a vet must hear, every horse. */
import type { Practice } from '../../../casebook/model.ts'
import type { PlainDate } from '../../../hoof/dates.ts'
import type { CautionLevel } from '../../../trend/assessment.ts'
import { cautionLevels } from '../../shared/caution-lines.ts'
import { type DayGroupId, dayGroupOf, foldedGroups, openGroups, weekdayOf } from '../../shared/day-groups.ts'
import type { Formatter } from '../../shared/format.ts'
import type { PageView } from '../../shared/page.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { HorseSummary } from '../../shared/summary.ts'
import type { Words } from '../../words/index.ts'
import { type Link, shellOf } from '../case/horse-case.ts'

export interface FrontPage {
  readonly w: Words
  readonly page: PageShell
  readonly heading: string
  /** By day, without those that hold nothing. */
  readonly days: readonly DayGroup[]
  /** What is not for now, folded. */
  readonly folded: readonly DayGroup[]
  readonly broken: readonly string[]
  readonly cautions: readonly FrontCaution[]
  readonly horses: readonly HorseLine[]
}

interface DayGroup {
  readonly id: DayGroupId
  readonly head: string
  readonly rows: readonly DayRow[]
}

interface DayRow {
  readonly horse: Link
  readonly owner: string | null
  /** The day, or for how long it is overdue; null where the group says it. */
  readonly when: string | null
  readonly flag: Flag | null
  readonly sheet: { readonly href: string; readonly text: string; readonly label: string }
}

interface Flag {
  readonly level: CautionLevel
  readonly text: string
}

/** All of one level at one horse. */
interface FrontCaution {
  readonly level: CautionLevel
  readonly word: string
  readonly horse: Link
  /** The day that all of it is from; else each line has its own. */
  readonly date: string | null
  readonly items: readonly { readonly text: string; readonly date: string | null }[]
}

interface HorseLine {
  readonly horse: Link
  readonly owner: string | null
  /** A stop alone is said here too. */
  readonly flag: Flag | null
  readonly problems: string
  /** What the search looks in, lower case. */
  readonly find: string
}

export function frontPage(
  practice: Practice,
  summaries: readonly HorseSummary[],
  broken: readonly { readonly id: string; readonly problems: number }[],
  asOf: PlainDate,
  format: Formatter,
): PageView {
  const { words } = format
  const w = words.practice.front
  const groupIn = (id: DayGroupId): readonly DayGroup[] => {
    const rows = summaries
      .filter((one) => dayGroupOf(one.due, asOf) === id)
      .toSorted((a, b) => (a.due ?? '').localeCompare(b.due ?? '') || a.name.localeCompare(b.name))
    return rows.length === 0
      ? []
      : [{ id, head: headOf(id, rows.length, format), rows: rows.map((one) => dayRow(one, id, format)) }]
  }
  const model: FrontPage = {
    w: words,
    page: shellOf(practice, words, format.date(asOf), {
      title: practice.name,
      at: 'front',
      scripts: ['search'],
    }),
    heading: dayText(asOf, format.date(asOf), format),
    days: openGroups.flatMap(groupIn),
    folded: foldedGroups.flatMap(groupIn),
    broken: broken.map(({ id, problems }) => w.brokenOf(id, problems)),
    cautions: frontCautions(summaries, format),
    horses: summaries
      .toSorted((a, b) => a.name.localeCompare(b.name, words.base.lang))
      .map((one) => horseLine(one, format)),
  }
  return { path: 'index.html', template: 'practice/index', model }
}

const linkTo = ({ id, name }: HorseSummary): Link => ({ text: name, href: `${id}/index.html` })

const dayText = (date: PlainDate, text: string, { words, weekdays }: Formatter): string =>
  words.practice.front.day(weekdays[weekdayOf(date)] ?? '', text)

/** A fold says how much is in it. */
function headOf(id: DayGroupId, count: number, { words }: Formatter): string {
  const { groups, groupOf: counted } = words.practice.front
  return (foldedGroups as readonly DayGroupId[]).includes(id) ? counted(groups[id], count) : groups[id]
}

function dayRow(one: HorseSummary, group: DayGroupId, format: Formatter): DayRow {
  const w = format.words.practice.front
  const { due, overdueDays, worst } = one
  const isSaid = due === null || group === 'today' || group === 'tomorrow'
  return {
    horse: linkTo(one),
    owner: one.owner,
    when: isSaid
      ? null
      : (overdueDays ?? 0) > 0
        ? format.span(overdueDays ?? 0)
        : dayText(due, format.shortDate(due), format),
    flag: worst === null ? null : flagOf(worst, format),
    sheet: { href: `${one.id}/field-sheet.html`, text: w.fieldSheet, label: w.fieldSheetOf(one.name) },
  }
}

const flagOf = ({ level, feet }: NonNullable<HorseSummary['worst']>, { words }: Formatter): Flag => ({
  level,
  text: words.practice.front.flags[level](feet),
})

/** Gravest first, then the latest; a horse has one place for each level. */
const frontCautions = (summaries: readonly HorseSummary[], format: Formatter): readonly FrontCaution[] =>
  cautionLevels.flatMap((level) =>
    summaries
      .map((one) => ({ one, here: one.cautions.filter((line) => line.level === level) }))
      .filter(({ here }) => here.length > 0)
      .toSorted((a, b) => (b.here[0]?.date ?? '').localeCompare(a.here[0]?.date ?? ''))
      .map(({ one, here }) => {
        const isOfOneDay = here.every(({ date, folded }) => folded === 0 && date === here[0]?.date)
        return {
          level,
          word: format.words.practice.horse.flagged[level],
          horse: linkTo(one),
          date: isOfOneDay ? format.date(here[0]?.date ?? '') : null,
          items: here.map(({ text, date, folded }) => ({
            text,
            // What has not been spoken of for a while names its day itself.
            date: isOfOneDay || folded > 0 ? null : format.date(date),
          })),
        }
      }),
  )

const horseLine = (one: HorseSummary, format: Formatter): HorseLine => ({
  horse: linkTo(one),
  owner: one.owner,
  flag: one.worst?.level === 'stop' ? flagOf(one.worst, format) : null,
  problems: one.problems,
  find: [one.name, one.owner ?? '', ...one.find].join(' ').toLowerCase(),
})
