/** What the hoof did between the visits and what the trims did at them, a wall at all feet. */
import type { Growth } from '../../trend/assessment.ts'
import type { Table } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { dateOfVisit, footTitle, type HorseCase } from './horse-case.ts'

export interface GrowthView {
  readonly measure: Growth['measure']
  /** In sentences, one entry a foot. */
  readonly sentences: readonly string[]
  /** Every stretch between visits and every trim, in the order of time, a column a foot. */
  readonly steps: Table
}

export function growthByWall(of: HorseCase, growth: readonly Growth[]): readonly GrowthView[] {
  const ids = [...new Set(growth.map(({ measure }) => measure))]
  return ids.map((measure) => {
    const those = growth.filter((one) => one.measure === measure)
    return { measure, sentences: those.map((one) => inWords(of, one)), steps: steps(of, measure, those) }
  })
}

function inWords(of: HorseCase, growth: Growth): string {
  const { format, words, assessmentWords } = of
  const unseen = growth.phases.filter(({ arrivalRead }) => !arrivalRead).length
  const hidden = unseen === 0 ? '' : ` ${words.horse.trimHides(unseen)}`
  const { foot, measure } = growth
  return (
    words.horse.growthOf(
      footTitle(of, foot),
      format.name(measure),
      assessmentWords.growthSentence(growth, format),
    ) + hidden
  )
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
