/** The course of one measure at one foot: fit, verdict, forecast, and what casts doubt on them. */
import { daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import type { PaceChange, SecondOpinion, SeriesPoint, Trend, TrendFit } from './assessed-trend.ts'
import {
  fitLine,
  type LineFit,
  levelAt,
  levelInterval,
  type Observation,
  repeatabilityWorth,
  type ScatterPrior,
  slopeInterval,
  smallestRealChange,
  smallestRealChangeOf,
} from './fit.ts'
import { forecastOf } from './forecast.ts'
import { paceOver, recentFit } from './pace.ts'
import { disagree, pullsMost } from './second-opinion.ts'
import { type Series, scaleOf } from './series.ts'
import { wouldSettle } from './settle.ts'
import type { Target } from './targets.ts'
import { theilSen } from './theil-sen.ts'
import { verdictOf } from './verdict.ts'

/** Where further visits would fall: the next one, then one a trim cycle. */
export interface VisitsAhead {
  readonly next: PlainDate
  readonly nextDay: number
  readonly cycleDays: number
}

export function trendOf(series: Series, target: Target, ahead: VisitsAhead): Trend {
  const { column, points } = series
  const scale = scaleOf(series)
  const prior: ScatterPrior = { sd: scale.sd, worth: repeatabilityWorth }
  const whole = fitLine(points, prior)
  const lastFour = points.slice(-paceOver)
  const recent = whole === null ? null : recentFit(whole, lastFour, prior)
  const used = recent ?? whole
  const usedPoints = recent === null ? points : lastFour
  const lastDay = points.at(-1)?.day ?? 0
  const span = lastDay - (usedPoints[0]?.day ?? 0)
  const verdict =
    used === null ? 'too early to tell' : verdictOf(used, lastDay, span, target.band, scale.matters)
  const first = points[0]?.value ?? Number.NaN
  const last = points.at(-1)?.value ?? Number.NaN
  const real = whole === null ? smallestRealChangeOf(scale.sd) : smallestRealChange(whole)
  const wholeSlope = whole === null ? null : medianSlope(points, whole)
  const wholeFit = whole === null ? null : trendFit(whole, points, wholeSlope ?? whole.slope)
  return {
    foot: column.foot,
    measure: column.measure,
    stage: column.stage,
    source: column.family,
    n: points.length,
    points,
    first,
    last,
    change: last - first,
    smallestRealChange: real,
    changeIsReal: points.length > 1 && Math.abs(last - first) >= real,
    whole: wholeFit,
    fit: recent === null ? wholeFit : trendFit(recent, lastFour, medianSlope(lastFour, recent)),
    target: target.band,
    targetFrom: target.from,
    verdict,
    wouldSettle:
      verdict === 'too early to tell'
        ? wouldSettle(soFar(usedPoints, used, scale.sd), scale.matters, ahead, series.firstDay)
        : null,
    forecast: used === null ? null : forecastOf(used, series.firstDay, lastDay, target.band),
    pace: whole === null || recent === null ? null : paceChange(whole, recent, points),
    secondOpinion:
      whole === null || wholeSlope === null ? null : secondOpinion(whole, wholeSlope, scale.matters, points),
  }
}

const medianSlope = (points: readonly Observation[], fit: LineFit): number => theilSen(points) ?? fit.slope

function trendFit(fit: LineFit, points: readonly Observation[], medianOfSlopes: number): TrendFit {
  const lastDay = points.at(-1)?.day ?? 0
  const slope = slopeInterval(fit)
  return {
    fromDay: points[0]?.day ?? 0,
    n: fit.n,
    level: fit.level,
    slope: fit.slope,
    meanDay: fit.meanDay,
    sxx: fit.sxx,
    s: fit.s,
    nu: fit.nu,
    t: fit.t,
    slopePerMonth: fit.slope * daysPerMonth,
    slopeLow: slope.low * daysPerMonth,
    slopeHigh: slope.high * daysPerMonth,
    theilSenPerMonth: medianOfSlopes * daysPerMonth,
    levelAtLast: levelAt(fit, lastDay),
    levelAtLastInterval: levelInterval(fit, lastDay),
  }
}

const soFar = (points: readonly Observation[], fit: LineFit | null, sd: number) => ({
  n: points.length,
  days: points.map(({ day }) => day),
  fit,
  sd,
  nu: fit?.nu ?? repeatabilityWorth + points.length - 2,
})

const perMonth = ({ low, high }: { low: number; high: number }) => ({
  low: low * daysPerMonth,
  high: high * daysPerMonth,
})

const paceChange = (whole: LineFit, recent: LineFit, points: readonly SeriesPoint[]): PaceChange => ({
  sinceVisit: points.at(-paceOver)?.visit ?? '',
  wholePerMonth: whole.slope * daysPerMonth,
  wholeInterval: perMonth(slopeInterval(whole)),
  recentPerMonth: recent.slope * daysPerMonth,
  recentInterval: perMonth(slopeInterval(recent)),
})

function secondOpinion(
  fit: LineFit,
  slope: number,
  matters: number,
  points: readonly SeriesPoint[],
): SecondOpinion | null {
  const span = (points.at(-1)?.day ?? 0) - (points[0]?.day ?? 0)
  if (!disagree(fit, slope, span, matters)) return null
  return {
    theilSenPerMonth: slope * daysPerMonth,
    leastSquaresPerMonth: fit.slope * daysPerMonth,
    visit: points[pullsMost(fit, points)]?.visit ?? '',
  }
}
