/** Staged plans step by step and how they were kept, and past forecasts one by one. */
import type { PastForecast, Plan } from '../../../trend/assessment.ts'
import type { Table } from '../../shared/figures.ts'
import { dateOfVisit, footTitle, type HorseCase } from '../case/horse-case.ts'

export interface PlanView {
  readonly foot: string
  readonly sentences: readonly string[]
  readonly steps: Table | null
  readonly kept: Table | null
}

export function planView(of: HorseCase, plan: Plan): PlanView {
  const { format, words, assessmentWords } = of
  const w = words.next
  const steps = plan.steps.map(({ date, expected }) => [format.date(date), format.length(expected)])
  const kept = plan.kept.map(({ date, expected, actual, standing }) => [
    format.date(date),
    format.length(expected),
    format.measure(plan.measure, actual),
    assessmentWords.planStanding[standing],
  ])
  const name = `${footTitle(of, plan.foot)}, ${format.name(plan.measure)}`
  return {
    foot: name,
    sentences: [
      assessmentWords.offSentence(plan, format),
      assessmentWords.planSentence(plan, format),
      w.planStands(assessmentWords.planStanding[plan.standing]),
    ],
    steps: steps.length === 0 ? null : { caption: w.planSteps(name), head: w.planStepsHead, rows: steps },
    kept: kept.length === 0 ? null : { caption: w.planKept(name), head: w.planKeptHead, rows: kept },
  }
}

export interface PastForecasts {
  readonly text: string
  readonly table: Table
}

export function pastForecasts(of: HorseCase): PastForecasts | null {
  const { made, held, forecasts } = of.assessment.backtest
  if (made === 0) return null
  const { format, words } = of
  const w = words.horse
  const row = (one: PastForecast) => [
    format.date(dateOfVisit(of, one.madeAt)),
    `${footTitle(of, one.foot)} ${format.name(one.measure)}`,
    format.measure(one.measure, one.edge),
    w.pastRange(format.date(one.earliest), one.latest === null ? w.pastOpen : format.date(one.latest)),
    one.seenBy === null
      ? w.pastNotSeen(format.date(one.seenAfter))
      : w.pastSeen(format.date(one.seenAfter), format.date(one.seenBy)),
    one.held ? w.yes : w.no,
  ]
  return {
    text: w.pastForecasts(held, made),
    table: { caption: w.pastForecastsWhy, head: w.pastHead, rows: forecasts.map(row) },
  }
}
