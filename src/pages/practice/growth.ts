/** What the hoof did between the visits and what the trims did at them, a wall at all feet. */
import type { Growth } from '../../trend/assessment.ts'
import type { Table } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { dateOfVisit, footTitle, type HorseCase } from './horse-case.ts'

/** A sentence for each wall; walls of which the same is to be said share one. */
export function growthSentences(of: HorseCase, growth: readonly Growth[]): readonly string[] {
  const { format } = of
  const walls = new Map<string, string[]>()
  for (const one of growth) {
    const text = inWords(of, one)
    walls.set(text, [...(walls.get(text) ?? []), `${one.foot} ${format.name(one.measure)}`])
  }
  return [...walls].map(([text, names]) => format.words.base.remark(format.list(names), text))
}

/** A table for each wall: growth between visits and trims at them, a column a foot. */
export function growthTables(of: HorseCase, growth: readonly Growth[]): readonly Table[] {
  const ids = [...new Set(growth.map(({ measure }) => measure))]
  return ids.map((measure) =>
    steps(
      of,
      measure,
      growth.filter((one) => one.measure === measure),
    ),
  )
}

function inWords({ format, words, assessmentWords }: HorseCase, growth: Growth): string {
  const unseen = growth.phases.filter(({ arrivalRead }) => !arrivalRead).length
  const hidden = unseen === 0 || growth.hidden !== null ? '' : ` ${words.horse.trimHides(unseen)}`
  return assessmentWords.growthSentence(growth, format) + hidden
}

interface Step {
  readonly name: string
  /** Order in time: the trim of a visit, then the stretch from it on. */
  readonly order: string
  readonly cells: string[]
}

function steps(of: HorseCase, measure: Growth['measure'], growth: readonly Growth[]): Table {
  const { format, words } = of
  const w = words.horse
  const found = new Map<string, Step>()
  const put = (column: number, order: string, name: string, text: string) => {
    const step = found.get(order) ?? { name, order, cells: growth.map(() => '–') }
    step.cells[column] = text
    found.set(order, step)
  }
  const date = (visit: string) => dateOfVisit(of, visit)
  const short = (visit: string) => format.shortDate(date(visit))
  for (const [column, { phases, trims }] of growth.entries()) {
    for (const { visit, step } of trims) {
      put(column, `${date(visit)} ${visit} 0`, w.trimAt(short(visit)), format.change(measure, step))
    }
    for (const { fromVisit, toVisit, days, gain, perMonth } of phases) {
      const pace = format.words.base.perMonth(format.fine(measure, perMonth))
      put(
        column,
        `${date(fromVisit)} ${fromVisit} 1 ${date(toVisit)} ${toVisit}`,
        w.grownFrom(short(fromVisit), short(toVisit), Math.round(days)),
        w.grown(format.change(measure, gain), pace),
      )
    }
  }
  const inOrder = [...found.values()].sort((a, b) => (a.order < b.order ? -1 : 1))
  return {
    caption: w.growthSteps(capital(format.name(measure))),
    head: [w.growthStep, ...growth.map(({ foot }) => footTitle(of, foot))],
    rows: inOrder.map(({ name, cells }) => [name, ...cells]),
  }
}
