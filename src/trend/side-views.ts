/** The side view of each foot, first and latest, from its readings. */
import type { Stage } from '../casebook/model.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { type CapsuleReadings, capsuleSide, coronetAngleSd, lowered } from '../hoof/geometry.ts'
import { type MeasureId, measures } from '../hoof/measures.ts'
import { bearingToToe, soundHeelGap, toeToHeel } from '../hoof/stand-ins.ts'
import type { FootGeometry, SideView } from './assessment.ts'
import { columnForTrend } from './chosen-column.ts'
import { type Columns, type Family, families, stages, valueAt } from './columns.ts'
import { z975 } from './student.ts'

/** First and latest side view of each foot whose toe angle and toe length were read together, in one stage. */
export const geometryOf = (columns: Columns): readonly FootGeometry[] =>
  feet.flatMap((foot) => {
    const ends = firstAndLatest(columns, foot)
    return ends === null ? [] : [{ foot, ...ends, perMillimetre: perMillimetre(ends.latest) }]
  })

/**
 * Of one family and stage: those of the toe angle's trend, or where the toe length was not read with it there, of the
 * first family and stage where it was.
 */
function firstAndLatest(
  columns: Columns,
  foot: Foot,
): { readonly first: SideView; readonly latest: SideView } | null {
  const trend = columnForTrend(columns, foot, 'toe-angle')
  if (trend === null) return null
  const others = families.flatMap((family) => stages.map((stage) => ({ family, stage })))
  for (const { family, stage } of [trend, ...others]) {
    const viewAt = (place: number) => sideViewAt(columns, family, stage, foot, place)
    const end = columns.visits.length
    let first: SideView | null = null
    for (let place = 0; place < end && first === null; place++) first = viewAt(place)
    let latest: SideView | null = null
    for (let place = end - 1; place >= 0 && latest === null; place--) latest = viewAt(place)
    if (first !== null && latest !== null) return { first, latest }
  }
  return null
}

/**
 * The side view of a foot at one visit and stage; null without toe angle and toe length. What stands in for other
 * readings is named in `assumed` and never compared with anything.
 */
export function sideViewAt(
  columns: Columns,
  family: Family,
  stage: Stage,
  foot: Foot,
  place: number,
): SideView | null {
  const read = (measure: MeasureId) => valueAt(columns.find(family, stage, foot, measure), place)
  const sdOf = (measure: MeasureId) =>
    Math.max(measures[measure].sd, columns.find(family, stage, foot, measure)?.sds[place] ?? 0)
  const toeAngle = read('toe-angle')
  const toeLength = read('toe-length')
  const visit = columns.visits[place]
  if (toeAngle === null || toeLength === null || visit === undefined) return null
  const medial = read('heel-medial')
  const lateral = read('heel-lateral')
  const standIn: MeasureId[] = []
  const orElse = (measure: MeasureId, value: number | null, stand: number): number => {
    if (value === null) standIn.push(measure)
    return value ?? stand
  }
  const oneHeel = medial ?? lateral ?? toeLength / toeToHeel
  const of: CapsuleReadings = {
    toeAngle,
    toeLength,
    heelAngle: orElse('heel-angle', read('heel-angle'), toeAngle - soundHeelGap),
    heelLength: (orElse('heel-medial', medial, oneHeel) + orElse('heel-lateral', lateral, oneHeel)) / 2,
    bearingLength: orElse('bearing-length', read('bearing-length'), toeLength * bearingToToe),
  }
  const side = capsuleSide(of)
  const coronetMeasured = read('coronet-angle')
  const sds: CapsuleReadings = {
    toeAngle: sdOf('toe-angle'),
    toeLength: sdOf('toe-length'),
    heelAngle: sdOf('heel-angle'),
    heelLength: Math.hypot(sdOf('heel-medial'), sdOf('heel-lateral')) / 2,
    bearingLength: sdOf('bearing-length'),
  }
  const closesWithin = z975 * Math.hypot(coronetAngleSd(of, sds), sdOf('coronet-angle'))
  return {
    visit: visit.id,
    date: visit.date,
    stage,
    ...of,
    ...side,
    coronetMeasured,
    closesWithin,
    closes:
      coronetMeasured === null || standIn.length > 0
        ? null
        : Math.abs(side.coronetAngle - coronetMeasured) <= closesWithin,
    assumed: standIn,
  }
}

/** Changes that 1 mm would make: lowered at the toe, and at the heel; each with the length of the wall it shortens. */
function perMillimetre(of: SideView): FootGeometry['perMillimetre'] {
  const toe = lowered(of, 1, 0)
  const heel = lowered(of, 0, 1)
  return {
    toe: { angle: toe.toeAngle - of.toeAngle, length: toe.toeLength - of.toeLength },
    heel: { angle: heel.toeAngle - of.toeAngle, length: heel.heelLength - of.heelLength },
  }
}
