/** What is well formed and still hard to believe: visits, feet and stages held against each other. */
import type { PlainDate } from '../../hoof/dates.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import type { PlacedHorse } from '../horse-file.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { checkDates } from './dates.ts'
import { checkFeatures } from './features.ts'
import { beforeTrim, checkCopiedFeet, checkCopiedStage, checkSwapped, lastTime } from './feet.ts'
import { checkAfterLonger, checkJumps } from './growth.ts'
import { gridOf, lastReadings } from './history.ts'

/** All checks over one horse's visits, oldest first. What is found goes into the report of the visit it concerns. */
export function checkPlausibility(
  visits: readonly PlacedVisit[],
  horse: PlacedHorse | null,
  units: LengthUnit,
  asOf: PlainDate,
): void {
  checkDates(visits, horse, asOf)
  const last = lastReadings()
  let before: { readonly placed: PlacedVisit; readonly grid: ReturnType<typeof gridOf> } | null = null
  for (const placed of visits) {
    const grid = gridOf(placed)
    checkCopiedFeet(placed, grid)
    if (before) checkCopiedStage(placed, grid, before.placed, before.grid)
    const swappedBefore = checkSwapped(placed, grid, 'before', lastTime(last), units)
    const reference = swappedBefore.size > 0 ? lastTime(last) : beforeTrim(grid, last)
    const swapped = { before: swappedBefore, after: checkSwapped(placed, grid, 'after', reference, units) }
    checkJumps(placed, last, swapped, units)
    checkAfterLonger(placed, grid, units)
    before = { placed, grid }
  }
  checkFeatures(visits, units)
}
