/** When a whole new capsule has grown down, with nothing followed: from the wall's length and the prior alone. */
import type { Horse } from '../casebook/model.ts'
import { daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'
import { walls } from '../hoof/walls.ts'
import type { Capsule, NewGrowth } from './assessment.ts'
import { type Columns, families, valueAt } from './columns.ts'
import { atGround, growthRate, priorFor, type Sighting } from './grow-out.ts'
import { lastLeft } from './latest.ts'

/**
 * Toe, quarter and heel of each foot whose length was read: when horn that left the hairline at the first visit
 * reaches the ground. Of two sides the longer counts, since the place is renewed when both are.
 */
export function capsulesOf(horse: Horse, columns: Columns, asOf: PlainDate): readonly Capsule[] {
  const since = columns.visits[0]?.date
  if (since === undefined) return []
  const rate = growthRate([], priorFor(horse, asOf))
  return feet.flatMap((foot) =>
    walls.flatMap(({ place, measures }) => {
      const lengths = measures
        .map((measure) => lastLeft(columns, foot, measure))
        .filter((length) => length !== null)
      if (lengths.length === 0) return []
      const wallLength = Math.max(...lengths)
      const { date, earliest, latest } = atGround(wallLength, since, rate)
      if (date === null || earliest === null) return []
      return [
        {
          foot,
          place,
          since,
          wallLength,
          ratePerMonth: rate.perMonth,
          rateLow: rate.low,
          rateHigh: rate.high,
          renewalDays: (wallLength / rate.perMonth) * daysPerMonth,
          date,
          earliest,
          latest,
        },
      ]
    }),
  )
}

/**
 * The steeper strip below the hairline, at the latest visit that read its angle and its length: the angle that the
 * whole wall can stand at once the strip has grown down, and when that will be. The strip's lower end is followed
 * like any feature at the toe, through every visit that read its length.
 */
export function newGrowthOf(horse: Horse, columns: Columns, asOf: PlainDate): readonly NewGrowth[] {
  const prior = priorFor(horse, asOf)
  return feet.flatMap((foot) => {
    for (const family of families) {
      const read = (measure: MeasureId, visit: number) =>
        valueAt(columns.find(family, 'after', foot, measure), visit) ??
        valueAt(columns.find(family, 'before', foot, measure), visit)
      const sightings: Sighting[] = []
      let latest: { readonly visit: string; readonly angle: number; readonly at: Sighting } | null = null
      for (const [i, { id, date }] of columns.visits.entries()) {
        const distance = read('new-length', i)
        if (distance === null) continue
        const at = { visit: id, date, distance }
        sightings.push(at)
        const angle = read('new-angle', i)
        if (angle !== null) latest = { visit: id, angle, at }
      }
      if (latest !== null) return [stripOf(columns, foot, latest, growthRate(sightings, prior))]
    }
    return []
  })
}

function stripOf(
  columns: Columns,
  foot: Foot,
  { visit, angle, at }: { readonly visit: string; readonly angle: number; readonly at: Sighting },
  rate: ReturnType<typeof growthRate>,
): NewGrowth {
  const toeLength = lastLeft(columns, foot, 'toe-length')
  const ground =
    toeLength === null
      ? { date: null, earliest: null, latest: null }
      : atGround(toeLength - at.distance, at.date, rate)
  return {
    foot,
    visit,
    newAngle: angle,
    newLength: at.distance,
    toeAngle: lastLeft(columns, foot, 'toe-angle'),
    toeLength,
    ...ground,
  }
}
