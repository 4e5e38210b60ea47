/** What the front page keeps of a horse. */
import type { Visit } from '../../casebook/model.ts'
import { feet } from '../../hoof/feet.ts'
import { isMeasureId } from '../../hoof/measures.ts'
import { type Standing, standingOf, type Trend } from '../../trend/assessment.ts'
import { cautionLines, standingCautions, wordsOf } from '../shared/caution-lines.ts'
import type { HorseSummary } from '../shared/summary.ts'
import { heelText } from './drawings.ts'
import { telling } from './feet-part.ts'
import { findingName, gradeName, openFindingsOf } from './findings.ts'
import { footTitle, type HorseCase } from './horse-case.ts'
import { ownerName } from './profile.ts'

/** Tags that the front page has a filter for. */
export const filterTags = ['caution', 'overdue', 'worsening', 'improving', 'finding'] as const
type FilterTag = (typeof filterTags)[number]

/** In the order in which the state names them. */
const standingOrder: readonly Standing[] = [
  'worsening',
  'improving',
  'on target',
  'held',
  'steady',
  'rising',
  'falling',
  'not worsening',
  'not improving',
  'too early to tell',
]

export function summaryOf(of: HorseCase): HorseSummary {
  const { horse, assessment, practice, visits } = of
  const { due, overdueDays } = assessment.nextVisit
  return {
    id: horse.id,
    name: horse.name,
    owner: ownerName(horse, practice.owners),
    visits: visits.length,
    lastVisit: visits.at(-1)?.date ?? null,
    due,
    overdueDays,
    state: stateText(of),
    tags: tagsOf(of),
    cautions: frontLines(of),
    changes: lastChanges(of),
    backtest: { made: assessment.backtest.made, held: assessment.backtest.held },
  }
}

/** What the front page shows of the cautions in force; an overdue visit has its own list there. */
const frontLines = (of: HorseCase): HorseSummary['cautions'] =>
  cautionLines(
    standingCautions(of.assessment.cautions).filter(({ code }) => code !== 'visit-overdue'),
    of.format,
    (one) => wordsOf(of.format, one).practice(one.facts, of.format),
  ).map(({ level, text, date, folded }) => ({ level, text, date, folded }))

/** One line: a stop first of all, else the count of each verdict over the measures that have moved or could have. */
function stateText(of: HorseCase): string {
  const { format, words, assessment } = of
  const w = words.front
  const stops = standingCautions(assessment.cautions).filter(({ level }) => level === 'stop')
  if (stops.some((stop) => stop.feet.length === feet.length)) return w.stateStopHorse
  if (stops.length > 0) {
    const named = feet.filter((foot) => stops.some((stop) => stop.feet.includes(foot)))
    return w.stateStop(format.list(named.map((foot) => format.foot(foot))))
  }
  const several = assessment.trends.filter(({ points }) => points.length > 1)
  if (several.length === 0) return w.stateNew
  const parts = standingOrder.flatMap((standing) => {
    const those = several.filter((trend) => standingOf(trend) === standing)
    const [only] = those
    if (only === undefined) return []
    if (standing === 'worsening' && those.length === 1)
      return [w.worst(format.foot(only.foot), format.name(only.measure))]
    return [w.state[standing](those.length)]
  })
  return w.stateOf(parts.join(', '))
}

function tagsOf(of: HorseCase): readonly string[] {
  const { assessment } = of
  const verdicts = assessment.trends.map(({ verdict }) => verdict)
  const open = openFindingsOf(of)
  const set: Readonly<Record<FilterTag, boolean>> = {
    caution: standingCautions(assessment.cautions).some(({ code }) => code !== 'visit-overdue'),
    overdue: (assessment.nextVisit.overdueDays ?? 0) > 0,
    worsening: verdicts.includes('worsening'),
    improving: verdicts.includes('improving'),
    finding: open.length > 0,
  }
  return [...filterTags.filter((tag) => set[tag]), ...new Set(open.map(({ what }) => what))]
}

const mostChanges = 4

/** What the last visit showed against the one before: readings beyond measuring error, findings that came or went. */
function lastChanges(of: HorseCase): readonly string[] {
  const last = of.visits.at(-1)
  if (last === undefined || of.visits.length < 2) return []
  return [...findingChanges(of, last), ...readingChanges(of, last)].slice(0, mostChanges)
}

/** The telling measures first, then by size against measuring error; what only follows from other readings is left out. */
function readingChanges(of: HorseCase, last: Visit): readonly string[] {
  const step = ({ points }: Trend) => (points.at(-1)?.value ?? 0) - (points.at(-2)?.value ?? 0)
  const weight = (trend: Trend) => Math.abs(step(trend)) / trend.smallestRealChange
  const rank = ({ measure }: Trend) => (telling.includes(measure) ? 0 : 1)
  return of.assessment.trends
    .filter(
      (trend) => trend.points.length > 1 && trend.points.at(-1)?.visit === last.id && weight(trend) >= 1,
    )
    .filter((trend) => telling.includes(trend.measure) || isMeasureId(trend.measure))
    .toSorted((a, b) => rank(a) - rank(b) || weight(b) - weight(a))
    .map((trend) => {
      const [from, to] = [trend.points.at(-2)?.value ?? 0, trend.last.value].map((value) =>
        trend.measure === 'heel-balance' ? heelText(of, value) : of.format.measure(trend.measure, value),
      )
      return of.words.front.changeReal(
        footTitle(of, trend.foot),
        of.format.name(trend.measure),
        from ?? '',
        to ?? '',
      )
    })
}

function findingChanges(of: HorseCase, last: Visit): readonly string[] {
  const w = of.words.front
  const before = of.visits.slice(0, -1)
  return last.findings.flatMap((finding) => {
    const { foot, what, place, grade } = finding
    const was = before
      .flatMap(({ findings }) => findings)
      .findLast((one) => one.foot === foot && one.what === what && one.place === place)
    const [where, name] = [footTitle(of, foot), findingName(finding)]
    if (was === undefined) return grade > 0 ? [w.findingNew(where, name, gradeName(of, grade))] : []
    if (was.grade === grade) return []
    return grade === 0
      ? [w.findingGone(where, name)]
      : [w.findingMoved(where, name, gradeName(of, was.grade), gradeName(of, grade))]
  })
}
