/** Left against right of the same pair, visit by visit. */
import type { Stage } from '../casebook/model.ts'
import { feetOf, type Pair, pairs } from '../hoof/feet.ts'
import { type MeasureId, measures } from '../hoof/measures.ts'
import type { PairComparison } from './assessment.ts'
import { readingAt } from './column.ts'
import { type Columns, families, stages } from './columns.ts'
import { smallestRealChangeOf } from './fit.ts'

const compared: readonly MeasureId[] = ['toe-angle', 'toe-length', 'width']

/**
 * Every visit and stage at which both feet of a pair were read in the same way, gauge readings first.
 * The smallest real difference is that between two single readings: t(0.975, 10) sqrt(2) s0.
 */
export function pairsOf(columns: Columns): readonly PairComparison[] {
  const pairsRead = stages.flatMap((stage) =>
    pairs.flatMap((pair) => compared.map((measure) => pairRead(columns, stage, pair, measure))),
  )
  const found: PairComparison[] = []
  for (let i = 0; i < columns.visits.length; i++) {
    const visit = columns.visits[i]
    if (visit === undefined) continue
    for (const { stage, pair, measure, both } of pairsRead)
      for (const { left: leftColumn, right: rightColumn } of both) {
        const left = readingAt(leftColumn, i)
        const right = readingAt(rightColumn, i)
        const difference = left - right
        if (Number.isNaN(difference)) continue
        const smallestRealDifference = smallestRealChangeOf(measures[measure].sd)
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

/** The columns of a measure at both feet of a pair, from each family that has both. */
function pairRead({ find }: Columns, stage: Stage, pair: Pair, measure: MeasureId) {
  const [leftFoot, rightFoot] = feetOf(pair)
  const both = families
    .map((family) => ({
      left: find(family, stage, leftFoot, measure),
      right: find(family, stage, rightFoot, measure),
    }))
    .filter(({ left, right }) => left !== null && right !== null)
  return { stage, pair, measure, both }
}
