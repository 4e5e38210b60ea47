/** Left against right of the same pair, visit by visit. */
import type { Stage } from '../casebook/model.ts'
import { feetOf, type Pair, pairs } from '../hoof/feet.ts'
import { type MeasureId, measures } from '../hoof/measures.ts'
import type { PairComparison } from './assessment.ts'
import { readingAt } from './column.ts'
import { type Columns, type Family, families, stages } from './columns.ts'
import { type Learned, learnedOf } from './model/learned.ts'
import { t975 } from './student.ts'

const compared: readonly MeasureId[] = ['toe-angle', 'toe-length', 'width']

/**
 * Every visit and stage at which both feet of a pair were read in the same way, gauge readings first.
 * The smallest real difference is that between two single readings: t sqrt(2) times what one repeats to.
 */
export function pairsOf(columns: Columns, learned: Learned): readonly PairComparison[] {
  const pairsRead = stages.flatMap((stage) =>
    pairs.flatMap((pair) => compared.map((measure) => pairRead(columns, stage, pair, measure))),
  )
  const found: PairComparison[] = []
  for (let i = 0; i < columns.visits.length; i++) {
    const visit = columns.visits[i]
    if (visit === undefined) continue
    for (const { stage, pair, measure, both } of pairsRead)
      for (const { family, left: leftColumn, right: rightColumn } of both) {
        const left = readingAt(leftColumn, i)
        const right = readingAt(rightColumn, i)
        const difference = left - right
        if (Number.isNaN(difference)) continue
        const smallestRealDifference = smallestRealDifferenceOf(learned, family, measure)
        found.push({
          visit: visit.id,
          date: visit.date,
          stage,
          pair,
          measure,
          left,
          right,
          difference,
          smallestRealDifference,
          isReal: Math.abs(difference) >= smallestRealDifference,
        })
        break
      }
  }
  return found
}

function smallestRealDifferenceOf(learned: Learned, family: Family, measure: MeasureId): number {
  const { e, worth } = learnedOf(learned, family, measure, 'LF')
  return t975(worth) * Math.SQRT2 * e * measures[measure].sd
}

/** The columns of a measure at both feet of a pair, from each family that has both. */
function pairRead({ find }: Columns, stage: Stage, pair: Pair, measure: MeasureId) {
  const [leftFoot, rightFoot] = feetOf(pair)
  const both = families
    .map((family) => ({
      family,
      left: find(family, stage, leftFoot, measure),
      right: find(family, stage, rightFoot, measure),
    }))
    .filter(({ left, right }) => left !== null && right !== null)
  return { stage, pair, measure, both }
}
