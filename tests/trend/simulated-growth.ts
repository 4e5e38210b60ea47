/** Practices in which something is followed as it grows down the wall until it is gone, and the day of that is known. */
import { addDays, dayOf, daysPerMonth, type PlainDate } from '../../src/hoof/dates.ts'
import { type Foot, feet } from '../../src/hoof/feet.ts'
import { assess } from '../../src/trend/assess.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'
import type { Random } from './random.ts'
import { learnedFromAll, Tally } from './simulated-practice.ts'

/** Rates and errors in millimetres. */
export interface GrowingWorld {
  readonly horses: number
  /** Share by which growth follows the season, either way. */
  readonly season: number
  /** How far the practice's mean lies from the literature's, and its horses or walls from its mean (standard deviations). */
  readonly practices: number
  readonly within: number
  /** Whether the four feet of a horse grow alike. */
  readonly byHorse: boolean
  readonly distanceSd: number
}

/** Share of ranges that hold the day on which the feature was gone, by how often it had been seen. */
export function tallyGrowOut(random: Random, worlds: readonly GrowingWorld[]): Tally {
  const tally = new Tally()
  for (const world of worlds) {
    const mean = 8.5 + world.practices * random.normal()
    const drawn = Array.from({ length: world.horses }, (_, i) => growingHorse(random, world, mean, `h${i}`))
    const learned = learnedFromAll(drawn.map(({ horse }) => horse))
    for (const { horse, last, gone } of drawn)
      for (const { foot, sightings, earliest, latest } of assess(horse, practice(), addDays(last, 1), learned)
        .growOut) {
        const day = gone[foot]
        const holds = earliest !== null && earliest <= day && (latest === null || day <= latest)
        tally.add('all', holds)
        tally.add(`${sightings.length} sightings`, holds)
        tally.add('open at the end', latest === null)
      }
  }
  return tally
}

function growingHorse(random: Random, world: GrowingWorld, mean: number, id: string) {
  const first = addDays('2024-03-01', Math.floor(random.even() * 360))
  const visitsLeft = 1 + Math.floor(random.even() * 8)
  const ofHorse = random.normal()
  const walls = feet.map((foot) => ({
    foot,
    rate: Math.max(2, mean + world.within * (world.byHorse ? ofHorse : random.normal())),
    from: 5 + 25 * random.even(),
    length: 80 + 10 * random.even(),
  }))
  const seasonal = (day: number) =>
    (world.season * Math.sin((2 * Math.PI * day) / 365.25) * 12) / (2 * Math.PI)
  const at = ({ rate, from }: (typeof walls)[number], date: PlainDate): number => {
    const months = (dayOf(date) - dayOf(first)) / daysPerMonth
    return from + rate * (months + seasonal(dayOf(date)) - seasonal(dayOf(first)))
  }
  const dates = [first]
  while (dates.length < visitsLeft)
    dates.push(addDays(dates.at(-1) ?? first, 28 + Math.floor(random.even() * 21)))
  const visits = dates.map((date): VisitSketch => {
    const lengths = walls.map(({ foot, length }) => {
      const read = length + Math.hypot(2, 0.8) * random.normal()
      return [foot, Math.round(read)] as const
    })
    return {
      date,
      after: { 'toe-length': Object.fromEntries(lengths) },
      growOut: walls.flatMap((wall) => {
        const distance = at(wall, date)
        const read = Math.max(0, Math.round(distance + world.distanceSd * random.normal()))
        return distance < wall.length ? [`${wall.foot} ring, toe, ${read}`] : []
      }),
    }
  })
  const gone = Object.fromEntries(
    walls.map((wall) => {
      let date = first
      while (at(wall, date) < wall.length) date = addDays(date, 1)
      return [wall.foot, date]
    }),
  ) as Record<Foot, PlainDate>
  return { horse: buildHorse({ id, visits }), last: dates.at(-1) ?? first, gone }
}
