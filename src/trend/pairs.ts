/** Left against right of the same pair, visit by visit. */
import { feetOf, pairs } from '../hoof/feet.ts'
import { type MeasureId, measures } from '../hoof/measures.ts'
import type { PairComparison } from './assessment.ts'
import { type Columns, families, stages, valueAt } from './columns.ts'
import { smallestRealChangeOf } from './fit.ts'

const compared: readonly MeasureId[] = ['toe-angle', 'toe-length', 'width']

/**
 * Every visit and stage at which both feet of a pair were read in the same way, gauge readings first.
 * The smallest real difference is that between two single readings: t(0.975, 10) sqrt(2) s0.
 */
export function pairsOf(columns: Columns): readonly PairComparison[] {
  const found: PairComparison[] = []
  for (const [i, { id, date }] of columns.visits.entries())
    for (const stage of stages)
      for (const pair of pairs)
        for (const measure of compared) {
          const [leftFoot, rightFoot] = feetOf(pair)
          const both = families
            .map((family) => ({
              left: valueAt(columns.find(family, stage, leftFoot, measure), i),
              right: valueAt(columns.find(family, stage, rightFoot, measure), i),
            }))
            .find(({ left, right }) => left !== null && right !== null)
          if (both === undefined || both.left === null || both.right === null) continue
          const difference = both.left - both.right
          const smallestRealDifference = smallestRealChangeOf(measures[measure].sd)
          found.push({
            visit: id,
            date,
            stage,
            pair,
            measure,
            left: both.left,
            right: both.right,
            difference,
            smallestRealDifference,
            isReal: Math.abs(difference) >= smallestRealDifference,
          })
        }
  return found
}
