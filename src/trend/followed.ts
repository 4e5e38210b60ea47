/** What is followed as it grows down the wall, gathered by the stretch of wall that it is on. */
import type { Horse } from '../casebook/model.ts'
import { dayOf, daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { wallOf } from '../hoof/findings.ts'
import { adultPrior, wallBelief } from '../hoof/growth.ts'
import type { MeasureId } from '../hoof/measures.ts'
import { ageOn } from './age.ts'
import { readingAt } from './column.ts'
import { type Columns, families } from './columns.ts'
import type { WallSums } from './model/grow-out-rates.ts'

export interface Sighting {
  readonly visit: string
  readonly date: PlainDate
  /** Millimetres from the hairline. */
  readonly distance: number
}

export interface Feature {
  readonly foot: Foot
  readonly what: string
  readonly place: string
  /** Null where there is no wall: coronet, frog, sole. */
  readonly wall: MeasureId | null
  readonly sightings: Sighting[]
}

/** The steeper strip of new growth below the hairline: its lower end is followed like any feature at the toe. */
export interface Strip {
  readonly foot: Foot
  readonly sightings: readonly Sighting[]
  /** The latest reading of its angle that has a length beside it. */
  readonly latest: { readonly visit: string; readonly angle: number } | null
}

export interface Followed {
  readonly features: readonly Feature[]
  readonly strips: readonly Strip[]
}

export const followedOf = (columns: Columns): Followed => ({
  features: featuresOf(columns),
  strips: feet.flatMap((foot) => stripOf(columns, foot) ?? []),
})

/**
 * The wall length that a place belongs to. The white line is measured at the toe, and what goes round the whole foot
 * is followed there.
 */
function wallMeasure(place: string): MeasureId | null {
  if (place === 'white line' || place === 'whole foot') return 'toe-length'
  const wall = wallOf(place)
  if (wall === null || wall === 'toe') return wall === null ? null : 'toe-length'
  const side = place.startsWith('medial') ? 'medial' : 'lateral'
  return `${wall}-${side}`
}

/** The same what at the same place on the same foot is the same feature. */
function featuresOf({ visits }: Columns): readonly Feature[] {
  const features = new Map<string, Feature>()
  for (const { id, date, growOut } of visits)
    for (const { foot, what, place, distance } of growOut) {
      const key = `${foot}\n${what}\n${place}`
      const feature = features.get(key) ?? { foot, what, place, wall: wallMeasure(place), sightings: [] }
      features.set(key, feature)
      feature.sightings.push({ visit: id, date, distance })
    }
  return [...features.values()].toSorted((a, b) => feet.indexOf(a.foot) - feet.indexOf(b.foot))
}

function stripOf({ visits, find }: Columns, foot: Foot): Strip | null {
  for (const family of families) {
    const read = (measure: MeasureId, place: number) => {
      const after = readingAt(find(family, 'after', foot, measure), place)
      return Number.isNaN(after) ? readingAt(find(family, 'before', foot, measure), place) : after
    }
    const sightings: Sighting[] = []
    let latest: Strip['latest'] = null
    for (const [place, { id, date }] of visits.entries()) {
      const distance = read('new-length', place)
      if (Number.isNaN(distance)) continue
      sightings.push({ visit: id, date, distance })
      const angle = read('new-angle', place)
      if (!Number.isNaN(angle)) latest = { visit: id, angle }
    }
    if (sightings.length > 0) return { foot, sightings, latest }
  }
  return null
}

/** How much faster than a grown horse's this horse's horn grows, by belief; mm a month. */
export const aheadOfGrown = (horse: Horse, asOf: PlainDate): number =>
  wallBelief(ageOn(horse, asOf)).mean - adultPrior.mean

/** Mean day (in months since 1970) and distance of some sightings, and their sums about them. */
export function sumsOf(sightings: readonly Sighting[]) {
  const k = sightings.length
  const times = sightings.map(({ date }) => dayOf(date) / daysPerMonth)
  const time = times.reduce((sum, one) => sum + one, 0) / k
  const distance = sightings.reduce((sum, one) => sum + one.distance, 0) / k
  let [sxx, sxy, syy] = [0, 0, 0]
  for (const [i, one] of sightings.entries()) {
    const byTime = (times[i] ?? 0) - time
    const byDistance = one.distance - distance
    sxx += byTime ** 2
    sxy += byTime * byDistance
    syy += byDistance ** 2
  }
  return { k, time, distance, sxx, sxy, syy }
}

/** All that one wall shows of its rate: every feature on it and, at the toe, the strip of new growth. */
export function wallSums(
  { features, strips }: Followed,
  foot: Foot,
  wall: MeasureId,
  ahead: number,
): WallSums {
  const series = [
    ...features.filter((one) => one.foot === foot && one.wall === wall),
    ...(wall === 'toe-length' ? strips.filter((one) => one.foot === foot) : []),
  ].map(({ sightings }) => sumsOf(sightings))
  const total = (key: 'sxx' | 'sxy' | 'syy' | 'k') => series.reduce((sum, one) => sum + one[key], 0)
  return {
    sxx: total('sxx'),
    sxy: total('sxy'),
    syy: total('syy'),
    df: total('k') - series.length,
    ahead,
  }
}
