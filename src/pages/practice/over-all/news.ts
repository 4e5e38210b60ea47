/** What the last visit of a horse brought: findings that came, went or changed, and measures that clearly move. */
import { type Foot, feet } from '../../../hoof/feet.ts'
import { type AnyMeasureId, isMeasureId } from '../../../hoof/measures.ts'
import type { Trend, Verdict } from '../../../trend/assessment.ts'
import { findingName } from '../../shared/findings.ts'
import { capital } from '../../shared/format.ts'
import type { HorseSummary } from '../../shared/summary.ts'
import { feetTogether } from '../case/feet-together.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'
import { gradeName, seenBefore } from '../parts/findings.ts'

export function newsOf(of: HorseCase): HorseSummary['news'] {
  const moving = movingCourses(of)
  return {
    findings: findingChanges(of),
    moves: ways.flatMap((way) => moveSentence(of, way, moving)),
    moving: moving.length,
  }
}

/** What got worse is said first. */
const ways = ['worsening', 'improving', 'rising', 'falling'] as const
type Way = (typeof ways)[number]

interface Moving {
  readonly measure: AnyMeasureId
  readonly feet: readonly Foot[]
  readonly way: Way
}

/**
 * Courses that clearly move (false discovery rate over the horse) and were read at the last visit. All feet together
 * are told of where no single foot moves clearly; what only follows from other readings is left to the horse's page.
 */
function movingCourses({ assessment, visits }: HorseCase): readonly Moving[] {
  const last = visits.at(-1)?.id
  const isNews = ({ isClear, last: reading, measure }: Trend<Foot | 'all'>) =>
    isClear && reading.visit === last && (isMeasureId(measure) || measure === 'heel-balance')
  const isWay = (verdict: Verdict): verdict is Way => (ways as readonly Verdict[]).includes(verdict)
  const single = assessment.trends
    .filter(isNews)
    .flatMap(({ measure, foot, verdict }): readonly Moving[] =>
      isWay(verdict) ? [{ measure, feet: [foot], way: verdict }] : [],
    )
  const all = assessment.together
    .filter(isNews)
    .filter(({ measure }) => single.every((one) => one.measure !== measure))
    .flatMap(({ measure, verdict }): readonly Moving[] =>
      isWay(verdict) ? [{ measure, feet, way: verdict }] : [],
    )
  return [...single, ...all]
}

/** `Improving: toe angle at the right fore; breakover at both fores.` */
function moveSentence(of: HorseCase, way: Way, moving: readonly Moving[]): readonly string[] {
  const w = of.words.office
  const here = moving.filter((one) => one.way === way)
  if (here.length === 0) return []
  const told = [...new Set(here.map(({ measure }) => measure))].map((measure) => {
    const about = here.filter((one) => one.measure === measure).flatMap((one) => one.feet)
    return w.moves(of.format.name(measure), feetTogether(of, about))
  })
  return [w.moving(capital(of.assessmentWords.standings[way]), told.join('; '))]
}

function findingChanges(of: HorseCase): readonly string[] {
  const last = of.visits.at(-1)
  if (last === undefined || of.visits.length < 2) return []
  const w = of.words.office
  const before = of.visits.slice(0, -1)
  return last.findings.flatMap((finding) => {
    const { foot, grade } = finding
    const was = seenBefore(before, finding)
    const [where, name] = [footTitle(of, foot), findingName(finding)]
    if (was === undefined) return grade > 0 ? [w.findingNew(where, name, gradeName(of, grade))] : []
    if (was.grade === grade) return []
    return grade === 0
      ? [w.findingGone(where, name)]
      : [w.findingMoved(where, name, gradeName(of, was.grade), gradeName(of, grade))]
  })
}
