import type { Horse, Practice } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { type Foot, feetOf, pairOf } from '../hoof/feet.ts'
import { type AnyMeasureId, isMeasureId, type MeasureId, measures } from '../hoof/measures.ts'
import type { Assessment } from './assessment.ts'
import { backtestOf } from './backtest.ts'
import { capsulesOf, newGrowthOf } from './capsule.ts'
import { cautionsOf } from './cautions/index.ts'
import { checksOf } from './checks.ts'
import { columnsOf } from './columns.ts'
import { growOutsOf } from './grow-out.ts'
import { growthOf } from './growth.ts'
import { lazily } from './lazily.ts'
import { nextVisitOf, visitsAhead } from './next-visit.ts'
import { pairsOf } from './pairs.ts'
import { plansOf } from './plan.ts'
import { readingsOf } from './readings.ts'
import { scaleOf } from './scale.ts'
import { allSeries, type Series } from './series.ts'
import { geometryOf } from './side-views.ts'
import { targetOf } from './targets.ts'
import { trendOf } from './trends.ts'

/** Everything the engine can say of one horse on the day `asOf`; later visits are left out. Pure. */
export function assess(horse: Horse, practice: Practice, asOf: PlainDate): Assessment {
  const visits = horse.visits.filter(({ date }) => date <= asOf)
  const columns = columnsOf(horse, visits)
  const nextVisit = nextVisitOf(visits, practice, asOf)
  const ahead = visitsAhead(nextVisit, practice, asOf)
  const series = allSeries(columns)
  const cautions = cautionsOf(horse, columns, nextVisit, asOf)
  const { heldFeet } = cautions
  const trends = series.map((one) => {
    const { foot, measure } = one.column
    return trendOf(one, targetOf(horse, foot, measure), isHeld(foot, measure, heldFeet), ahead)
  })
  const growth = series.flatMap((one) => {
    const measure = lengthRead(one)
    const { family, foot } = one.column
    const found = measure === null ? null : growthOf(columns, family, foot, measure, scaleOf(one).sd)
    return found === null ? [] : [found]
  })
  const readings = lazily(() => readingsOf(columns))
  return {
    id: horse.id,
    name: horse.name,
    asOf,
    visits: visits.map(({ id }) => id),
    get readings() {
      return readings()
    },
    trends,
    growth,
    pairs: pairsOf(columns),
    growOut: growOutsOf(horse, columns, asOf),
    capsules: capsulesOf(horse, columns, asOf),
    newGrowth: newGrowthOf(horse, columns, asOf),
    plans: plansOf({ horse, practice, asOf, columns, cautions, ahead, series, growth }),
    geometry: geometryOf(columns),
    backtest: backtestOf(horse, columns),
    checks: checksOf(horse, columns, trends, growth),
    cautions: cautions.all,
    heldFeet,
    nextVisit,
  }
}

/** The difference of a pair is carried by its left foot, and held with either. */
const isHeld = (foot: Foot, measure: AnyMeasureId, held: readonly Foot[]): boolean =>
  measure === 'pair-mismatch' ? feetOf(pairOf(foot)).some((one) => held.includes(one)) : held.includes(foot)

/** The length that a series holds as it was read; null for angles and for what is derived. */
function lengthRead({ column: { measure } }: Series): MeasureId | null {
  return isMeasureId(measure) && measures[measure].kind === 'length' ? measure : null
}
