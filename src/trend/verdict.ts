/** What the line says against the target band, in one word. */
import { type Band, nearestEdge } from '../hoof/bands.ts'
import type { Verdict } from './assessed-trend.ts'
import { type LineFit, levelAt, slopeInterval, slopeMargin } from './fit.ts'

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

/** `no`: the slope's interval includes 0. Else the way the line goes for sure. */
export function surelyMoves(fit: LineFit): 'up' | 'down' | 'no' {
  const margin = slopeMargin(fit)
  return fit.slope - margin > 0 ? 'up' : fit.slope + margin < 0 ? 'down' : 'no'
}

/**
 * Verdict of a fit whose last reading stands at `lastDay`, over the `span` of days it covers.
 * In this order: on target, then improving or worsening (without a band: rising or falling), then steady, else too early.
 * @param matters smallest change that matters, in the measure's unit
 */
export function verdictOf(
  fit: LineFit,
  lastDay: number,
  span: number,
  band: Band | null,
  matters: number,
): Verdict {
  const edge = closedSomewhere(band) ? edgeAhead(levelAt(fit, lastDay), band) : null
  if (closedSomewhere(band) && edge === null) return 'on target'
  const way = surelyMoves(fit)
  if (way !== 'no') {
    if (edge === null) return way === 'up' ? 'rising' : 'falling'
    const toward = edge > levelAt(fit, lastDay) ? 'up' : 'down'
    return way === toward ? 'improving' : 'worsening'
  }
  const { low, high } = slopeInterval(fit)
  return Math.max(-low, high) * span < matters ? 'steady' : 'too early to tell'
}
