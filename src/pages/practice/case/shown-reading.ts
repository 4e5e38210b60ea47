/** A reading as pages show it, with what it is: the same reading reads the same wherever it stands. */
import type { Stage } from '../../../casebook/model.ts'
import type { Foot } from '../../../hoof/feet.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import type { AssessedReading, Trend } from '../../../trend/assessment.ts'
import type { HorseCase } from './horse-case.ts'

export interface ShownReading {
  readonly text: string
  /** Foot, measure, visit, stage and way of reading: `LF toe-angle 2026-03-23 after gauge`. */
  readonly reading: string
}

interface ReadingOf {
  readonly foot: Foot
  readonly measure: AnyMeasureId
  readonly visit: string
  readonly stage: Stage
}

const keyOf = ({ foot, measure, visit, stage }: ReadingOf, isPhoto: boolean): string =>
  `${foot} ${measure} ${visit} ${stage} ${isPhoto ? 'photo' : 'gauge'}`

/** The first or last reading of a trend, in the words given or as its measure is written. */
export function shownEnd(
  of: HorseCase,
  trend: Trend,
  end: 'first' | 'last',
  text: (of: HorseCase, measure: AnyMeasureId, value: number) => string = valueText,
): ShownReading {
  const { foot, measure, family } = trend
  const { visit, stage, value } = trend[end]
  return {
    text: text(of, measure, value),
    reading: keyOf({ foot, measure, visit, stage }, family === 'photo'),
  }
}

export const shownReading = (reading: AssessedReading, text: string): ShownReading => ({
  text,
  reading: keyOf(reading, reading.source === 'photo'),
})

/** A value with its unit; of the heels which is the higher, and by how much. */
export const valueText = (of: HorseCase, measure: AnyMeasureId, value: number): string =>
  measure === 'heel-balance'
    ? heelsText(of, value, of.format.length(Math.abs(value)))
    : of.format.measure(measure, value)

/** The same without its unit, where that stands beside it. */
export const bareText = (of: HorseCase, measure: AnyMeasureId, value: number): string =>
  measure === 'heel-balance'
    ? heelsText(of, value, of.format.figure(measure, Math.abs(value)))
    : of.format.figure(measure, value)

function heelsText({ words }: HorseCase, value: number, amount: string): string {
  if (!/[1-9]/.test(amount)) return words.problem.level
  return value > 0 ? words.problem.inner(amount) : words.problem.outer(amount)
}
