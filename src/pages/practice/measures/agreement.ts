/** Hand against photograph: how far the two differ where both were taken of one thing. */
import { feet } from '../../../hoof/feet.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import type { AssessedReading } from '../../../trend/assessment.ts'
import { z975 } from '../../../trend/student.ts'
import type { AgreementChart, Table } from '../../shared/figures.ts'
import { drawnValue, kindOf } from '../../shared/format.ts'
import type { HorseCase } from '../case/horse-case.ts'

interface ReadTwice {
  readonly hand: AssessedReading
  readonly photo: AssessedReading
}

/** Fewer do not show a spread. */
const fewestPairs = 4
const kinds = [
  ['angle', 'toe-angle'],
  ['length', 'toe-length'],
] as const

/** A plot of lengths and one of angles, where there are enough of them; the pairs themselves as its table. */
export function agreementCharts(of: HorseCase): readonly AgreementChart[] {
  const pairs = pairsOf(of)
  return kinds.flatMap(([kind, like]) => {
    const those = pairs.filter(({ hand }) => kindOf(hand.measure) === kind)
    return those.length < fewestPairs ? [] : [chartOf(of, kind, like, those)]
  })
}

function pairsOf({ assessment }: HorseCase): readonly ReadTwice[] {
  const key = ({ visit, stage, foot, measure }: AssessedReading) => `${visit} ${stage} ${foot} ${measure}`
  const photos = new Map(
    assessment.readings.filter(({ source }) => source === 'photo').map((one) => [key(one), one] as const),
  )
  return assessment.readings.flatMap((hand) => {
    const photo = hand.source === 'entered' ? photos.get(key(hand)) : undefined
    return photo === undefined ? [] : [{ hand, photo }]
  })
}

const differenceOf = ({ hand, photo }: ReadTwice) => photo.value - hand.value
const limitOf = ({ hand, photo }: ReadTwice) => z975 * Math.hypot(hand.sd, photo.sd)
const isExplained = (pair: ReadTwice) => Math.abs(differenceOf(pair)) <= limitOf(pair)

function chartOf(
  of: HorseCase,
  kind: 'angle' | 'length',
  like: AnyMeasureId,
  pairs: readonly ReadTwice[],
): AgreementChart {
  const { format, words } = of
  const w = words.measures.agreement
  const differences = pairs.map(differenceOf)
  const bias = differences.reduce((sum, one) => sum + one, 0) / pairs.length
  const spread = Math.sqrt(differences.reduce((sum, one) => sum + (one - bias) ** 2, 0) / (pairs.length - 1))
  const within = pairs.filter(isExplained).length
  const scaled = (value: number) => drawnValue(like, value, format.units)
  const line = (at: number, label: string) => ({ at: scaled(at), label })
  const unit = format.unit(like)
  const sentence = w.says(within, pairs.length, format.change(like, bias), format.fine(like, z975 * spread))
  return {
    kind: 'agreement',
    id: `agreement-${kind}`,
    title: w.title[kind],
    description: sentence,
    table: tableOf(of, kind, pairs),
    valueTitle: w.mean(unit),
    differenceTitle: w.difference(unit),
    pairs: pairs.map((pair) => ({
      mean: scaled((pair.hand.value + pair.photo.value) / 2),
      difference: scaled(differenceOf(pair)),
      isExplained: isExplained(pair),
    })),
    bias: line(bias, w.bias(format.change(like, bias))),
    limits: [bias - z975 * spread, bias + z975 * spread].map((at) => line(at, format.change(like, at))),
  }
}

function tableOf(of: HorseCase, kind: 'angle' | 'length', pairs: readonly ReadTwice[]): Table {
  const { format, words } = of
  const w = words.measures.agreement
  return {
    caption: w.table[kind],
    head: w.head,
    rows: pairs
      .toSorted(
        (a, b) =>
          a.hand.date.localeCompare(b.hand.date) || feet.indexOf(a.hand.foot) - feet.indexOf(b.hand.foot),
      )
      .map((pair) => {
        const { hand, photo } = pair
        const { measure, foot, date, stage } = hand
        return [
          `${format.shortDate(date)}, ${words.chart.stages[stage]}`,
          `${foot} ${format.name(measure)}`,
          format.measure(measure, hand.value),
          format.measure(measure, photo.value),
          format.change(measure, differenceOf(pair)),
          isExplained(pair) ? w.explained : w.unexplained,
        ]
      }),
  }
}
