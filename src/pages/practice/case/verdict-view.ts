/** A verdict in a word, and how it looks. */
import { type Standing, standingOf, type Trend } from '../../../trend/assessment.ts'
import type { HorseCase } from './horse-case.ts'

export interface VerdictView {
  readonly text: string
  /** How the sign under the word looks: `good`, `bad`, `early` or `plain`. */
  readonly tone: 'good' | 'bad' | 'early' | 'plain'
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

/** In the target or near it before the way it goes; near it no way is better than another. */
export const standingText = ({ assessmentWords, words }: HorseCase, trend: Trend): string =>
  trend.position === 'near target' && ['rising', 'falling', 'steady'].includes(trend.verdict)
    ? words.problem.near
    : assessmentWords.standings[standingOf(trend)]

export const verdictView = (of: HorseCase, trend: Trend): VerdictView => ({
  text: standingText(of, trend),
  tone: tones[standingOf(trend)],
})
