import { addDays, daysBetween, type PlainDate } from '../../hoof/dates.ts'
import type { AssessedReading, Assessment, Trend } from '../../trend/assessment.ts'
import { lineOn } from '../../trend/trends.ts'
import type { ChartTime, TrendChart, TrendPanel } from './figures.ts'
import { drawnValue, type Formatter, nameOf } from './format.ts'

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
  /** Heads of the table's first two columns, time and stage. */
  readonly chartHead: readonly [string, string]
  readonly chartStages: { readonly before: string; readonly after: string }
}

const lineSteps = 8
/** A forecast is drawn no further than six months past the last reading. */
const furthestAhead = 183

/** To the unit of the axis. */
type Scaled = (value: number) => number

/**
 * One measure at all feet of which two readings tell, on one scale.
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
  const scaled: Scaled = (value) => drawnValue(first.measure, value, format.units)
  const readings = readingsOf(assessment, trends)
  const panels = trends.flatMap((trend, i) => {
    const own = readings[i] ?? []
    return own.length < 2 ? [] : [panel(own, trend, format, time, scaled, notes(trend))]
  })
  if (panels.length === 0) return null
  return {
    kind: 'trend',
    size: 'full',
    id: `chart-${first.measure}`,
    title: words.chartTitle(measure),
    description: words.chartSays(
      measure,
      trends
        .map((trend) =>
          words.chartFoot(
            format.foot(trend.foot),
            format.measure(trend.measure, trend.first.value),
            format.measure(trend.measure, trend.last.value),
            notes(trend),
          ),
        )
        .join(' '),
    ),
    table: {
      caption: unit === '' ? words.chartTitle(measure) : `${words.chartTitle(measure)}, ${unit}`,
      head: [...words.chartHead, ...trends.map(({ foot }) => format.foot(foot))],
      rows: tableRows(readings, format, time, words),
    },
    baseline: first.measure === 'heel-balance' ? 'zero' : 'none',
    unit,
    valueTitle: unit === '' ? measure : `${measure}, ${unit}`,
    timeTitle: time.title,
    panels,
  }
}

/** Of the source that the trend rests on. */
function readingsOf(
  assessment: Assessment,
  trends: readonly Trend[],
): readonly (readonly AssessedReading[])[] {
  const [first] = trends
  const all = assessment.readings.filter(({ measure }) => measure === first?.measure)
  return trends.map((trend) =>
    all.filter(
      ({ foot, source }) => foot === trend.foot && (source === 'photo') === (trend.family === 'photo'),
    ),
  )
}

/** A row a visit and stage, a column a foot. */
function tableRows(
  feet: readonly (readonly AssessedReading[])[],
  format: Formatter,
  time: TimeView,
  words: ChartWords,
): readonly (readonly string[])[] {
  const rows = new Map<string, { readonly name: readonly string[]; readonly cells: string[] }>()
  for (const [column, readings] of feet.entries()) {
    for (const { date, visit, stage, measure, value } of readings) {
      const order = `${date} ${visit} ${stage === 'before' ? 0 : 1}`
      const row = rows.get(order) ?? {
        name: [time.text(date), words.chartStages[stage]],
        cells: feet.map(() => '–'),
      }
      row.cells[column] = format.figure(measure, value)
      rows.set(order, row)
    }
  }
  return [...rows].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, { name, cells }]) => [...name, ...cells])
}

function panel(
  readings: readonly AssessedReading[],
  trend: Trend,
  format: Formatter,
  time: TimeView,
  scaled: Scaled,
  note: string,
): TrendPanel {
  const isLeftOut = ({ visit, stage }: AssessedReading) =>
    trend.leftOut.some((one) => one.visit === visit && one.stage === stage)
  return {
    foot: trend.foot,
    label: format.foot(trend.foot),
    note,
    points: readings.map((reading) => ({
      at: time.at(reading.date),
      value: scaled(reading.value),
      stage: reading.stage,
      isLeftOut: isLeftOut(reading),
    })),
    sawTooth: format.unit(trend.measure) === format.units && trend.measure !== 'heel-balance',
    line: fitted(trend, time, scaled),
    band: trend.target && {
      low: trend.target.low === null ? null : scaled(trend.target.low),
      high: trend.target.high === null ? null : scaled(trend.target.high),
      label: format.band(trend.measure, trend.target),
    },
    forecast: forecastOf(trend, time, scaled),
  }
}

/** What lies ahead and not too far; what has come due is no forecast any more. */
function forecastOf({ forecast, last }: Trend, time: TimeView, scaled: Scaled): TrendPanel['forecast'] {
  const horizon = addDays(last.date, furthestAhead)
  if (forecast?.kind !== 'date' || forecast.isDue || forecast.date > horizon) return null
  const { date, earliest, latest, edge } = forecast
  return {
    at: time.at(date),
    value: scaled(edge),
    earliest: time.at(earliest),
    latest: latest === null || latest > horizon ? null : time.at(latest),
    label: time.text(date),
  }
}

/** The fitted line over the readings it rests on, with the 95 % interval of the level. */
function fitted({ fit, first, last }: Trend, time: TimeView, scaled: Scaled): TrendPanel['line'] {
  if (fit === null) return []
  const days = daysBetween(first.date, last.date)
  return Array.from({ length: lineSteps + 1 }, (_, i) => {
    const date = addDays(first.date, Math.round((days * i) / lineSteps))
    const { value, low, high } = lineOn(fit, date)
    return { at: time.at(date), value: scaled(value), low: scaled(low), high: scaled(high) }
  })
}
