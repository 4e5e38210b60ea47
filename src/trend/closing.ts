/** Side views whose measured coronet angle is not the one that follows from the other readings. */
import type { Stage } from '../casebook/model.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { capsuleSide } from '../hoof/geometry.ts'
import { measures } from '../hoof/measures.ts'
import type { Check } from './assessed-care.ts'
import { readingAt } from './column.ts'
import { type Columns, type Family, families, stages } from './columns.ts'
import { sideViewAt } from './side-views.ts'
import { z975 } from './student.ts'

export const notClosing = (columns: Columns): readonly Check[] =>
  feet.flatMap((foot) =>
    families.flatMap((family) =>
      stages.flatMap((stage) =>
        placesInDoubt(columns, family, stage, foot).flatMap((place): readonly Check[] => {
          const view = sideViewAt(columns, family, stage, foot, place)
          if (view?.closes !== false || view.coronetMeasured === null) return []
          const { coronetAngle, coronetMeasured, closesWithin, visit, date } = view
          const facts = { stage, computed: coronetAngle, measured: coronetMeasured, within: closesWithin }
          return [{ kind: 'readings do not close', foot, date, visit, facts }]
        }),
      ),
    ),
  )

/**
 * The visits at which all that takes part was read and the two angles part by more than the error of the measured one
 * alone explains. That of the other readings makes the limit wider, never narrower, and is dear to work out.
 */
function placesInDoubt(
  { find, visits }: Columns,
  family: Family,
  stage: Stage,
  foot: Foot,
): readonly number[] {
  const coronet = find(family, stage, foot, 'coronet-angle')
  const toeAngles = find(family, stage, foot, 'toe-angle')
  const toeLengths = find(family, stage, foot, 'toe-length')
  const heelAngles = find(family, stage, foot, 'heel-angle')
  const medials = find(family, stage, foot, 'heel-medial')
  const laterals = find(family, stage, foot, 'heel-lateral')
  const bearings = find(family, stage, foot, 'bearing-length')
  const places: number[] = []
  if (coronet === null) return places
  for (let i = 0; i < visits.length; i++) {
    const toeAngle = readingAt(toeAngles, i)
    const toeLength = readingAt(toeLengths, i)
    const heelAngle = readingAt(heelAngles, i)
    const heelLength = (readingAt(medials, i) + readingAt(laterals, i)) / 2
    const bearingLength = readingAt(bearings, i)
    const measured = readingAt(coronet, i)
    const { coronetAngle } = capsuleSide({ toeAngle, toeLength, heelAngle, heelLength, bearingLength })
    const sd = Math.max(measures['coronet-angle'].sd, coronet.sds[i] ?? 0)
    // Where a reading is missing the difference is not a number, and nothing is compared.
    if (Math.abs(coronetAngle - measured) > z975 * sd) places.push(i)
  }
  return places
}
