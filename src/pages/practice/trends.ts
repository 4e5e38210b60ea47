/** What is said of one measure at one foot. Claims no more than the engine does. */
import type { Trend, Verdict } from '../../trend/assessment.ts'
import { dateOfVisit, footTitle, type HorseCase, type Link, measureLink } from './horse-case.ts'

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

const tones: Readonly<Record<Verdict, VerdictView['tone']>> = {
  'on target': 'good',
  held: 'plain',
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
