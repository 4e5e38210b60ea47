/** What is said of one measure at one foot. Claims no more than the engine does. */
import { type Standing, standingOf, type Trend } from '../../trend/assessment.ts'
import { footTitle, type HorseCase, type Link, measureLink } from './horse-case.ts'

export interface VerdictView {
  readonly text: string
  /** How the sign under the word looks: `good`, `bad`, `early` or `plain`. */
  readonly tone: 'good' | 'bad' | 'early' | 'plain'
}

export interface TrendView {
  readonly foot: string
  readonly measure: Link
  readonly verdict: VerdictView
  readonly sentences: readonly string[]
}

const tones: Readonly<Record<Standing, VerdictView['tone']>> = {
  'on target': 'good',
  held: 'plain',
  improving: 'good',
  worsening: 'bad',
  steady: 'plain',
  rising: 'plain',
  falling: 'plain',
  'not worsening': 'plain',
  'not improving': 'plain',
  'too early to tell': 'early',
}

export const verdictView = (of: HorseCase, standing: Standing): VerdictView => ({
  text: of.assessmentWords.standings[standing],
  tone: tones[standing],
})

export const trendView = (of: HorseCase, trend: Trend): TrendView => ({
  foot: footTitle(of, trend.foot),
  measure: measureLink(of, trend.measure),
  verdict: verdictView(of, standingOf(trend)),
  sentences: trendSentences(of, trend),
})

/** What changed, where it goes, when it gets there, and what casts doubt on that. */
function trendSentences(of: HorseCase, trend: Trend): readonly string[] {
  const { assessmentWords, format } = of
  const { measure, pace } = trend
  return [
    changeSentence(of, trend),
    assessmentWords.standingSentence(trend, format),
    ...forecastSentence(of, trend),
    ...(pace === null ? [] : [assessmentWords.paceSentence(pace, measure, format)]),
  ]
}

/** The forecast in a sentence; nothing where there is none, or where the verdict says it all. */
export const forecastSentence = (
  { assessmentWords, format }: HorseCase,
  { forecast, measure, verdict }: Trend,
): readonly string[] =>
  forecast === null || (forecast.kind === 'no date yet' && verdict === 'too early to tell')
    ? []
    : [assessmentWords.forecastSentence(forecast, measure, format)]

function changeSentence({ format, words }: HorseCase, trend: Trend): string {
  const { measure, first, last, change, points } = trend
  if (points.length < 2) return words.trend.one(format.measure(measure, last.value), format.date(first.date))
  return words.trend.moved(
    format.measure(measure, first.value),
    format.date(first.date),
    format.measure(measure, last.value),
    format.change(measure, change),
  )
}
