/** The course of one measure at one foot: fit, verdict, forecast, and what casts doubt on them. */
import { daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import type { PaceChange, SecondOpinion, Trend, TrendFit } from './assessed-trend.ts'
import {
  fitColumns,
  type LineFit,
  levelAt,
  levelInterval,
  repeatabilityWorth,
  type ScatterPrior,
  slopeInterval,
  smallestRealChange,
  smallestRealChangeOf,
} from './fit.ts'
import { forecastOf } from './forecast.ts'
import { paceOver, recentFit } from './pace.ts'
import { scaleOf } from './scale.ts'
import { disagree, pullsMost } from './second-opinion.ts'
import type { Series } from './series.ts'
import { wouldSettle } from './settle.ts'
import type { Target } from './targets.ts'
import { theilSenOfColumns } from './theil-sen.ts'
import { verdictOf } from './verdict.ts'

/** Where further visits would fall: the next one, then one a trim cycle. */
export interface VisitsAhead {
  readonly next: PlainDate
  readonly nextDay: number
  readonly cycleDays: number
}

/** @param isHeld whether a caution that holds the plan stands over the foot */
export function trendOf(series: Series, target: Target, isHeld: boolean, ahead: VisitsAhead): Trend {
  const { column, days, values } = series
  const n = days.length
  const scale = scaleOf(series)
  const prior: ScatterPrior = { sd: scale.sd, worth: repeatabilityWorth }
  const whole = fitColumns(days, values, 0, n, prior)
  const lastDays = days.subarray(-paceOver)
  const lastValues = values.subarray(-paceOver)
  const recent = whole === null ? null : recentFit(whole, days, values, prior)
  const used = recent ?? whole
  const usedDays = recent === null ? days : lastDays
  const lastDay = days[n - 1] ?? 0
  const span = lastDay - (usedDays[0] ?? 0)
  const judged =
    used === null ? 'too early to tell' : verdictOf(used, lastDay, span, target.band, scale.matters)
  const verdict = isHeld && judged === 'on target' ? 'held' : judged
  const first = values[0] ?? Number.NaN
  const last = values[n - 1] ?? Number.NaN
  const real = whole === null ? smallestRealChangeOf(scale.sd) : smallestRealChange(whole)
  const wholeSlope = whole === null ? null : medianSlope(days, values, whole)
  const wholeFit = whole === null ? null : trendFit(whole, days, wholeSlope ?? whole.slope)
  return {
    foot: column.foot,
    measure: column.measure,
    stage: column.stage,
    source: column.family,
    n,
    get points() {
      return series.points()
    },
    first,
    last,
    change: last - first,
    smallestRealChange: real,
    changeIsReal: n > 1 && Math.abs(last - first) >= real,
    whole: wholeFit,
    fit: recent === null ? wholeFit : trendFit(recent, lastDays, medianSlope(lastDays, lastValues, recent)),
    target: target.band,
    targetFrom: target.from,
    verdict,
    wouldSettle:
      verdict === 'too early to tell'
        ? wouldSettle(soFar(usedDays, used, scale.sd), scale.matters, ahead, series.firstDay)
        : null,
    // No promise for a foot that waits for a vet.
    forecast: used === null || isHeld ? null : forecastOf(used, series.firstDay, lastDay, target.band),
    pace: whole === null || recent === null ? null : paceChange(whole, recent, series),
    secondOpinion:
      whole === null || wholeSlope === null ? null : secondOpinion(whole, wholeSlope, scale.matters, series),
  }
}

const medianSlope = (days: Float64Array, values: Float64Array, fit: LineFit): number =>
  theilSenOfColumns(days, values) ?? fit.slope

function trendFit(fit: LineFit, days: Float64Array, medianOfSlopes: number): TrendFit {
  const lastDay = days[days.length - 1] ?? 0
  const slope = slopeInterval(fit)
  return {
    fromDay: days[0] ?? 0,
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

const soFar = (days: Float64Array, fit: LineFit | null, sd: number) => ({
  n: days.length,
  days: [...days],
  fit,
  sd,
  nu: fit?.nu ?? repeatabilityWorth + days.length - 2,
})

const perMonth = ({ low, high }: { low: number; high: number }) => ({
  low: low * daysPerMonth,
  high: high * daysPerMonth,
})

const paceChange = (whole: LineFit, recent: LineFit, { points }: Series): PaceChange => ({
  sinceVisit: points().at(-paceOver)?.visit ?? '',
  wholePerMonth: whole.slope * daysPerMonth,
  wholeInterval: perMonth(slopeInterval(whole)),
  recentPerMonth: recent.slope * daysPerMonth,
  recentInterval: perMonth(slopeInterval(recent)),
})

function secondOpinion(
  fit: LineFit,
  slope: number,
  matters: number,
  { days, points }: Series,
): SecondOpinion | null {
  const span = (days[days.length - 1] ?? 0) - (days[0] ?? 0)
  if (!disagree(fit, slope, span, matters)) return null
  return {
    theilSenPerMonth: slope * daysPerMonth,
    leastSquaresPerMonth: fit.slope * daysPerMonth,
    visit: points()[pullsMost(fit, points())]?.visit ?? '',
  }
}
