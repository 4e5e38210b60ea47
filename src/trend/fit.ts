/**
 * Least squares on irregular dates, with the repeatability of the readings as prior knowledge of their scatter.
 * Textbook formulas; the prior is a scaled inverse chi-squared one on the variance (conjugate normal model).
 */
import type { Interval } from './assessed-trend.ts'
import { t975 } from './student.ts'

export interface Observation {
  /** Days, from any origin. */
  readonly day: number
  readonly value: number
}

/** What is known of the scatter before any reading: a standard deviation, worth so many degrees of freedom. */
export interface ScatterPrior {
  readonly sd: number
  /** 0 makes the fit ordinary least squares. */
  readonly worth: number
}

/** How many degrees of freedom the repeatability of a measure is worth. Our choice. */
export const repeatabilityWorth = 10

/** Sums of a series about its mean, grown one reading at a time (Welford's update). */
export interface Sums {
  n: number
  meanDay: number
  meanValue: number
  /** Sum of (day - mean day) squared. */
  sxx: number
  sxy: number
  syy: number
}

export const noSums = (): Sums => ({ n: 0, meanDay: 0, meanValue: 0, sxx: 0, sxy: 0, syy: 0 })

/** Takes one more reading into the sums, in place: this is done for every reading of a record. */
export function addTo(sums: Sums, day: number, value: number): void {
  const share = sums.n / (sums.n + 1)
  const byDay = day - sums.meanDay
  const byValue = value - sums.meanValue
  sums.n++
  sums.meanDay += byDay / sums.n
  sums.meanValue += byValue / sums.n
  sums.sxx += byDay * byDay * share
  sums.sxy += byDay * byValue * share
  sums.syy += byValue * byValue * share
}

/** A fitted line and how sure it is. Slope in units a day. */
export interface LineFit {
  readonly n: number
  readonly meanDay: number
  readonly meanValue: number
  readonly sxx: number
  readonly slope: number
  /** Level at day 0. */
  readonly level: number
  /** Residual sum of squares. */
  readonly rss: number
  /** Standard deviation of one reading: sqrt((worth sd^2 + rss) / nu). */
  readonly s: number
  /** Degrees of freedom: worth + n - 2. */
  readonly nu: number
  /** Student's t, 0.975, nu. */
  readonly t: number
}

/** The line of at least two readings that are not all on one day; null otherwise, and where nothing tells the scatter. */
export function fitLine(points: readonly Observation[], prior: ScatterPrior): LineFit | null {
  const days = new Float64Array(points.length)
  const values = new Float64Array(points.length)
  let at = 0
  for (const { day, value } of points) {
    days[at] = day
    values[at++] = value
  }
  return fitColumns(days, values, 0, at, prior)
}

/** The same for the readings from place `from` up to `to`, left out, of two columns. */
export function fitColumns(
  days: Float64Array,
  values: Float64Array,
  from: number,
  to: number,
  prior: ScatterPrior,
): LineFit | null {
  const n = to - from
  let meanDay = 0
  let meanValue = 0
  for (let i = from; i < to; i++) {
    meanDay += (days[i] ?? 0) / n
    meanValue += (values[i] ?? 0) / n
  }
  let sxx = 0
  let sxy = 0
  let syy = 0
  for (let i = from; i < to; i++) {
    const byDay = (days[i] ?? 0) - meanDay
    const byValue = (values[i] ?? 0) - meanValue
    sxx += byDay ** 2
    sxy += byDay * byValue
    syy += byValue ** 2
  }
  const slope = sxy / sxx
  let rss = 0
  for (let i = from; i < to; i++)
    rss += ((values[i] ?? 0) - meanValue - slope * ((days[i] ?? 0) - meanDay)) ** 2
  return lineOf({ n, meanDay, meanValue, sxx, sxy, syy }, rss, prior)
}

/** The same from sums alone, for series that grow: a few digits less in the residual sum, at a cost free of n. */
export const fitOfSums = (sums: Sums, prior: ScatterPrior): LineFit | null =>
  lineOf(sums, sums.sxx === 0 ? 0 : Math.max(0, sums.syy - (sums.sxy * sums.sxy) / sums.sxx), prior)

function lineOf(sums: Sums, rss: number, prior: ScatterPrior): LineFit | null {
  const nu = prior.worth + sums.n - 2
  if (sums.n < 2 || sums.sxx === 0 || nu <= 0) return null
  const slope = sums.sxy / sums.sxx
  return {
    n: sums.n,
    meanDay: sums.meanDay,
    meanValue: sums.meanValue,
    sxx: sums.sxx,
    slope,
    level: sums.meanValue - slope * sums.meanDay,
    rss,
    s: Math.sqrt((prior.worth * prior.sd * prior.sd + rss) / nu),
    nu,
    t: t975(nu),
  }
}

/** Standard error of the slope, units a day. */
export const slopeError = (fit: LineFit): number => fit.s / Math.sqrt(fit.sxx)

/** Standard error of the fitted level at a day. */
export const levelError = (fit: LineFit, day: number): number =>
  fit.s * Math.sqrt(1 / fit.n + (day - fit.meanDay) ** 2 / fit.sxx)

/** Standard error of level at day 0. */
export const interceptError = (fit: LineFit): number => levelError(fit, 0)

/** Fitted level at a day. */
export const levelAt = (fit: LineFit, day: number): number => fit.meanValue + fit.slope * (day - fit.meanDay)

const around = (middle: number, half: number): Interval => ({ low: middle - half, high: middle + half })

/** Half the width of the slope's 95 % interval. */
export const slopeMargin = (fit: LineFit): number => fit.t * slopeError(fit)

/** 95 % interval of the slope, units a day. */
export const slopeInterval = (fit: LineFit): Interval => around(fit.slope, slopeMargin(fit))

/** 95 % interval of the fitted level at a day. */
export const levelInterval = (fit: LineFit, day: number): Interval =>
  around(levelAt(fit, day), fit.t * levelError(fit, day))

/** 95 % interval of a further reading at a day. */
export const readingInterval = (fit: LineFit, day: number): Interval =>
  around(levelAt(fit, day), fit.t * Math.hypot(fit.s, levelError(fit, day)))

/** Smallest real change between two readings: a smaller difference is within measuring error. */
export const smallestRealChange = (fit: LineFit): number => fit.t * Math.SQRT2 * fit.s

/** The same from the repeatability alone, where no line can be fitted. */
export const smallestRealChangeOf = (sd: number): number => t975(repeatabilityWorth) * Math.SQRT2 * sd
