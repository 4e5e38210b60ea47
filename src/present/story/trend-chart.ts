import type { PlainDate } from '../../hoof/dates.ts'
import { addDays } from '../../hoof/dates.ts'
import type { AssessedReading, Assessment, Trend } from '../../trend/assessment.ts'
import type { ChartTime, TrendChart, TrendPanel } from '../figures.ts'
import type { Formatter } from '../format.ts'
import { nameOf } from '../format.ts'

/** How time shows: as dates for an owner, as days of the case where dates must not show. */
export interface TimeView {
  readonly title: string
  readonly at: (date: PlainDate) => ChartTime
  readonly text: (date: PlainDate) => string
}

export interface ChartWords {
  readonly chartTitle: (measure: string) => string
  readonly chartSays: (measure: string, feet: string) => string
  readonly chartFoot: (foot: string, first: string, last: string, note: string) => string
  readonly chartHead: (unit: string) => readonly string[]
  readonly chartStages: { readonly before: string; readonly after: string }
}

const lineSteps = 12

/**
 * One measure at all feet that have a trend of it, on one scale.
 * @param notes one line a foot: the verdict in words
 */
export function trendChart(
  assessment: Assessment,
  trends: readonly Trend[],
  format: Formatter,
  time: TimeView,
  words: ChartWords,
  notes: (trend: Trend) => string,
): TrendChart | null {
  const [first] = trends
  if (first === undefined) return null
  const measure = nameOf(first.measure)
  const unit = format.unit(first.measure)
  const scale = unit === 'mm' || unit === 'cm' || unit === 'in' ? { mm: 1, cm: 10, in: 25.4 }[unit] : 1
  return {
    kind: 'trend',
    id: `chart-${first.measure}`,
    title: words.chartTitle(measure),
    description: words.chartSays(
      measure,
      trends
        .map((trend) =>
          words.chartFoot(
            format.foot(trend.foot),
            format.measure(trend.measure, trend.first),
            format.measure(trend.measure, trend.last),
            notes(trend),
          ),
        )
        .join(' '),
    ),
    table: {
      caption: words.chartTitle(measure),
      head: words.chartHead(unit),
      rows: trends.flatMap((trend) =>
        readingsOf(assessment, trend).map((reading) => [
          format.foot(trend.foot),
          time.text(reading.date),
          words.chartStages[reading.stage],
          format.figure(trend.measure, reading.value),
        ]),
      ),
    },
    baseline: first.measure === 'heel-balance' ? 'zero' : 'none',
    unit,
    valueTitle: unit === '' ? measure : `${measure}, ${unit}`,
    timeTitle: time.title,
    panels: trends.map((trend) => panel(assessment, trend, format, time, scale, notes(trend))),
  }
}

const readingsOf = (assessment: Assessment, trend: Trend): readonly AssessedReading[] =>
  assessment.readings.filter(
    ({ foot, measure, source }) =>
      foot === trend.foot && measure === trend.measure && (source === 'photo') === (trend.source === 'photo'),
  )

function panel(
  assessment: Assessment,
  trend: Trend,
  format: Formatter,
  time: TimeView,
  scale: number,
  note: string,
): TrendPanel {
  const used = new Set(trend.points.map(({ visit }) => visit))
  const start = trend.points[0]?.date
  return {
    foot: trend.foot,
    label: format.foot(trend.foot),
    note,
    points: readingsOf(assessment, trend).map(({ visit, date, stage, value }) => ({
      at: time.at(date),
      value: value / scale,
      stage,
      used: stage === trend.stage && used.has(visit),
    })),
    sawTooth: format.unit(trend.measure) === format.units && trend.measure !== 'heel-balance',
    line: trend.fit && start !== undefined ? fitted(trend, start, time, scale) : [],
    band: trend.target && {
      low: trend.target.low === null ? null : trend.target.low / scale,
      high: trend.target.high === null ? null : trend.target.high / scale,
    },
    forecast:
      trend.forecast?.kind === 'date'
        ? {
            at: time.at(trend.forecast.date),
            value: trend.forecast.edge / scale,
            earliest: time.at(trend.forecast.earliest),
            latest: trend.forecast.latest === null ? null : time.at(trend.forecast.latest),
          }
        : null,
  }
}

/** The fitted line over the readings it rests on, with the 95 % interval of the level (engine, section 3). */
function fitted({ fit, points }: Trend, start: PlainDate, time: TimeView, scale: number): TrendPanel['line'] {
  const last = points[points.length - 1]?.day
  if (fit === null || last === undefined) return []
  return Array.from({ length: lineSteps + 1 }, (_, i) => {
    const day = Math.round(fit.fromDay + ((last - fit.fromDay) * i) / lineSteps)
    const value = fit.level + fit.slope * day
    const half = fit.t * fit.s * Math.sqrt(1 / fit.n + (day - fit.meanDay) ** 2 / fit.sxx)
    return {
      at: time.at(addDays(start, day)),
      value: value / scale,
      low: (value - half) / scale,
      high: (value + half) / scale,
    }
  })
}
