/** What was done and what came of it. */
import { addDays } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { AnyMeasureId, MeasureId } from '../../hoof/measures.ts'
import { type Assessment, standingOf, type Trend, type TrendReading } from '../../trend/assessment.ts'
import type { FindingsGrid, SideDrawing, Table, TrendChart, TrendPanel } from '../shared/figures.ts'
import { findingStories } from '../shared/findings.ts'
import { cameFromOutside } from '../shared/moves.ts'
import { movedOutline, sideDrawing } from '../shared/side.ts'
import { trendChart } from '../shared/trend-chart.ts'
import type { Outcome } from '../words/keys.ts'
import { type CaseContext, inCaseTime } from './context.ts'
import { medianOf } from './median.ts'
import { problemKinds } from './problems.ts'

const trimmed: readonly MeasureId[] = ['toe-length', 'heel-medial', 'heel-lateral']

export interface TrimsDone {
  /** What the trims took at each foot, over all of them. */
  readonly summary: Table | null
  /** A table a wall, with each trim. */
  readonly each: readonly Table[]
}

/** What each trim took where the wall was read before and after it. */
export function trimsDone({ assessment, format, timeOf, time, words }: CaseContext): TrimsDone {
  const walls = trimmed.flatMap((measure) => {
    const some = assessment.growth.filter((growth) => growth.measure === measure)
    const dates = [...new Set(some.flatMap(({ trims }) => trims.map(({ date }) => date)))].sort()
    if (dates.length === 0) return []
    const stepsAt = (foot: Foot) => some.find((growth) => growth.foot === foot)?.trims ?? []
    const taken = feet.map((foot) => {
      const steps = stepsAt(foot)
        .map(({ step }) => -step)
        .toSorted((a, b) => a - b)
      const [least, most] = [steps[0], steps.at(-1)]
      return least === undefined || most === undefined
        ? '\u2013'
        : words.takenIn(
            format.figure(measure, medianOf(steps)),
            format.figure(measure, least),
            format.figure(measure, most),
          )
    })
    const rows = dates.map((date) => [
      String(timeOf(date)),
      ...feet.map((foot) => {
        const step = stepsAt(foot).find((trim) => trim.date === date)
        return step === undefined ? '\u2013' : format.measure(measure, -step.step)
      }),
    ])
    const head = [time.head, ...feet.map((foot) => format.foot(foot))]
    const each = { caption: words.doneCaption(format.name(measure)), head, rows }
    return [{ row: [`${format.name(measure)}, ${format.unit(measure)}`, ...taken], each }]
  })
  return {
    summary:
      walls.length === 0
        ? null
        : {
            caption: words.takenCaption,
            head: words.readingsHead(feet.map((foot) => format.foot(foot))),
            rows: walls.map(({ row }) => row),
          },
    each: walls.map(({ each }) => each),
  }
}

export const planLines = ({ assessment, format, words }: CaseContext): string[] => [
  ...assessment.heldFeet.map((foot) => words.plannedHeld(format.foot(foot))),
  ...assessment.plans.map(({ foot, measure, now, limit, standing }) => {
    const sentence = measure === 'heel-balance' ? words.plannedHeels : words.plannedToe
    const [from, to] = [format.length(now), format.length(limit)]
    return sentence(format.foot(foot), from, to, words.plannedStanding[standing])
  }),
]

/**
 * From measures with a band alone: what has no band can neither be met nor missed. What moves counts where it clearly
 * does; what lay in its band from the first is no merit.
 */
export function outcomeOf({ trends }: Pick<Assessment, 'trends'>): Outcome {
  const judged = trends.filter(({ target }) => target !== null)
  const isReached = (trend: Trend) => standingOf(trend) === 'on target'
  const good = judged.some(
    (trend) =>
      trend.isClear && (trend.verdict === 'improving' || (isReached(trend) && cameFromOutside(trend))),
  )
  const bad = judged.some(({ isClear, verdict }) => isClear && verdict === 'worsening')
  if (good && bad) return 'mixed'
  if (bad) return 'worsening'
  if (judged.length > 0 && judged.every(isReached)) return 'on target'
  return good ? 'improving' : 'unsettled'
}

/** Of the first foot whose outline shows a change. */
export function sideOverTime({ assessment, format, timeOf, time, words }: CaseContext): SideDrawing | null {
  const [geometry] = feet.flatMap((foot) => movedOutline(assessment, foot) ?? [])
  return geometry === undefined
    ? null
    : sideDrawing(geometry, format, words, (view) => time.stageAt(timeOf(view.date), view.stage))
}

/** Where the problems name no measure that can be drawn. */
const usuallyCharted: readonly AnyMeasureId[] = ['toe-angle', 'toe-length', 'heel-balance']
const mostCharts = 3
const mostPanels = 2
/** A forecast further off than that past the last reading is told in words alone. */
const drawnAheadDays = 183

/** The measures that the case is about, at the feet where they clearly move or lie outside their bands. */
export function chartsOf(context: CaseContext): TrendChart[] {
  const { assessment, practice, format, timeOf, time, words } = context
  const inWeeks = practice.portfolio.time === 'weeks'
  const view = {
    title: time.axis,
    at: (date: string) => (inWeeks ? { week: timeOf(date) } : { day: timeOf(date) }),
    text: (date: string) => String(timeOf(date)),
  }
  const said = { ...words, chartHead: time.chartHead, chartSays: time.chartSays }
  const measures = problemKinds(context).flatMap(({ measure }) => (measure === null ? [] : [measure]))
  return [...new Set([...measures, ...usuallyCharted])]
    .flatMap((measure) => {
      const trends = gaugeTrends(assessment, measure)
        .filter(({ n, isClear, position }) => n >= 3 && (isClear || position === 'off target'))
        .toSorted((a, b) => Number(b.isClear) - Number(a.isClear))
        .slice(0, mostPanels)
        .map(withNearForecast)
      const note = (trend: Trend) => words.verdicts[standingOf(trend)]
      const chart = trendChart(assessment, trends, format, view, said, note)
      return chart === null ? [] : [{ ...chart, panels: chart.panels.map(withEvenLine) }]
    })
    .slice(0, mostCharts)
}

function withNearForecast(trend: Trend): Trend {
  const { forecast, last } = trend
  if (forecast?.kind !== 'date') return trend
  const end = addDays(last.date, drawnAheadDays)
  if (forecast.isDue || forecast.date > end) return { ...trend, forecast: null }
  const isOpen = forecast.latest === null || forecast.latest > end
  return { ...trend, forecast: { ...forecast, latest: isOpen ? null : forecast.latest } }
}

/**
 * In whole weeks the steps of a fitted line would stagger: they are laid evenly between its ends, which are whole weeks,
 * so that no exact day shows.
 */
function withEvenLine(panel: TrendPanel): TrendPanel {
  const [first, last] = [panel.line[0]?.at, panel.line.at(-1)?.at]
  if (first === undefined || last === undefined || !('week' in first && 'week' in last)) return panel
  const step = (last.week - first.week) / (panel.line.length - 1)
  return { ...panel, line: panel.line.map((point, i) => ({ ...point, at: { week: first.week + i * step } })) }
}

const gaugeTrends = (assessment: Assessment, measure: AnyMeasureId): Trend[] =>
  assessment.trends.filter((trend) => trend.measure === measure && trend.family === 'gauge')

/** Told whatever they did; others where they clearly moved or have a band. */
const shownAlways: readonly AnyMeasureId[] = ['toe-angle', 'toe-length', 'heel-balance', 'heel-gap']

/** Every measure with its readings, the line through them, and what can be said. */
export function trendsTable({ assessment, format, timeOf, time, words }: CaseContext): Table | null {
  const shown = assessment.trends.filter(
    (trend) =>
      trend.points.length >= 2 &&
      (shownAlways.includes(trend.measure) || trend.isClear || trend.target !== null),
  )
  if (shown.length === 0) return null
  return {
    caption: words.trendsCaption,
    head: words.trendsHead,
    rows: shown.map((trend) => {
      const read = ({ value, date }: TrendReading) =>
        words.readAt(format.measure(trend.measure, value), time.at(timeOf(date)))
      return [
        words.footMeasure(format.foot(trend.foot), format.name(trend.measure)),
        String(trend.n),
        read(trend.first),
        read(trend.last),
        trend.fit === null
          ? words.noSlope
          : words.slope(
              format.rate(trend.measure, trend.fit.slopePerMonth),
              format.interval(trend.measure, trend.fit.slopeLow, trend.fit.slopeHigh),
            ),
        trend.isClear ? words.clear : words.unclear,
        words.verdicts[standingOf(trend)],
      ]
    }),
  }
}

export function gridOf({ visits, format, anonymous, timeOf, time, words }: CaseContext): FindingsGrid | null {
  const stories = findingStories(visits)
  if (stories.length === 0 || visits.length < 2) return null
  const when = visits.map(({ date }) => time.at(timeOf(date)))
  const rows = stories.map(({ foot, what, place, grades }) => ({
    foot,
    label: `${format.foot(foot)}: ${anonymous(what)}, ${anonymous(place)}`,
    grades,
  }))
  const cells = rows.map(({ label, grades }) => [
    label,
    ...grades.map((grade) => (grade === null ? '\u2013' : String(grade))),
  ])
  return {
    kind: 'findings',
    id: 'findings-over-time',
    title: words.gridTitle,
    description: words.gridSays(
      cells.map(([label = '', ...grades]) => `${label}: ${grades.join(', ')}.`).join(' '),
    ),
    table: { caption: words.gridCaption, head: ['', ...when], rows: cells },
    visits: when,
    rows,
  }
}

export function growthLines({ assessment, practice, format, time, words }: CaseContext): string[] {
  return assessment.growth.flatMap(({ foot, measure, ratePerMonth, low, high, days }) => {
    if (measure !== 'toe-length' || ratePerMonth === null || low === null || high === null) return []
    const [rate, interval] = [format.rate(measure, ratePerMonth), format.interval(measure, low, high)]
    const span = time.span(inCaseTime(days, practice))
    return [words.growthLine(format.foot(foot), format.name(measure), rate, interval, span)]
  })
}

export function growOutLines({ assessment, format, anonymous, timeOf, time, words }: CaseContext): string[] {
  return assessment.growOut.map((feature) => {
    const foot = format.foot(feature.foot)
    const what = anonymous(feature.feature)
    const place = anonymous(feature.place)
    if (feature.state === 'grown out') return words.growOutGone(foot, what, place)
    const { date, earliest, latest } = feature
    if (date === null || earliest === null) return words.growOutUnknown(foot, what, place)
    if (feature.state === 'due') return time.growOutDue(foot, what, place, timeOf(date))
    const from = earliest > assessment.asOf ? timeOf(earliest) : null
    return time.growOutLine(foot, what, place, timeOf(date), from, latest === null ? null : timeOf(latest))
  })
}
