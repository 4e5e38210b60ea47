/** How the problems of a horse are, in one plain line. */
import { addDays } from '../../../hoof/dates.ts'
import type { Foot } from '../../../hoof/feet.ts'
import { type GradeSeen, type GrowOut, type Problem, standingOf } from '../../../trend/assessment.ts'
import { monthText } from '../../shared/format.ts'
import { feetTogether } from '../case/feet-together.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { gradeName } from '../parts/findings.ts'

/** One problem at one foot: what it is and how it is now. */
export interface ProblemState {
  /** Null where free words name no foot. */
  readonly foot: Foot | null
  readonly subject: string
  /** Empty for free words, of which nothing is known. */
  readonly state: string
}

/** A problem that ended longer ago is no news any more. */
const daysTold = 92
/** More subjects do not fit a line. */
const mostSubjects = 4
/** Letters of free words that fit it. */
const mostLetters = 80

/** In order of importance, each foot with a subject once. */
export function problemStates(of: HorseCase): readonly ProblemState[] {
  const since = addDays(of.assessment.asOf, -daysTold)
  const seen = new Set<string>()
  return of.assessment.problems
    .filter(({ closedOn }) => closedOn === null || closedOn >= since)
    .map((problem) => ({ foot: problem.foot, ...toldOf(of, problem) }))
    .filter(({ foot, subject }) => {
      const key = `${foot} ${subject}`
      const isNew = !seen.has(key)
      seen.add(key)
      return isNew
    })
}

function toldOf(of: HorseCase, { about, text }: Problem): Pick<ProblemState, 'subject' | 'state'> {
  const w = of.words.front
  if (about.kind === 'words') return { subject: shortened(text ?? ''), state: '' }
  if (about.kind === 'measure') {
    const { measure, trend } = about
    const state = trend === null ? w.notRead : of.assessmentWords.standings[standingOf(trend)]
    return { subject: of.format.name(measure), state }
  }
  const state = about.kind === 'finding' ? gradeState(of, about.course) : growOutState(of, about.growOut)
  return { subject: about.what, state }
}

const shortened = (text: string): string =>
  text.length > mostLetters ? `${text.slice(0, mostLetters - 1).trimEnd()}…` : text

/** The grade as last seen, what it was before it changed, and the day where the last visit did not speak of it. */
function gradeState(of: HorseCase, course: readonly GradeSeen[]): string {
  const w = of.words.front
  const last = course.at(-1)
  if (last === undefined) return w.notNoted
  if (last.grade === 0) return w.gone
  const was = course.findLast(({ grade }) => grade !== last.grade)
  const beside = [
    ...(was === undefined || was.grade === 0 ? [] : [w.was(gradeName(of, was.grade))]),
    ...(last.visit === of.visits.at(-1)?.id ? [] : [of.format.shortDate(last.date)]),
  ]
  const grade = gradeName(of, last.grade)
  return beside.length === 0 ? grade : w.beside(grade, beside.join(', '))
}

/** Of several places on one foot the one that takes longest. */
function growOutState(of: HorseCase, growOut: readonly GrowOut[]): string {
  const w = of.words.front
  const { asOf } = of.assessment
  const slowest = growOut.toSorted((a, b) => (a.date ?? '9').localeCompare(b.date ?? '9')).at(-1)
  if (slowest === undefined) return w.notNoted
  if (slowest.state === 'grown out') return w.grownOut
  if (slowest.state === 'due') return w.growOutDue
  return slowest.date === null ? w.growingDown : w.outAbout(monthText(slowest.date, asOf, of.format))
}

/** `Right fore toe angle improving, left fore on target; thrush gone`. */
export function problemsLine(of: HorseCase, states: readonly ProblemState[], isCautioned: boolean): string {
  const w = of.words.front
  if (of.visits.length === 0) return w.neverSeen
  if (states.length === 0) return isCautioned ? w.noProblemBeside : w.noProblem
  const subjects = [...new Set(states.map(({ subject }) => subject))]
  const told = subjects.slice(0, mostSubjects).map((subject) =>
    subjectText(
      of,
      states.filter((one) => one.subject === subject),
    ),
  )
  const more = subjects.length - told.length
  return w.problems(more > 0 ? [...told, w.moreProblems(more)] : told)
}

function subjectText(of: HorseCase, states: readonly ProblemState[]): string {
  const w = of.words.front
  return [...new Set(states.map(({ state }) => state))]
    .map((state, i) => {
      const here = states.filter((one) => one.state === state)
      const about = feetTogether(
        of,
        here.flatMap(({ foot }) => foot ?? []),
      )
      return i === 0 ? w.problem(about, here[0]?.subject ?? '', state) : w.problemAlso(about, state)
    })
    .join(', ')
}
