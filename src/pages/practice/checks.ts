/** Remarks on the record itself, a line each. */
import type { Check } from '../../trend/assessment.ts'
import { footTitle, type HorseCase } from './horse-case.ts'

export const checkTexts = (of: HorseCase, checks: readonly Check[]): readonly string[] =>
  checks.map((check) => {
    const { foot, date } = check
    const { format, assessmentWords } = of
    const about = [
      ...(foot === null ? [] : [footTitle(of, foot)]),
      ...(date === null ? [] : [format.date(date)]),
    ]
    const text = assessmentWords.checkSentence(check, format)
    return about.length === 0 ? text : format.words.base.remark(about.join(', '), text)
  })
