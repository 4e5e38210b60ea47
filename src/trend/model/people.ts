/** Whether one person of a practice reads finer than another. */

import { type Ratios, variancesOf } from './learn.ts'
import { misfitsOf } from './outliers.ts'
import { type Season, withoutSeason } from './season.ts'
import { coursesOf, type Teaching } from './teaching.ts'

/** How one person's readings repeat beside the practice's: a multiple of its standard deviation. */
export interface Hand {
  readonly factor: number
  readonly readings: number
}

/** Fewer readings tell nothing of a person. */
const fewestReadings = 60
/** Readings that the practice's own scatter is worth beside a person's. */
const practiceWorth = 20
/** A reading further off is a slip, not a hand. */
const beyond = 3.5

/**
 * By id, where at least two people have each taken readings enough. In a reading whose own error is the share w of its
 * variance, the squared misfit of a person with f times the practice's error is w f^2 + 1 - w in the mean: so
 * f^2 = (20 + sum (misfit^2 - (1 - w))) / (20 + sum w).
 * @param scatterOf what the courses of a key taught
 */
export function handsOf(
  teachings: readonly Teaching[],
  keys: readonly string[],
  scatterOf: (key: string) => Ratios & { readonly season: Season },
): Readonly<Record<string, Hand>> {
  const sums = new Map<string, { squares: number; shares: number; readings: number }>()
  for (const teaching of teachings) {
    if (teaching.people.every((person) => person === null)) continue
    for (const key of keys) {
      const scatter = scatterOf(key)
      for (const course of coursesOf(teaching, key)) {
        const even = withoutSeason(course, scatter.season)
        for (const { trim, stage, errors, ownShare } of misfitsOf(even, variancesOf(scatter, course.sd))) {
          const person = teaching.people[stage === 'left' ? trim : trim + 1] ?? null
          if (person === null || errors > beyond) continue
          const sum = sums.get(person) ?? { squares: 0, shares: 0, readings: 0 }
          sum.squares += errors ** 2 - (1 - ownShare)
          sum.shares += ownShare
          sum.readings++
          sums.set(person, sum)
        }
      }
    }
  }
  const told = [...sums].filter(([, { readings }]) => readings >= fewestReadings)
  if (told.length < 2) return {}
  return Object.fromEntries(
    told.map(([person, { squares, shares, readings }]) => {
      const square = (practiceWorth + squares) / (practiceWorth + shares)
      return [person, { factor: Math.sqrt(Math.max(0.1, square)), readings }]
    }),
  )
}
