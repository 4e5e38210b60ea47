/**
 * Colours of charts and drawings: custom properties of the page's stylesheet, so that they follow it into the dark
 * and onto paper, each with a value that is right without a stylesheet.
 * The hues are those of Okabe & Ito's palette for all kinds of colour vision.
 */
import type { Foot } from '../hoof/feet.ts'

export const ink = 'var(--ink, #1a1712)'
export const inkSoft = 'var(--ink-soft, #575044)'
export const paper = 'var(--paper, #fff)'
export const line = 'var(--line, #d9d1c0)'
export const band = 'var(--band, #d9f0e8)'
export const ribbon = 'var(--ribbon, #e3e0da)'
export const latest = 'var(--latest, #0072b2)'

const series: Readonly<Record<Foot, string>> = {
  LF: '#0072b2',
  RF: '#d55e00',
  LH: '#009e73',
  RH: '#b8628f',
}
export const seriesColour = (foot: Foot): string => `var(--series-${foot}, ${series[foot]})`

const grades = ['none', '#f0e442', '#e69f00', '#d55e00'] as const
export const gradeColour = (grade: 0 | 1 | 2 | 3): string =>
  grade === 0 ? 'none' : `var(--grade-${grade}, ${grades[grade]})`
/** Signs on the tones of grades, which are light in every mode. */
export const onGrade = '#1a1712'
