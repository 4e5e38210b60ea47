/** Remarks on the record itself. Of a kind the first says what it means, the others what they read. */
import type { Check } from '../../../trend/assessment.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'

export function checkTexts(of: HorseCase, checks: readonly Check[]): readonly string[] {
  const { format, assessmentWords } = of
  const kinds = [...new Set(checks.map(({ kind }) => kind))]
  return kinds.flatMap((kind) =>
    checks
      .filter((check) => check.kind === kind)
      .map((check, i) => {
        const text = (i === 0 ? assessmentWords.checkSentence : assessmentWords.checkAgain)(check, format)
        return format.words.base.remark(aboutOf(of, check), text)
      }),
  )
}

const aboutOf = (of: HorseCase, { foot, date }: Check): string =>
  [
    foot === null ? of.words.horse.wholeHorse : footTitle(of, foot),
    ...(date === null ? [] : [of.format.date(date)]),
  ].join(', ')
