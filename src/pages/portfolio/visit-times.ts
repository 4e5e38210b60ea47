/**
 * Which cases of one owner can be told to belong together by when they were seen: horses that stand together are seen
 * on the same days, and a rare order of intervals between visits is as good as a name to whoever knows the yard's diary.
 */
import { casesWanted } from './coarsen.ts'

export interface TimedCase {
  /** Id of the horse. */
  readonly horse: string
  readonly owner: string | null
  /** Of each visit, in weeks or days of the case, as its page tells them. */
  readonly times: readonly number[]
}

export interface SharedTimes {
  readonly horse: string
  readonly others: readonly string[]
  /** The longest order of intervals that it shares with any of them. */
  readonly intervals: readonly number[]
  /** How many cases of the portfolio show that order. */
  readonly cases: number
}

/** Fewer intervals come about by chance, also between horses that never met. */
const fewestIntervals = 3

/** Horses of one yard are told of once, at the first of them by id, whatever the order of cases. */
export function sharedTimes(cases: readonly TimedCase[]): readonly SharedTimes[] {
  const timed = [...cases]
    .sort((a, b) => (a.horse < b.horse ? -1 : 1))
    .map((one) => ({ ...one, intervals: intervalsOf(one.times) }))
  const known = new Set<string>()
  return timed.flatMap(({ horse, owner, intervals }, i) => {
    const pairs = timed.slice(i + 1).flatMap((other) => {
      if (owner === null || other.owner !== owner) return []
      const run = longestShared(intervals, other.intervals)
      const count = timed.filter((one) => longestShared(one.intervals, run).length === run.length).length
      return run.length >= fewestIntervals && count < casesWanted ? [{ other: other.horse, run, count }] : []
    })
    const [longest] = [...pairs].sort((a, b) => b.run.length - a.run.length)
    if (longest === undefined || pairs.every(({ other }) => known.has(other))) return []
    for (const { other } of pairs) known.add(other)
    return [{ horse, others: pairs.map(({ other }) => other), intervals: longest.run, cases: longest.count }]
  })
}

const intervalsOf = (times: readonly number[]): readonly number[] =>
  times.slice(1).map((time, i) => time - (times[i] ?? 0))

/** The longest stretch that stands in both, the first of several. */
function longestShared(a: readonly number[], b: readonly number[]): readonly number[] {
  let best: readonly number[] = []
  let before: readonly number[] = []
  for (const [i, interval] of a.entries()) {
    const here = b.map((other, j) => (other === interval ? (before[j - 1] ?? 0) + 1 : 0))
    const longest = Math.max(0, ...here)
    if (longest > best.length) best = a.slice(i + 1 - longest, i + 1)
    before = here
  }
  return best
}
