/** What the case is about: foot, problem, first value and now, the way it goes, when it should be there, what is next. */
import { daysBetween } from '../../../hoof/dates.ts'
import type { Foot } from '../../../hoof/feet.ts'
import type { GrowOut, Problem, Trend } from '../../../trend/assessment.ts'
import type { Sparkline } from '../../shared/figures.ts'
import { findingName } from '../../shared/findings.ts'
import { capital } from '../../shared/format.ts'
import { expectedText, groundText } from '../case/ahead.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'
import { bareText, type ShownReading, shownEnd, valueText } from '../case/shown-reading.ts'
import { type VerdictView, verdictView } from '../case/verdict-view.ts'

export interface ProblemsPart {
  /** That they were chosen, where none are written; that there are none. */
  readonly note: string | null
  readonly open: readonly ProblemView[]
  /** Beyond the first, folded away. */
  readonly more: readonly ProblemView[]
  readonly moreHead: string
  /** A line each, with the day. */
  readonly closed: readonly string[]
}

export interface ProblemView {
  readonly foot: Foot | null
  readonly footName: string | null
  readonly name: string
  /** Where all that is known of it stands. */
  readonly href: string | null
  readonly first: ShownReading | null
  readonly now: ShownReading | null
  /** Where it was read on arrival alone. */
  readonly stage: string | null
  /** Day of the first value, where that is not of the first visit; and of the last, where that is not of the last. */
  readonly since: string | null
  readonly readOn: string | null
  readonly spark: Sparkline | null
  readonly standing: VerdictView | null
  readonly expected: string | null
  /** What is next. */
  readonly next: string
  /** Day of the first value, expected day, what is next: beside the verdict. */
  readonly told: string
}

/** A case is about a handful of problems: more are folded away. */
const mostOpen = 5
/** Of more readings than these the text alternative names the ends. */
const mostNamed = 8

type About<K extends Problem['about']['kind']> = Extract<Problem['about'], { readonly kind: K }>
/** What differs between kinds of problems. */
type Told = Omit<ProblemView, 'foot' | 'footName' | 'told'>

export function problemsPart(of: HorseCase): ProblemsPart {
  const { assessment, words } = of
  const { problems } = assessment
  const open = problems.filter(({ closedOn }) => closedOn === null)
  const views = open.map((problem) => problemView(of, problem))
  return {
    note: noteOf(of),
    open: views.slice(0, mostOpen),
    more: views.slice(mostOpen),
    moreHead: words.problem.more(views.length - mostOpen),
    closed: problems.flatMap(({ foot, about, closedOn }) =>
      closedOn === null || foot === null
        ? []
        : [
            (about.kind === 'measure' ? words.problem.reached : words.problem.closed)(
              foot,
              nameOf(of, about),
              of.format.date(closedOn),
            ),
          ],
    ),
  }
}

function noteOf({ assessment, words, format, visits }: HorseCase): string | null {
  const { problems } = assessment
  const w = words.problem
  if (problems.length === 0) return w.none
  if (problems.every(({ closedOn }) => closedOn !== null)) return w.noneOpen
  const said = [
    ...(problems.some(({ from }) => from === 'chosen') ? [w.chosen] : []),
    ...(visits.length > 1 ? [w.firstOf(format.date(visits[0]?.date ?? ''))] : []),
  ]
  return said.length === 0 ? null : said.join(' ')
}

function problemView(of: HorseCase, problem: Problem): ProblemView {
  const { foot, about } = problem
  const told = toldOf(of, problem, about)
  const { stage, since, expected, next } = told
  return {
    foot,
    footName: foot === null ? null : footTitle(of, foot),
    ...told,
    told: [stage, since, expected, next].filter((part) => part !== null).join(' · '),
  }
}

function toldOf(of: HorseCase, { foot, text }: Problem, about: Problem['about']): Told {
  switch (about.kind) {
    case 'measure':
      return about.trend === null ? untold(of, nameOf(of, about)) : measureTold(of, about.trend)
    case 'finding':
      return findingTold(of, about, foot)
    case 'grow-out':
      return growOutTold(of, about)
    case 'words':
      return { ...untold(of, withoutFoot(text ?? '', foot)), next: of.words.problem.freeWords }
  }
}

/** Free words begin with the foot that stands before them already. */
const withoutFoot = (text: string, foot: Foot | null): string =>
  foot !== null && text.startsWith(`${foot} `) ? text.slice(foot.length + 1) : text

function nameOf({ format }: HorseCase, about: Problem['about']): string {
  if (about.kind === 'measure') return format.name(about.measure)
  if (about.kind === 'words') return ''
  return about.place === null ? about.what : findingName({ what: about.what, place: about.place })
}

const untold = ({ words }: HorseCase, name: string): Told => ({
  name,
  href: null,
  first: null,
  now: null,
  stage: null,
  since: null,
  readOn: null,
  spark: null,
  standing: null,
  expected: null,
  next: words.problem.nothingRead,
})

const valuesSaid = ({ words }: HorseCase, values: readonly string[]): string =>
  values.length <= mostNamed
    ? values.join(', ')
    : words.problem.sparkEnds(values[0] ?? '', values.at(-1) ?? '', values.length)

/** Day of a first value that is not of the first visit. */
const sinceUnlessFirst = ({ visits, format, words }: HorseCase, date: string): string | null =>
  date === visits[0]?.date ? null : words.problem.since(format.shortDate(date))

/** Of a day that is not the last visit's. */
const dayUnlessLast = ({ visits, format, words }: HorseCase, visit: string, date: string): string | null =>
  visit === visits.at(-1)?.id ? null : words.problem.readOn(format.shortDate(date))

function measureTold(of: HorseCase, trend: Trend): Told {
  const { format, words } = of
  const { measure, points, first, last, target } = trend
  const name = format.name(measure)
  const several = points.length > 1
  const values = points.map(({ value }) => valueText(of, measure, value))
  const said = valuesSaid(of, values)
  const readOn = dayUnlessLast(of, last.visit, last.date)
  return {
    name,
    href: `measures.html#${measure}`,
    first: several ? shownEnd(of, trend, 'first', bareText) : null,
    now: shownEnd(of, trend, 'last'),
    stage: trend.stage === 'before' ? words.problem.onArrival : null,
    since: several ? sinceUnlessFirst(of, first.date) : null,
    readOn,
    spark: several
      ? {
          points: points.map(({ date, value }) => ({ at: daysBetween(first.date, date), value })),
          band: target,
          within: [],
          description:
            target === null
              ? words.problem.spark(capital(name), said)
              : words.problem.sparkBand(capital(name), said, format.band(measure, target)),
        }
      : null,
    standing: verdictView(of, trend),
    expected: expectedText(of, trend),
    next: nextOfMeasure(of, trend),
  }
}

function nextOfMeasure(of: HorseCase, trend: Trend): string {
  const { assessment, format, visits } = of
  const w = of.words.problem.next
  const { foot, measure, last, forecast, verdict, position } = trend
  if (assessment.heldFeet.includes(foot)) return w.held
  if (assessment.plans.some((plan) => plan.foot === foot && plan.measure === measure)) return w.plan
  if (last.visit !== visits.at(-1)?.id) return w.unread(format.shortDate(last.date))
  if (forecast?.kind === 'date' && forecast.isDue) return w.read
  if (position === 'on target') return w.hold
  switch (verdict) {
    case 'improving':
    case 'not worsening':
      return w.keepOn
    case 'worsening':
      return w.cause
    case 'steady':
    case 'not improving':
      return w.other
    default:
      return w.read
  }
}

function findingTold(of: HorseCase, about: About<'finding'>, foot: Foot | null): Told {
  const { format, words, assessment } = of
  const { course } = about
  const [first] = course
  const last = course.at(-1)
  if (first === undefined || last === undefined) return untold(of, nameOf(of, about))
  const w = words.problem
  const grade = (value: number) => w.grade[value] ?? ''
  const several = course.length > 1
  const before = course.at(-2)?.grade ?? last.grade
  const way = !several ? 'one' : last.grade < before ? 'better' : last.grade > before ? 'worse' : 'same'
  const tone = way === 'better' ? 'good' : way === 'worse' ? 'bad' : 'plain'
  const name = nameOf(of, about)
  const readOn = dayUnlessLast(of, last.visit, last.date)
  const isSilent = last.visit !== assessment.visits.at(-1)
  const key = (seen: { readonly visit: string }) => `${foot} ${name} ${seen.visit}`
  return {
    name,
    href: 'measures.html#findings',
    first: first.grade === last.grade ? null : { text: grade(first.grade), reading: key(first) },
    now: { text: grade(last.grade), reading: key(last) },
    stage: null,
    since: several ? sinceUnlessFirst(of, first.date) : null,
    readOn,
    spark: several
      ? {
          points: course.map(({ date, grade: value }) => ({ at: daysBetween(first.date, date), value })),
          band: null,
          within: [0, 3],
          description: w.spark(
            capital(name),
            valuesSaid(
              of,
              course.map((seen) => grade(seen.grade)),
            ),
          ),
        }
      : null,
    standing: { text: w.finding[way], tone },
    expected: null,
    next: isSilent
      ? w.next.silent(format.shortDate(last.date))
      : way === 'worse'
        ? w.next.cause
        : way === 'better'
          ? w.next.care
          : w.next.look,
  }
}

function growOutTold(of: HorseCase, about: About<'grow-out'>): Told {
  const open = about.growOut.find(({ state }) => state !== 'grown out') ?? about.growOut[0]
  return open === undefined ? untold(of, nameOf(of, about)) : featureTold(of, open)
}

function featureTold(of: HorseCase, one: GrowOut): Told {
  const { format, words } = of
  const w = words.problem
  const { sightings, state, wallLength } = one
  const [first] = sightings
  const last = sightings.at(-1)
  const name = findingName({ what: one.feature, place: one.place })
  if (first === undefined || last === undefined) return untold(of, name)
  const several = sightings.length > 1
  const shown = (seen: { readonly visit: string }, text: string) => ({
    text,
    reading: `${one.foot} ${name} ${seen.visit}`,
  })
  return {
    name,
    href: 'measures.html#grow-out',
    first: several ? shown(first, format.figure('toe-length', first.distance)) : null,
    now: shown(last, format.length(last.distance)),
    stage: null,
    since: several ? sinceUnlessFirst(of, first.date) : null,
    readOn: dayUnlessLast(of, last.visit, last.date),
    spark: several
      ? {
          // Down the wall, from the hairline to the ground.
          points: sightings.map(({ date, distance }) => ({
            at: daysBetween(first.date, date),
            value: -distance,
          })),
          band: null,
          within: [0, ...(wallLength === null ? [] : [-wallLength])],
          description: w.spark(
            capital(name),
            valuesSaid(
              of,
              sightings.map(({ distance }) => format.length(distance)),
            ),
          ),
        }
      : null,
    standing: { text: w.growOut[state], tone: 'plain' },
    expected: groundText(of, one),
    next: state === 'wall length unknown' ? w.next.measureWall : state === 'due' ? w.next.look : w.next.read,
  }
}
