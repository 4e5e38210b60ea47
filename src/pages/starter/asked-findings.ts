/** The findings and followed features that a new visit asks about. */
import type { Horse, Visit } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type Assessment, type GrowOut, openFindings } from '../../trend/assessment.ts'
import { lastVisits } from '../../trend/habit.ts'
import type { Formatter } from '../shared/format.ts'
import { blank, bracketed, partsLine, remarked } from './lines.ts'

/** What is asked about on a foot. */
export interface AskedAbout {
  readonly foot: Foot
  readonly what: string
  /** Null where nobody has said it yet. */
  readonly place: string | null
}

interface OpenFinding extends AskedAbout {
  readonly place: string
  readonly grade: number
  readonly date: PlainDate
  /** Whether a caution stands on it. */
  readonly stands: boolean
}

/** A line to be filled in under a foot. */
interface Line extends AskedAbout {
  readonly remark: string | null
}

/** Lines of the new file that are named and not asked about. */
const mostNamed = 6

/**
 * The findings asked about, those that a caution stands on first: open ones that the last visits spoke of, that a caution
 * stands on or that the case is about, and what it is about and no visit has told of. `silent` are open too, and nobody
 * spoke of them lately: forty visits leave more of that than anyone fills in.
 */
export function askedFindings(
  horse: Horse,
  past: readonly Visit[],
  { cautions }: Assessment,
): {
  readonly open: readonly OpenFinding[]
  readonly unseen: readonly AskedAbout[]
  readonly silent: readonly OpenFinding[]
} {
  const since = lastVisits(past)[0]?.date ?? ''
  const standing = cautions.filter(({ standing: stands, level }) => stands && level !== 'mind')
  const isProblem = (foot: Foot, what: string) =>
    horse.problems.some(
      ({ feet: of, about }) => about.kind === 'finding' && about.what === what && of.includes(foot),
    )
  const all = openFindings(past).map(
    ({ finding: { foot, what, place, grade }, visit: { date } }): OpenFinding => ({
      ...{ foot, what, place, grade, date },
      stands: standing.some(
        ({ feet: of, facts }) => of.includes(foot) && 'finding' in facts && facts.finding === what,
      ),
    }),
  )
  const isCurrent = ({ foot, what, date, stands }: OpenFinding) =>
    stands || date >= since || isProblem(foot, what)
  return {
    open: all.filter(isCurrent).toSorted((a, b) => Number(b.stands) - Number(a.stands)),
    unseen: unseenProblems(
      horse,
      'finding',
      past.flatMap(({ findings }) => findings),
    ),
    silent: all.filter((one) => !isCurrent(one)),
  }
}

/** What the case is said to be about and no visit has told of. */
const unseenProblems = (
  { problems }: Horse,
  kind: 'finding' | 'grow-out',
  seen: readonly { readonly foot: Foot; readonly what: string }[],
): readonly AskedAbout[] =>
  problems.flatMap(({ feet: of, about }) =>
    about.kind !== kind
      ? []
      : of
          .filter((foot) => !seen.some((one) => one.foot === foot && one.what === about.what))
          .map((foot) => ({ foot, what: about.what, place: about.place })),
  )

export function findingLines(
  horse: Horse,
  past: readonly Visit[],
  assessment: Assessment,
  format: Formatter,
): readonly string[] {
  const { starter: w } = format.words
  const { open, unseen, silent } = askedFindings(horse, past, assessment)
  const lines = byFoot([
    ...open.map(({ grade, date, stands, ...one }) => ({
      ...one,
      remark: w.lastOn(String(grade), format.shortDate(date), stands),
    })),
    ...unseen.map((one) => ({ ...one, remark: null })),
  ])
  const shown = lines.length === 0 && past.length === 0 ? emptyLines : lines
  return [
    ...(shown.length === 0 ? [] : [remarked('findings:', w.findings), ...shown]),
    ...(silent.length === 0 ? [] : [`# ${silentText(silent, format)}`]),
  ]
}

/** Nothing is known yet: a place for what is seen first. */
const emptyLines: readonly string[] = [`  LF: [${blank}, ${blank}, ${blank}]`]

function silentText(silent: readonly OpenFinding[], format: Formatter): string {
  const named = silent
    .slice(0, mostNamed)
    .map(
      ({ foot, what, place, grade, date }) =>
        `${foot} ${what}, ${place}, ${grade} (${format.shortDate(date)})`,
    )
  return format.words.starter.notSpokenOf(named.join('; '), silent.length - named.length)
}

/** What is on its way down the wall, and what the case is about and no visit has followed yet. */
export function askedFeatures(
  horse: Horse,
  past: readonly Visit[],
  features: readonly GrowOut[],
): { readonly going: readonly GrowOut[]; readonly unseen: readonly AskedAbout[] } {
  const followed = past.flatMap(({ growOut }) => growOut)
  return {
    going: features.filter(({ state }) => state !== 'grown out'),
    unseen: unseenProblems(horse, 'grow-out', followed),
  }
}

export function growOutLines(
  horse: Horse,
  past: readonly Visit[],
  features: readonly GrowOut[],
  format: Formatter,
): readonly string[] {
  const { going, unseen } = askedFeatures(horse, past, features)
  const lines = byFoot([
    ...going.map((one) => ({
      ...{ foot: one.foot, what: one.feature, place: one.place },
      remark: featureRemark(one, format),
    })),
    ...unseen.map((one) => ({ ...one, remark: null })),
  ])
  const shown = lines.length === 0 && past.length === 0 ? emptyLines : lines
  return shown.length === 0 ? [] : [remarked('grow-out:', format.words.starter.growOut), ...shown]
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
function byFoot(asked: readonly Line[]): readonly string[] {
  return feet.flatMap((foot) => {
    const [only, ...more] = asked.filter((one) => one.foot === foot)
    if (!only) return []
    const single = more.length === 0 ? bracketed(only.what, only.place ?? blank, blank) : null
    if (single !== null) return [remarked(`  ${foot}: ${single}`, only.remark)]
    return [
      `  ${foot}:`,
      ...[only, ...more].map(({ what, place, remark }) =>
        remarked(`    ${partsLine(what, place ?? blank, blank)}`, remark),
      ),
    ]
  })
}
