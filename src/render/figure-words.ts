/** What stands inside charts and drawings in one language. */
import type { OwnerWords } from '../pages/words/index.ts'
import { decimalSign, shortMonths } from '../pages/words/local.ts'

export type FigureWords = OwnerWords['figures'] & {
  /** Twelve, for the axis of dates: `Jan`, `Feb`, ... */
  readonly months: readonly string[]
  /** What parts the whole from the tenths. */
  readonly decimalSign: string
}

export const figureWords = ({ figures, base }: OwnerWords): FigureWords => ({
  ...figures,
  months: shortMonths(base.lang),
  decimalSign: decimalSign(base.formats),
})
