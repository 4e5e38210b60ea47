/** The findings and followed features that a new visit asks about. */
import type { Horse, Visit } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type Assessment, type GrowOut, openFindings } from '../../trend/assessment.ts'
import type { Formatter } from '../shared/format.ts'
import { lastVisits } from './habit.ts'
import { blank, bracketed, partsLine, remarked } from './lines.ts'

/** A line to be filled in under a foot. */
interface Asked {
  readonly foot: Foot
  readonly what: string
  readonly place: string
  readonly remark: string | null
}

/** Lines of the new file that are named and not asked about. */
const mostNamed = 6

/**
 * Every finding that is open, the ones that a caution stands on first: one stroke clears each. What the last visits did not
 * speak of, and nothing stands on, is named in a remark: forty visits leave more of that than anyone fills in.
 */
export function findingLines(
  horse: Horse,
  past: readonly Visit[],
  { cautions }: Assessment,
  format: Formatter,
): readonly string[] {
  const { starter: w } = format.words
  const since = lastVisits(past)[0]?.date ?? ''
  const standing = cautions.filter(({ standing: stands, level }) => stands && level !== 'mind')
  const isAsked = (foot: Foot, what: string) =>
    standing.some(({ feet: of, facts }) => of.includes(foot) && 'finding' in facts && facts.finding === what)
  const isProblem = (foot: Foot, what: string) =>
    horse.problems.some(
      ({ feet: of, about }) => about.kind === 'finding' && about.what === what && of.includes(foot),
    )
  const open = openFindings(past).map(({ finding: { foot, what, place, grade }, visit: { date } }) => {
    const asked = isAsked(foot, what)
    const isCurrent = asked || date >= since || isProblem(foot, what)
    return { foot, what, place, grade, date, asked, isCurrent }
  })
  const current = open
    .filter(({ isCurrent }) => isCurrent)
    .toSorted((a, b) => Number(b.asked) - Number(a.asked))
    .map(({ foot, what, place, grade, date, asked }): Asked => {
      return { foot, what, place, remark: w.lastOn(String(grade), format.shortDate(date), asked) }
    })
  const silent = open.filter(({ isCurrent }) => !isCurrent)
  const lines = byFoot([...current, ...problemsNotYetSeen(horse, past)])
  if (lines.length === 0 && past.length === 0) return [remarked('findings:', w.findings), ...emptyLines]
  if (lines.length === 0 && silent.length === 0) return []
  return [
    ...(lines.length === 0 ? [] : [remarked('findings:', w.findings), ...lines]),
    ...(silent.length === 0 ? [] : [`# ${silentText(silent, format)}`]),
  ]
}

/** Nothing is known yet: a place for what is seen first. */
const emptyLines: readonly string[] = [`  LF: [${blank}, ${blank}, ${blank}]`]

function silentText(
  silent: readonly {
    readonly foot: Foot
    readonly what: string
    readonly place: string
    readonly grade: number
    readonly date: PlainDate
  }[],
  format: Formatter,
): string {
  const named = silent
    .slice(0, mostNamed)
    .map(
      ({ foot, what, place, grade, date }) =>
        `${foot} ${what}, ${place}, ${grade} (${format.shortDate(date)})`,
    )
  return format.words.starter.notSpokenOf(named.join('; '), silent.length - named.length)
}

/** What the case is said to be about and no visit has told of. */
function problemsNotYetSeen({ problems }: Horse, past: readonly Visit[]): readonly Asked[] {
  const seen = past.flatMap(({ findings }) => findings)
  return problems.flatMap(({ feet: of, about }) => {
    if (about.kind !== 'finding') return []
    return of
      .filter((foot) => !seen.some((one) => one.foot === foot && one.what === about.what))
      .map((foot) => ({ foot, what: about.what, place: about.place ?? blank, remark: null }))
  })
}

export function growOutLines(
  horse: Horse,
  past: readonly Visit[],
  features: readonly GrowOut[],
  format: Formatter,
): readonly string[] {
  const { starter: w } = format.words
  const going = features
    .filter(({ state }) => state !== 'grown out')
    .map(
      (one): Asked => ({
        foot: one.foot,
        what: one.feature,
        place: one.place,
        remark: featureRemark(one, format),
      }),
    )
  const followed = past.flatMap(({ growOut }) => growOut)
  const wanted = horse.problems.flatMap(({ feet: of, about }) =>
    about.kind !== 'grow-out'
      ? []
      : of
          .filter((foot) => !followed.some((one) => one.foot === foot && one.what === about.what))
          .map((foot): Asked => ({ foot, what: about.what, place: about.place ?? blank, remark: null })),
  )
  const lines = byFoot([...going, ...wanted])
  if (lines.length > 0) return [remarked('grow-out:', w.growOut), ...lines]
  return past.length === 0 ? [remarked('grow-out:', w.growOut), ...emptyLines] : []
}

/** Where a followed feature was, and about where it should be by now. */
export function featureRemark(feature: GrowOut, format: Formatter): string | null {
  const { starter: w } = format.words
  const seen = feature.sightings.at(-1)
  if (seen === undefined) return null
  if (feature.wallLength !== null && feature.expectedNow >= feature.wallLength && feature.date !== null) {
    return w.featureOut(format.shortDate(feature.date))
  }
  return w.feature(
    format.length(seen.distance),
    format.shortDate(seen.date),
    format.length(feature.expectedNow),
  )
}

/** The lines under their feet; a foot with one of them has it beside its name. */
function byFoot(asked: readonly Asked[]): readonly string[] {
  return feet.flatMap((foot) => {
    const [only, ...more] = asked.filter((one) => one.foot === foot)
    if (!only) return []
    const single = more.length === 0 ? bracketed(only.what, only.place, blank) : null
    if (single !== null) return [remarked(`  ${foot}: ${single}`, only.remark)]
    return [
      `  ${foot}:`,
      ...[only, ...more].map(({ what, place, remark }) =>
        remarked(`    ${partsLine(what, place, blank)}`, remark),
      ),
    ]
  })
}
