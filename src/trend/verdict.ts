/** What a line says against the target band: which way it goes, and where it stands. */
import { type Band, inBand, nearestEdge } from '../hoof/bands.ts'
import type { Position, Verdict } from './assessed-trend.ts'
import { type CourseFit, levelAt, levelSd, slopeSd } from './model/fit.ts'
import { t95, t985, tBelow } from './student.ts'

/** A band with at least one side; a band open both ways wants nothing. */
export const closedSomewhere = (band: Band | null): band is Band =>
  band !== null && (band.low !== null || band.high !== null)

/**
 * The edge of the band that a fitted level has yet to reach; null when it lies in the band.
 * A level counts as on the edge when only the arithmetic parts them, so that 2 in and 50.8 mm are judged alike.
 */
export function edgeAhead(level: number, band: Band): number | null {
  const edge = nearestEdge(level, band)
  return edge === null || Math.abs(level - edge) <= 1e-9 * Math.max(1, Math.abs(edge)) ? null : edge
}

/** Months over which a course must run before anything is said of its way. */
export const fewestMonths = 2.5
/** A change that matters counts over this many months at the most. */
const mostMonths = 6

/** Toward a higher level, a lower one, or none: there is no target, or it is reached. */
export function wayToTarget(level: number, band: Band | null): 1 | -1 | 0 {
  const edge = closedSomewhere(band) ? edgeAhead(level, band) : null
  return edge === null ? 0 : edge > level ? 1 : -1
}

/**
 * Verdict by the slope. It moves where the interval of 97 % leaves 0 out. Else by equivalence on the interval of 90 %
 * (Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657; title from memory): a slope that would not come to a change
 * that matters is ruled out on the one side, the other, or both.
 * @param months from the first reading to the last
 * @param matters smallest change that matters, in the measure's unit
 */
export function verdictOf(fit: CourseFit, months: number, band: Band | null, matters: number): Verdict {
  if (months < fewestMonths) return 'too early to tell'
  const sd = slopeSd(fit)
  const toward = wayToTarget(levelAt(fit, fit.to), band)
  if (Math.abs(fit.slope) > t985(fit.nu) * sd) {
    if (toward === 0) return fit.slope > 0 ? 'rising' : 'falling'
    return fit.slope * toward > 0 ? 'improving' : 'worsening'
  }
  const delta = matters / Math.min(months, mostMonths)
  const half = t95(fit.nu) * sd
  const along = toward === 0 ? fit.slope : fit.slope * toward
  const notWorsening = along - half > -delta
  const notImproving = along + half < delta
  if (notWorsening && notImproving) return 'steady'
  if (toward === 0) return 'too early to tell'
  return notWorsening ? 'not worsening' : notImproving ? 'not improving' : 'too early to tell'
}

/** Probability of a level from which it counts as on target, and to which as off it. */
const onFrom = 0.8
const offTo = 0.2

/** Where the level at the last trim lies. */
export const positionOf = (fit: CourseFit, band: Band | null): Position =>
  positionAt(levelAt(fit, fit.to), levelSd(fit, fit.to), fit.nu, band)

export function positionAt(level: number, sd: number, nu: number, band: Band | null): Position {
  if (!closedSomewhere(band)) return 'no target'
  const probability = sd > 0 ? withinBand(level, sd, nu, band) : inBand(level, band) ? 1 : 0
  return probability >= onFrom ? 'on target' : probability <= offTo ? 'off target' : 'near target'
}

function withinBand(level: number, sd: number, nu: number, { low, high }: Band): number {
  const below = (edge: number) => tBelow((edge - level) / sd, nu)
  return (high === null ? 1 : below(high)) - (low === null ? 0 : below(low))
}
