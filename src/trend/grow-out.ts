/** Something followed as it grows down the wall: how fast, and when it reaches the ground. */
import type { Horse, Visit } from '../casebook/model.ts'
import { dayOf, daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import { feet } from '../hoof/feet.ts'
import { wallOf } from '../hoof/findings.ts'
import { distanceSd, type GrowthPrior, growthPrior } from '../hoof/growth.ts'
import type { MeasureId } from '../hoof/measures.ts'
import type { GrowOut } from './assessment.ts'
import type { Columns } from './columns.ts'
import { addTo, noSums } from './fit.ts'
import { dateAt } from './forecast.ts'
import { lastLeft } from './latest.ts'
import { z975 } from './student.ts'

export interface Sighting {
  readonly visit: string
  readonly date: PlainDate
  /** Millimetres from the hairline. */
  readonly distance: number
}

export interface GrowthRate {
  /** mm a month, and 95 % limits; never below 0. */
  readonly perMonth: number
  readonly low: number
  readonly high: number
  readonly from: 'prior' | 'measured'
}

/**
 * Rate of growth from the prior N(mean, sd^2) and the sightings: precision 1/sd^2 + Sxx/1.5^2 with time in months,
 * mean the precision-weighted mean of the prior's and the least-squares slope (conjugate normal model).
 * Sightings on one day tell nothing of a rate.
 */
export function growthRate(sightings: readonly Sighting[], prior: GrowthPrior): GrowthRate {
  const sums = noSums()
  for (const { date, distance } of sightings) addTo(sums, dayOf(date) / daysPerMonth, distance)
  const priorPrecision = 1 / prior.sd ** 2
  const precision = priorPrecision + sums.sxx / distanceSd ** 2
  // Slope times its precision is Sxy / variance, also where Sxx is 0.
  const mean = (prior.mean * priorPrecision + sums.sxy / distanceSd ** 2) / precision
  const half = z975 / Math.sqrt(precision)
  return {
    perMonth: Math.max(0, mean),
    low: Math.max(0, mean - half),
    high: Math.max(0, mean + half),
    from: sums.sxx > 0 ? 'measured' : 'prior',
  }
}

/** Further off than this is no date. */
const horizonDays = 120 * daysPerMonth

export interface AtGround {
  readonly date: PlainDate | null
  readonly earliest: PlainDate | null
  readonly latest: PlainDate | null
}

/** When horn `left` millimetres above the ground on a day reaches it: left / rate; the limits from the rate's. */
export function atGround(left: number, since: PlainDate, rate: GrowthRate): AtGround {
  const reach = (perMonth: number): PlainDate | null => {
    const days = left <= 0 ? 0 : (left / perMonth) * daysPerMonth
    return days <= horizonDays ? dateAt(dayOf(since) + days) : null
  }
  return { date: reach(rate.perMonth), earliest: reach(rate.high), latest: reach(rate.low) }
}

/**
 * The prior by the horse's age on a day; a foal is under one year. Where only the year of birth is known the age
 * counts from 1 January, as studbooks do (common practice, no source).
 */
export function priorFor(horse: Horse, asOf: PlainDate): GrowthPrior {
  const born = /^(\d{4})(?:-(\d{2})-(\d{2}))?$/.exec(horse.born ?? '')
  if (born === null) return growthPrior(null)
  const birth = `${born[1]}-${born[2] ?? '01'}-${born[3] ?? '01'}`
  return growthPrior((dayOf(asOf) - dayOf(birth)) / (12 * daysPerMonth))
}

/**
 * The wall length that a place belongs to. The white line is measured at the toe, and what goes round the whole foot
 * is followed there. Null where there is no wall: coronet, frog, sole.
 */
export function wallMeasure(place: string): MeasureId | null {
  if (place === 'white line' || place === 'whole foot') return 'toe-length'
  const wall = wallOf(place)
  if (wall === null || wall === 'toe') return wall === null ? null : 'toe-length'
  const side = place.startsWith('medial') ? 'medial' : 'lateral'
  return `${wall}-${side}`
}

/** Every followed feature: the same what at the same place on the same foot is the same feature. */
export function growOutsOf(horse: Horse, columns: Columns, asOf: PlainDate): readonly GrowOut[] {
  const prior = priorFor(horse, asOf)
  return featuresOf(columns.visits).map(({ foot, what, place, sightings }) => {
    const last = sightings.at(-1)
    const distance = last?.distance ?? 0
    const seen = last?.date ?? asOf
    const rate = growthRate(sightings, prior)
    const measure = wallMeasure(place)
    const wallLength = measure === null ? null : lastLeft(columns, foot, measure)
    const ground =
      wallLength === null
        ? { date: null, earliest: null, latest: null }
        : atGround(wallLength - distance, seen, rate)
    const grown = distance + (rate.perMonth * (dayOf(asOf) - dayOf(seen))) / daysPerMonth
    return {
      foot,
      feature: what,
      place,
      sightings,
      distance,
      expectedNow: wallLength === null ? grown : Math.max(distance, Math.min(grown, wallLength)),
      wallLength,
      ratePerMonth: rate.perMonth,
      rateLow: rate.low,
      rateHigh: rate.high,
      rateFrom: rate.from,
      ...ground,
      state:
        wallLength === null
          ? 'wall length unknown'
          : ground.date !== null && ground.date <= asOf
            ? 'grown out'
            : 'growing down',
    }
  })
}

interface Feature {
  readonly foot: Foot
  readonly what: string
  readonly place: string
  readonly sightings: Sighting[]
}

function featuresOf(visits: readonly Visit[]): readonly Feature[] {
  const features = feet.map((foot) => ({ foot, followed: [] as Feature[] }))
  for (const { id, date, growOut } of visits)
    for (const { foot, what, place, distance } of growOut) {
      const followed = features.find((one) => one.foot === foot)?.followed
      let feature = followed?.find((one) => one.what === what && one.place === place)
      if (feature === undefined) {
        feature = { foot, what, place, sightings: [] }
        followed?.push(feature)
      }
      feature.sightings.push({ visit: id, date, distance })
    }
  return features.flatMap(({ followed }) => followed)
}
