/** What was done and what came of it. */
import { feet } from '../../hoof/feet.ts'
import type { AnyMeasureId, MeasureId } from '../../hoof/measures.ts'
import { type Assessment, standingOf, type Trend } from '../../trend/assessment.ts'
import type { FindingsGrid, SideDrawing, Table, TrendChart, TrendPanel } from '../shared/figures.ts'
import { findingStories } from '../shared/findings.ts'
import { sideDrawing } from '../shared/side.ts'
import { trendChart } from '../shared/trend-chart.ts'
import type { Outcome } from '../words/keys.ts'
import { type CaseContext, inCaseTime } from './context.ts'

const trimmed: readonly MeasureId[] = ['toe-length', 'heel-medial', 'heel-lateral']

export function trimTables({ assessment, format, timeOf, time, words }: CaseContext): Table[] {
  return trimmed.flatMap((measure) => {
    const some = assessment.growth.filter((growth) => growth.measure === measure)
    const dates = [...new Set(some.flatMap(({ trims }) => trims.map(({ date }) => date)))].sort()
    if (dates.length === 0) return []
    const rows = dates.map((date) => [
      String(timeOf(date)),
      ...feet.map((foot) => {
        const step = some.find((growth) => growth.foot === foot)?.trims.find((trim) => trim.date === date)
        return step === undefined ? '\u2013' : format.measure(measure, -step.step)
      }),
    ])
    return [
      {
        caption: words.doneCaption(format.name(measure)),
        head: [time.head, ...feet.map((foot) => format.foot(foot))],
        rows,
      },
    ]
  })
}

export const planLines = ({ assessment, format, words }: CaseContext): string[] => [
  ...assessment.heldFeet.map((foot) => words.plannedHeld(format.foot(foot))),
  ...assessment.plans.map((plan) => {
    const sentence = plan.measure === 'heel-balance' ? words.plannedHeels : words.plannedToe
    const amounts = sentence(format.foot(plan.foot), format.length(plan.now), format.length(plan.limit))
    return `${amounts} ${words.plannedStanding[plan.standing]}`
  }),
]

/** From the verdicts of measures with a band alone: what has no band can neither be met nor missed. */
export function outcomeOf(assessment: Assessment): Outcome {
  const verdicts = assessment.trends.filter(({ target }) => target !== null).map(standingOf)
  const good = verdicts.some((verdict) => verdict === 'on target' || verdict === 'improving')
  const bad = verdicts.includes('worsening')
  if (good && bad) return 'mixed'
  if (bad) return 'worsening'
  if (!good) return 'unsettled'
  return verdicts.every((verdict) => verdict === 'on target') ? 'on target' : 'improving'
}

export function sidesOverTime({ assessment, format, timeOf, time, words }: CaseContext): SideDrawing[] {
  return assessment.geometry
    .filter(({ first, latest }) => first.visit !== latest.visit)
    .map((geometry) =>
      sideDrawing(geometry, format, words, (view) => time.stageAt(timeOf(view.date), view.stage)),
    )
}

const charted: readonly AnyMeasureId[] = ['toe-angle', 'toe-length', 'heel-balance']

export function chartsOf({ assessment, practice, format, timeOf, time, words }: CaseContext): TrendChart[] {
  const inWeeks = practice.portfolio.time === 'weeks'
  const view = {
    title: time.axis,
    at: (date: string) => (inWeeks ? { week: timeOf(date) } : { day: timeOf(date) }),
    text: (date: string) => String(timeOf(date)),
  }
  const said = { ...words, chartHead: time.chartHead, chartSays: time.chartSays }
  return charted.flatMap((measure) => {
    const trends = gaugeTrends(assessment, measure).filter(({ n }) => n >= 3)
    const chart = trendChart(
      assessment,
      trends,
      format,
      view,
      said,
      (trend) => words.verdicts[standingOf(trend)],
    )
    return chart === null ? [] : { ...chart, panels: chart.panels.map(withEvenLine) }
  })
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

/** Shown in the table whatever they did; others where they moved or have a band. */
export const shownAlways: readonly AnyMeasureId[] = ['toe-angle', 'toe-length', 'heel-balance', 'heel-gap']

export function trendsTable({ assessment, format, words }: CaseContext): Table | null {
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
      const text = (value: number) => format.measure(trend.measure, value)
      const change = format.change(trend.measure, trend.change)
      return [
        format.foot(trend.foot),
        format.name(trend.measure),
        String(trend.n),
        text(trend.first.value),
        text(trend.last.value),
        `${change}, ${trend.isClear ? words.clear : words.unclear}`,
        format.fine(trend.measure, trend.smallestRealChange),
        trend.fit === null
          ? words.noSlope
          : words.slope(
              format.rate(trend.measure, trend.fit.slopePerMonth),
              format.interval(trend.measure, trend.fit.slopeLow, trend.fit.slopeHigh),
            ),
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
    if (feature.date === null || feature.earliest === null) return words.growOutUnknown(foot, what, place)
    const latest = feature.latest === null ? null : timeOf(feature.latest)
    return time.growOutLine(foot, what, place, timeOf(feature.date), timeOf(feature.earliest), latest)
  })
}
