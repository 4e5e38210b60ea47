/** Something followed as it grows down the wall: how fast, and when it reaches the ground. */
import type { Horse } from '../casebook/model.ts'
import { dayOf, daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'
import { walls } from '../hoof/walls.ts'
import type { Capsule, GrowOut, NewGrowth } from './assessment.ts'
import { type Columns, families } from './columns.ts'
import { aheadOfGrown, type Followed, sumsOf, wallSums } from './followed.ts'
import { dateAt } from './forecast.ts'
import { lastLeft } from './latest.ts'
import { type Rate, rateOfWall } from './model/grow-out-rates.ts'
import { type Learned, learnedOf } from './model/learned.ts'
import { scaleOf } from './scale.ts'
import { z975 } from './student.ts'

/** Further off than this is no date. */
const horizonMonths = 120
/** Growth follows the season by up to this share either way (common practice, no source). */
const seasonShare = 0.15

/** Horn that leaves a distance behind it at a time: months since 1970, millimetres, variances of both ends of the way. */
interface Way {
  readonly from: number
  readonly gap: number
  /** Of the gap: the distance's and the wall's. */
  readonly variance: number
}

export interface AtGround {
  readonly date: PlainDate | null
  readonly earliest: PlainDate | null
  /** Null where the slow end of the rate never gets there within ten years. */
  readonly latest: PlainDate | null
}

const never: AtGround = { date: null, earliest: null, latest: null }

/**
 * When the horn reaches the ground: from + gap / rate, with the roots of (gap - rate x)^2 = 1.96^2 Var as limits: the
 * errors of distance, wall and rate, and what the season lends or owes meanwhile.
 * @param notBefore the day on which it was last seen on the wall
 */
function atGround({ from, gap, variance }: Way, rate: Rate, notBefore: PlainDate | null): AtGround {
  if (!(rate.mean > 0)) return never
  const onDay = (months: number | null): PlainDate | null => {
    if (months === null || months > horizonMonths) return null
    const date = dateAt((from + Math.max(0, months)) * daysPerMonth)
    return notBefore !== null && date < notBefore ? notBefore : date
  }
  const months = gap / rate.mean
  const season =
    ((rate.mean * seasonShare * 12) / (2 * Math.PI)) ** 2 *
    (1 - Math.cos((2 * Math.PI * Math.min(Math.max(0, months), 6)) / 12))
  const square = z975 ** 2
  const a = rate.mean ** 2 - square * rate.variance
  const half = gap * rate.mean
  const rest = gap ** 2 - square * (variance + season)
  const root = Math.sqrt(Math.max(0, half ** 2 - a * rest))
  // Where the rate may be none at all there is no last day; the first is the one root that lies ahead.
  const first = rest <= 0 ? 0 : rest / (half + root)
  return { date: onDay(months), earliest: onDay(first), latest: a > 0 ? onDay((half + root) / a) : null }
}

/** Mean of the last lengths of a wall that the trims left, and its variance. Null where it was never read. */
interface WallNow {
  readonly length: number
  readonly variance: number
}

const lengthsAveraged = 3

function wallNow(columns: Columns, foot: Foot, wall: MeasureId, learned: Learned): WallNow | null {
  for (const family of families)
    for (const stage of ['after', 'before'] as const) {
      const column = columns.find(family, stage, foot, wall)
      if (column === null) continue
      const last = [...column.values].filter((value) => !Number.isNaN(value)).slice(-lengthsAveraged)
      const { e, u } = learnedOf(learned, family, wall, foot)
      const { sd } = scaleOf(column)
      return {
        length: last.reduce((sum, value) => sum + value, 0) / last.length,
        variance: ((e ** 2 + u ** 2) * sd ** 2) / last.length,
      }
    }
  return null
}

/** What dates of growing down are made from. */
export interface GrowingDown {
  readonly horse: Horse
  readonly columns: Columns
  readonly followed: Followed
  readonly learned: Learned
  readonly asOf: PlainDate
}

const rateAt = ({ horse, followed, learned, asOf }: GrowingDown, foot: Foot, wall: MeasureId): Rate =>
  rateOfWall(wallSums(followed, foot, wall, aheadOfGrown(horse, asOf)), learned.growOut)

const rateLimits = ({ mean, variance }: Rate) => ({
  ratePerMonth: Math.max(0, mean),
  rateLow: Math.max(0, mean - z975 * Math.sqrt(variance)),
  rateHigh: Math.max(0, mean + z975 * Math.sqrt(variance)),
})

/** Every followed feature. All horn of one wall grows at one rate, so that two dates for it never differ. */
export const growOutsOf = (of: GrowingDown): readonly GrowOut[] =>
  of.followed.features.map((feature) => {
    const { foot, what, place, wall, sightings } = feature
    const { asOf, learned } = of
    const { k, time, distance: mean } = sumsOf(sightings)
    const rate = rateAt(of, foot, wall ?? 'toe-length')
    const now = wall === null ? null : wallNow(of.columns, foot, wall, learned)
    const last = sightings.at(-1)
    const distance = last?.distance ?? 0
    const variance = learned.growOut.distanceSd ** 2 / k
    const ground =
      now === null
        ? never
        : atGround(
            { from: time, gap: now.length - mean, variance: variance + now.variance },
            rate,
            last?.date ?? null,
          )
    const grown = mean + Math.max(0, rate.mean) * (dayOf(asOf) / daysPerMonth - time)
    return {
      foot,
      feature: what,
      place,
      sightings,
      distance,
      expectedNow: Math.max(distance, Math.min(grown, now?.length ?? grown)),
      wallLength: now?.length ?? null,
      ...rateLimits(rate),
      rateFrom: rate.from,
      ...ground,
      state: stateOf(ground, now, asOf),
    }
  })

/** Grown out only when the whole range is past; from the day itself on it is to be looked at. */
function stateOf({ date, latest }: AtGround, now: WallNow | null, asOf: PlainDate): GrowOut['state'] {
  if (now === null) return 'wall length unknown'
  if (date === null || date > asOf) return 'growing down'
  return latest !== null && latest <= asOf ? 'grown out' : 'due'
}

/**
 * Toe, quarter and heel of each foot whose length was read: when horn that left the hairline at the first visit
 * reaches the ground. Of two sides the longer counts, since the place is renewed when both are.
 */
export function capsulesOf(of: GrowingDown): readonly Capsule[] {
  const since = of.columns.visits[0]?.date
  if (since === undefined) return []
  return feet.flatMap((foot) =>
    walls.flatMap(({ place, measures }) => {
      const sides = measures
        .flatMap((wall: MeasureId) => {
          const now = wallNow(of.columns, foot, wall, of.learned)
          return now === null ? [] : [{ wall, now }]
        })
        .toSorted((a, b) => b.now.length - a.now.length)
      const [longest] = sides
      if (longest === undefined) return []
      const rate = rateAt(of, foot, longest.wall)
      const { length, variance } = longest.now
      const ground = atGround({ from: dayOf(since) / daysPerMonth, gap: length, variance }, rate, null)
      const { date, earliest, latest } = ground
      if (date === null || earliest === null) return []
      return [
        {
          foot,
          place,
          since,
          wallLength: length,
          ...rateLimits(rate),
          renewalDays: (length / rate.mean) * daysPerMonth,
          date,
          earliest,
          latest,
        },
      ]
    }),
  )
}

/**
 * The steeper strip below the hairline, where its angle was read: the angle that the whole wall can stand at once the
 * strip has grown down, and when that will be.
 */
export const newGrowthOf = (of: GrowingDown): readonly NewGrowth[] =>
  of.followed.strips.flatMap(({ foot, sightings, latest }) => {
    if (latest === null) return []
    const now = wallNow(of.columns, foot, 'toe-length', of.learned)
    const { k, time, distance } = sumsOf(sightings)
    const variance = of.learned.growOut.distanceSd ** 2 / k
    const ground =
      now === null
        ? never
        : atGround(
            { from: time, gap: now.length - distance, variance: variance + now.variance },
            rateAt(of, foot, 'toe-length'),
            sightings.at(-1)?.date ?? null,
          )
    return [
      {
        foot,
        visit: latest.visit,
        newAngle: latest.angle,
        newLength: sightings.find(({ visit }) => visit === latest.visit)?.distance ?? 0,
        toeAngle: lastLeft(of.columns, foot, 'toe-angle'),
        toeLength: now?.length ?? null,
        ...ground,
      },
    ]
  })
