/**
 * A straight line whose level and slope are known with errors, and when it reaches a level, with Fieller's interval.
 * E. C. Fieller, Some problems in interval estimation, J. Roy. Statist. Soc. B 16 (1954) 175-185 (title from memory).
 */
import type { CourseFit } from './model/fit.ts'

export interface Line {
  /** At time 0, and its variance. */
  readonly level: number
  readonly levelVariance: number
  readonly covariance: number
  readonly slope: number
  readonly slopeVariance: number
}

export const lineOf = ({ level, slope, s2, inverse }: CourseFit): Line => ({
  level,
  levelVariance: s2 * inverse.i00,
  covariance: s2 * inverse.i01,
  slope,
  slopeVariance: s2 * inverse.i11,
})

/**
 * The line under the belief that its slope comes from N(0, spread^2): 1 / spread^2 added to the slope's entry of the
 * inverse of the covariance.
 */
export function lineShrunk(line: Line, spread: number): Line {
  const { level, slope, levelVariance, covariance, slopeVariance } = line
  const all = spread ** 2 + slopeVariance
  return {
    level: level - (covariance * slope) / all,
    slope: slope - (slopeVariance * slope) / all,
    levelVariance: levelVariance - covariance ** 2 / all,
    covariance: covariance - (covariance * slopeVariance) / all,
    slopeVariance: slopeVariance - slopeVariance ** 2 / all,
  }
}

/** The line plus `errors` of its standard errors at a time. */
export function lineLimit(line: Line, time: number, errors: number): number {
  const variance = line.levelVariance + 2 * time * line.covariance + time ** 2 * line.slopeVariance
  return line.level + line.slope * time + errors * Math.sqrt(Math.max(0, variance))
}

export interface Reached {
  readonly at: number
  readonly low: number
  readonly high: number
}

/**
 * The time at which the line equals `target`, and its limits: the roots of (line - target)^2 = t^2 Var(line). Null
 * where the slope's interval includes 0: the interval is then unbounded.
 */
export function reach(line: Line, target: number, t: number): Reached | null {
  const square = line.slope ** 2 - t ** 2 * line.slopeVariance
  if (!(square > 0)) return null
  const at = (target - line.level) / line.slope
  // In time from the crossing u: the gap is slope u, and square u^2 - 2 half u - rest = 0 with rest >= 0.
  const half = t ** 2 * (line.covariance + line.slopeVariance * at)
  const rest = t ** 2 * (line.levelVariance + 2 * at * line.covariance + at ** 2 * line.slopeVariance)
  const root = Math.sqrt(half ** 2 + square * Math.max(0, rest))
  return { at, low: at + (half - root) / square, high: at + (half + root) / square }
}
