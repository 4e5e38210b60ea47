import type { Horse, Practice } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Assessment } from './assessment.ts'
import { backtestOf } from './backtest.ts'
import { cautionsOf } from './cautions/index.ts'
import { checksOf } from './checks.ts'
import { columnsOf } from './columns.ts'
import { followedOf } from './followed.ts'
import { capsulesOf, growOutsOf, newGrowthOf } from './grow-out.ts'
import { growthOf } from './growth.ts'
import { lazily } from './lazily.ts'
import type { Learned } from './model/learned.ts'
import { untaughtPractice } from './model/practice.ts'
import { nextVisitOf, visitsAhead } from './next-visit.ts'
import { pairsOf } from './pairs.ts'
import { plansOf } from './plan.ts'
import { problemsOf } from './problems.ts'
import { readingsOf } from './readings.ts'
import { geometryOf } from './side-views.ts'
import { judgedFeet, judgedTogether, trendsOf } from './trends.ts'

/**
 * Everything the engine can say of one horse on the day `asOf`; later visits are left out. Pure.
 * @param learned what the practice teaches (`learnPractice`); the literature alone where nothing is given
 */
export function assess(
  horse: Horse,
  practice: Practice,
  asOf: PlainDate,
  learned: Learned = untaughtPractice.learned,
): Assessment {
  const visits = horse.visits.filter(({ date }) => date <= asOf)
  const columns = columnsOf(horse, visits)
  const nextVisit = nextVisitOf(visits, practice, asOf)
  const ahead = visitsAhead(nextVisit, practice, asOf)
  const cautions = cautionsOf(horse, columns, nextVisit, asOf)
  const { heldFeet } = cautions
  const judged = judgedFeet(horse, columns, learned)
  const all = judgedTogether(horse, columns, judged, learned)
  const { trends, together } = trendsOf({ horse, columns, heldFeet, asOf }, judged, all)
  const growth = judged.flatMap((one) => growthOf(columns, one) ?? [])
  const growingDown = { horse, columns, followed: followedOf(columns), learned, asOf }
  const growOut = growOutsOf(growingDown)
  const readings = lazily(() => readingsOf(columns, learned))
  return {
    id: horse.id,
    name: horse.name,
    asOf,
    learned,
    visits: visits.map(({ id }) => id),
    get readings() {
      return readings()
    },
    trends,
    together,
    growth,
    pairs: pairsOf(columns, learned),
    growOut,
    capsules: capsulesOf(growingDown),
    newGrowth: newGrowthOf(growingDown),
    problems: problemsOf({ horse, visits, trends, growOut, cautions: cautions.all }),
    plans: plansOf({ horse, practice, asOf, columns, cautions, ahead, judged, growth }),
    geometry: geometryOf(columns),
    backtest: backtestOf(horse, columns, judged),
    checks: checksOf(horse, columns, trends, growth),
    cautions: cautions.all,
    heldFeet,
    nextVisit,
  }
}
