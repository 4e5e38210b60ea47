/** Left against right of a pair, and what lowering a foot would do. */
import { pairs as bothPairs } from '../../hoof/feet.ts'
import type { FootGeometry, PairComparison } from '../../trend/assessment.ts'
import { footTitle, type HorseCase } from './horse-case.ts'

/** The latest comparison of each measure of each pair. */
export const latestPairTexts = (of: HorseCase): readonly string[] =>
  bothPairs.flatMap((pair) => pairTexts(of, latestOfPair(of, pair)))

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

/** A sentence for each comparison of left and right, with its day where that is not the last visit's. */
export const pairTexts = (of: HorseCase, comparisons: readonly PairComparison[]): readonly string[] =>
  comparisons.map(
    ({ pair, measure, left, right, difference, smallestRealDifference, isReal, date, stage }) => {
      const { format, words, visits } = of
      const sentence = isReal ? words.horse.pairReal : words.horse.pairWithin
      const said = sentence(
        words.horse.pair[pair],
        format.name(measure),
        format.measure(measure, left),
        format.measure(measure, right),
        format.measure(measure, Math.abs(difference)),
        format.fine(measure, smallestRealDifference),
      )
      const when = [
        ...(stage === 'before' ? [words.problem.onArrival] : []),
        ...(date === visits.at(-1)?.date ? [] : [format.date(date)]),
      ]
      return when.length === 0 ? said : words.horse.pairOn(said, when.join(', '))
    },
  )

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
