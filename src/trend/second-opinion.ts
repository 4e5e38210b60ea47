/** Theil-Sen beside least squares: one visit can pull a line, and the page should name it. */
import { type LineFit, type Observation, slopeInterval } from './fit.ts'

/**
 * Whether the two slopes clearly disagree: the median slope lies outside the 95 % interval of least squares, or goes
 * the other way and the two part by as much as matters over the span. Slopes in units a day. The rule is ours.
 */
export function disagree(fit: LineFit, medianSlope: number, span: number, matters: number): boolean {
  const { low, high } = slopeInterval(fit)
  // A few units in the last place, so that a line without scatter does not disagree with itself.
  const slack = 1e-9 * Math.max(Math.abs(fit.slope), Math.abs(medianSlope))
  if (medianSlope < low - slack || medianSlope > high + slack) return true
  return medianSlope * fit.slope < 0 && Math.abs(medianSlope - fit.slope) * span >= matters
}

/** Place in the series of the reading that changes the slope most when it is left out. */
export function pullsMost(fit: LineFit, points: readonly Observation[]): number {
  let place = 0
  let most = -1
  for (const [i, { day, value }] of points.entries()) {
    const away = day - fit.meanDay
    const residual = value - fit.meanValue - fit.slope * away
    const leverage = 1 / fit.n + away ** 2 / fit.sxx
    const pull = leverage < 1 ? Math.abs((away * residual) / (fit.sxx * (1 - leverage))) : 0
    if (pull > most) {
      most = pull
      place = i
    }
  }
  return place
}
