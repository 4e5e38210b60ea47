/** What a case is about: as the practitioner wrote it, or the few things that the engine finds gravest. */
import type { Horse, ProblemSubject, Visit, WrittenProblem } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import type { GradeSeen, Problem, ProblemAbout } from './assessed-care.ts'
import type { Trend } from './assessed-trend.ts'
import type { GrowOut } from './assessment.ts'
import type { Caution } from './cautions/caution.ts'
import { edgeAhead } from './verdict.ts'

/** More are not chosen: a case is about a handful of problems. */
const mostChosen = 5
/** Findings from this grade on are chosen. */
const graveFrom = 2

export interface ProblemsOf {
  readonly horse: Horse
  readonly visits: readonly Visit[]
  readonly trends: readonly Trend[]
  readonly growOut: readonly GrowOut[]
  readonly cautions: readonly Caution[]
}

/** In order of importance. Each is of one foot; those of free words are of no foot where none was written. */
export function problemsOf(of: ProblemsOf): readonly Problem[] {
  const written = of.horse.problems.flatMap((one) => writtenAt(of, one))
  return written.length > 0 ? written : chosen(of)
}

function writtenAt(of: ProblemsOf, { feet: named, about, text }: WrittenProblem): readonly Problem[] {
  if (about.kind === 'words') {
    const foot = named.length === 1 ? (named[0] ?? null) : null
    return [{ foot, text, from: 'written', about, closedOn: null }]
  }
  const known = named.map((foot) => problemAt(of, foot, about, text))
  const told = known.filter(({ about: found }) => isTold(found))
  // Of several feet those of which something is known; where nothing is, the problem stands by its name.
  return told.length > 0 ? told : known.slice(0, 1)
}

const isTold = (about: ProblemAbout): boolean =>
  (about.kind === 'measure' && about.trend !== null) ||
  (about.kind === 'finding' && about.course.length > 0) ||
  (about.kind === 'grow-out' && about.growOut.length > 0)

function problemAt(of: ProblemsOf, foot: Foot, about: ProblemSubject, text: string): Problem {
  const found = aboutAt(of, foot, about)
  return { foot, text, from: 'written', about: found, closedOn: closedOn(found) }
}

function aboutAt(of: ProblemsOf, foot: Foot, about: ProblemSubject): ProblemAbout {
  if (about.kind === 'words') return about
  if (about.kind === 'measure') {
    const trend = of.trends.find((one) => one.foot === foot && one.measure === about.measure) ?? null
    return { kind: 'measure', measure: about.measure, trend }
  }
  const isMeant = (what: string, place: string) =>
    what === about.what && (about.place === null || about.place === place)
  if (about.kind === 'grow-out') {
    const growOut = of.growOut.filter((one) => one.foot === foot && isMeant(one.feature, one.place))
    return { ...about, growOut }
  }
  return { ...about, course: courseOf(of.visits, foot, isMeant) }
}

/** The gravest grade at each visit that speaks of it. */
const courseOf = (
  visits: readonly Visit[],
  foot: Foot,
  isMeant: (what: string, place: string) => boolean,
): readonly GradeSeen[] =>
  visits.flatMap(({ id, date, findings }): readonly GradeSeen[] => {
    const grades = findings
      .filter((one) => one.foot === foot && isMeant(one.what, one.place))
      .map(({ grade }) => grade)
    return grades.length === 0 ? [] : [{ visit: id, date, grade: Math.max(...grades) as GradeSeen['grade'] }]
  })

/** The day from which it is no problem any more; null while it is one. */
function closedOn(about: ProblemAbout): PlainDate | null {
  if (about.kind === 'finding') {
    // Gone from the first visit on that says so and that none after it takes back.
    const stillThere = about.course.findLastIndex(({ grade }) => grade > 0)
    return about.course[stillThere + 1]?.date ?? null
  }
  if (about.kind === 'grow-out') {
    const latest = about.growOut.map(({ state, latest: end }) => (state === 'grown out' ? end : null))
    if (latest.length === 0 || latest.includes(null)) return null
    return latest.toSorted().at(-1) ?? null
  }
  if (about.kind === 'measure' && about.trend !== null) return reachedOn(about.trend)
  return null
}

/** The first of the last readings in the band, where the level lies in it and does not leave it. */
function reachedOn({ position, verdict, target, points }: Trend): PlainDate | null {
  if (position !== 'on target' || target === null || verdict === 'worsening') return null
  const outside = points.findLastIndex(({ value }) => edgeAhead(value, target) !== null)
  return points[outside + 1]?.date ?? points.at(-1)?.date ?? null
}

/**
 * At most five, none of which a standing `stop` or `vet` caution speaks of: findings of grade 2 and 3 and those that got
 * worse; then what is off target and clearly moves; then what lies furthest from its band, in smallest real changes.
 */
function chosen(of: ProblemsOf): readonly Problem[] {
  const off = of.trends.filter(({ position }) => position === 'off target')
  const moving = off.filter(({ isClear }) => isClear).toSorted((a, b) => distance(b) - distance(a))
  const others = off.filter(({ isClear }) => !isClear).toSorted((a, b) => distance(b) - distance(a))
  const measured = [...moving, ...others].map((trend): Problem => {
    const about = { kind: 'measure', measure: trend.measure, trend } as const
    return { foot: trend.foot, text: null, from: 'chosen', about, closedOn: null }
  })
  return [...graveFindings(of), ...measured].slice(0, mostChosen)
}

function distance({ fit, last, target, smallestRealChange }: Trend): number {
  const level = fit?.levelAtLast ?? last.value
  const edge = target === null ? null : edgeAhead(level, target)
  return edge === null ? 0 : Math.abs(level - edge) / smallestRealChange
}

function graveFindings(of: ProblemsOf): readonly Problem[] {
  const named = new Map<string, { readonly foot: Foot; readonly what: string; readonly place: string }>()
  for (const { findings } of of.visits)
    for (const { foot, what, place } of findings) named.set(`${foot}|${what}|${place}`, { foot, what, place })
  return [...named.values()]
    .map(({ foot, what, place }) => {
      const course = courseOf(of.visits, foot, (w, p) => w === what && p === place)
      const now = course.at(-1)?.grade ?? 0
      const gotWorse = now > (course.at(-2)?.grade ?? now)
      return { foot, what, place, course, now, gotWorse }
    })
    .filter(
      ({ foot, what, now, gotWorse }) =>
        now > 0 && (now >= graveFrom || gotWorse) && !isCautioned(of, foot, what),
    )
    .toSorted(
      (a, b) =>
        b.now - a.now ||
        Number(b.gotWorse) - Number(a.gotWorse) ||
        feet.indexOf(a.foot) - feet.indexOf(b.foot),
    )
    .map(({ foot, what, place, course }): Problem => {
      const about = { kind: 'finding', what, place, course } as const
      return { foot, text: null, from: 'chosen', about, closedOn: null }
    })
}

/** Whether a caution to ask or tell the vet speaks of that finding. */
const isCautioned = ({ cautions }: ProblemsOf, foot: Foot, what: string): boolean =>
  cautions.some(
    ({ standing, level, feet: about, facts }) =>
      standing && level !== 'mind' && about.includes(foot) && 'finding' in facts && facts.finding === what,
  )
