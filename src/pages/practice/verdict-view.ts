/** A verdict in a word, and how it looks. */
import type { Standing } from '../../trend/assessment.ts'
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

export const verdictView = (of: HorseCase, standing: Standing): VerdictView => ({
  text: of.assessmentWords.standings[standing],
  tone: tones[standing],
})
