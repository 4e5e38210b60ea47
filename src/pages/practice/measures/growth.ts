/** What the hoof did between the visits and what the trims did at them, a wall at all feet. */
import { grouped } from '../../../casebook/grouped.ts'
import type { Growth } from '../../../trend/assessment.ts'
import { capital } from '../../shared/format.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { type FeetRow, type FeetTable, feetTable, textRow } from '../parts/feet-table.ts'

export interface WallGrowth {
  readonly name: string
  readonly table: FeetTable
}

/** What a figure cannot say: why growth is not known, and that a trim may hide in it. Walls with the same share one. */
export function growthSentences(of: HorseCase, growth: readonly Growth[]): readonly string[] {
  const { format } = of
  const told = growth.flatMap((one) => {
    const text = inWords(of, one)
    return text === null ? [] : [{ text, name: `${one.foot} ${format.name(one.measure)}` }]
  })
  return [...grouped(told, ({ text }) => text)].map(([text, those]) =>
    format.words.base.remark(format.list(those.map(({ name }) => name)), text),
  )
}

function inWords({ words, assessmentWords }: HorseCase, { phases, hidden }: Growth): string | null {
  if (hidden !== null) return assessmentWords.growthHidden[hidden]
  const unseen = phases.filter(({ arrivalRead }) => !arrivalRead).length
  return unseen === 0 ? null : words.horse.trimHides(unseen)
}

/** A table for each wall: growth between visits and trims at them, a column a foot. */
export const growthTables = (of: HorseCase, growth: readonly Growth[]): readonly WallGrowth[] =>
  [...grouped(growth, ({ measure }) => measure)].map(([measure, those]) => ({
    name: capital(of.format.name(measure)),
    table: feetTable(
      of,
      of.format.unit(measure),
      those.map(({ foot }) => foot),
      [...inAll(of, measure, those), ...steps(of, measure, those)],
    ),
  }))

/** Growth a month with its interval, over how long; how often was trimmed, and what that took in all. */
function inAll(of: HorseCase, measure: Growth['measure'], those: readonly Growth[]) {
  const { format, words } = of
  const w = words.horse
  return [
    textRow(
      of,
      w.growthRate,
      those.map(({ ratePerMonth, low, high }) =>
        ratePerMonth === null || low === null || high === null
          ? null
          : words.measures.rate(
              format.rateFigure(measure, ratePerMonth),
              format.intervalFigure(measure, low, high),
            ),
      ),
    ),
    textRow(
      of,
      w.growthOver,
      those.map(({ ratePerMonth, days }) => (ratePerMonth === null ? null : format.span(days))),
    ),
    textRow(
      of,
      w.trims,
      those.map(({ trims }) => (trims.length === 0 ? null : String(trims.length))),
    ),
    textRow(
      of,
      w.trimmed,
      those.map(({ trims }) =>
        trims.length === 0
          ? null
          : format.figure(
              measure,
              trims.reduce((sum, { step }) => sum - step, 0),
            ),
      ),
    ),
  ]
}

/** A row a visit: what had grown since the one before, and what the trim took. */
function steps(of: HorseCase, measure: Growth['measure'], those: readonly Growth[]): readonly FeetRow[] {
  const { format, words, visits } = of
  const w = words.horse
  const change = (value: number | undefined) =>
    value === undefined ? null : format.changeFigure(measure, value)
  return visits.flatMap(({ id, date }) => {
    const cells = those.map(({ phases, trims }) => {
      const grown = change(phases.find(({ toVisit }) => toVisit === id)?.gain)
      const trimmed = change(trims.find(({ visit }) => visit === id)?.step)
      return grown === null && trimmed === null ? null : { text: w.grownAndTrimmed(grown, trimmed) }
    })
    return cells.every((cell) => cell === null) ? [] : [{ name: format.shortDate(date), cells }]
  })
}
