/** What is well formed and still hard to believe: visits, feet and stages held against each other. */
import type { PlainDate } from '../../hoof/dates.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import type { PlacedHorse } from '../horse-file.ts'
import type { Stage } from '../model.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { checkDates } from './dates.ts'
import { checkFeatures } from './features.ts'
import {
  beforeTrim,
  checkCopiedFeet,
  checkCopiedStage,
  checkSwapped,
  lastTime,
  type Reference,
} from './feet.ts'
import { checkAfterLonger, checkJumps } from './growth.ts'
import { gridOf, lastReadings } from './history.ts'
import { checkPhotos } from './photos.ts'
import { checkRows } from './rows.ts'
import { checkWrittenTwice } from './twice.ts'
import { checkWeights } from './weights.ts'

/** All checks over one horse's visits, oldest first. What is found goes into the report of the visit it concerns. */
export function checkPlausibility(
  visits: readonly PlacedVisit[],
  horse: PlacedHorse | null,
  units: LengthUnit,
  asOf: PlainDate,
): void {
  checkDates(visits, horse, asOf)
  checkWeights(visits, horse, asOf)
  checkWrittenTwice(visits, units)
  const last = lastReadings()
  let before: { readonly placed: PlacedVisit; readonly grid: ReturnType<typeof gridOf> } | null = null
  for (const visit of visits) {
    const written = { ...visit, readings: visit.readings.filter(({ isDoubted }) => !isDoubted) }
    // Stages that have changed places are told of once; what follows takes them as they must have been meant.
    const placed = checkAfterLonger(written, gridOf(written), units) ? stagesExchanged(written) : written
    const grid = gridOf(placed)
    checkCopiedFeet(placed, grid)
    if (before) checkCopiedStage(placed, grid, before.placed, before.grid)
    const swappedBefore = checkSwapped(placed, grid, 'before', lastTime(last), units)
    const reference = swappedBefore.size > 0 ? lastTime(last) : beforeTrim(grid, last)
    const swapped = { before: swappedBefore, after: checkSwapped(placed, grid, 'after', reference, units) }
    const rows = (stage: Stage, to: Reference) =>
      swapped[stage].size > 0 ? new Set<MeasureId>() : checkRows(placed, stage, to)
    const exchanged = { before: rows('before', lastTime(last)), after: rows('after', reference) }
    checkJumps(placed, last, { swapped, exchanged }, units)
    before = { placed, grid }
  }
  checkFeatures(visits, units)
  checkPhotos(visits, units)
}

const otherStage = { before: 'after', after: 'before' } as const

/** The visit with its stages the other way round. */
function stagesExchanged(placed: PlacedVisit): PlacedVisit {
  const readings = placed.readings.map((one) => ({
    ...one,
    reading: { ...one.reading, stage: otherStage[one.reading.stage] },
  }))
  return { ...placed, readings: readings.sort((a, b) => (a.reading.stage < b.reading.stage ? 1 : -1)) }
}
