/** What is said of one measure at one foot, and why. Claims no more than the engine does. */
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { Trend, TrendFit, Verdict } from '../../trend/assessment.ts'
import { dateOfVisit, footTitle, type HorseCase, type Link, measureLink } from './horse-case.ts'

export interface VerdictView {
  readonly text: string
  /** How the sign under the word looks: `good`, `bad`, `early` or `plain`. */
  readonly tone: 'good' | 'bad' | 'early' | 'plain'
}

/** Name and text of one step from the readings to the statement. */
export interface WhyLine {
  readonly name: string
  readonly text: string
}

export interface TrendView {
  readonly foot: string
  readonly measure: Link
  readonly verdict: VerdictView
  readonly sentences: readonly string[]
  readonly why: readonly WhyLine[]
}

const tones: Readonly<Record<Verdict, VerdictView['tone']>> = {
  'on target': 'good',
  improving: 'good',
  worsening: 'bad',
  steady: 'plain',
  rising: 'plain',
  falling: 'plain',
  'too early to tell': 'early',
}

export const verdictView = (of: HorseCase, verdict: Verdict): VerdictView => ({
  text: of.says.verdicts[verdict],
  tone: tones[verdict],
})

export const trendView = (of: HorseCase, trend: Trend): TrendView => ({
  foot: footTitle(of, trend.foot),
  measure: measureLink(of, trend.measure),
  verdict: verdictView(of, trend.verdict),
  sentences: trendSentences(of, trend),
  why: whyLines(of, trend),
})

/** What changed, where it goes, when it gets there, and what casts doubt on that. */
function trendSentences(of: HorseCase, trend: Trend): readonly string[] {
  const { says, format } = of
  const { measure, pace, secondOpinion } = trend
  return [
    changeSentence(of, trend),
    says.verdictSentence(trend, format),
    ...forecastSentence(of, trend),
    ...(pace === null ? [] : [says.paceSentence(pace, measure, format)]),
    ...(secondOpinion === null
      ? []
      : [
          says.secondOpinionSentence(
            secondOpinion,
            format.date(dateOfVisit(of, secondOpinion.visit)),
            measure,
            format,
          ),
        ]),
  ]
}

/** The forecast in a sentence; nothing where there is none, or where the verdict says it all. */
export const forecastSentence = (
  { says, format }: HorseCase,
  { forecast, measure, verdict }: Trend,
): readonly string[] =>
  forecast === null || (forecast.kind === 'no date yet' && verdict === 'too early to tell')
    ? []
    : [says.forecastSentence(forecast, measure, format)]

const sinceDate = ({ format }: HorseCase, trend: Trend) => format.date(trend.points[0]?.date ?? '')

/** The line surely moves, though first and last alone may not differ for sure. */
const movingVerdicts: ReadonlySet<Verdict> = new Set(['improving', 'worsening', 'rising', 'falling'])

function changeSentence(of: HorseCase, trend: Trend): string {
  const { format, words } = of
  const { measure, first, last, change, smallestRealChange } = trend
  if (trend.n < 2) return words.trend.one(format.measure(measure, last), sinceDate(of, trend))
  const moves = movingVerdicts.has(trend.verdict)
  const say = trend.changeIsReal ? words.trend.real : moves ? words.trend.withinYet : words.trend.within
  return say(
    format.measure(measure, first),
    sinceDate(of, trend),
    format.measure(measure, last),
    format.change(measure, change),
    format.fine(measure, smallestRealChange),
  )
}

/** From the readings to the statement, step by step, with the numbers. */
function whyLines(of: HorseCase, trend: Trend): readonly WhyLine[] {
  const { format, words } = of
  const w = words.trend
  const { measure, fit } = trend
  const points = trend.points.map((point) =>
    w.whyPoint(format.measure(measure, point.value), format.shortDate(point.date)),
  )
  const lines: WhyLine[] = [
    {
      name: w.whyReadings,
      text: w.whySeries(trend.n, w.whyStage[trend.stage], w.whySource[trend.source], points.join(', ')),
    },
  ]
  if (trend.n > 1) {
    const [last, first] = [format.measure(measure, trend.last), format.measure(measure, trend.first)]
    lines.push({
      name: w.whyChange,
      text: w.whyChangeText(last, first, format.change(measure, trend.change)),
    })
  }
  lines.push({ name: w.whySmallest, text: smallestText(of, measure, trend.smallestRealChange, trend.whole) })
  if (fit !== null) lines.push(...fitLines(of, measure, fit))
  lines.push({ name: w.whyTarget, text: targetText(of, trend) })
  if (trend.forecast?.kind === 'date') lines.push({ name: w.whyForecast, text: w.whyForecastText })
  lines.push({
    name: w.whyVerdict,
    text:
      fit === null && trend.verdict === 'too early to tell'
        ? w.whyOneReading
        : w.whyVerdictText[trend.verdict],
  })
  return lines
}

function smallestText(
  { format, words }: HorseCase,
  measure: AnyMeasureId,
  limit: number,
  whole: TrendFit | null,
): string {
  const text = format.fine(measure, limit)
  return whole === null
    ? words.trend.whySmallestPrior(text)
    : words.trend.whySmallestText(text, whole.t.toFixed(2), format.fine(measure, whole.s))
}

function fitLines({ format, words }: HorseCase, measure: AnyMeasureId, fit: TrendFit): readonly WhyLine[] {
  const w = words.trend
  const { low, high } = fit.levelAtLastInterval
  return [
    { name: w.whyScatter, text: w.whyScatterText(format.fine(measure, fit.s), String(fit.nu), fit.n) },
    {
      name: w.whySlope,
      text: w.whySlopeText(
        format.rate(measure, fit.slopePerMonth),
        format.interval(measure, fit.slopeLow, fit.slopeHigh),
        fit.n,
      ),
    },
    {
      name: w.whyLevel,
      text: w.whyLevelText(format.fine(measure, fit.levelAtLast), format.interval(measure, low, high)),
    },
    { name: w.whyMedian, text: w.whyMedianText(format.rate(measure, fit.theilSenPerMonth)) },
  ]
}

const targetText = ({ format, words }: HorseCase, { measure, target, targetFrom }: Trend): string =>
  target === null || targetFrom === null
    ? words.trend.whyNoTarget
    : words.trend.whyTargetBand(format.band(measure, target), words.trend.whyTargetText[targetFrom])
