/** Left against right of a pair, and what lowering a foot would do. */
import { grouped } from '../../../casebook/grouped.ts'
import type { PlainDate } from '../../../hoof/dates.ts'
import { pairs as bothPairs } from '../../../hoof/feet.ts'
import type { FootGeometry, PairComparison } from '../../../trend/assessment.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'

/** The latest comparison of each measure of each pair. */
export const latestPairTexts = (of: HorseCase): readonly string[] =>
  bothPairs.flatMap((pair) => pairTexts(of, latestOfPair(of, pair), of.visits.at(-1)?.date ?? null))

/** The latest readings of both feet of a pair: `after` where both stages were read, one line a measure. */
function latestOfPair({ assessment }: HorseCase, pair: PairComparison['pair']): readonly PairComparison[] {
  const mine = assessment.pairs.filter((one) => one.pair === pair)
  const ids = [...new Set(mine.map(({ measure }) => measure))]
  return ids.flatMap((id) => {
    const last = mine.filter(({ measure }) => measure === id)
    const newest = last.at(-1)?.visit
    const there = last.filter(({ visit }) => visit === newest)
    return there.find(({ stage }) => stage === 'after') ?? there[0] ?? []
  })
}

/** Those of left and right that really differ, in a sentence each. */
export const realPairTexts = (of: HorseCase, comparisons: readonly PairComparison[], day: PlainDate) =>
  pairTexts(
    of,
    comparisons.filter(({ isReal }) => isReal),
    day,
  )

/**
 * Left against right: a sentence for each that really differs, one for all others of a pair.
 * @param day of which it need not be said that the readings are of it
 */
function pairTexts(
  of: HorseCase,
  comparisons: readonly PairComparison[],
  day: PlainDate | null,
): readonly string[] {
  const { format, words } = of
  const w = words.horse
  const dated = (said: string, { stage, date }: PairComparison) => {
    const when = [
      ...(stage === 'before' ? [words.problem.onArrival] : []),
      ...(date === day ? [] : [format.date(date)]),
    ]
    return when.length === 0 ? said : w.pairOn(said, when.join(', '))
  }
  const figures = ({ measure, left, right, smallestRealDifference }: PairComparison) =>
    [
      format.name(measure),
      format.measure(measure, left),
      format.measure(measure, right),
      format.fine(measure, smallestRealDifference),
    ] as const
  const real = comparisons.filter(({ isReal }) => isReal)
  const within = comparisons.filter(({ isReal }) => !isReal)
  return [
    ...real.map((one) => {
      const [name, left, right, limit] = figures(one)
      const gap = format.measure(one.measure, Math.abs(one.difference))
      return dated(w.pairReal(w.pair[one.pair], name, left, right, gap, limit), one)
    }),
    ...[...grouped(within, ({ pair }) => pair)].map(([pair, those]) =>
      w.pairWithin(w.pair[pair], those.map((one) => dated(w.pairBoth(...figures(one)), one)).join('; ')),
    ),
  ]
}

/** Of the feet that may be worked on. */
export const loweringTexts = (of: HorseCase): readonly string[] =>
  of.assessment.geometry
    .filter(({ foot }) => !of.assessment.heldFeet.includes(foot))
    .map((one) => loweringText(of, one))

function loweringText(of: HorseCase, { foot, perMillimetre }: FootGeometry): string {
  const { format, words } = of
  const angle = (value: number) => format.fine('toe-angle', value)
  const length = (value: number) => `${value < 0 ? '−' : ''}${Math.abs(value).toFixed(2)} mm`
  return [
    words.horse.geometryToe(
      footTitle(of, foot),
      signed(angle, perMillimetre.toe.angle),
      length(perMillimetre.toe.length),
    ),
    words.horse.geometryHeel(signed(angle, perMillimetre.heel.angle), length(perMillimetre.heel.length)),
  ].join(' ')
}

const signed = (text: (value: number) => string, value: number): string =>
  value > 0 ? `+${text(value)}` : text(value)
